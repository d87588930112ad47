// Package tui asks and shows: the wizard, full screen and line by line.
package tui

// Package sheet makes the sheet to print and keep: of one fitting, or of all
// fittings of a day.
//
// What stands on it is data first, a Card or a Class, from which all formats
// follow: text and HTML directly, SVG and PDF through one drawing of the page.
// Lengths in a drawing are points, 1/72 in, from the top left corner down.
package sheet

// Package words finds every text of the program that people read, and builds
// the program with those of another language in their place.
//
// A text is a literal of the source, or several that are put together with "+"
// around values: {1} stands for the first value, {2} for the second. What is no
// text but a contract, as keys of files, names of commands and checks and words
// of JSON, is told apart by where it goes; see contract.go.
package words

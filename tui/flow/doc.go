// Package flow is the wizard without a screen: the one table of steps, what has
// been told so far, and what each answer or key leads to.
//
// A State is a value. Do takes an Event and returns the State after it; nothing
// else changes one, and nothing in the package reads a clock, a file or a
// terminal. The full screen and the line-by-line mode both draw a State and
// feed it events, so they ask the same questions and accept the same answers.
package flow

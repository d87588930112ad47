// Package tui asks and shows: the wizard, full screen (Run) and line by line
// (RunPlain). What is asked, and what an answer leads to, is package flow's; both
// modes draw one flow.State and hand it events.
//
// Full screen: app.go holds the model and hands each message to the screen that
// is open, a file each (screen_*.go): its keys, then its lines. layout.go puts the
// lines into a frame when something has happened; View only shows it. Files and
// clocks are asked in commands alone (cmds.go, past_cmds.go), and form.go is the
// one place that knows the library of fields. Line by line is plain*.go.
package tui

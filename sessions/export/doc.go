// Package export tells sessions as rows of numbers and words, one row a session,
// for people's own spreadsheets and notebooks.
//
// What a row holds stands in one table (columns.go), from which the header, the
// page on data and what is left out without names follow.
package export

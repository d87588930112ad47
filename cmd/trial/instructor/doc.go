// Package instructor measures the true world with a tape and writes down what a
// climbing instructor would: a fit.Fitting, with reading errors, the spread of
// poses and, now and then, a blunder.
package instructor

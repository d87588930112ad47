package rules

import "example.com/hangtape/fit"

// NumPoses is how many poses PosesOf fills in.
const NumPoses = numPoses

// PosesOf fills out with the poses in state s, as an assessment asks for them.
func PosesOf(s *fit.State, l *Limits, out []float64) { posesOf(s, l, out) }

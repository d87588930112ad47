// Package compare holds two sessions side by side: every reading, length, pose,
// margin and verdict, what changed, by how much, and whether by more than its
// uncertainty.
//
// A difference is of the second session less the first. Its standard
// uncertainty is that of both sides, but for what both sides share: a length
// kept from one session in the other is one reading, so its error cancels. It
// counts as a change where it is more than 1.96 times its standard uncertainty
// (95 %, both ways; GUM G.1.3 for the normal distribution).
package compare

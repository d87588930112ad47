// Package truth is the world that the trial measures in: real bodies hung on
// rope and cord, worked out from joints and loads. It knows nothing of the
// tool: it imports neither fit nor rules, has its own distributions and solves
// its linkages by searching for a root where the tool uses closed forms.
//
// What the tool leaves out happens here: the hip point shifts between poses,
// bridges, tether and foot loop stretch under the climber, the rope (and the
// tape on it) hangs a little off plumb, the rings sit behind the rope, the Garda
// hitch slides a little before it holds, left and right arms and legs differ,
// the knee folds about a point that the kneecap is not exactly on.
//
// The sizes of these effects and the spreads are judgement: no published source
// gives them. They were set before the tool was first held against them. At
// scale 1 the spread of a posture about the tool's default is about what the
// tool assumes for it; the shapes and the centres are different.
//
// Frame: x forward, y up, origin at the hip point while the climber hangs seated
// on the main bridge. Millimetres, kilograms, kilonewtons, radians.
package truth

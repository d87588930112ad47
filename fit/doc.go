// Package fit is the geometry, the mechanics and the uncertainty of a fitting.
//
// A Fitting holds what was read. From it follow the base inputs with their
// standard uncertainties and origins, the poses of the climber on the rope, and
// for any quantity computed from them its standard uncertainty and second-order
// shift. The package judges nothing and knows no limits: package rules does.
//
// Lengths are millimetres, masses kilograms, forces kilonewtons; angles are
// degrees where a person meets them and radians inside. The side view has its
// origin at the hip point (the upper edge of the greater trochanter) of the
// climber hanging seated, x forward, y up. Both legs of rope are one vertical
// line at x = ahead. Unknown is a value of its own: a Number that is not Known
// at the surface, NaN inside, and never 0.
//
//	                      |   <- rope, both legs
//	 raised wrist  o     [#]  hitch tops
//	               |     [#]
//	               |      |   loops
//	      nose  (  )      |
//	               |     ( )  main connector
//	               |     /|
//	               |   /  |   main bridge (up) and backup bridge (low)
//	hip point  o--*--/----+-- y = 0
//	               \      |
//	        thigh    \  [=]   Garda hitch, tether to the backup bridge
//	               knee o |
//	                    | |   foot loop
//	             shin   | |
//	             boot  [__|
package fit

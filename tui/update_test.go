package tui

import "flag"

// update is the one flag of this package's tests that writes what they compare
// with afresh.
var update = flag.Bool("update", false, "write the goldens and the README's parts afresh")

var long = flag.Bool("long", false, "press 100,000 keys in place of a few")

package tui

import "flag"

// update is the one flag of this package's tests that writes what they compare
// with afresh.
var update = flag.Bool("update", false, "write the goldens and the README's parts afresh")

package rules

import "slices"

// MissingNames are the names of what any of checks waits for, each once, in the
// order of the checks.
func MissingNames(checks []Check) []string {
	var names []string
	for _, c := range checks {
		for _, key := range c.Missing {
			if name := InputName(key); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

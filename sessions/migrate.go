package sessions

// A migration turns the tables of a file as they were in one format, as the TOML
// library reads them, into those of the next: of whichever file it is, a
// session, a school's or that of the pieces. It leaves what it does not
// understand to the errors of decoding.
type migration func(root map[string]any)

// migrations lead from each format before Format to the next, the first one from
// format 1 to 2. Files are migrated as they are read; one on disk changes only
// when it is saved.
var migrations = []migration{}

// migrate brings the tables of a file from the format that they say to the
// newest one, to which all steps lead.
func migrate(root map[string]any, steps []migration) {
	newest := int64(len(steps)) + 1
	from, ok := root["format"].(int64)
	if !ok || from < 1 || from >= newest {
		return
	}
	for _, step := range steps[from-1:] {
		step(root)
	}
	root["format"] = newest
}

package sessions

import "fmt"

// A Told is one key of a session file with its value as the file has it.
type Told struct {
	Key   KeyInfo // its Path with the number of the entry: "hangs.1.hip_mm"
	Value string  // in TOML
}

// Told lists every key that the session tells, in the order of the file.
func (s *Session) Told() []Told {
	whole := *s
	complete(&whole)
	var all []Told
	for _, tb := range sessionSchema {
		entries := 1
		if tb.many != nil {
			entries = tb.many(&whole)
		}
		for i := range entries {
			for _, f := range tb.fields {
				v := f.put(&whole, i)
				if v == "" {
					continue
				}
				info := f.info(tb)
				if tb.many != nil {
					info.Path = join(tb.path, join(fmt.Sprint(i+1), f.key))
				}
				all = append(all, Told{info, v})
			}
		}
	}
	return all
}

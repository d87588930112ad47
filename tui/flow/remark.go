package flow

import "strings"

// remark is the sentence of the notes that starts with begin, without its full
// stop; empty where there is none.
func remark(notes, begin string) string {
	i := strings.Index(notes, begin)
	if i < 0 {
		return ""
	}
	said, _, _ := strings.Cut(notes[i:], ". ")
	return strings.TrimSuffix(said, ".")
}

// remarked is notes with the sentence that starts with begin replaced, added, or
// taken out where said is empty. What people have written stays.
func remarked(notes, begin, said string) string {
	if said != "" {
		said += "."
	}
	if old := remark(notes, begin); old != "" {
		before, after, _ := strings.Cut(notes, old)
		return joined(before, said, strings.TrimPrefix(after, "."))
	}
	return joined(notes, said)
}

// ourOwn says whether the notes hold nothing but the program's own sentences.
func ourOwn(notes string) bool {
	for _, begin := range []string{shortSaid, newSince, reCheckOf} {
		notes = remarked(notes, begin, "")
	}
	return notes == ""
}

func joined(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p = strings.TrimSpace(p); p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, " ")
}

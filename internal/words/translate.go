package words

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
)

// A Translation is what stands in place of the texts of a program.
type Translation struct {
	name    string
	program *Program
	of      map[*use]string
	missing int // texts without a translation: they stay English
	texts   int // of so many
}

// String tells what it is and how much of it there is.
func (t *Translation) String() string {
	return fmt.Sprintf("words of %s, %d of %d texts are not translated", filepath.Base(t.name), t.missing, t.texts)
}

// Flag is what makes the linker write it into the program's version.
func (t *Translation) Flag() string { return fmt.Sprintf("-X 'main.wordsOf=%s'", t) }

// Read is the translation in a file.
func (p *Program) Read(file string) (*Translation, error) {
	all, err := Read(file)
	if err != nil {
		return nil, err
	}
	return p.Translate(file, all)
}

// Translate holds a file of texts called name against the program. All that is
// off is in the error, a line each.
func (p *Program) Translate(name string, all []Text) (*Translation, error) {
	by := map[string][]Text{}
	for _, t := range all {
		by[t.English] = append(by[t.English], t)
	}
	tr := &Translation{name: name, program: p, of: map[*use]string{}}
	var wrong []error
	fault := func(t Text, format string, args ...any) {
		wrong = append(wrong, fmt.Errorf("%s: english = %q: %s", name, t.English, fmt.Sprintf(format, args...)))
	}
	for _, t := range p.Texts() {
		tr.texts++
		of := by[t.English]
		delete(by, t.English)
		for _, o := range of {
			if why := o.fault(); why != "" {
				fault(o, "%s", why)
			}
			if len(of) < 2 {
				continue
			}
			if len(o.Where) == 0 {
				fault(o, "stands there %d times; accepted is once, or each with the where that it is for", len(of))
			}
			for _, w := range o.Where {
				if !slices.Contains(t.Where, w) {
					fault(o, "where is %q; accepted is one of %q", w, t.Where)
				}
			}
		}
		if !slices.ContainsFunc(of, func(o Text) bool { return o.Translation != "" }) {
			tr.missing++
		}
	}
	for _, t := range all {
		if _, left := by[t.English]; left {
			fault(t, "the program has no such text; update the file: go run ./cmd/words update %s", name)
		}
	}
	for _, t := range all {
		by[t.English] = append(by[t.English], t)
	}
	for _, u := range p.uses {
		switch found := u.texts(by[u.english]); {
		case len(found) > 1:
			fault(found[0], "is translated twice for %q; accepted is once, or with a where of its own for each", u.where)
		case len(found) == 1 && found[0].Translation != "":
			tr.of[u] = found[0].Translation
		}
	}
	return tr, errors.Join(wrong...)
}

// texts are those of a file that are for a place. One alone is for all places.
func (u *use) texts(of []Text) []Text {
	if len(of) < 2 {
		return of
	}
	var found []Text
	for _, t := range of {
		if slices.Contains(t.Where, u.where) {
			found = append(found, t)
		}
	}
	return found
}

// fault is what cannot be in a translation, "" where nothing is off.
func (t Text) fault() string {
	if t.Translation == "" {
		return ""
	}
	found, accepted := values(t.Translation), values(t.English)
	if !slices.Equal(found, accepted) {
		return fmt.Sprintf("translation = %q has %s; accepted is each of %s, in another order as %%[2]s, {2}", t.Translation, told(found), told(accepted))
	}
	if braces(t.Translation) != braces(t.English) {
		return fmt.Sprintf("translation = %q has other braces; accepted are those of the English text, with the words for both signs in them: {has above|under}", t.Translation)
	}
	for _, r := range t.Translation {
		if unicode.IsControl(r) && (r != '\n' || !strings.Contains(t.English, "\n")) {
			return fmt.Sprintf("translation = %q has the control character %q; accepted are letters, signs and spaces", t.Translation, r)
		}
	}
	if edges(t.Translation) != edges(t.English) {
		return fmt.Sprintf("translation = %q begins or ends with other spaces; accepted are those of the English text, which others are put beside", t.Translation)
	}
	return ""
}

// braces are the signs around the values of a check's sentence, in their number.
func braces(text string) (n [3]int) {
	for i, sign := range []string{"{", "|", "}"} {
		n[i] = strings.Count(text, sign)
	}
	return n
}

// edges are the spaces around a text.
func edges(text string) [2]string {
	inner := strings.TrimSpace(text)
	before, after, _ := strings.Cut(text, inner)
	return [2]string{before, after}
}

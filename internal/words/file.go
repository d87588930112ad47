package words

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
)

// A Text is what people read at one or more places of the program.
type Text struct {
	English     string   `toml:"english"`
	Where       []string `toml:"where"`            // file and declaration
	Values      []string `toml:"values,omitempty"` // that it takes
	Translation string   `toml:"translation"`      // empty where there is none
}

// texts is a file of texts.
type texts struct {
	Text []Text `toml:"text"`
}

// Write writes a file of texts under a comment.
func Write(name, comment string, all []Text) error {
	var b bytes.Buffer
	for line := range strings.Lines(comment) {
		b.WriteString("# " + line)
	}
	b.WriteString("\n")
	e := toml.NewEncoder(&b)
	e.Indent = ""
	if err := e.Encode(texts{all}); err != nil {
		return err
	}
	return os.WriteFile(name, b.Bytes(), 0o644)
}

// Read reads a file of texts.
func Read(name string) ([]Text, error) {
	var file texts
	meta, err := toml.DecodeFile(name, &file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if left := meta.Undecoded(); len(left) > 0 {
		return nil, fmt.Errorf("%s: key %q; accepted under [[text]] is english, where, values, translation", name, left[0])
	}
	return file.Text, nil
}

// Texts are the texts of the program, each once, in the order in which they
// stand in its files.
func (p *Program) Texts() []Text {
	at := map[string]int{}
	var all []Text
	for _, u := range p.uses {
		i, known := at[u.english]
		if !known {
			i = len(all)
			at[u.english] = i
			all = append(all, Text{English: u.english, Values: values(u.english)})
		}
		if t := &all[i]; !slices.Contains(t.Where, u.where) {
			t.Where = append(t.Where, u.where)
		}
	}
	return all
}

// Update is a file of texts brought up to date: what it translates stays, texts
// that are new are added without a translation, and gone are the translations
// of those that the program no longer has.
func (p *Program) Update(old []Text) (updated, gone []Text) {
	by := map[string][]Text{}
	for _, t := range old {
		by[t.English] = append(by[t.English], t)
	}
	for _, t := range p.Texts() {
		kept := by[t.English]
		delete(by, t.English)
		if len(kept) == 1 {
			t.Translation = kept[0].Translation
		}
		if len(kept) < 2 {
			updated = append(updated, t)
			continue
		}
		for _, k := range kept {
			k.Values = t.Values
			updated = append(updated, k)
		}
	}
	for _, t := range old {
		if _, left := by[t.English]; left && t.Translation != "" {
			gone = append(gone, t)
		}
	}
	return updated, gone
}

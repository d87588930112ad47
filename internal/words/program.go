package words

import "fmt"

// Program is the source of the program, with its texts.
type Program struct {
	Root string // of its repository

	files []*source
	uses  []*use // for people, by file
	all   []*use // contracts among them
}

// Load reads the program in whose repository dir lies.
func Load(dir string) (*Program, error) {
	root, files, err := load(dir)
	if err != nil {
		return nil, fmt.Errorf("the source cannot be read from %s; run this in the repository: %w", dir, err)
	}
	p := &Program{Root: root, files: files}
	for _, f := range p.files {
		p.all = append(p.all, f.uses()...)
	}
	for _, u := range p.all {
		if !u.contract() {
			p.uses = append(p.uses, u)
		}
	}
	return p, nil
}

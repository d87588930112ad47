package words

import (
	"fmt"
	"os/exec"
	"strings"
)

// Program is the source of the program, with its texts.
type Program struct {
	Root string // of its repository

	files []*source
	uses  []*use // for people, by file
	all   []*use // contracts among them
}

// Load reads the program in whose repository dir lies.
func Load(dir string) (*Program, error) {
	c := exec.Command("go", "list", "-m", "-f", "{{.Dir}}")
	c.Dir = dir
	root, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("no Go module at %s (go list -m: %w); run this in the repository", dir, err)
	}
	p := &Program{Root: strings.TrimSpace(string(root))}
	if p.files, err = load(p.Root); err != nil {
		return nil, err
	}
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

package tui

// resume opens the session at path; where that is damaged it asks first, and
// nothing is opened where nothing is chosen.
func (p *plain) resume(path string) openedMsg {
	m := Model{opts: p.opts}
	opened := m.resume(path)().(openedMsg)
	if d := opened.damaged; d != nil {
		if !p.mend(d) {
			return openedMsg{}
		}
		return m.goOn(path)().(openedMsg)
	}
	return opened
}

// mend offers the last good copy of a damaged file, and says whether the file can
// be gone on with.
func (p *plain) mend(d *damaged) bool {
	for _, l := range d.says() {
		p.say("%s", l)
	}
	for {
		words := "Type take for the last good copy; the damaged file is kept beside it, under another name. Or type back."
		if d.mayGoOn() {
			words += " Or file, to go on with the file as it is."
		}
		p.say("%s", words)
		line, ok := p.read()
		switch {
		case !ok || line == "" || line == "back":
			return false
		case line == "file" && d.mayGoOn():
			return true
		case line == "take":
			s := damagedScreen{damaged: *d}
			s.takenOver(d.take(p.opts.Store)().(takenOverMsg))
			if s.problem != "" {
				p.say("%s", s.problem)
				return false
			}
			for _, l := range s.saysTaken() {
				p.say("%s", l)
			}
			return true
		default:
			p.say("%q is none of them.", line)
		}
	}
}

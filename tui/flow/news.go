package flow

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// A novelty is something that is new since an earlier session, and what it makes
// stale of what was laid on, told or read off a label then. Heights are always
// read anew, whatever is new.
type novelty struct {
	name  string // in the session's notes
	word  string // for people
	why   string
	stale []string    // keys of the session file
	tied  []fit.Piece // that are no longer those that were tied then
}

// climberNews and kitNews are what may be new. What goes stale is geometry: which
// of the ends of a length has moved.
var (
	climberNews = []novelty{
		{name: "boots", word: "boots", why: "shin, foot loop and waist end at the boot's sole",
			stale: []string{"climber.shin_mm", "climber.waist_mm", "kit.foot_loop.length_mm"}},
		{name: "weight", word: "weight", why: "the mass sets the peak force, and the waist sits otherwise",
			stale: []string{"climber.mass_kg", "climber.waist_mm"}},
		{name: "grown", word: "grown", why: "every part of the body has another length",
			stale: []string{"climber.stature_mm", "climber.inseam_mm", "climber.thigh_mm", "climber.shin_mm", "climber.waist_mm"}},
	}
	kitNews = []novelty{
		{name: "saddle", word: "saddle", why: "the bridges hang on its rings",
			stale: []string{"kit.main_bridge.length_mm", "kit.main_bridge.rings_mm", "kit.backup_bridge.length_mm", "kit.backup_bridge.rings_mm", "kit.backup_bridge.own_rings"},
			tied:  []fit.Piece{fit.PieceMainBridge, fit.PieceBackupBridge}},
		{name: "main bridge", word: "main bridge", why: "it has another length", stale: []string{"kit.main_bridge.length_mm"}, tied: []fit.Piece{fit.PieceMainBridge}},
		{name: "backup bridge", word: "backup bridge", why: "it has another length", stale: []string{"kit.backup_bridge.length_mm"}, tied: []fit.Piece{fit.PieceBackupBridge}},
		{name: "rope", word: "rope", why: "it has another label, and the hitches take other turns on it",
			stale: []string{"rope.diameter_mm", "rope.elongation_percent", "kit.hitch_left.wraps", "kit.hitch_right.wraps"}},
		{name: "hitch cord", word: "hitch cord", why: "it has another label; the loops show in the heights",
			stale: []string{"kit.hitch_left.cord_mm", "kit.hitch_left.wraps", "kit.hitch_left.strength_kn", "kit.hitch_right.cord_mm", "kit.hitch_right.wraps", "kit.hitch_right.strength_kn"},
			tied:  []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight}},
		{name: "foot loop", word: "foot loop", why: "it has another length", stale: []string{"kit.foot_loop.length_mm"}, tied: []fit.Piece{fit.PieceFootLoop}},
		{name: "tether", word: "tether", why: "it has another length and label, and is tied to the Garda hitch anew",
			stale: []string{"kit.tether.length_mm", "kit.tether.cord_mm", "kit.tether.strands", "kit.tether.strength_kn", "kit.garda.to_tether_mm"},
			tied:  []fit.Piece{fit.PieceTether}},
		{name: "connectors", word: "connectors", why: "the Garda hitch is made of two of them", stale: []string{"kit.garda.inside_width_mm", "kit.garda.to_tether_mm"}},
	}
)

func allNews() []novelty { return append(slices.Clone(climberNews), kitNews...) }

// news asks what is new since the session that this one follows, and whether to
// keep the lengths that nothing has made stale.
func news() Step {
	s := Step{ID: "new", Title: "What is new", Asks: []Ask{
		newOf("new.climber", "What of the climber is new?", climberNews),
		newOf("new.kit", "What of the kit is new?", kitNews),
		{Key: "new.keep", Kind: Choice, Title: "Keep the lengths that are not stale?", Topic: "origin",
			How: "Each is marked as kept, with the day on which it was taken. Heights, the mass and how far the rope hangs ahead are always asked for anew.",
			Options: func(d *Draft) []Option {
				n := len(d.keepable())
				if n == 0 {
					return []Option{{Word: "nothing is left to keep: go on"}}
				}
				return []Option{{Word: fmt.Sprintf("keep all %d", n), set: (*Draft).keepAll}, {Word: "no: ask for each of them"}}
			},
			Mark:  func(d *Draft) int { return min(1, len(d.keepable())) },
			Tells: (*Draft).tellNews},
	}}
	for i := range s.Asks {
		s.Asks[i].When = (*Draft).reTuning
	}
	return s
}

// newOf asks for several of list, one after the other; the last answer is that
// there is nothing more.
func newOf(key, title string, list []novelty) Ask {
	return Ask{Key: key, Kind: Choice, Title: title, Topic: "re-tune",
		How: "Each of them; picked again it is taken back.",
		Options: func(d *Draft) []Option {
			out := []Option{{Word: "nothing more"}}
			for _, n := range list {
				word := n.word
				if slices.Contains(d.newThings(), n.name) {
					word += " (new)"
				}
				out = append(out, Option{Word: word, Act: Stay, set: func(d *Draft) { d.turn(n) }})
			}
			return out
		},
		Mark: func(*Draft) int { return 0 }}
}

// newSince starts the sentence in the session's notes that tells what is new, so
// that it is there when the session is resumed, and for whoever reads the file.
const newSince = "New since "

// newThings are the names of what was said to be new.
func (d *Draft) newThings() []string {
	said := remark(d.Session.Notes, newSince)
	_, list, ok := strings.Cut(said, ": ")
	if !ok {
		return nil
	}
	return strings.Split(list, ", ")
}

// newsTold says whether somebody has answered a, one of the questions for what is
// new: as far as the file tells.
func (d *Draft) newsTold(a Ask) bool {
	of := map[string][]novelty{"new.climber": climberNews, "new.kit": kitNews}[a.Key]
	for _, n := range of {
		if slices.Contains(d.newThings(), n.name) {
			return true
		}
	}
	if a.Key == "new.keep" {
		for r := range fit.NumReadings {
			key := fit.LaidKey(r)
			if slices.ContainsFunc(d.Session.Fit.Kept, func(k fit.Kept) bool { return k.Key == key }) {
				return true
			}
		}
	}
	return false
}

// turn says that n is new, or takes it back. What its labels said is not known
// any more then.
func (d *Draft) turn(n novelty) {
	things := d.newThings()
	if i := slices.Index(things, n.name); i >= 0 {
		things = slices.Delete(things, i, i+1)
	} else {
		things = append(things, n.name)
	}
	said := ""
	if len(things) > 0 {
		said = newSince + d.Followed.Started.Format(time.DateOnly) + ": " + strings.Join(things, ", ")
	}
	d.Session.Notes = remarked(d.Session.Notes, newSince, said)
	for _, step := range Steps() {
		for _, a := range step.Asks {
			if a.cell == nil || a.Kind == Choice || !slices.Contains(n.stale, a.Key) {
				continue
			}
			d.unkeep(a.Key)
			switch c := a.cell(d).(type) {
			case *[]float64:
				*c = nil
			case *fit.Number:
				*c = fit.Number{}
				if d.stale()[a.Key] == "" { // taken back
					from := Draft{Session: *d.Followed}
					if *c = *a.cell(&from).(*fit.Number); c.Known && fit.CanKeep(a.Key) {
						d.Session.Fit.Kept = append(d.Session.Fit.Kept, keptFrom(d.Followed, a.Key))
					}
				}
			}
		}
	}
	for _, p := range n.tied {
		was := &sessions.Session{}
		if !slices.Contains(things, n.name) { // taken back
			was = d.Followed
		}
		d.Session.Tied[p], d.Session.Fit.Kit.Pieces[p].Cord = was.Tied[p], was.Fit.Kit.Pieces[p].Cord
	}
}

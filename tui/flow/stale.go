package flow

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// stale is why each key is stale, by the key.
func (d *Draft) stale() map[string]string {
	out := map[string]string{}
	if !d.reTuning() {
		return out
	}
	things := d.newThings()
	for _, n := range allNews() {
		if slices.Contains(things, n.name) {
			for _, key := range n.stale {
				out[key] = n.word
			}
		}
	}
	f := &d.Followed.Fit
	for _, s := range f.Stale(len(f.Hangs)) {
		if !s.Reading.IsHeight() {
			out[fit.LaidKey(s.Reading)] = "set after it was read, and not laid on since"
		}
	}
	return out
}

// keepable are the laid lengths that the earlier session has, that nothing has
// made stale, and that were not read today.
func (d *Draft) keepable() []fit.Reading {
	var out []fit.Reading
	if !d.reTuning() {
		return nil
	}
	stale := d.stale()
	for r := range fit.NumReadings {
		key := fit.LaidKey(r)
		if !r.IsHeight() && fit.CanKeep(key) && len(laidNow(d.Followed, r)) > 0 && len(d.Session.Fit.Laid[r]) == 0 && stale[key] == "" {
			out = append(out, r)
		}
	}
	return out
}

// keepAll takes over all that can be kept.
func (d *Draft) keepAll() {
	for _, r := range d.keepable() {
		d.keep(r)
	}
}

// tellNews says what is stale and why, and what can be kept.
func (d *Draft) tellNews() []string {
	var out []string
	things := d.newThings()
	for _, n := range allNews() {
		if slices.Contains(things, n.name) {
			out = append(out, fmt.Sprintf("New: %s; %s. Stale: %s.", n.word, n.why, names(n.stale)))
		}
	}
	stale := d.stale()
	for _, key := range slices.Sorted(maps.Keys(stale)) {
		if !slices.Contains(things, stale[key]) {
			out = append(out, fmt.Sprintf("Stale: %s, %s.", rules.InputName(key), stale[key]))
		}
	}
	var keys []string
	for _, r := range d.keepable() {
		keys = append(keys, fit.LaidKey(r))
	}
	if len(keys) > 0 {
		out = append(out, fmt.Sprintf("Can be kept from %s: %s.", d.Followed.Started.Format(time.DateOnly), names(keys)))
	}
	if old := d.oldBody(); len(old) > 0 {
		out = append(out, fmt.Sprintf("Kept from so long ago these count as estimates, and no must passes on them: %s. Better read anew.", names(old)))
	}
	return out
}

// oldBody are the keepable lengths of the body that are too old to count as read.
func (d *Draft) oldBody() []string {
	days := d.Session.Fit.RecheckDays
	if days == 0 {
		days = sessions.DefaultSchool().RecheckDays
	}
	var out []string
	for _, r := range d.keepable() {
		key := fit.LaidKey(r)
		if r.Info().Table == "climber" && keptFrom(d.Followed, key).Taken.Before(d.Session.Started.AddDate(0, 0, -days)) {
			out = append(out, key)
		}
	}
	return out
}

func names(keys []string) string {
	var out []string
	for _, k := range keys {
		out = append(out, rules.InputName(k))
	}
	return strings.Join(out, "; ")
}

// laidNow are the readings of the length r as it was at the end of s: laid on
// again where it was changed; none where it was changed and not laid on since.
func laidNow(s *sessions.Session, r fit.Reading) []float64 {
	list := s.Fit.Laid[r]
	for _, c := range s.Fit.Changes {
		if p, ok := pieceReading[c.Piece]; ok && p == r {
			list = c.Measured
		}
	}
	return slices.Clone(list)
}

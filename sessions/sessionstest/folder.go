// Package sessionstest makes up folders of sessions for tests and benchmarks.
// Everybody and everything in them is invented.
package sessionstest

import (
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"github.com/oklog/ulid/v2"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
)

// Write fills dir, which is made, with n sessions, no two alike: full-size, every
// reading taken two to four times, most of them signed, one in forty not as it
// comes out today, over five years up to 2026-06. It returns their paths. The same
// n makes the same files.
func Write(dir string, n int) ([]string, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, fmt.Errorf("no folder: %w", err)
	}
	base, err := sessions.Decode("demo", demo.Files()[0].Data)
	if err != nil {
		return nil, err
	}
	d := &dice{rand.New(rand.NewPCG(1, 2))} //nolint:gosec // made-up sessions are no secret
	paths := make([]string, n)
	for i := range paths {
		s := d.session(base.Clone(), i, n)
		paths[i] = filepath.Join(dir, s.ID+sessions.Ending)
		if err := os.WriteFile(paths[i], sessions.Encode(s), 0o600); err != nil {
			return nil, fmt.Errorf("not written: %w", err)
		}
	}
	return paths, nil
}

// dice throw what makes up a session.
type dice struct{ *rand.Rand }

// session is the i-th of n: the demo's climber with other lengths, a kit of its
// own and everything else that a session may hold.
func (d *dice) session(s *sessions.Session, i, n int) *sessions.Session {
	who := d.IntN(n/6 + 1)
	started := time.Date(2021, 6, 1, 8, 0, 0, 0, time.UTC).Add(time.Duration(float64(i) / float64(n) * 5 * 365 * 24 * float64(time.Hour))).Truncate(time.Second)
	s.ID = d.id(started)
	s.Purpose = []sessions.Purpose{sessions.FirstFitting, sessions.ReTune, sessions.ReCheck}[d.IntN(3)]
	s.Started, s.Finished = started, started.Add(40*time.Minute)
	s.Climber, s.Place, s.Instructor = Climber(who), place(d.IntN(40)), fmt.Sprintf("made-up instructor %d", d.IntN(12))
	s.KitLabel = fmt.Sprintf("school kit %d", 1+d.IntN(60))
	s.Notes = fmt.Sprintf("made up, number %d; wind from the west, bark dry, second person on the ground throughout", i)
	s.InspectedBy, s.Inspected = s.Instructor, day(started.AddDate(0, 0, -d.IntN(20)))

	d.readings(&s.Fit)
	for p := range fit.NumPieces {
		s.Tied[p] = sessions.Tied{On: day(started.AddDate(0, 0, -d.IntN(700))), By: s.Climber}
	}
	s.Drill = d.drill(started.Add(30 * time.Minute))
	switch i % 20 {
	case 3:
		s.Finished = time.Time{}
	case 13: // finished and not signed
	default:
		sign(s, i%40 == 7)
	}
	return s
}

// readings moves body and kit, and takes every reading several times.
func (d *dice) readings(f *fit.Fitting) {
	size := 1 + 0.04*d.NormFloat64()
	for r := range fit.NumReadings {
		if by := d.spread(r); len(f.Laid[r]) > 0 {
			f.Laid[r] = d.taken(f.Laid[r][0]*d.scale(r, size), by)
		}
	}
	hip := f.Hangs[0].Heights[fit.Hip][0]
	for r, list := range f.Hangs[0].Heights {
		if len(list) > 0 {
			f.Hangs[0].Heights[r] = d.taken(hip+(list[0]-hip)*d.scale(fit.Reading(r), size), d.spread(fit.Reading(r)))
		}
	}
	f.Mass = fit.Some(math.Round(84*size*size*10) / 10)
	if d.IntN(4) > 0 {
		return
	}
	f.Changes = []fit.Change{{Piece: fit.PieceMainBridge, From: fit.Some(f.Laid[fit.MainBridge][0]), To: f.Laid[fit.MainBridge][0] + float64(d.IntN(40)), AfterHang: 1}}
	f.Changes[0].Measured = d.taken(f.Changes[0].To, 1)
}

// scale is how much longer a reading is: bodies by their size, hardware little.
func (d *dice) scale(r fit.Reading, size float64) float64 {
	if r.Info().Spread == fit.Body {
		return size
	}
	return 1 + 0.01*d.NormFloat64()
}

// spread is how far repeats of a reading lie from each other, in mm, as a standard
// deviation.
func (d *dice) spread(r fit.Reading) float64 {
	if r.Info().Spread == fit.Hardware {
		return 1
	}
	return 4
}

// taken is a reading of v, taken two to four times.
func (d *dice) taken(v, by float64) []float64 {
	list := make([]float64, 2+d.IntN(3))
	for i := range list {
		list[i] = math.Round(v + by*d.NormFloat64())
	}
	return list
}

// drill is a ground drill that went well.
func (d *dice) drill(at time.Time) *sessions.Drill {
	drill := &sessions.Drill{Done: at, Sag: fit.Some(float64(150 + d.IntN(100))), Note: "everybody watched"}
	for _, name := range []string{"load-low", "ease-left", "ease-right", "ease-both", "stand-up"} {
		drill.Steps = append(drill.Steps, sessions.DrillStep{
			Name: name, Held: fit.Yes, Drop: fit.Some(float64(10 + d.IntN(30))), Garda: fit.Some(float64(480 + d.IntN(60))),
			KneeFree: fit.Yes, HandsReach: fit.Yes, CameBackUp: fit.Yes,
		})
	}
	return drill
}

// sign signs what is judged today, or else as if it was judged otherwise then.
func sign(s *sessions.Session, otherwise bool) {
	r, err := s.Bare()
	if err != nil {
		return
	}
	s.Sign(s.Instructor, "release room watched during the drill", s.Finished, r)
	if otherwise {
		s.SignOff.Checks[0].Margin += 30
	}
}

// id is the id of a session that started then.
func (d *dice) id(at time.Time) string {
	u := ulid.ULID{}
	if err := u.SetTime(ulid.Timestamp(at)); err != nil {
		panic("sessionstest: a time without an id")
	}
	binary.BigEndian.PutUint64(u[8:], d.Uint64())
	return u.String()
}

// Climber is the name of a made-up climber.
func Climber(i int) string {
	first := []string{"Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel", "Larch", "Maple", "Oak", "Pine", "Rowan", "Yew"}
	return fmt.Sprintf("%s Made-Up %d", first[i%len(first)], i)
}

func place(i int) string {
	return fmt.Sprintf("%s by the %s", []string{"old beech", "lime", "red oak", "plane tree", "ash"}[i%5],
		[]string{"barn", "brook", "wall", "chapel", "mill", "lane", "pond", "gate"}[i/5])
}

func day(t time.Time) time.Time { return t.Truncate(24 * time.Hour) }

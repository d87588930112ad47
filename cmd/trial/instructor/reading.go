package instructor

import (
	"time"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// ReadAll takes every reading but the inseam: on the ground, then in one hang.
func (s *Session) ReadAll() {
	var all []fit.Reading
	for r := range fit.NumReadings {
		if r != fit.Inseam {
			all = append(all, r)
		}
	}
	s.ReadLaid(all)
	s.HangAndRead(all)
}

// ReadLaid takes those of the readings that are laid lengths, replacing what was
// written down.
func (s *Session) ReadLaid(readings []fit.Reading) {
	for _, r := range readings {
		if !r.IsHeight() {
			s.Read(r)
		}
	}
}

// HangAndRead hangs the climber anew and takes those of the readings that are
// heights. The Garda hitch and the knee of one pose are read in the same breath.
func (s *Session) HangAndRead(readings []fit.Reading) {
	s.hangUp()
	for _, r := range readings {
		if r.IsHeight() {
			s.Read(r)
		}
	}
}

func (s *Session) hangUp() {
	s.Fit.Hangs = append(s.Fit.Hangs, fit.Hang{})
	s.zero = 200 + float64(s.dice.IntN(1200))
	s.level = nil
}

// Read takes one reading afresh, as often as the plan says: a laid length, or a
// height in the latest hang (the first one where there is none). What was written
// down of it there is replaced.
func (s *Session) Read(r fit.Reading) {
	times := s.Plan.times(r)
	if !r.IsHeight() {
		s.Fit.Laid[r] = s.take(r, times, 0)
		return
	}
	if len(s.Fit.Hangs) == 0 {
		s.hangUp()
	}
	s.Fit.Hangs[len(s.Fit.Hangs)-1].Heights[r] = s.take(r, times, s.zero)
	s.Hanging += time.Duration(times) * secondsPerNumber * time.Second
	if r.Info().Pose != fit.Seated {
		s.Hanging += secondsPerPose * time.Second
	}
}

// take reads r so many times off a tape with its zero there.
func (s *Session) take(r fit.Reading, times int, zero float64) []float64 {
	hang := s.world.Hang(s.Kit)
	numbers := make([]float64, times)
	for i := range numbers {
		at := hang.Where(marks[r], s.wobble(r, i))
		numbers[i] = s.tape.read(s.dice, r, zero+at)
		if s.dice.Chance(s.Plan.Blunders) {
			numbers[i] = blunder(s.dice, numbers[i])
			s.Blunders++
		}
	}
	s.Numbers += times
	return numbers
}

// wobble is how the pose is held the i-th time that r is read. The Garda hitch
// and the knee at level share it, time by time.
func (s *Session) wobble(r fit.Reading, i int) truth.Wobble {
	if r != fit.GardaLevel && r != fit.KneeLevel {
		return s.world.Wobble(s.dice)
	}
	for len(s.level) <= i {
		s.level = append(s.level, s.world.Wobble(s.dice))
	}
	return s.level[i]
}

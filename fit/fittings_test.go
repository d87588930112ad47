package fit_test

import (
	"slices"

	"example.com/hangtape/fit"
)

// readings are lists by reading, for a fitting of one hang.
type readings map[fit.Reading][]float64

// fitting is one with the readings given and nothing told beside a tape of
// class II with a hook.
func fitting(rs readings) *fit.Fitting {
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1, Hook: true}, Hangs: make([]fit.Hang, 1)}
	for r, list := range rs {
		if r.IsHeight() {
			f.Hangs[0].Heights[r] = list
		} else {
			f.Laid[r] = list
		}
	}
	return f
}

// everyLength is an invented fitting with all that the poses need.
func everyLength() readings {
	return readings{
		fit.Thigh: {440}, fit.Shin: {530}, fit.Ahead: {160}, fit.Hip: {1500}, fit.BackupRings: {1510},
		fit.ConnectorTop: {2170}, fit.ConnectorBottom: {2060}, fit.LeftLoopTop: {2500}, fit.RightLoopTop: {2490},
		fit.LeftHitchTop: {2600}, fit.RightHitchTop: {2580}, fit.MainRings: {1530},
		fit.MainBridge: {1000}, fit.MainBridgeRings: {600}, fit.BackupBridge: {500}, fit.BackupBridgeRings: {300},
		fit.Tether: {150}, fit.GardaToTether: {110}, fit.FootLoop: {1040},
	}
}

// everyReading is everyLength with the rest of what can be read.
func everyReading() readings {
	rs := everyLength()
	for r, v := range map[fit.Reading]float64{
		fit.Stature: 1765, fit.Inseam: 845, fit.Waist: 1110, fit.Nose: 2218, fit.WristUp: 2640, fit.WristDown: 1412,
		fit.Soles: 762, fit.Ground: 260, fit.GardaLevel: 1966, fit.KneeLevel: 1504, fit.GardaTaut: 1976,
	} {
		rs[r] = []float64{v}
	}
	for r := range fit.NumReadings {
		if rs[r] == nil { // one that nothing rests on yet
			rs[r] = []float64{1700}
		}
	}
	return rs
}

// stateOf is what follows from f at the values of its inputs.
func stateOf(f *fit.Fitting) (*fit.Model, *fit.State) {
	m, s := fit.NewModel(f, fit.Options{}), new(fit.State)
	m.At(m.Values(), s)
	return m, s
}

// input is the input of m with the key.
func input(m *fit.Model, key string) fit.Input {
	i := slices.IndexFunc(m.Inputs, func(in fit.Input) bool { return in.Key == key })
	if i < 0 {
		return fit.Input{}
	}
	return m.Inputs[i]
}

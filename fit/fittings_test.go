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

package fit_test

import (
	"slices"
	"testing"

	"example.com/hangtape/fit"
)

// In the side view of nobody body and kit have their places, from the ground up,
// so that where a reading is taken can be shown before anything was read.
func TestUsualShape(t *testing.T) {
	sh := fit.UsualShape(fit.Seated)
	up := []fit.Landmark{fit.MarkGround, fit.MarkSole, fit.MarkKnee, fit.MarkHip, fit.MarkConnectorBottom, fit.MarkConnectorTop, fit.MarkLeftHitch}
	for i, l := range up[1:] {
		if !(sh.At[l].Y > sh.At[up[i]].Y) {
			t.Errorf("landmark %d is at %g, not above %d at %g", l, sh.At[l].Y, up[i], sh.At[up[i]].Y)
		}
	}
	near(t, "connector", apart(sh, fit.MarkConnectorTop, fit.MarkConnectorBottom), 110, 1e-9)
	near(t, "thigh", apart(sh, fit.MarkHip, fit.MarkKnee), 410, 1e-9)
	near(t, "shin", apart(sh, fit.MarkKnee, fit.MarkSole), 520, 1e-9)
	near(t, "stand", fit.UsualShape(fit.Standing).At[fit.MarkHip].Y, 350, 1e-9)
}

func TestUsualCords(t *testing.T) {
	bridge, loop, other := []float64{8, 10, 12}, []float64{6, 8, 10}, []float64{8, 10}
	for p, want := range map[fit.Piece][]float64{
		fit.PieceMainBridge: bridge, fit.PieceBackupBridge: bridge, fit.PieceFootLoop: loop,
		fit.PieceHitchLeft: other, fit.PieceHitchRight: other, fit.PieceTether: other,
	} {
		if got := fit.UsualCords(p); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", p.Key(), got, want)
		}
	}
}

// What a session tells of a piece goes into the cord to cut for it; the rest is
// as usual.
func TestCordForAPieceOfAKit(t *testing.T) {
	f := fitting(nil)
	f.Rope.Diameter = fit.Some(11.4)
	f.Kit.Pieces[fit.PieceTether] = fit.PieceInfo{Cord: fit.Some(8), Strands: fit.Some(1), Wraps: fit.Some(5)}
	f.Kit.Pieces[fit.PieceHitchLeft] = fit.PieceInfo{Cord: fit.Some(7), Wraps: fit.Some(5)}
	tether := fit.StandardCord(fit.CordTether).WithStrands(1)
	tether.Finished, tether.Diameter = 180, 8
	left, right := fit.StandardCord(fit.CordHitch), fit.StandardCord(fit.CordHitch)
	left.Finished, left.Diameter, left.Wraps, left.Host = 180, 7, 5, 11.4
	right.Finished, right.Host = 180, 11.4
	for p, want := range map[fit.Piece]fit.Cord{fit.PieceTether: tether, fit.PieceHitchLeft: left, fit.PieceHitchRight: right} {
		if got := fit.CordFor(f, p, 180); got != want {
			t.Errorf("%s: %+v, want %+v", p.Key(), got, want)
		}
	}
}

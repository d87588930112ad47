package records

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// pieceReadings are the readings of each piece: its length, its rings, and the
// heights that it sets.
var pieceReadings = [fit.NumPieces][]fit.Reading{
	fit.PieceMainBridge:   {fit.MainBridge, fit.MainBridgeRings, fit.MainRings, fit.ConnectorTop, fit.ConnectorBottom},
	fit.PieceHitchLeft:    {fit.LeftLoopTop, fit.LeftHitchTop},
	fit.PieceHitchRight:   {fit.RightLoopTop, fit.RightHitchTop},
	fit.PieceFootLoop:     {fit.FootLoop},
	fit.PieceTether:       {fit.Tether},
	fit.PieceBackupBridge: {fit.BackupBridge, fit.BackupBridgeRings, fit.BackupRings},
}

// pieceChecks are the checks of a piece that rest on its cord and on no reading.
var pieceChecks = [fit.NumPieces][]rules.CheckID{
	fit.PieceHitchLeft:  hitchChecks,
	fit.PieceHitchRight: hitchChecks,
	fit.PieceTether:     {rules.TetherStrength},
}

var hitchChecks = []rules.CheckID{rules.HitchCordGrip, rules.HitchCordBite, rules.HitchWraps, rules.HitchCordStrength}

// decides says whether the check c, decided at that side or end, is about p. A
// check of both hitches is about the one on the side that decided.
func decides(p fit.Piece, c rules.CheckID, at string) bool {
	if p == fit.PieceHitchLeft && at == "right" || p == fit.PieceHitchRight && at == "left" {
		return false
	}
	return slices.Contains(pieceChecks[p], c) ||
		slices.ContainsFunc(pieceReadings[p], func(r fit.Reading) bool { return slices.Contains(c.Info().Readings, r) })
}

package instructor

import (
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// marks ties what the tool calls a reading to the mark in the true world.
var marks = [fit.NumReadings]truth.Mark{
	fit.Stature: truth.MarkStature, fit.Inseam: truth.MarkInseam, fit.Thigh: truth.MarkThigh, fit.Shin: truth.MarkShin, fit.Waist: truth.MarkWaist,
	fit.Hip: truth.MarkHip, fit.Nose: truth.MarkNose, fit.WristUp: truth.MarkWristUp, fit.WristDown: truth.MarkWristDown,
	fit.ConnectorTop: truth.MarkConnectorTop, fit.ConnectorBottom: truth.MarkConnectorBottom,
	fit.LeftLoopTop: truth.MarkLeftLoopTop, fit.LeftHitchTop: truth.MarkLeftHitchTop,
	fit.RightLoopTop: truth.MarkRightLoopTop, fit.RightHitchTop: truth.MarkRightHitchTop,
	fit.MainRings: truth.MarkMainRings, fit.BackupRings: truth.MarkBackupRings, fit.Soles: truth.MarkSoles, fit.Ground: truth.MarkGround,
	fit.GardaLevel: truth.MarkGardaLevel, fit.KneeLevel: truth.MarkKneeLevel, fit.GardaTaut: truth.MarkGardaTaut,
	fit.Ahead: truth.MarkAhead, fit.MainBridge: truth.MarkMainBridge, fit.MainBridgeRings: truth.MarkMainGap,
	fit.GardaToTether: truth.MarkGardaToTether, fit.FootLoop: truth.MarkFootLoop, fit.Tether: truth.MarkTether,
	fit.BackupBridge: truth.MarkBackupBridge, fit.BackupBridgeRings: truth.MarkBackupGap,
}

// pieces ties the tool's pieces to those of the true kit, and laid names the
// reading of each that can be laid on the ground.
var (
	pieces = [fit.NumPieces]truth.Piece{
		fit.PieceMainBridge: truth.MainBridge, fit.PieceHitchLeft: truth.LeftLoop, fit.PieceHitchRight: truth.RightLoop,
		fit.PieceFootLoop: truth.FootLoop, fit.PieceTether: truth.Tether, fit.PieceBackupBridge: truth.BackupBridge,
	}
	laid = map[fit.Piece]fit.Reading{
		fit.PieceMainBridge: fit.MainBridge, fit.PieceFootLoop: fit.FootLoop, fit.PieceTether: fit.Tether, fit.PieceBackupBridge: fit.BackupBridge,
	}
)

// touched are the heights that a change of the piece makes stale.
var touched = [fit.NumPieces][]fit.Reading{
	fit.PieceMainBridge:   {fit.ConnectorTop, fit.ConnectorBottom, fit.LeftLoopTop, fit.LeftHitchTop, fit.RightLoopTop, fit.RightHitchTop},
	fit.PieceHitchLeft:    {fit.ConnectorTop, fit.LeftLoopTop, fit.LeftHitchTop},
	fit.PieceHitchRight:   {fit.ConnectorTop, fit.RightLoopTop, fit.RightHitchTop},
	fit.PieceFootLoop:     {fit.GardaLevel, fit.KneeLevel},
	fit.PieceTether:       {fit.GardaTaut},
	fit.PieceBackupBridge: {fit.GardaTaut},
}

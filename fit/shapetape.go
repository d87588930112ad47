package fit

// Landmarks tells between which landmarks of the side view the tape goes for r:
// twice the same one for a height, and false where the side view does not show
// it (ring to ring, stature, inseam, waist).
func (r Reading) Landmarks() (from, to Landmark, ok bool) {
	span, ok := tapeSpans[r]
	return span[0], span[1], ok
}

var tapeSpans = map[Reading][2]Landmark{
	Hip:             {MarkHip, MarkHip},
	Nose:            {MarkNose, MarkNose},
	WristUp:         {MarkWristUp, MarkWristUp},
	WristDown:       {MarkWristDown, MarkWristDown},
	ConnectorTop:    {MarkConnectorTop, MarkConnectorTop},
	ConnectorBottom: {MarkConnectorBottom, MarkConnectorBottom},
	LeftLoopTop:     {MarkLeftLoop, MarkLeftLoop},
	LeftHitchTop:    {MarkLeftHitch, MarkLeftHitch},
	RightLoopTop:    {MarkRightLoop, MarkRightLoop},
	RightHitchTop:   {MarkRightHitch, MarkRightHitch},
	MainRings:       {MarkMainRings, MarkMainRings},
	BackupRings:     {MarkBackupRings, MarkBackupRings},
	Soles:           {MarkSole, MarkSole},
	Ground:          {MarkGround, MarkGround},
	GardaLevel:      {MarkGardaTop, MarkGardaTop},
	KneeLevel:       {MarkKnee, MarkKnee},
	GardaTaut:       {MarkGardaTop, MarkGardaTop},

	Thigh:         {MarkHip, MarkKnee},
	Shin:          {MarkKnee, MarkSole},
	Ahead:         {MarkHip, MarkRope},
	MainBridge:    {MarkMainRings, MarkConnectorBottom},
	GardaToTether: {MarkGardaTie, MarkGardaTop},
	FootLoop:      {MarkLoopEnd, MarkGardaTop},
	Tether:        {MarkTetherEnd, MarkGardaTie},
	BackupBridge:  {MarkBackupRings, MarkTetherEnd},
}

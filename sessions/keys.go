package sessions

import (
	"slices"
	"sync"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Format is the format of the files that this program writes and reads.
const Format = 1

// Keys lists every key of a session file in the order of the file.
func Keys() []KeyInfo { return sessionSchema.keys() }

// Key is what a session file's key may say, whatever the entry: the path is
// "hangs.1.hip_mm" or "hangs.N.hip_mm" alike. It is false where there is no
// such key.
func Key(path string) (KeyInfo, bool) {
	k, ok := keyInfos()[entryNumber.ReplaceAllString(path, ".N.")]
	return k, ok
}

// keyInfos is gathered once: a wizard asks for each field.
var keyInfos = sync.OnceValue(func() map[string]KeyInfo {
	by := map[string]KeyInfo{}
	for _, k := range Keys() {
		by[k.Path] = k
	}
	return by
})

type sessionField = field[Session]

// sessionSchema is the session file: every table and key, in the order in which
// they are written.
var sessionSchema = schema[Session]{
	{path: "", fields: []sessionField{format[Session]()}},
	{path: "session", fields: []sessionField{
		must(id("id", func(s *Session, _ int) *string { return &s.ID })),
		word("purpose", func(s *Session, _ int) *Purpose { return &s.Purpose }, same(Purposes()...)),
		moment("started", func(s *Session, _ int) *time.Time { return &s.Started }),
		moment("finished", func(s *Session, _ int) *time.Time { return &s.Finished }),
		text("place", func(s *Session, _ int) *string { return &s.Place }),
		text("climber", func(s *Session, _ int) *string { return &s.Climber }),
		text("instructor", func(s *Session, _ int) *string { return &s.Instructor }),
		word("unit", func(s *Session, _ int) *Unit { return &s.Unit }, same(MM, CM, Inch)),
		orEmpty(id("follows", func(s *Session, _ int) *string { return &s.Follows })),
		text("notes", func(s *Session, _ int) *string { return &s.Notes }),
	}},
	{path: "tape", fields: tapeFields(func(s *Session) *fit.Tape { return &s.Fit.Tape }, true)},
	{path: "climber", fields: slices.Concat(
		laid(fit.Stature),
		[]sessionField{
			number("stature_told_mm", func(s *Session, _ int) *fit.Number { return &s.Fit.StatureTold }, stature),
			word("sex", func(s *Session, _ int) *fit.Sex { return &s.Fit.Sex }, []named[fit.Sex]{{"m", fit.Male}, {"f", fit.Female}, {"unsaid", fit.Unsaid}}),
		},
		laid(fit.Inseam),
		[]sessionField{
			number("mass_kg", func(s *Session, _ int) *fit.Number { return &s.Fit.Mass }, between(25, 250)),
			number("mass_u_kg", func(s *Session, _ int) *fit.Number { return &s.Fit.MassU }, between(0, 50)),
		},
		otherLaid("climber", fit.Stature, fit.Inseam),
	)},
	{path: "hangs", fields: append([]sessionField{
		moment("started", func(s *Session, i int) *time.Time { return &s.Fit.Hangs[i].Started }),
		moment("ended", func(s *Session, i int) *time.Time { return &s.Fit.Hangs[i].Ended }),
	}, heights()...),
		many: func(s *Session) int { return len(s.Fit.Hangs) },
		grow: func(s *Session, n int) { s.Fit.Hangs = make([]fit.Hang, n) }},
	{path: "rope", fields: append([]sessionField{
		number("diameter_mm", func(s *Session, _ int) *fit.Number { return &s.Fit.Rope.Diameter }, between(6, 20)),
		number("elongation_percent", func(s *Session, _ int) *fit.Number { return &s.Fit.Rope.Elongation }, between(0.3, 15)),
		number("least_above_mm", func(s *Session, _ int) *fit.Number { return &s.Fit.Rope.LeastAbove }, above(0, mostLength)),
		number("drill_above_mm", func(s *Session, _ int) *fit.Number { return &s.Fit.Rope.DrillAbove }, above(0, mostLength)),
	}, otherLaid("rope")...)},
	{path: "posture", fields: postureFields()},
	{path: "kit", fields: []sessionField{
		text("label", func(s *Session, _ int) *string { return &s.KitLabel }),
		text("inspected_by", func(s *Session, _ int) *string { return &s.InspectedBy }),
		day("inspected", func(s *Session, _ int) *time.Time { return &s.Inspected }),
	}},
	pieceTable(fit.PieceMainBridge, cord),
	pieceTable(fit.PieceHitchLeft, cord, wraps, strength),
	pieceTable(fit.PieceHitchRight, cord, wraps, strength),
	{path: "kit.garda",
		stands: func(s *Session) bool { return s.Fit.Kit.Garda },
		begin:  func(s *Session) { s.Fit.Kit.Garda = true },
		fields: append(otherLaid("kit.garda"),
			number("inside_width_mm", func(s *Session, _ int) *fit.Number { return &s.Fit.Kit.InsideWidth }, between(15, 120)))},
	pieceTable(fit.PieceFootLoop, cord),
	pieceTable(fit.PieceTether, cord, strands, strength),
	pieceTable(fit.PieceBackupBridge, cord, ownRings),
	{path: "limits", fields: limitFields(func(s *Session) *map[rules.Limit]float64 { return &s.Limits })},
	{path: "changes", fields: []sessionField{
		must(word("piece", func(s *Session, i int) *fit.Piece { return &s.Fit.Changes[i].Piece }, pieceWords())),
		number("from_mm", func(s *Session, i int) *fit.Number { return &s.Fit.Changes[i].From }, length),
		must(plainNumber("to_mm", func(s *Session, i int) *float64 { return &s.Fit.Changes[i].To }, length)),
		numbers("measured_mm", func(s *Session, i int) *[]float64 { return &s.Fit.Changes[i].Measured }, length),
		must(whole("after_hang", func(s *Session, i int) *int { return &s.Fit.Changes[i].AfterHang }, 1, mostEntries)),
	},
		many: func(s *Session) int { return len(s.Fit.Changes) },
		grow: func(s *Session, n int) { s.Fit.Changes = make([]fit.Change, n) }},
	{path: "kept", fields: []sessionField{
		must(word("key", func(s *Session, i int) *string { return &s.Fit.Kept[i].Key }, same(KeptKeys()...))),
		orEmpty(id("session", func(s *Session, i int) *string { return &s.Fit.Kept[i].Session })),
		day("taken", func(s *Session, i int) *time.Time { return &s.Fit.Kept[i].Taken }),
	},
		many: func(s *Session) int { return len(s.Fit.Kept) },
		grow: func(s *Session, n int) { s.Fit.Kept = make([]fit.Kept, n) }},
	{path: "drill",
		stands: func(s *Session) bool { return s.Drill != nil },
		begin:  func(s *Session) { s.Drill = &Drill{} },
		fields: []sessionField{
			moment("started", func(s *Session, _ int) *time.Time { return &drillOf(s).Started }),
			moment("done", func(s *Session, _ int) *time.Time { return &drillOf(s).Done }),
			number("sag_mm", func(s *Session, _ int) *fit.Number { return &drillOf(s).Sag }, height),
			text("note", func(s *Session, _ int) *string { return &drillOf(s).Note }),
		}},
	{path: "drill.steps", inline: true,
		many: func(s *Session) int { return len(drillOf(s).Steps) },
		grow: func(s *Session, n int) { s.Drill.Steps = make([]DrillStep, n) },
		fields: []sessionField{
			must(text("name", func(s *Session, i int) *string { return &s.Drill.Steps[i].Name })),
			choice("held", func(s *Session, i int) *fit.Choice { return &s.Drill.Steps[i].Held }),
			number("drop_mm", func(s *Session, i int) *fit.Number { return &s.Drill.Steps[i].Drop }, height),
			number("garda_mm", func(s *Session, i int) *fit.Number { return &s.Drill.Steps[i].Garda }, height),
			choice("knee_free", func(s *Session, i int) *fit.Choice { return &s.Drill.Steps[i].KneeFree }),
			choice("hands_reach", func(s *Session, i int) *fit.Choice { return &s.Drill.Steps[i].HandsReach }),
			choice("came_back_up", func(s *Session, i int) *fit.Choice { return &s.Drill.Steps[i].CameBackUp }),
		}},
	{path: "sign_off",
		stands: func(s *Session) bool { return s.SignOff != nil },
		begin:  func(s *Session) { s.SignOff = &SignOff{} },
		fields: []sessionField{
			text("by", func(s *Session, _ int) *string { return &signOffOf(s).By }),
			moment("at", func(s *Session, _ int) *time.Time { return &signOffOf(s).At }),
			text("note", func(s *Session, _ int) *string { return &signOffOf(s).Note }),
			word("outcome", func(s *Session, _ int) *rules.Verdict { return &signOffOf(s).Outcome }, verdicts),
			text("rules", func(s *Session, _ int) *string { return &signOffOf(s).Rules }),
		}},
	{path: "sign_off.checks", inline: true,
		many: func(s *Session) int { return len(signOffOf(s).Checks) },
		grow: func(s *Session, n int) { s.SignOff.Checks = unknownChecks(n) },
		fields: []sessionField{
			must(text("name", func(s *Session, i int) *string { return &s.SignOff.Checks[i].Name })),
			must(word("verdict", func(s *Session, i int) *rules.Verdict { return &s.SignOff.Checks[i].Verdict }, verdicts)),
			quantity("margin", func(s *Session, i int) *rules.Num { return &s.SignOff.Checks[i].Margin }),
			quantity("guard", func(s *Session, i int) *rules.Num { return &s.SignOff.Checks[i].Guard }),
		}},
}

// schoolSchema is the school file.
var schoolSchema = schema[School]{
	{path: "", fields: []field[School]{
		format[School](),
		text("name", func(s *School, _ int) *string { return &s.Name }),
		text("place", func(s *School, _ int) *string { return &s.Place }),
		texts("instructors", func(s *School, _ int) *[]string { return &s.Instructors }),
		word("unit", func(s *School, _ int) *Unit { return &s.Unit }, same(MM, CM, Inch)),
		whole("recheck_days", func(s *School, _ int) *int { return &s.RecheckDays }, 1, 3650),
		plainNumber("hang_break_min", func(s *School, _ int) *float64 { return &s.HangBreakMin }, between(2, 10)),
		yesNo("require_drill", func(s *School, _ int) *bool { return &s.RequireDrill }),
	}},
	{path: "tape", fields: tapeFields(func(s *School) *fit.Tape { return &s.Tape }, false)},
	{path: "limits", fields: limitFields(func(s *School) *map[rules.Limit]float64 { return &s.Limits })},
}

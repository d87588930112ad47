package main

import (
	"math"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
)

// drillJSON is a drill for programs. Lengths are mm, forces kN, masses kg.
type drillJSON struct {
	Format     int             `json:"format"`
	ID         string          `json:"id"`
	Verdict    rules.Verdict   `json:"verdict"` // pass: it may be done
	Refused    []refusalJSON   `json:"refused"`
	Room       expectedJSON    `json:"room"`
	HangAt     rules.Num       `json:"hang_at"`
	HangHigher rules.Num       `json:"hang_higher"`
	Before     []string        `json:"before"`
	Steps      []drillStepJSON `json:"steps"`
	Paths      pathsJSON       `json:"paths"`
	Force      *forceJSON      `json:"force"` // null where it is not known
	Rehearsal  rehearsalJSON   `json:"rehearsal"`
	Seen       *drillSeenJSON  `json:"seen"` // null where no drill was done
	Cautions   []string        `json:"cautions"`
}

type refusalJSON struct {
	Verdict rules.Verdict `json:"verdict"`
	Text    string        `json:"text"`
}

type expectedJSON struct {
	Name  string    `json:"name"`
	What  string    `json:"what"`
	Value rules.Num `json:"value"`
	U     rules.Num `json:"u"`
	Unit  string    `json:"unit"`
}

type drillStepJSON struct {
	Name   string         `json:"name"`
	Title  string         `json:"title"`
	Slack  string         `json:"slack"` // what goes first where a hitch is eased
	Do     string         `json:"do"`
	See    []string       `json:"see"`
	Expect []expectedJSON `json:"expect"`
	Stop   string         `json:"stop"`
	Then   string         `json:"then"`
}

type pathsJSON struct {
	Chains [][]string `json:"chains"`
	Ways   *int       `json:"ways"` // null where it is not known
	Shared []string   `json:"shared"`
}

type forceJSON struct {
	PeakForce   rules.Num            `json:"peak_force"`   // the limit
	SaddleForce rules.Num            `json:"saddle_force"` // the limit
	Drops       map[string]rules.Num `json:"drops"`
	Points      []forcePointJSON     `json:"points"`
	Stay        []stayJSON           `json:"stay"`
	LeftOut     string               `json:"left_out"`
}

type forcePointJSON struct {
	Above rules.Num            `json:"above"`
	Peak  map[string]rules.Num `json:"peak"`
}

type stayJSON struct {
	Mass   rules.Num `json:"mass"`
	Peak   rules.Num `json:"peak_force"`   // least rope above
	Saddle rules.Num `json:"saddle_force"` // least rope above
}

type rehearsalJSON struct {
	Moves  []moveJSON   `json:"moves"`
	Net    expectedJSON `json:"net"`
	Height rules.Num    `json:"height"` // null where none was asked for, and so the rest
	Count  rules.Num    `json:"count"`
	Least  rules.Num    `json:"least"`
	Most   rules.Num    `json:"most"`
}

type moveJSON struct {
	Do     string         `json:"do"`
	Expect []expectedJSON `json:"expect"`
}

type drillSeenJSON struct {
	Verdict  rules.Verdict   `json:"verdict"`
	Findings []rules.Finding `json:"findings"`
	NotSeen  []string        `json:"not_seen"`
	Stale    bool            `json:"stale"`   // the kit was changed since
	Modulus  *modulusJSON    `json:"modulus"` // null where no sag was seen
}

type modulusJSON struct {
	Label     rules.Num `json:"label"`
	LabelU    rules.Num `json:"label_u"`
	Sag       rules.Num `json:"sag"`
	SagU      rules.Num `json:"sag_u"`
	Both      rules.Num `json:"both"`
	BothU     rules.Num `json:"both_u"`
	Disagrees bool      `json:"disagrees"`
}

func (a drillAnswer) json(id string) drillJSON {
	const unit = "mm"
	p := a.plan
	out := drillJSON{
		Format: 1, ID: id, Verdict: p.Verdict(), Refused: []refusalJSON{},
		Room: expectedOf(p.Room()), HangAt: tenth(p.HangAt), HangHigher: tenth(p.HangHigher),
		Before: drill.Cautions(), Paths: pathsOf(p.Paths), Force: forceOf(p.Force), Rehearsal: a.rehearsal(),
		Cautions: append([]string{rules.ShortCaution}, rules.VerdictCautions()...),
	}
	for _, r := range p.Refused {
		out.Refused = append(out.Refused, refusalJSON{r.Verdict, r.In(unit)})
	}
	for _, s := range p.Steps {
		step := drillStepJSON{Name: s.Name, Title: s.Title, Do: s.Do.In(unit), Expect: allExpected(s.Expect), Stop: s.Stop.In(unit), Then: s.Then.In(unit)}
		if s.Eases {
			step.Slack = drill.TakeUpSlack().In(unit)
		}
		for _, see := range s.See {
			step.See = append(step.See, see.In(unit))
		}
		out.Steps = append(out.Steps, step)
	}
	if r := a.review; r != nil {
		out.Seen = &drillSeenJSON{Verdict: r.Verdict, Findings: r.Findings, NotSeen: append([]string{}, r.NotSeen...), Stale: r.Stale}
		if m := r.Modulus; m != nil {
			out.Seen.Modulus = &modulusJSON{
				Label: thousandth(m.Label), LabelU: thousandth(m.LabelU),
				Sag: thousandth(m.Sag), SagU: thousandth(m.SagU),
				Both: thousandth(m.Both), BothU: thousandth(m.BothU),
				Disagrees: m.Disagrees,
			}
		}
	}
	return out
}

func (a drillAnswer) rehearsal() rehearsalJSON {
	nan := rules.Num(math.NaN())
	r := rehearsalJSON{Net: expectedOf(a.plan.Rehearsal.Net), Height: nan, Count: nan, Least: nan, Most: nan}
	for _, m := range a.plan.Rehearsal.Moves {
		r.Moves = append(r.Moves, moveJSON{m.Do, allExpected(m.Expect)})
	}
	if a.height > 0 {
		count, least, most := a.plan.Rehearsal.MovesFor(a.height)
		r.Height, r.Count, r.Least, r.Most = tenth(a.height), unlessZero(float64(count)), unlessZero(float64(least)), unlessZero(float64(most))
	}
	return r
}

func expectedOf(e drill.Expectation) expectedJSON {
	return expectedJSON{e.Name(), e.What(), tenth(e.Value), tenth(e.U), e.Unit()}
}

func allExpected(list []drill.Expectation) []expectedJSON {
	out := []expectedJSON{}
	for _, e := range list {
		out = append(out, expectedOf(e))
	}
	return out
}

func pathsOf(p drill.Paths) pathsJSON {
	out := pathsJSON{Chains: append([][]string{}, p.Chains...), Shared: append([]string{}, p.Shared...)}
	if p.Known {
		out.Ways = &p.Ways
	}
	return out
}

func forceOf(f drill.Force) *forceJSON {
	if math.IsNaN(f.Points[0].Peak[drill.BothLow]) {
		return nil
	}
	out := &forceJSON{PeakForce: rules.Num(f.Limits[0]), SaddleForce: rules.Num(f.Limits[1]), Drops: map[string]rules.Num{}, LeftOut: drill.LeftOut}
	for d, mm := range f.Drops {
		out.Drops[drill.Fall(d).Key()] = tenth(mm)
	}
	for _, p := range f.Points {
		at := forcePointJSON{rules.Num(p.Above), map[string]rules.Num{}}
		for d, force := range p.Peak {
			at.Peak[drill.Fall(d).Key()] = thousandth(force)
		}
		out.Points = append(out.Points, at)
	}
	for _, s := range f.Stay {
		out.Stay = append(out.Stay, stayJSON{rules.Num(s.Mass), tenth(s.Peak), tenth(s.Saddle)})
	}
	return out
}

package sessions

import (
	"crypto/sha256"
	"fmt"
	"math"
	"strings"
	"time"

	"example.com/hangtape/rules"
)

// Sign puts the sign-off into s, with the verdicts of the report and the digest
// of what judged it. Whether the report may be signed is not asked here.
func (s *Session) Sign(by, note string, at time.Time, r *rules.Report) {
	signed := &SignOff{By: by, At: at.UTC().Truncate(time.Second), Note: note, Outcome: r.Outcome, Rules: s.RulesDigest()}
	for _, c := range r.Checks {
		signed.Checks = append(signed.Checks, SignedCheck{c.Name, c.Verdict, c.Margin, c.Guard})
	}
	s.SignOff = signed
}

// RulesDigest is a fingerprint of all that judges s: the value of every limit,
// the days until a re-check, and how each check is judged.
func (s *Session) RulesDigest() string {
	h := sha256.New()
	for l, v := range s.RulesFor() {
		fmt.Fprintf(h, "%s = %s\n", rules.Limit(l), decimal(v))
	}
	fmt.Fprintf(h, "recheck days = %d\n", recheckDays(s.Fit.RecheckDays))
	h.Write([]byte(rules.JudgedAs()))
	return fmt.Sprintf("sha256:%x", h.Sum(nil))
}

func recheckDays(told int) int {
	if told == 0 {
		return DefaultSchool().RecheckDays
	}
	return told
}

// A Difference is a check that today comes out otherwise than it was signed.
type Difference struct {
	Check     string
	Then, Now rules.Verdict // "" where there was no such check then, or is none now
	Was, Is   rules.Num     // margins
}

// String says the difference in words.
func (d Difference) String() string {
	switch {
	case d.Then == "":
		return fmt.Sprintf("%s: not judged then, %s now", d.Check, d.Now.Word())
	case d.Now == "":
		return fmt.Sprintf("%s: %s then, not judged now", d.Check, d.Then.Word())
	case d.Then != d.Now:
		return fmt.Sprintf("%s: %s then, %s now", d.Check, d.Then.Word(), d.Now.Word())
	}
	return fmt.Sprintf("%s: %s then and now, but with a margin of %.4g in place of %.4g", d.Check, d.Now.Word(), d.Is, d.Was)
}

// JudgedDifferently lists the checks that r, today's report on s, judges
// otherwise than s was signed; none where s is not signed.
func JudgedDifferently(s *Session, r *rules.Report) []Difference {
	if s.SignOff == nil {
		return nil
	}
	then := map[string]SignedCheck{}
	for _, c := range s.SignOff.Checks {
		then[c.Name] = c
	}
	var all []Difference
	for _, c := range r.Checks {
		was, signed := then[c.Name]
		delete(then, c.Name)
		if !signed {
			all = append(all, Difference{Check: c.Name, Now: c.Verdict, Is: c.Margin})
		} else if was.Verdict != c.Verdict || !sameMargin(was.Margin, c.Margin) {
			all = append(all, Difference{Check: c.Name, Then: was.Verdict, Now: c.Verdict, Was: was.Margin, Is: c.Margin})
		}
	}
	for _, c := range s.SignOff.Checks {
		if _, gone := then[c.Name]; gone {
			all = append(all, Difference{Check: c.Name, Then: c.Verdict, Was: c.Margin})
		}
	}
	return all
}

// sameMargin leaves room for what processors round differently.
func sameMargin(a, b rules.Num) bool {
	if a.Known() != b.Known() {
		return false
	}
	return !a.Known() || math.Abs(float64(a-b)) <= 1e-6*max(1, math.Abs(float64(a)))
}

// differently is the finding of differences between then and now, for the report.
func differently(s *Session, all []Difference) rules.Finding {
	words := make([]string, len(all))
	for i, d := range all {
		words[i] = d.String()
	}
	text := "signed as " + string(s.SignOff.Outcome) + ", judged differently today: " + strings.Join(words, "; ")
	if s.SignOff.Rules != s.RulesDigest() {
		text += "; the limits or the rules have changed since"
	}
	return rules.Finding{Name: "judged-differently", Text: text, Inputs: []string{}}
}

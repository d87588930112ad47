package rules

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/hangtape/fit"
)

func TestEveryTopicIsWhole(t *testing.T) {
	kinds := map[TopicKind]int{}
	for i, k := range TopicKinds() {
		kinds[k] = i
	}
	wantsHow := map[TopicKind]bool{CheckTopic: true, LimitTopic: true, ReadingTopic: true, LabelTopic: true, PostureTopic: true,
		PoseTopic: true, VerdictTopic: true, OriginTopic: true, FindingTopic: true}
	wantsDo := map[TopicKind]bool{CheckTopic: true, LimitTopic: true, ReadingTopic: true, PostureTopic: true, VerdictTopic: true, OriginTopic: true, FindingTopic: true}
	last := 0
	for _, topic := range Topics() {
		at, known := kinds[topic.Kind]
		if !known || at < last {
			t.Errorf("%s: kind %q unknown or out of order", topic.Name, topic.Kind)
		}
		last = at
		for field, v := range map[string]string{"Name": topic.Name, "Title": topic.Title, "What": topic.What, "Why": topic.Why, "Source": topic.Source} {
			if strings.TrimSpace(v) == "" {
				t.Errorf("%s %s: no %s", topic.Kind, topic.Name, field)
			}
		}
		if wantsHow[topic.Kind] && topic.How == "" {
			t.Errorf("%s %s: no How", topic.Kind, topic.Name)
		}
		if wantsDo[topic.Kind] && topic.Do == "" {
			t.Errorf("%s %s: no Do", topic.Kind, topic.Name)
		}
	}
}

// Every name, and every other name, leads to its own topic: none is shadowed by
// another one.
func TestEveryNameLeadsToItsTopic(t *testing.T) {
	for _, topic := range Topics() {
		for _, name := range append(topic.Also, topic.Name, strings.ToUpper(topic.Name), strings.ReplaceAll(topic.Name, "-", " ")) {
			if got, ok := Explain(name); !ok || got.Name != topic.Name {
				t.Errorf("Explain(%q) = %q, want %q", name, got.Name, topic.Name)
			}
		}
	}
}

// What answers and files name can be explained.
func TestNamesOfAnswersAreExplained(t *testing.T) {
	names := []string{"pass", "tight", "fail", "unknown", "measured", "kept", "estimated", "default", "predicted", "derived",
		"readings-disagree", "unlikely-reading", "out-of-domain", "outside-survey", "identical-repeats", "repeats-disagree",
		"odd-reading", "units", "heavy", "bridge-nearly-straight", "judged-differently", "drill-failed", "drill-disagrees",
		"drill", "ease", "rehearsal", "load path", "height to hang at", "modulus", "test weight", "drill.steps.2.garda_mm", "drill.sag_mm",
		"ylevel", "ytaut", "over", "thigh_past_level", "gain", "net", "slack", "flexion", "ylow", "fmax", "lmin", "lmin_saddle", "sag", "ylevel_model", "ytaut_model",
		"main_bridge", "hitch_left", "hitch_right", "foot_loop", "tether", "backup_bridge", "rope_above",
		"hangs.2.hip_mm", "changes.1.to_mm", "changes.1.measured_mm", "estimate.full_mm", "kit.hitch_left.cord_mm", "kit.tether.strands", "climber.mass_kg",
		"cut", "trimming", "bend", "questioned", "δ", "guard", "window", "sign-off", "down now", "standard uncertainty"}
	for c := range NumChecks {
		names = append(names, c.String())
	}
	for l := range NumLimits {
		names = append(names, l.String())
	}
	for r := range fit.NumReadings {
		names = append(names, r.Info().Table+"."+r.Info().Key, r.String())
	}
	for p := range fit.NumPostures {
		names = append(names, "posture."+p.Info().Key)
	}
	for _, name := range names {
		if _, ok := Explain(name); !ok {
			t.Errorf("%s has no explanation", name)
		}
	}
	if topic, ok := Explain("zebra"); ok {
		t.Errorf("zebra is explained as %s", topic.Name)
	}
}

func TestNearestTopic(t *testing.T) {
	for name, want := range map[string]string{"garda-under-conector": "garda-under-connector", "hipp": "hip", "zzzzzzz": ""} {
		if got := NearestTopic(name); got != want {
			t.Errorf("NearestTopic(%q) = %q, want %q", name, got, want)
		}
	}
}

func TestTextKeepsToItsWidth(t *testing.T) {
	for _, width := range []int{44, 80} {
		for _, topic := range Topics() {
			for line := range strings.SplitSeq(topic.Text(width), "\n") {
				if utf8.RuneCountInString(line) > width {
					t.Errorf("%s at %d: %q", topic.Name, width, line)
				}
			}
		}
	}
}

func TestWrap(t *testing.T) {
	const text = "A line that is longer than twenty.\n- an item that goes on and on\n2. another one that goes on\n(short by 25 ± 5 mm), taken up"
	const want = "A line that is\nlonger than twenty.\n- an item that goes\n  on and on\n2. another one that\n   goes on\n(short by\n25 ± 5 mm), taken up\n"
	if got := Wrap(text, 20); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestLengthsStayOnOneLine(t *testing.T) {
	for text, want := range map[string][]string{
		"at 78 3/4 in, then":    {"at", "78 3/4 in,", "then"},
		"25 ± 5 mm 3/4":         {"25 ± 5 mm", "3/4"},
		"25 +- 5 mm more":       {"25 +- 5 mm", "more"},
		"sexes m/f are 2 1/ 16": {"sexes", "m/f", "are", "2", "1/", "16"},
	} {
		if got := Unbroken(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

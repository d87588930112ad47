package rules

import (
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"example.com/hangtape/rules/nearest"
)

// A Topic is one explanation: of a check, a limit, a reading or a term. Why,
// How and Do may be empty where there is nothing to say.
type Topic struct {
	Name   string // as explain takes it
	Kind   TopicKind
	Title  string
	What   string // paragraphs are parted by an empty line
	Why    string // what it is for, or what goes wrong without it
	How    string // how it is read, judged or computed
	Do     string // what to do about it
	Source string
	Also   []string // other names that lead here: keys of the files, names in answers
}

// TopicKind groups the topics; it is the word for one of them.
type TopicKind string

// The kinds of topic, in the order in which they are listed.
const (
	Chapter      TopicKind = "chapter"
	CheckTopic   TopicKind = "check"
	LimitTopic   TopicKind = "limit"
	ReadingTopic TopicKind = "reading"
	LabelTopic   TopicKind = "label"
	PostureTopic TopicKind = "posture"
	PoseTopic    TopicKind = "pose"
	VerdictTopic TopicKind = "verdict"
	OriginTopic  TopicKind = "origin"
	FindingTopic TopicKind = "finding"
	TermTopic    TopicKind = "term"
)

// TopicKinds are the kinds in the order in which they are listed.
func TopicKinds() []TopicKind {
	return []TopicKind{Chapter, CheckTopic, LimitTopic, ReadingTopic, LabelTopic, PostureTopic, PoseTopic,
		VerdictTopic, OriginTopic, FindingTopic, TermTopic}
}

// Heading is a kind as the heading of its list.
func (k TopicKind) Heading() string {
	switch k {
	case Chapter:
		return "Handbook"
	case CheckTopic:
		return "Checks"
	case LimitTopic:
		return "Limits"
	case ReadingTopic:
		return "Readings"
	case LabelTopic:
		return "Told, or read off a label"
	case PostureTopic:
		return "Postures: what nobody reads"
	case PoseTopic:
		return "Poses: what is computed"
	case VerdictTopic:
		return "Verdicts"
	case OriginTopic:
		return "Origins"
	case FindingTopic:
		return "Findings"
	}
	return "Terms"
}

// Topics are all explanations, grouped by kind in the order of TopicKinds.
func Topics() []Topic { return slices.Clone(handbook().topics) }

// A book is all explanations and where each name is found in them.
type book struct {
	topics []Topic
	at     map[string]int // by plainKey
}

// handbook is put together once: a wizard asks it at every key.
var handbook = sync.OnceValue(func() book {
	b := book{at: map[string]int{}}
	for _, group := range [][]Topic{chapters(), checkTopics(), limitTopics(), readingTopics(), labelTopics(), postureTopics(),
		poseTopics(), verdictTopics(), originTopics(), findingTopics(), termTopics(), reviewTopics(), cordTopics(), drillTopics()} {
		b.topics = append(b.topics, group...)
	}
	for _, names := range []func(Topic) []string{ // a name comes before another topic's other names, these before titles
		func(t Topic) []string { return []string{t.Name} },
		func(t Topic) []string { return t.Also },
		func(t Topic) []string { return []string{t.Title} },
	} {
		for i, t := range b.topics {
			for _, n := range names(t) {
				if key := plainKey(n); !b.has(key) {
					b.at[key] = i
				}
			}
		}
	}
	return b
})

func (b book) has(key string) bool { _, ok := b.at[key]; return ok }

// Explain is the explanation of name, and whether there is one. Letter case and
// the choice of -, _ or a space do not matter; keys of the session file and
// names in answers lead to the same topics ("hangs.2.hip_mm" to the hip point).
func Explain(name string) (Topic, bool) {
	i, ok := handbook().at[plainKey(name)]
	if !ok {
		return Topic{}, false
	}
	return handbook().topics[i], true
}

// NearestTopic is the name that a misspelt one was probably meant to be, or ""
// where none is near.
func NearestTopic(name string) string {
	var names []string
	for _, t := range handbook().topics {
		names = append(names, t.Name)
	}
	return nearest.Of(plainKey(name), names)
}

// plainKey is a name or key without letter case, and without what differs
// between the sides, the pieces of one kind and the counted tables:
// "hangs.2.hip_mm" becomes "hangs.hip-mm".
func plainKey(name string) string {
	parts := strings.Split(nearest.Plain(name), ".")
	kept := parts[:0]
	for _, p := range parts {
		if strings.Trim(p, "0123456789") != "" {
			kept = append(kept, p)
		}
	}
	if len(kept) == 3 && kept[0] == "kit" { // "kit.hitch-left.cord-mm": what is told of any piece
		if _, ok := pieceKeyNames[strings.ReplaceAll(kept[2], "-", "_")]; ok {
			kept = []string{"kit", kept[2]}
		}
	}
	return strings.Join(kept, ".")
}

// Text is the topic as plain text, no line longer than width (at least 20)
// where its words allow.
func (t Topic) Text(width int) string {
	var b strings.Builder
	b.WriteString(wrap(t.Title+" ("+string(t.Kind)+" "+t.Name+")", "", width))
	for _, paragraph := range strings.Split(t.What, "\n\n") {
		b.WriteString("\n" + wrap(paragraph, "", width))
	}
	for _, part := range []struct{ head, text string }{
		{"Why", t.Why}, {"How", t.How}, {"What to do", t.Do}, {"Source", t.Source},
	} {
		if part.text != "" {
			b.WriteString("\n" + part.head + "\n" + wrap(part.text, "  ", width))
		}
	}
	return b.String()
}

// Wrap breaks text into lines of at most width letters where its words allow.
func Wrap(text string, width int) string { return wrap(text, "", width) }

// wrap breaks each line of text at spaces, but for those inside a number with
// its unit, so that, with the indent before it, it is no wider than width; further lines of an item "- …" or "1. …" are
// indented under its words.
func wrap(text, indent string, width int) string {
	width = max(width, 20)
	var b strings.Builder
	for line := range strings.SplitSeq(text, "\n") {
		hang := indent
		if first, _, ok := strings.Cut(line, " "); ok && (first == "-" || strings.HasSuffix(first, ".") && strings.Trim(first, "0123456789.") == "") {
			hang += strings.Repeat(" ", len(first)+1)
		}
		at := 0
		for i, word := range Unbroken(line) {
			n := utf8.RuneCountInString(word)
			switch {
			case i == 0:
				b.WriteString(indent)
				at = len(indent)
			case at+1+n > width:
				b.WriteString("\n" + hang)
				at = len(hang)
			default:
				b.WriteByte(' ')
				at++
			}
			b.WriteString(word)
			at += n
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Unbroken is the words of a line between which it may be broken; a number with
// its uncertainty and unit is one of them: "25 ± 5 mm", in ASCII "25 +- 5 mm".
func Unbroken(line string) []string {
	var words []string
	for _, w := range strings.Fields(line) {
		if last := len(words) - 1; last >= 0 && sticks(words[last], w) {
			words[last] += " " + w
		} else {
			words = append(words, w)
		}
	}
	return words
}

// sticks says whether w must not be parted from the word before it.
func sticks(before, w string) bool {
	for _, sign := range []string{"±", "+-"} {
		if strings.HasPrefix(w, sign) || strings.HasSuffix(before, sign) {
			return true
		}
	}
	if num, den, ok := strings.Cut(strings.TrimRight(w, ".,;:)"), "/"); ok && isCount(before) && isCount(num) && isCount(den) {
		return true // 78 3/4
	}
	switch end := before[len(before)-1]; strings.TrimRight(w, ".,;:)") {
	case "mm", "cm", "m", "in", "deg", "kN", "kg", "%":
		return '0' <= end && end <= '9'
	}
	return false
}

// isCount says whether s is digits alone, with a sign before them at most.
func isCount(s string) bool {
	digits := strings.TrimPrefix(s, "-")
	return digits != "" && strings.Trim(digits, "0123456789") == ""
}

package rules

import (
	"slices"
	"strings"
	"sync"

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
	Also   []string // other names that lead here: keys of the files, names in answers, everyday words
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
	at     map[string]int // the place in topics, by plainKey
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

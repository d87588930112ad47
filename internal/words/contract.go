package words

import (
	"regexp"
	"slices"
	"strings"
)

// contract says whether people do not read a text, or have to read it as it is:
// keys, names, symbols of units, what is written to files for programs.
func (u *use) contract() bool {
	if slices.ContainsFunc(theirs, u.in) {
		return false
	}
	return forms.MatchString(u.english) || u.named != "" && u.named != "rules.TopicKind" || slices.ContainsFunc(contracts, u.in)
}

func (u *use) in(pattern *regexp.Regexp) bool {
	if strings.Contains(pattern.String(), " @ ") {
		return pattern.MatchString(u.slot + " @ " + u.where)
	}
	return pattern.MatchString(u.slot)
}

// forms are what a contract looks like, wherever it stands.
var forms = regexp.MustCompile(strings.Join([]string{
	`^[a-z0-9_.%{}#*]*[a-z0-9}][_.][a-z0-9_.%{}#*]*$|^[_.][a-z0-9_.%{}#*-]+$`, // keys and parts of them: kit.tether.cord_mm
	`^[a-z0-9]+(-[a-z0-9{}]+)+$`,   // names: hitch-cord-grip
	`^--?[a-z-]+$|^[A-Z]+_[A-Z]+$`, // flags, variables of the environment
	`^(I|II|III|hangtape|UTF-8)$`,
	`^[^a-zA-Z]*((` + units + `)[^a-zA-Z]*)+$`,
	`(?s)^\s*<|^ [a-z-]+="|>\s*$`, // HTML
}, "|"))

// units are symbols, the same in every language.
const units = `mm|cm|m|in|ft|kg|g|lb|st|kN|N|daN|lbf|deg|min`

// slotList compiles places and slots; a * stands for anything.
func slotList(list ...string) []*regexp.Regexp {
	all := make([]*regexp.Regexp, len(list))
	for i, s := range list {
		all[i] = regexp.MustCompile("^" + strings.ReplaceAll(regexp.QuoteMeta(s), `\*`, ".*") + "$")
	}
	return all
}

// theirs are texts for people that look like a contract.
var theirs = slotList(
	"field tui/flow.word.says",
	"result rules.HowWord",
	"param rules.Count.*",
	"result sessions.Purpose.Word",
)

// contracts are the slots in which no text for people stands, where it says so
// at one place alone.
var contracts = slotList(
	// what is compared, looked up, or only for programmers
	"compared", "index", "panic",
	"param strings.HasSuffix.*", "param strings.Contains*",
	"param strings.EqualFold.*", "param strings.TrimPrefix.*",
	"param slices.Contains.*", "param path/filepath.*", "param io/fs.*", "param regexp.*", "param fmt.Sprint.* @ rules/plausible/misfit.go *",
	"param codeberg.org/*", "field codeberg.org/*",

	// fit
	"field fit.ReadingInfo.Table", "field fit.KnotInfo.Key", "field fit.CordError.Name",
	"field fit.pieceLabelKeys.*", "param fit.between.name", "param fit.knot.name", "param fit.add.name",
	"var fit.pieceKeys", "var fit.originNames", "var fit.cordUseKeys",

	// rules
	"field rules.Topic.Name", "field rules.Topic.Also", "param rules.*.name", "param rules.*.also", "field rules.poseInfo.*", "field rules.CheckInfo.Group",
	"field rules.end.at", "param rules.readingKeyed.*", "field rules.Value.Origin", "result rules.Num.MarshalJSON",
	"var rules.plainKey.kept",
	"var rules.part*", "field rules.loadGraph.parts", "var rules/advice.howWords", "field rules/advice.Change.How", "var rules/advice.causeGeometry", "var rules/advice.causeUncertainty", "field rules/drill.struct.name", "param rules/drill.bad.k",

	// sessions
	"field sessions.table.path", "param sessions.*.key", "field sessions.named.word", "field sessions.field.key", "field sessions.Fault.Key", "param sessions.*.table",
	"result sessions.choice", "var sessions.header", "var sessions.piecesHeader", "var sessions.DemoFolder", "* @ sessions/signoff.go Session.RulesDigest", "param fmt.Sprintf.format @ sessions/lock.go Store.takeLock",
	"field sessions/records.KeyInfo.Name", "var sessions/records.whole", "var sessions/records.Entry.states.words", "var sessions/records.cacheName", "field sessions/records.folded.is",
	"result sessions/export.told", "param sessions/export.one.name", "field sessions/export.struct.name", "field sessions/export.Column.Family", "param sessions/export.numbers.of.kind",
	"field sessions/compare.part.Origin",

	// tui
	"field tui/flow.Step.ID", "field tui/flow.Ask.Key", "field tui/flow.Ask.Topic", "param tui/flow.*.id", "param tui/flow.*.table",
	"var tui/flow.*Key", "var tui/flow.DrillStep",
	"field tui/flow.novelty.name", "var tui/flow.newSince", "var tui/flow.reCheckOf", "var tui/flow.shortSaid", "var tui/flow.stoppedAt", "var tui/flow.notedAs", // read back from notes
	"field tui.binding.names",

	// cmd
	"field cmd/hangtape.struct.flag", "param github.com/spf13/pflag.FlagSet.*.name", "param github.com/spf13/pflag.FlagSet.*.value",
	"field github.com/spf13/cobra.Command.Use", "field github.com/spf13/cobra.Command.Example", "param github.com/spf13/cobra.*",
	"param cmd/hangtape.said.name", "param cmd/hangtape.world.env.", "result cmd/hangtape.cardFlags.formatted", "var cmd/hangtape.formats",
	"var cmd/hangtape.versionLine.version", "var cmd/hangtape.asciiOnly.name",
	"param strings.NewReplacer.oldnew @ cmd/hangtape/man.go *", "param strings.ReplaceAll.new @ cmd/sheet/svg.go *",
	"param cmd/sheet.htmlPage.*.name", "param cmd/sheet.htmlPage.*.class", "param cmd/sheet.htmlPage.cell.is", "field cmd/sheet.Paper.Name", "var cmd/sheet.PDF.*", "var cmd/sheet.keepWidths.*",
)

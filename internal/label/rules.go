package label

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// term is a constituent in a row's sum, times a factor.
type term struct {
	id     constituent.ID
	factor float64
}

// line is one row of data/card_rows.csv.
type line struct {
	key, label  string
	indent      int
	tag         constituent.ID // the constituent that the row is named for
	energy      bool
	terms       []term
	units       []string // one, or kJ and kcal
	printUnits  []string // as the rules print them; may be empty
	need        string   // "always", "if known" or "if present"
	whenUnknown string
	rounding    string
	reference   string
	percent     string // rounding of the percentage
	template    string // the whole line where the rules prescribe it
	source      string
}

// reference is a reference intake or daily value.
type reference struct {
	value  float64
	unit   string
	source string
}

// text is a statement or a note of data/card_texts.csv.
type text struct {
	kind, when, text, source string
}

// ruleset is everything about one set of rules.
type ruleset struct {
	title      string
	percents   string // head of the column of percentages
	byServing  bool   // the serving is the only basis
	usual      bool   // of a drink that names none
	lines      []line
	factors    []constituent.EnergyFactor
	bands      map[string][]band
	references map[string]reference
	texts      []text
}

var rulesets = sync.OnceValue(func() map[string]*ruleset {
	all := map[string]*ruleset{}
	at := func(rules string) *ruleset {
		if all[rules] == nil {
			all[rules] = &ruleset{bands: map[string][]band{}, references: map[string]reference{}}
		}
		return all[rules]
	}
	for _, r := range embedded.Rows("card_rules.csv") {
		s := at(r.Text("rules"))
		s.title, s.percents, s.byServing, s.usual = r.Text("title"), r.Text("percent_head"), r.Text("basis") == "serving", r.Text("usual") == "yes"
	}
	for _, r := range embedded.Rows("card_rows.csv") {
		at(r.Text("rules")).lines = append(at(r.Text("rules")).lines, readLine(r))
	}
	for _, f := range constituent.EnergyFactors() {
		at(f.Rules).factors = append(at(f.Rules).factors, f)
	}
	for _, r := range embedded.Rows("card_rounding.csv") {
		b := band{from: r.Number("from"), including: r.Text("including") == "yes", trim: r.Text("trim") == "yes", text: r.Text("text"), source: r.Text("source")}
		if step, ok := r.Optional("step"); ok {
			b.step, b.decimals = step, decimals(r.Text("step"))
		}
		at(r.Text("rules")).bands[r.Text("band")] = append(at(r.Text("rules")).bands[r.Text("band")], b)
	}
	for _, r := range embedded.Rows("daily_values.csv") {
		at(r.Text("rules")).references[r.Text("key")] = reference{value: r.Number("value"), unit: r.Text("unit"), source: r.Text("source")}
	}
	for _, r := range embedded.Rows("card_texts.csv") {
		at(r.Text("rules")).texts = append(at(r.Text("rules")).texts, text{r.Text("kind"), r.Text("when"), r.Text("text"), r.Text("source")})
	}
	return all
})

func readLine(r embedded.Row) line {
	l := line{
		key: r.Text("key"), label: r.Text("label"), indent: r.Whole("indent"), tag: constituent.ID(r.Text("tag")),
		energy: r.Text("terms") == "energy", units: strings.Fields(r.Text("unit")), printUnits: strings.Fields(r.Text("print_unit")),
		need: r.Text("need"), whenUnknown: r.Text("when_unknown"), rounding: r.Text("rounding"),
		reference: r.Text("reference"), percent: r.Text("percent"), template: r.Text("line"), source: r.Text("source"),
	}
	if l.energy {
		return l
	}
	for part := range strings.FieldsSeq(r.Text("terms")) {
		id, times, found := strings.Cut(part, "*")
		t := term{id: constituent.Must(constituent.ID(id)).ID, factor: 1}
		if found {
			t.factor = number(times)
		}
		l.terms = append(l.terms, t)
	}
	return l
}

// Rules gives the sets of rules that this package can print, sorted.
func Rules() []string {
	var out []string
	for name, r := range rulesets() {
		if len(r.lines) > 0 {
			out = append(out, name)
		}
	}
	slices.Sort(out)
	return out
}

// Usual gives the sets of rules that a drink is under which names none, sorted.
func Usual() []string {
	return slices.DeleteFunc(Rules(), func(name string) bool { return !rulesets()[name].usual })
}

func number(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("label: " + err.Error())
	}
	return x
}

func decimals(step string) int {
	_, after, _ := strings.Cut(step, ".")
	return len(after)
}

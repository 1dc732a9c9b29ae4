package label

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Tables are the rows that sets of rules are made of, as in the files of data/.
type Tables struct {
	Rules, Rows, Rounding, References, Texts, Amounts []embedded.Row
	Factors                                           []constituent.EnergyFactor
}

// reference is a reference intake or daily value.
type reference struct {
	value float64
	unit  string
	cited
}

// text is a statement or a note of data/card_texts.csv.
type text struct {
	kind, text string
	when       []condition
	cited
}

// ruleset is everything about one set of rules.
type ruleset struct {
	head
	lines      []line
	factors    []constituent.EnergyFactor
	bands      map[string][]band
	references map[string]reference
	texts      []text
	amounts    []amountServed
	open       []Open
}

// head is a row of data/card_rules.csv.
type head struct {
	like       string // the rules whose rows these are, where they have none of their own
	as         string // what their sources say more
	title      string
	percents   string // head of the column of percentages
	byServing  bool   // the serving is the only basis
	columns    []string
	usual      bool // of a drink that names none
	unknown    string
	serving    string // the line that says how much a serving is, with {places}
	ml         string // how the rules write it
	energyIn   []string
	kjPerKcal  float64 // where one unit of energy is converted into the other; else 0
	ofPrinted  bool    // percentages are of what is printed
	simplified int     // from so many insignificant rows on a short table is allowed; 0: none is
	cited
}

var rulesets = sync.OnceValue(func() map[string]*ruleset {
	return read(Tables{
		Rules: embedded.Rows("card_rules.csv"), Rows: embedded.Rows("card_rows.csv"), Rounding: embedded.Rows("card_rounding.csv"),
		References: embedded.Rows("daily_values.csv"), Texts: embedded.Rows("card_texts.csv"), Amounts: embedded.Rows("reference_amounts.csv"), Factors: constituent.EnergyFactors(),
	})
})

// read makes sets of rules of their rows.
func read(t Tables) map[string]*ruleset {
	all := map[string]*ruleset{}
	for _, row := range t.Rules {
		r := &ruleset{head: readHead(row), bands: map[string][]band{}, references: map[string]reference{}}
		r.opens("the head of the card", r.cited)
		all[row.Text("rules")] = r
	}
	of := func(row embedded.Row) *ruleset {
		r := all[row.Text("rules")]
		if r == nil {
			row.Fail("card_rules.csv has no rules %q", row.Text("rules"))
		}
		return r
	}
	for _, row := range t.Rows {
		r, l := of(row), readLine(row)
		r.opens("row "+l.key, l.cited)
		r.lines = append(r.lines, l)
	}
	for _, row := range t.Rounding {
		r, name := of(row), row.Text("band")
		b := readBand(row)
		r.opens("rounding of "+name+" from "+row.Text("from"), b.cited)
		r.bands[name] = append(r.bands[name], b)
	}
	for _, row := range t.References {
		r := of(row)
		r.references[row.Text("key")] = reference{value: row.Number("value"), unit: row.Text("unit"), cited: r.opens("reference value of "+row.Text("key"), citedBy(row))}
	}
	for _, f := range t.Factors {
		if r := all[f.Rules]; r != nil {
			r.opens("energy factor of "+constituent.Must(f.Of).Name, cited{f.Source, f.Status})
			r.factors = append(r.factors, f)
		}
	}
	for _, row := range t.Texts {
		r := of(row)
		r.texts = append(r.texts, text{row.Text("kind"), row.Text("text"), readConditions(row), r.opens("the "+row.Text("kind")+" “"+row.Text("text")+"”", citedBy(row))})
	}
	for _, row := range t.Amounts {
		r, a := of(row), readAmount(row)
		r.opens("reference amount of "+a.category, a.cited)
		r.amounts = append(r.amounts, a)
	}
	for _, r := range all {
		if model := all[r.like]; model != nil {
			r.follow(model)
		}
	}
	return all
}

func readHead(r embedded.Row) head {
	h := head{
		like: r.Text("like"), as: r.Text("as"), title: r.Text("title"), percents: r.Text("percent_head"), byServing: r.Text("basis") == "serving",
		columns: strings.Fields(r.Text("columns")), usual: r.Text("usual") == "yes", unknown: r.Text("unknown"), serving: r.Text("serving_line"),
		ml: r.Text("ml"), energyIn: strings.Fields(r.Text("energy_in")),
		ofPrinted: r.Text("percent_of") == "printed", cited: citedBy(r),
	}
	h.kjPerKcal, _ = r.Optional("kj_per_kcal")
	if n, ok := r.Optional("simplified_from"); ok {
		h.simplified = int(n)
	}
	return h
}

func citedBy(r embedded.Row) cited { return cited{r.Text("source"), r.Text("status")} }

// follow takes the rows of the rules that these are like: a delta says only what is its own.
// Its texts come after theirs.
func (r *ruleset) follow(model *ruleset) {
	also := func(c cited) cited { return cited{c.source + r.as, c.status} }
	if len(r.lines) == 0 {
		for _, l := range model.lines {
			l.cited = also(l.cited)
			r.lines = append(r.lines, l)
		}
	}
	if len(r.factors) == 0 {
		for _, f := range model.factors {
			f.Source += r.as
			r.factors = append(r.factors, f)
		}
	}
	for name, list := range model.bands {
		if r.bands[name] == nil {
			r.bands[name] = list
		}
	}
	for name, ref := range model.references {
		if _, own := r.references[name]; !own {
			ref.cited = also(ref.cited)
			r.references[name] = ref
		}
	}
	var texts []text
	for _, t := range model.texts {
		t.cited = also(t.cited)
		texts = append(texts, t)
	}
	r.texts, r.open = append(texts, r.texts...), append(slices.Clone(model.open), r.open...)
}

// Rules gives the sets of rules that this package can print, sorted.
func Rules() []string {
	var out []string
	for name := range rulesets() {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// Usual gives the sets of rules that a drink is under which names none, sorted.
func Usual() []string {
	return slices.DeleteFunc(Rules(), func(name string) bool { return !rulesets()[name].usual })
}

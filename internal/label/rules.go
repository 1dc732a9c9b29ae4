package label

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/data"
	"sipsum/internal/constituent"
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

// factor is the energy of one gram of a constituent and all below it.
type factor struct {
	id      constituent.ID
	perGram map[string]float64 // by unit: kJ, kcal
	source  string
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
	lines      []line
	factors    []factor
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
	for _, r := range rowsOf("card_rows.csv") {
		at(r["rules"]).lines = append(at(r["rules"]).lines, readLine(r))
	}
	for _, r := range rowsOf("energy_factors.csv") {
		f := factor{id: constituent.ID(r["constituent"]), perGram: map[string]float64{}, source: r["source"]}
		for unit, column := range map[string]string{"kJ": "kj_per_g", "kcal": "kcal_per_g"} {
			if r[column] != "" {
				f.perGram[unit] = number(r[column])
			}
		}
		at(r["rules"]).factors = append(at(r["rules"]).factors, f)
	}
	for _, r := range rowsOf("card_rounding.csv") {
		b := band{from: number(r["from"]), including: r["including"] == "yes", trim: r["trim"] == "yes", text: r["text"], source: r["source"]}
		if r["step"] != "" {
			b.step, b.decimals = number(r["step"]), decimals(r["step"])
		}
		at(r["rules"]).bands[r["band"]] = append(at(r["rules"]).bands[r["band"]], b)
	}
	for _, r := range rowsOf("daily_values.csv") {
		at(r["rules"]).references[r["key"]] = reference{value: number(r["value"]), unit: r["unit"], source: r["source"]}
	}
	for _, r := range rowsOf("card_texts.csv") {
		at(r["rules"]).texts = append(at(r["rules"]).texts, text{r["kind"], r["when"], r["text"], r["source"]})
	}
	return all
})

func readLine(r map[string]string) line {
	l := line{
		key: r["key"], label: r["label"], indent: int(number(r["indent"])), tag: constituent.ID(r["tag"]),
		energy: r["terms"] == "energy", units: strings.Fields(r["unit"]), printUnits: strings.Fields(r["print_unit"]),
		need: r["need"], whenUnknown: r["when_unknown"], rounding: r["rounding"],
		reference: r["reference"], percent: r["percent"], template: r["line"], source: r["source"],
	}
	if l.energy {
		return l
	}
	for part := range strings.FieldsSeq(r["terms"]) {
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

// rowsOf reads an embedded file whose rows are named by its header.
func rowsOf(name string) []map[string]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("label: " + err.Error())
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("label: " + name + ": " + err.Error())
	}
	rows := make([]map[string]string, 0, len(records)-1)
	for _, record := range records[1:] {
		row := make(map[string]string, len(record))
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
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

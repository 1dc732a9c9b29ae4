package label

import (
	"strconv"
	"strings"

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
	key, label   string
	indent       int
	tag          constituent.ID // the constituent that the row is named for
	energy       bool
	terms        []term
	units        []string       // one, or kJ and kcal
	printUnits   []string       // as the rules print them; may be empty
	need         string         // when the row stands on the card, see wanted
	within       constituent.ID // no part of the drink holds more of it than of this
	simple       []string       // how the short table takes it, see shape
	rounding     string
	reference    string
	percent      string // rounding of the percentage
	percentTerms []term // what it is of, where that is more than the row
	ofPrinted    bool   // the percentage is of what is printed
	template     string // the whole line where the rules prescribe it
	cited
}

func readLine(r embedded.Row) line {
	l := line{
		key: r.Text("key"), label: r.Text("label"), indent: r.Whole("indent"), tag: constituent.ID(r.Text("tag")),
		energy: r.Text("terms") == "energy", units: strings.Fields(r.Text("unit")), printUnits: strings.Fields(r.Text("print_unit")),
		need: r.Text("need"), within: constituent.ID(r.Text("within")), simple: strings.Fields(r.Text("simple")), rounding: r.Text("rounding"),
		reference: r.Text("reference"), percent: r.Text("percent"), percentTerms: readTerms(r.Text("percent_terms")),
		ofPrinted: r.Text("percent_of") == "printed", template: r.Text("line"), cited: citedBy(r),
	}
	if !l.energy {
		l.terms = readTerms(r.Text("terms"))
	}
	return l
}

// readTerms reads "FASAT FATRN" or "NA*2.5".
func readTerms(text string) []term {
	var terms []term
	for part := range strings.FieldsSeq(text) {
		id, times, found := strings.Cut(part, "*")
		t := term{id: constituent.Must(constituent.ID(id)).ID, factor: 1}
		if found {
			t.factor = number(times)
		}
		terms = append(terms, t)
	}
	return terms
}

// byDifference reports whether the row is what a mass leaves beside other parts.
func (l line) byDifference() bool { return len(l.terms) > 0 && l.terms[0].id == constituent.Mass }

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

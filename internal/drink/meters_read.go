package drink

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// This file reads the shelf of meters: the bar's instruments, and what was read of what is known when they
// were checked. What a check says of an instrument is the business of package meter.

// meterKind is what the grammar knows of a kind of instrument.
type meterKind struct {
	reads []string   // the keys of measured
	scale unit.Scale // of what it shows, some way beyond what it measures
}

// meterScales are the scales of what instruments show: an instrument that is off shows less than nothing.
var meterScales = map[string]unit.Scale{
	"pH":   {Units: []string{""}, Low: -1, High: 15, Example: "4.01"},
	"°Bx":  {Units: []string{"", "°Bx"}, Low: -5, High: 100, Example: "10.0"},
	"%":    {Units: []string{"%"}, Low: -5, High: 105, Example: "40 %"},
	"g":    {Units: []string{"g"}, Low: -1000, High: mostBase, Example: "200 g ± 0.1 g"},
	"°C":   {Units: []string{"°C"}, Low: -60, High: 300, Example: "0 °C"},
	"g/ml": {Units: []string{"g/ml"}, Low: 0.5, High: 2, Example: "0.998 g/ml"},
}

// meterKinds are those of data/meter_kinds.csv, by name.
var meterKinds = sync.OnceValue(func() map[string]meterKind {
	all := map[string]meterKind{}
	for _, row := range embedded.Rows("meter_kinds.csv") {
		scale, ok := meterScales[row.Text("unit")]
		if !ok {
			row.Fail("unit: no scale of %q", row.Text("unit"))
		}
		scale.What = "what a " + row.Text("kind") + " shows"
		all[row.Text("kind")] = meterKind{strings.Fields(row.Text("reads")), scale}
	}
	return all
})

func meterKindNames() []string {
	return each(embedded.Rows("meter_kinds.csv"), func(row embedded.Row) string { return row.Text("kind") })
}

var (
	millivolts = unit.Scale{What: "the zero of an electrode", Units: []string{"mV"}, Low: -500, High: 500, Example: "-12 mV"}
	nernst     = unit.Scale{What: "the slope of an electrode", Units: []string{"%"}, Low: 1, High: 200, Example: "96 %"}
)

// shelf is a file of meters as it is read.
type shelf struct{ meters []Meter }

var shelfKeys = grammar[shelf]{"a file of meters", []key[shelf]{
	{"meters", "the bar's instruments by name: what each is, and what it showed of what is known", true, mapOf(meterKeys.shape()), func(r *reader, s *shelf, n ast.Node) {
		r.named(n, "meters", meterNameFault, func(e entry) {
			for _, first := range s.meters {
				twins(r.faults, "meter", e, first.Name, first.Place)
			}
			m := Meter{Name: e.key, Place: e.at}
			readMeter(r, &m, e.value)
			s.meters = append(s.meters, m)
		})
	}},
}}

var meterKeys = grammar[Meter]{"a meter", []key[Meter]{
	word("kind", "what it is: pH meter, refractometer, scale, thermometer, TDS meter, alcoholometer, hydrometer", true, meterKindNames(), func(m *Meter) *string { return &m.Kind }),
	{"resolution", "the step of what it shows: 0.01", false, numberShape, func(r *reader, m *Meter, n ast.Node) { m.Resolution = shownBy(r, m, n, "resolution") }},
	word("class", "the class of a scale by OIML R 76: I, II, III or IIII", false, []string{"I", "II", "III", "IIII"}, func(m *Meter) *string { return &m.Class }),
	into("checked", "the day of the check: 2027-03-31", false, textShape(mostName), dayOf, func(m *Meter) *int { return &m.Checked }),
	{"standards", "what it showed of what is known, repeats in a list: {ph 4.01 at 22 °C: [4.05, 4.04]}, {0 °Bx: 0.1, 10.0 °Bx ± 0.05 °Bx: 10.2}, {200 g ± 0.1 g: 199.8 g}, {0 °C: 0.3 °C}", false,
		mapOf(anyOf(numberShape, listOf(numberShape))), func(r *reader, m *Meter, n ast.Node) { standards(r, m, n) }},
	scaled("zero", "of an electrode, in pH 7, as its meter tells it: -12 mV", millivolts, func(m *Meter) **Quantity { return &m.Zero }),
	scaled("slope", "of an electrode, as its meter tells it: 96 %", nernst, func(m *Meter) **Quantity { return &m.Slope }),
	text("note", "a remark", false, mostProse, func(m *Meter) *string { return &m.Note }),
}}

// phMeter is the kind that alone has an electrode.
const phMeter = "pH meter"

// readMeter reads an instrument and checks what goes together.
func readMeter(r *reader, m *Meter, n ast.Node) {
	present, ok := meterKeys.read(r, m, n)
	if !ok {
		return
	}
	for _, key := range []string{"zero", "slope"} {
		if present.has(key) && m.Kind != "" && m.Kind != phMeter {
			r.faults.Add(present[key], "take it out", "a %s has no electrode", m.Kind)
		}
	}
	if present.has("class") && m.Kind != "" && m.Kind != "scale" {
		r.faults.Add(present["class"], "take it out", "a class of OIML R 76 is one of a scale, and this is a %s", m.Kind)
	}
	if present.has("resolution") && m.Resolution != nil && m.Resolution.Number <= 0 {
		r.faults.Add(present["resolution"], "write the step of what it shows: 0.01", "a meter that shows steps of %s", unit.Number(m.Resolution.Number))
	}
}

func meterNameFault(name string) (fault, do string) {
	return textFault(name, "the meter's name", mostName)
}

// shownBy reads a figure in the unit of a kind of instrument; nil where the kind is not known.
func shownBy(r *reader, m *Meter, n ast.Node, what string) *Quantity {
	kind, ok := meterKinds()[m.Kind]
	if !ok {
		return nil // reported
	}
	return r.quantity(n, what, kind.scale)
}

// mostShown is how often a standard may be read, and how many there may be: our own bound, what anybody
// would write by hand.
const mostShown = 100

// standards reads what an instrument showed of what is known.
func standards(r *reader, m *Meter, n ast.Node) {
	r.named(n, "standards", func(name string) (string, string) { return textFault(name, "a standard", mostName) }, func(e entry) {
		kind, ok := meterKinds()[m.Kind]
		if !ok {
			return
		}
		s := Standard{Place: e.at, Text: e.key}
		known, at, warm := strings.Cut(e.key, " at ")
		if m.Kind == phMeter {
			if word, rest, found := strings.Cut(known, " "); found && strings.EqualFold(word, "ph") {
				known = rest
			}
		}
		q, err := kind.scale.Parse(known)
		if err == nil && warm {
			var t Quantity
			t, err = temperature.Parse(at)
			s.At = &t
		}
		if err != nil {
			r.misread(e.at, err)
			return
		}
		s.Known = q
		for _, v := range alone(e.value) {
			if q := shownBy(r, m, v, "what it showed"); q != nil {
				s.Shown = append(s.Shown, *q)
			}
		}
		if len(s.Shown) > mostShown || len(m.Standards) >= mostShown {
			r.faults.Add(e.at, "keep the last ones", "more than %d readings", mostShown)
			return
		}
		if len(s.Shown) > 0 {
			m.Standards = append(m.Standards, s)
		}
	})
}

// alone gives the entries of a list, or what stands in its place.
func alone(n ast.Node) []ast.Node {
	if list, ok := n.(*ast.SequenceNode); ok {
		return list.Values
	}
	return []ast.Node{n}
}

// meterNames reads a name, or a list of them.
func meterNames(r *reader, n ast.Node, what string) []Word {
	if _, several := n.(*ast.SequenceNode); several {
		return r.words(n, what, nil)
	}
	if name, ok := r.name(n, what); ok {
		return []Word{{r.nodeAt(n), name}}
	}
	return nil
}

// dayOf reads a date as the number of its day; 0 where it is none.
func dayOf(r *reader, n ast.Node, what string) int {
	day, _ := unit.Day(readBest(r, n, what))
	return day
}

// ParseMeters reads a shelf of meters; all that is wrong with it is told at once.
func ParseMeters(name string, text []byte) ([]Meter, *fail.List) {
	s, faults := shelf{}, &fail.List{}
	r := &reader{values: values{file{path: name, faults: faults, begins: beginsMeters}}, open: nothingElse, count: new(int), seen: &Reading{}, top: shelfKeys.names()}
	if root := r.document(text); root != nil {
		shelfKeys.read(r, &s, root)
	}
	return s.meters, faults
}

// beginsMeters is how a shelf of meters begins.
const beginsMeters = "begin with meters: and below it a name of yours, kind: pH meter and standards:"

// readMeters reads the shelf of meters that a drink names, or the one beside it.
func readMeters(r *reader, d *Drink, name string, text []byte) {
	own := &fail.List{}
	of := &reader{values: values{file{path: beside(r.path, name), faults: own, begins: beginsMeters}}, open: nothingElse, count: r.count, seen: r.seen, top: shelfKeys.names()}
	root := of.document(text)
	if at, is := holdsOnly(&of.file, root, shelfKeys.names(), nil); !is {
		r.faults.Add(at, "a shelf of meters holds meters:, and nothing else", "this is not a file of meters")
		return
	}
	s := shelf{}
	if root != nil {
		shelfKeys.read(of, &s, root)
	}
	r.faults.Take(own)
	d.Meters = s.meters
}

// metersNamed reads the shelf of meters that a drink names.
func metersNamed(r *reader, d *Drink, n ast.Node) {
	name, ok := r.text(n, "meters", mostName)
	if !ok {
		return
	}
	text, err := r.open(name)
	if err != nil {
		r.unread(r.nodeAt(n), name, err)
		return
	}
	readMeters(r, d, name, text)
}

// metersBeside reads the shelf of meters that lies beside a drink that names none, if there is one.
func metersBeside(r *reader, d *Drink, beside func(string) ([]byte, error)) {
	if d.Meters != nil {
		return
	}
	text, err := beside(MetersFile)
	switch {
	case err == nil:
		readMeters(r, d, MetersFile, text)
	case !errors.Is(err, fs.ErrNotExist):
		r.unread(r.at(1, 1), MetersFile, err)
	}
}

// checkMeters reports a meter that is on no shelf, and one that took no reading. Where no shelf was read
// nobody can tell.
func (w *whole) checkMeters() {
	if w.drink.Meters == nil || w.file.torn {
		return
	}
	names := each(w.drink.Meters, func(m Meter) string { return m.Name })
	for _, m := range w.drink.Measurements() {
		for _, named := range m.Meters {
			i := slices.Index(names, named.Text)
			switch {
			case i < 0:
				w.file.faults.Add(named.Place, guess(named.Text, names, "the shelf has "+fail.Or(names)), "no meter of the shelf is called %s", quoted(named.Text))
			case !slices.ContainsFunc(m.Kinds(), w.drink.Meters[i].Reads) && w.drink.Meters[i].Kind != "":
				w.file.faults.Add(named.Place, "name what read it, or take it out", "%s is a %s, which takes none of these readings", quoted(named.Text), w.drink.Meters[i].Kind)
			}
		}
	}
}

package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/label"
	"sipsum/internal/solution"
)

// Served is a drink as its guest is told of it: nothing that is not known, and what to ask
// for instead. It never says what a drink has not.
type Served struct {
	In, On    []string // what is in it, largest first; what lies on top
	Allergens []Line
	Figures   []Figured // strength, caffeine, energy
	Ask       []string  // what nobody knows
	Advice    []string  // from the cautions, in words for a guest
	Card      label.Card

	in tongue
}

// Served tells a drink to a guest: the card under the first rules without the rows that
// nobody knows, the allergens under all of them.
func (s *Sheet) Served() Served { return teller{s, english}.served() }

// teller tells a guest of a drink in a language.
type teller struct {
	*Sheet
	in tongue
}

func (s teller) served() Served {
	in := s.in
	v := Served{In: inIt(s.Assay), Allergens: s.boxLines(s.Allergens()), Advice: adviceOf(s.Cautions(), in), in: in}
	for _, g := range s.Assay.Garnish {
		v.On = append(v.On, clean.Name(g.Name))
	}
	v.strength(s.Sheet)
	v.caffeine(s.Sheet)
	v.Card = s.Cards()[0]
	v.Card.Rows = slices.Clone(v.Card.Rows)
	v.Card.Rows = slices.DeleteFunc(v.Card.Rows, func(r label.Row) bool {
		open := r.Open() || spansBoth(s.Sheet, constituent.ID(r.Tag))
		if open {
			v.Ask = append(v.Ask, in.named(clean.Name(shortLabel(r.Label))))
		}
		return open
	})
	v.energy()
	return v
}

// spansBoth reports whether the figure of a row hangs on a reading that contradicts its recipe and
// reaches further than a printed figure may be off; so does what is in 100 ml where the volume does.
func spansBoth(s *Sheet, id constituent.ID) bool {
	serving, known := s.Assay.PerServing.Find(id)
	if !known || !hangs(s, id, serving.Contributions) {
		return false
	}
	volume := s.Assay.Volume
	return label.Spans(serving.Low, serving.Mean, serving.High) || label.Spans(volume.Low, volume.Mean, volume.High)
}

// shortLabel is the label of a row that stands alone.
func shortLabel(text string) string { return strings.TrimPrefix(text, "of which ") }

// inIt names the parts of a serving, largest first.
func inIt(a *assay.Assay) []string {
	parts := slices.Clone(a.Components)
	slices.SortStableFunc(parts, func(x, y assay.Component) int { return cmp.Compare(y.Mass.Mean, x.Mass.Mean) })
	var list []string
	for _, c := range parts {
		if name := clean.Name(c.Name); !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

// Limits of what is worth a figure on a card: our own bounds, what is less prints as 0.
const (
	leastABV      = 0.05
	leastCaffeine = 0.5 // mg
)

// strength is the alcohol by volume; where a caution speaks of alcohol and there is no
// figure, a guest has to ask.
func (v *Served) strength(s *Sheet) {
	grams, _, known := s.Assay.AmountOf(constituent.Alcohol)
	abv := solution.ABV(grams, servingMl(s.Assay))
	switch {
	case known && abv >= leastABV:
		v.Figures = append(v.Figures, Figured{v.in.say("strength"), v.in.say("strength.is", fmt.Sprintf("%.1f", abv))})
	case s.cautioned("alcohol"):
		v.Ask = append(v.Ask, v.in.say("strength"))
	}
}

func (v *Served) caffeine(s *Sheet) {
	f, ok := s.Assay.PerServing.Find(constituent.Caffeine)
	switch {
	case ok && !Hollow(f.Result) && f.Mean >= leastCaffeine:
		text := v.in.say("caffeine.is", twoDigits(f.Mean))
		if f.Partial {
			text = v.in.say("caffeine.least", twoDigits(f.Mean))
		}
		v.Figures = append(v.Figures, Figured{v.in.say("caffeine"), text})
	case s.cautioned("caffeine"):
		v.Ask = append(v.Ask, v.in.say("caffeine"))
	}
}

// energy is printed as the card prints it.
func (v *Served) energy() {
	for _, r := range v.Card.Rows {
		if strings.HasPrefix(r.Tag, string(constituent.Energy)) && r.Serving != nil {
			v.Figures = append(v.Figures, Figured{v.in.named(clean.Name(r.Label)), clean.Name(r.Serving.Printed)})
		}
	}
}

// cautioned reports whether a caution of a kind is given.
func (s *Sheet) cautioned(kind string) bool {
	return slices.ContainsFunc(s.Cautions(), func(c Cautioned) bool { return strings.HasPrefix(c.Code, kind) })
}

// twoDigits prints a number above leastCaffeine with two significant digits, as far as they
// are whole.
func twoDigits(x float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 2, 64), 64)
	if err != nil {
		panic("sheet: " + err.Error())
	}
	return fmt.Sprintf("%.0f", rounded)
}

// overdoses says of what a drink holds more than may be poured, the worst first; of a salt, and of
// what it is a salt of, once.
func overdoses(list []Cautioned, in tongue) (out []string) {
	var told []string
	for _, c := range list {
		if c.TooMuch == "" || slices.ContainsFunc(told, func(name string) bool { return strings.Contains(name, c.TooMuch) }) {
			continue
		}
		told = append(told, c.TooMuch)
		out = append(out, in.say("too much", in.named(clean.Name(c.TooMuch))))
	}
	return out
}

// adviceOf puts cautions into words for a guest. One that is for the kitchen has an empty
// text there; one that has none yet is not lost: the card says that there is more to ask.
func adviceOf(list []Cautioned, in tongue) []string {
	out := overdoses(list, in)
	more := false
	for _, c := range list {
		text, ok := in.text("advice." + c.Code)
		if !ok {
			more = true
		}
		if text != "" && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	if more {
		out = append(out, in.say("advice.more"))
	}
	return out
}

// boxLines are the lines of the guest's box: they tell what is declared, what may be in it and what somebody has to look at first.
func (s teller) boxLines(all []Declaration) []Line {
	in := s.in
	var lines []Line
	add := func(key string, of func(*Declaration) []allergen.Entry) {
		var said []string
		for _, name := range entryNames(all, of) {
			said = append(said, in.named(name))
		}
		if len(said) > 0 {
			lines = append(lines, Line{Lead: in.say(key), Strong: strings.Join(said, " · ")})
		}
	}
	add("contains", func(d *Declaration) []allergen.Entry { return d.Contains })
	add("may", func(d *Declaration) []allergen.Entry { return d.MayContain })
	lines = append(lines, s.toAsk(all)...)
	if len(lines) == 0 {
		lines = []Line{{Text: in.say("none")}}
	}
	return lines
}

// DeclaredAs is what a drink is declared with under all its rules, each thing once.
type DeclaredAs struct {
	Contains, MayContain []string
	Check                []string // sentences: what somebody has to find out
}

// DeclaredBy lists the allergens of a drink for a form that has no box.
func DeclaredBy(s *Sheet) DeclaredAs {
	all := s.Allergens()
	names := func(of func(*Declaration) []allergen.Entry) []string {
		var list []string
		for i := range all {
			for _, e := range of(&all[i]) {
				if name := clean.Name(e.Name); !slices.Contains(list, name) {
					list = append(list, name)
				}
			}
		}
		return list
	}
	t := DeclaredAs{
		Contains:   names(func(d *Declaration) []allergen.Entry { return d.Contains }),
		MayContain: names(func(d *Declaration) []allergen.Entry { return d.MayContain }),
	}
	for _, line := range (teller{s, english}).toAsk(all) {
		t.Check = append(t.Check, line.Text)
	}
	return t
}

// entryNames names the entries under all rules: those of further rules only as far as they
// say more, by their leaves.
func entryNames(all []Declaration, of func(*Declaration) []allergen.Entry) []string {
	var names, leaves []string
	for i := range all {
		for _, e := range of(&all[i]) {
			told := len(e.Leaves) > 0 && !slices.ContainsFunc(e.Leaves, func(l string) bool { return !slices.Contains(leaves, l) })
			if name := clean.Name(e.Name); !told && !slices.Contains(names, name) {
				names = append(names, name)
			}
			leaves = append(leaves, e.Leaves...)
		}
	}
	return names
}

// toAsk says what somebody has to look at before a guest may rely on the rest.
func (s teller) toAsk(all []Declaration) []Line {
	in := s.in
	var lines []Line
	for i := range all {
		for _, c := range all[i].Check {
			text := in.say("open", in.listed(s.foodNames(c.Foods)))
			if c.Leaf != "" {
				text = in.say("check", in.named(clean.Name(cmp.Or(c.Name, c.Leaf))), in.listed(s.foodNames(c.Foods)))
			}
			if line := (Line{Text: text}); !slices.Contains(lines, line) {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// foodNames gives the names of foods in the place of their codes.
func (s *Sheet) foodNames(ids []string) []string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = clean.Name(id)
		for _, item := range s.Assay.Items {
			if item.Food.ID.String() == id {
				names[i] = clean.Name(cmp.Or(item.Food.Name(), id))
			}
		}
	}
	return names
}

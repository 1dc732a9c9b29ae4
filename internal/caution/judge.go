package caution

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
)

// judge decides whether a row speaks of the drink, and fills its text.
func (l *look) judge(r *row) (spoken, bool) {
	m := &match{all: true}
	if len(r.when) > 0 {
		if m = l.any(r.when); m == nil {
			return spoken{}, false
		}
	}
	v := l.measured(r, m)
	if !v.ok {
		return spoken{}, false
	}
	s := spoken{r.caution(), r, v.certain && !m.unsure}
	s.Text = strings.NewReplacer(append(v.figures, "{abv}", l.strength().text(s.certain))...).Replace(r.text)
	if v.first != "" {
		s.Text = v.first + s.Text
	}
	if !s.certain {
		s.Text = "Cannot be ruled out: " + s.Text
	}
	if s.certain {
		s.TooMuch = v.tooMuch
	}
	s.Because = strings.Join(slices.Concat(joined(m.because), v.because), "; ")
	return s, true
}

// joined writes what is in a drink in one phrase: "in it: Rum, Gin".
func joined(because []string) []string {
	var list []string
	for _, b := range because {
		kind, what, found := strings.Cut(b, ": ")
		last := len(list) - 1
		if found && last >= 0 && strings.HasPrefix(list[last], kind+": ") {
			list[last] += ", " + what
			continue
		}
		list = append(list, b)
	}
	return list
}

// verdict is what the measure of a row says.
type verdict struct {
	ok, certain bool
	figures     []string // for the text: what stands there, what is put there
	because     []string
	first       string // is said before the text
	tooMuch     string // of what there is more than may be
}

func (l *look) measured(r *row, m *match) verdict {
	switch r.measure {
	case anAmount:
		return l.amount(r)
	case aMass:
		return l.mass(r, m)
	case aPH:
		return l.sour(r, m)
	case anUnknown:
		return l.unknown(r, m)
	case aStrength:
		ok, certain := l.strong(r)
		return verdict{ok: ok, certain: certain, because: []string{l.strength().text(certain)}}
	}
	return verdict{ok: true, certain: true}
}

// amount judges an amount as known, at the upper end of its interval, and there with its
// bounds. An amount of which nothing is known, and the part that nothing bounds, are left
// to the row for unknowns.
func (l *look) amount(r *row) verdict {
	a, found := l.per(r.of, r.basis)
	if !found {
		return verdict{}
	}
	certain := a.Known && r.exceeds(a.Mean)
	v := verdict{certain: certain, ok: certain || r.exceeds(a.KnownMost()) || a.Bounded() && r.exceeds(a.Most()) && l.hidden(r)}
	for _, basis := range []string{"serving", "100 ml", "100 g"} {
		per, _ := l.per(r.of, basis)
		v.figures = append(v.figures, "{"+basis+"}", amountText(per, r.unit, certain))
	}
	v.figures = append(v.figures, "{amount}", amountText(a, r.unit, certain))
	if certain && r.overdoses(a.Mean) {
		v.tooMuch = strings.ToLower(constituent.Must(r.of).Name)
	}
	v.because = []string{fmt.Sprintf("%s per %s: %s", strings.ToLower(constituent.Must(r.of).Name), r.basis, amountText(a, r.unit, certain))}
	return v
}

// hidden reports whether more than is known may be there at all: that needs a food that
// could bring it, or one of which nobody says what it is.
func (l *look) hidden(r *row) bool {
	if len(r.with) == 0 {
		return true
	}
	for i, it := range l.Items {
		if it.Group == "" || l.plausible(i, r) {
			return true
		}
	}
	return false
}

// perThousand is a kilogram in grams, a litre in millilitres and a gram in milligrams.
const perThousand = 1000

// mass judges how much of the foods that were found the lines pour.
func (l *look) mass(r *row, m *match) verdict {
	grams := 0.0
	for _, id := range l.foods(m) {
		if r.basis == "batch" {
			grams += l.Poured[id].Batch
		} else {
			grams += l.Poured[id].Serving
		}
	}
	switch volume := l.ServingMl; {
	case r.basis == "kg" && l.ServingG > 0:
		grams *= perThousand / l.ServingG
	case r.basis == "litre" && volume > 0:
		grams *= perThousand / volume
	case r.basis == "litre" && l.ServingG > 0: // as if it were water
		grams *= perThousand / l.ServingG
	}
	v := verdict{ok: r.compare == tell || r.exceeds(grams), certain: true, figures: []string{
		"{mass}", massText(grams), "{times}", number(grams / r.limit),
	}}
	if grams > 0 {
		v.because = []string{massText(grams) + " per " + r.basis + ", as poured"}
	}
	if r.overdoses(grams) {
		v.tooMuch = l.foodsOf(m)
	}
	if r.compare == tell && grams > r.limit {
		v.first = fmt.Sprintf("Too much, %s per %s where %s is the most: ", massText(grams), r.basis, massText(r.limit))
	}
	return v
}

// foodsOf names the foods that were found.
func (l *look) foodsOf(m *match) string {
	var names []string
	for _, i := range m.items {
		names = addOnce(names, strings.ToLower(named(l.Items[i])))
	}
	return strings.Join(names, ", ")
}

// sour judges the pH of the parts in which something was found. Below a limit, an unknown
// pH may be; over a limit it may be unless a meter has read it.
func (l *look) sour(r *row, m *match) verdict {
	v := verdict{certain: true}
	for _, p := range l.Parts {
		if !slices.Contains(m.parts, p.Name) {
			continue
		}
		said := "its pH is not known"
		switch {
		case p.PHRead:
			said = fmt.Sprintf("pH read: %.2f", p.PHHigh)
		case !math.IsNaN(p.PHLow):
			said = fmt.Sprintf("pH by calculation %.1f to %.1f, not read", p.PHLow, p.PHHigh)
		}
		lifted := p.PHRead && !r.exceeds(p.PHHigh)
		if r.compare == below {
			lifted = !math.IsNaN(p.PHLow) && !r.exceeds(p.PHLow)
		}
		if !lifted {
			v.ok = true
			v.because = addOnce(v.because, said)
		}
	}
	return v
}

// unknown speaks of the foods that were found and of which nobody says how much they hold.
func (l *look) unknown(r *row, m *match) verdict {
	var foods []string
	for _, i := range m.items {
		if slices.Contains(l.Unstated[r.of], l.Items[i].Food) {
			foods = addOnce(foods, named(l.Items[i]))
		}
	}
	return verdict{ok: len(foods) > 0, certain: true, figures: []string{"{foods}", strings.Join(foods, ", ")}}
}

// massText prints grams as a scale would be read.
func massText(grams float64) string {
	if grams < 1 {
		return number(grams*perThousand) + " mg"
	}
	return number(grams) + " g"
}

package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Swapped is a drink of which a food gives way to another. The sheet is of the drink before.
type Swapped struct {
	*Sheet
	*fit.Exchanged
	Found   []SwappedFood
	Words   []string // for what it is to be without, as it was asked
	Written string   // the file that holds the first; empty: nothing is written
	Offered bool     // each can be taken up where it stands, and no option need be named
}

// SwappedFood is a food that may stand there, with the drink that it makes.
type SwappedFood struct {
	fit.Substitute
	*Compared
}

// Swap makes what is printed of a swap, on the sheets of the drink before and of each drink after.
func Swap(before *Sheet, x *fit.Exchanged, after []*Sheet, without []string) *Swapped {
	s := &Swapped{Sheet: before, Exchanged: x, Words: without}
	for i, f := range x.Found {
		s.Found = append(s.Found, SwappedFood{f, &Compared{A: before, B: after[i]}})
	}
	return s
}

// Line tells a swap in a sentence.
func (s *Swapped) Line() string {
	if len(s.Found) == 0 {
		return fmt.Sprintf("Nothing found in the place of %s: %s.", s.Of.ID, s.Why)
	}
	f, none := s.Found[0], ""
	if s.Why != "" {
		none = clean.UpperFirst(s.Why) + ". Nearest: "
	}
	return none + fmt.Sprintf("%s in the place of %s (%s): what is held stays within what a judge notices in %s.",
		f.Food.ID, s.Of.ID, strings.Join(f.Pours(), "; "), Chance(f.Sure, f.May))
}

// Pours tells each line before and after.
func (f SwappedFood) Pours() []string {
	var list []string
	for _, p := range f.Poured {
		from, to := p.From, p.To
		from.Half, to.Half = 0, 0
		text := from.String() + " → " + to.String()
		if !p.Moves() {
			text = to.String() + ", as before"
		}
		if owner := drink.Owner(p.Path); p.Pot != "" {
			text = clean.Name(p.Pot) + " " + text
		} else if owner != "build" && owner != "finish" {
			text += " in " + clean.Name(owner)
		}
		list = append(list, text)
	}
	return list
}

// Roles tells what the food brings, the first most.
func (s *Swapped) Roles() []string {
	var list []string
	for _, t := range s.Brings {
		list = append(list, fmt.Sprintf("%s (%d %% of the %s)", t.Quality, ofHundred(t.Share), t.Words))
	}
	return list
}

// Holds tells what is held, and within what of itself.
func (s *Swapped) Holds() []string {
	var list []string
	for _, t := range s.Kept {
		list = append(list, fmt.Sprintf("%s within −%d and +%d %%", t.Words, ofHundred(1-t.Least), ofHundred(t.Most-1)))
	}
	return list
}

// Moves are the figures of a serving that are told beside what is held, where they move.
func (f SwappedFood) Moves() []FittedFigure {
	list := besides(f.A.Assay, f.B.Assay)
	for _, id := range fit.Swapped[len(fit.Beside):] {
		a, okA := f.A.Assay.PerServing.Find(id)
		b, okB := f.B.Assay.PerServing.Find(id)
		if okA && okB && !(Hollow(a.Result) && Hollow(b.Result)) {
			list = append(list, FittedFigure{WordsFor(a.Constituent), a.Result, b.Result})
		}
	}
	return slices.DeleteFunc(list, func(x FittedFigure) bool {
		told := slices.ContainsFunc(f.Held, func(t fit.Trait) bool { return strings.HasPrefix(x.Words, t.Words) })
		return told || moved(x.Before, x.After) == ""
	})
}

// moved tells a figure before and after with its interval; empty where it reads the same.
func moved(before, after composition.Result) string {
	in, factor := scaleFor(cmp.Or(after.Unit, before.Unit), before.Mean, after.Mean)
	if in == "pH" { // the word stands before it
		in = ""
	}
	was, is := sideText(before, in, factor), sideText(after, in, factor)
	if was == is && furtherUp(before, factor) == furtherUp(after, factor) {
		return ""
	}
	if in != "" && was != "not known" {
		was = strings.TrimSuffix(was, " "+in)
	}
	text := was + " → " + is
	if !Hollow(after) && !math.IsNaN(after.Mean) && after.Low < after.High {
		last := lastPlace(after.Mean*factor, after.Low*factor, after.High*factor)
		text += fmt.Sprintf(" (%s–%s", places(after.Low*factor, last), places(after.High*factor, last))
		if up := furtherUp(after, factor); up != "" {
			text += "; " + up
		}
		text += ")"
	}
	return text
}

func furtherUp(r composition.Result, factor float64) string {
	switch {
	case !r.Partial && !r.Unknown:
		return ""
	case math.IsNaN(r.UpTo) || math.IsInf(r.UpTo, 0):
		return "how much more nobody knows"
	}
	return "up to " + places(r.UpTo*factor, lastPlace(r.UpTo*factor, r.UpTo*factor, r.UpTo*factor))
}

// Declares tells what of the declarations goes and what comes, by the first rules that say so.
func (f SwappedFood) Declares() []Line {
	var lines []Line
	seen := map[string]bool{}
	for i, rules := range f.A.Rules {
		for _, x := range f.Classes(i) {
			text := x.said("before", "then")
			if seen[x.Name+text] {
				continue
			}
			seen[x.Name+text] = true
			if n := len(lines); n > 0 && lines[n-1].Text == text && lines[n-1].Lead == rulesName(rules) { // a food that nobody has assessed may be of any class
				lines[n-1].Strong += ", " + clean.Name(x.Name)
				continue
			}
			lines = append(lines, Line{Lead: rulesName(rules), Strong: clean.Name(x.Name), Text: text})
		}
	}
	for _, text := range f.Undecided().OnlyB {
		lines = append(lines, Line{Lead: "to be decided", Text: clean.Prose(text)})
	}
	return lines
}

// Decide reports whether something has to be decided before the first proposal can be poured.
func (s *Swapped) Decide() bool {
	return s.Why != "" || !s.Found[0].Likely() || s.Found[0].Asked || len(s.Found[0].Still) > 0 || len(s.Found[0].Undecided().OnlyB) > 0
}

// shortOf is a food by its name before the comma, and its code.
func shortOf(f *food.Food) string { return clean.Name(f.Name()) + " (" + f.ID.String() + ")" }

// asked tells what the other food is to be.
func (s *Swapped) asked() string {
	var list []string
	if len(s.Exchanged.Without) > 0 {
		list = append(list, "without "+strings.Join(s.Words, ", "))
	}
	if s.Exchanged.Less != nil {
		by := unit.LimitOf("what a swap for less brings", "share")
		list = append(list, fmt.Sprintf("that brings at least %d %% less %s", ofHundred(1-by.High), s.Less.Words()))
	}
	return cmp.Or(clean.Listed(list), "the nearest")
}

package fit

import (
	"cmp"
	"context"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Body is the quality that fat gives, and Size the volume of a serving.
const (
	Body Quality = "body"
	Size Quality = "volume"
)

// Trait is a figure of the drink that is held where a food gives way to another.
type Trait struct {
	Quality     Quality
	Figure      string // as an expression
	Of          constituent.ID
	Least, Most float64 // within what shares of itself it stays
	Share       float64 // what of it the food brings
	Told
	Hurt, Help float64 // in which share of the draws it stays, with the unknown at either end

	goal      *claim.Goal
	low, high float64 // at central values
	known     bool    // it is held by what is known of it
}

// weigh tells what the drink has, and what of it the food brings.
func (s *swap) weigh(ctx context.Context) error {
	a, err := s.bench.Central.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true})
	if err != nil {
		return err
	}
	s.central = a
	for _, d := range a.Doses {
		if d.Food == s.Of.ID {
			s.grams += d.Serving
		}
	}
	s.brought = s.bring(a, s.Less, s.Of.ID)
	s.fills = s.filled(a)
	r, err := readyOf(a, s.bench.Declared)
	if err != nil {
		return err
	}
	if s.Kept, s.Remarks, err = r.traits(s.Less); err != nil {
		return err
	}
	for i := range s.Kept {
		t := &s.Kept[i]
		if t.Share = s.share(r, *t); t.Share > 1-t.Least {
			s.Brings = append(s.Brings, *t)
		}
	}
	slices.SortStableFunc(s.Brings, func(a, b Trait) int { // the size of a serving is no taste
		if a, b := a.Quality == Size, b.Quality == Size; a != b {
			return map[bool]int{true: 1, false: -1}[a]
		}
		return cmp.Compare(b.Share/(1-b.Least), a.Share/(1-a.Least))
	})
	return nil
}

func readyOf(a *assay.Assay, declared claims.Declared) (ready, error) {
	r := ready{a, claims.NewGlass(a, declared), taste.Of(a.Glass())}
	if r.profile.Why != "" {
		return r, fail.New(fail.Wrong, "how it tastes cannot be told: "+r.profile.Why, "swap a food of a drink that is liquid")
	}
	return r, nil
}

// traits lists what is held of a drink: every taste that it has, the fat that gives it body, and the
// size of a serving. What is to be less is not held.
func (r ready) traits(less *constituent.Constituent) (list []Trait, remarks []string, err error) {
	add := func(q Quality, figure string, of constituent.ID, least, most float64, known bool) error {
		t, err := claim.ParseTarget("least "+figure, fail.Place{})
		if err != nil {
			return err
		}
		x := Trait{Quality: q, Figure: figure, Of: of, Least: least, Most: most, goal: t.Goal, known: known}
		x.Words = t.Goal.Words()
		if x.low, x.high, err = x.ends(r.glass); err != nil {
			return err
		}
		switch {
		case less != nil && of == less.ID:
		case math.IsNaN(x.high) || math.IsInf(x.high, 0):
			remarks = append(remarks, "how "+string(q)+" it stays is not held: nobody knows all of it")
		case x.high > 0:
			list = append(list, x)
		}
		return nil
	}
	for _, name := range Qualities() {
		q := Quality(name)
		figures, withheld := r.figures(q)
		least, most := r.kept(q)
		switch {
		case withheld != "" && q == Sour:
			remarks = append(remarks, "its acidity is withheld ("+withheld+"): what is known of its organic acids is held in its place")
			if err := add(q, "per100ml("+string(constituent.OrganicAcids)+")", constituent.OrganicAcids, least, most, true); err != nil {
				return nil, nil, err
			}
		case withheld != "":
			remarks = append(remarks, "how "+name+" it stays is not held: "+withheld)
		}
		for _, f := range figures {
			if r.faint(f) {
				continue
			}
			if err := add(q, f, r.constituentOf(q, f), least, most, false); err != nil {
				return nil, nil, err
			}
		}
	}
	if fat := r.profile.Body.Fat; fat.Mean > unit.LimitOf("fat that gives no body", "g/100 ml").High {
		l := unit.LimitOf("what is kept of a body", "share")
		if err := add(Body, "per100ml("+string(constituent.Fat)+")", constituent.Fat, l.Low, l.High, false); err != nil {
			return nil, nil, err
		}
	}
	size := unit.LimitOf("what is kept of a serving", "share")
	return list, remarks, add(Size, "volume()", "", size.Low, size.High, false)
}

// faint reports whether a figure is of a compound that is below the highest of its thresholds: who tastes it at
// all is not agreed upon, and nobody swaps a food by it.
func (r ready) faint(figure string) bool {
	for _, d := range r.profile.Doses {
		if figure == "per100ml("+string(d.Constituent.ID)+")" {
			return d.Amount.Mean < d.High
		}
	}
	return false
}

// constituentOf is what a figure of a quality is made of, if it is of one constituent.
func (r ready) constituentOf(q Quality, figure string) constituent.ID {
	switch q {
	case Sweet:
		return "" // sweetness is more than sugars: less of them may be as sweet
	case Sour:
		return constituent.OrganicAcids
	case Strong:
		return constituent.Alcohol
	}
	for _, d := range r.profile.Doses {
		if figure == "per100ml("+string(d.Constituent.ID)+")" {
			return d.Constituent.ID
		}
	}
	return ""
}

// ends are the figure at central values, with what is unknown at its least and at its most.
func (t Trait) ends(g *claims.Glass) (low, high float64, err error) {
	a, b, err := t.goal.Values(g)
	if err != nil {
		return 0, 0, err
	}
	if t.known {
		return a[0], a[0], nil
	}
	return a[0], b[0], nil
}

// share is what of a figure the food brings to the drink.
func (s *swap) share(r ready, t Trait) float64 {
	its, all := partOf(s.central.Serving, t, r.profile.Sweet.Mean, s.Of.ID)
	if all <= 0 {
		return 0
	}
	return its / all
}

// standsFor reports whether a food brings so much of what the other one was there for that it stands for it.
func (s *swap) standsFor(a *assay.Assay, f food.ID) bool {
	if s.even {
		return true
	}
	lead := s.Brings[0]
	its, _ := partOf(a.Serving, lead, 0, f)
	was, _ := partOf(s.central.Serving, lead, 0, s.Of.ID)
	return its >= was*unit.LimitOf("what a swap brings of what it is for", "share").Low
}

// partOf is what a food brings of a trait to a serving, and what there is of it, in grams.
func partOf(pot *ledger.Pot, t Trait, level float64, f food.ID) (its, all float64) {
	for row, x := range pot.Rows {
		g := 0.0
		switch t.Quality {
		case Sweet:
			g = sucroseOf(pot, row, level)
		case Size:
			g = gramsOf(pot, row, constituent.Mass)
		default:
			g = gramsOf(pot, row, t.Of)
		}
		if all += g; x.Profile.Food.ID == f {
			its += g
		}
	}
	return its, all
}

func sucroseOf(pot *ledger.Pot, row int, level float64) float64 {
	return taste.AsSucrose(func(id constituent.ID) float64 { return gramsOf(pot, row, id) }, level)
}

func gramsOf(pot *ledger.Pot, row int, id constituent.ID) float64 {
	if col := composition.SortOf(pot, constituent.Must(id)).Of(row); col != nil {
		return col[0]
	}
	return 0
}

// bring is what a food brings of a constituent to a serving, in grams at central values.
func (s *swap) bring(a *assay.Assay, c *constituent.Constituent, f food.ID) (sum float64) {
	if c == nil {
		return 0
	}
	for row, x := range a.Serving.Rows {
		if x.Profile.Food.ID == f {
			sum += gramsOf(a.Serving, row, c.ID)
		}
	}
	return sum
}

// tooMuch reports whether a food brings more of what is to be less than was asked: in all, and to what it is there
// for, so that pouring less of the same is none.
func (s *swap) tooMuch(a *assay.Assay, f food.ID) bool {
	if s.Less == nil {
		return false
	}
	its, most := s.bring(a, s.Less, f), s.brought*unit.LimitOf("what a swap for less brings", "share").High
	if s.even {
		return its > most
	}
	lead, _ := partOf(a.Serving, s.Brings[0], 0, f)
	was, _ := partOf(s.central.Serving, s.Brings[0], 0, s.Of.ID)
	return its > most*min(1, lead/was)
}

// filled finds the line of the build whose pot is mostly the food: by how much of it is poured the drink has
// more or less of what the food brings, whatever is weighed into the pot.
func (s *swap) filled(a *assay.Assay) *drink.Line {
	its, all := map[string]float64{}, map[string]float64{}
	for row, x := range a.Serving.Rows {
		if len(x.Path) == 0 {
			continue
		}
		g := gramsOf(a.Serving, row, constituent.Mass)
		if all[x.Path[0]] += g; x.Profile.Food.ID == s.Of.ID {
			its[x.Path[0]] += g
		}
	}
	var found *drink.Line
	mostly := unit.LimitOf("what fills a pot", "share").Low
	for i, l := range s.bench.Drink.Build {
		kind := l.Amount.Measure.Kind
		if its[l.Food] >= mostly*all[l.Food] && all[l.Food] > 0 && (kind == unit.Mass || kind == unit.Volume) {
			if found != nil {
				return nil // which of them is to be poured otherwise nobody says
			}
			found = &s.bench.Drink.Build[i]
		}
	}
	return found
}

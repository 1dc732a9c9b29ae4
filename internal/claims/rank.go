package claims

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Shelf is the tables that foods are ranked of.
type Shelf interface {
	// Called gives the food of a table that a claim names by its code or its whole name.
	Called(name string) (*food.Food, error)

	// Table gives all foods of a table.
	Table(id string) ([]*food.Food, error)
}

// drawsOfRanks are enough for a place among foods: as many as chemistry has.
const drawsOfRanks = 200

// Rank is at which place a food stands among the foods of its table, pure substances apart, by what 100 g
// hold of a constituent. The food is drawn as in the drink, and so are those near it.
func (g *Glass) Rank(c *constituent.Constituent, name string) (claim.Figure, error) {
	if id, coded := food.ParseID(name); coded && id.Table == food.Own {
		return claim.Figure{}, fail.New(fail.Wrong, name+" is of this file, and no food of a table", `name the one that it stands for: food_rank(`+string(c.ID)+`, "core:lemon-juice")`)
	}
	if g.shelf == nil {
		return claim.Figure{}, fail.New(fail.Wrong, "no table is at hand to rank foods of", "")
	}
	asked := question{c.ID, claim.Part{Name: name}}
	p, ok := g.places[asked]
	if !ok {
		f, err := g.shelf.Called(name)
		if err != nil {
			return claim.Figure{}, err
		}
		entered, err := g.tables.of(f.ID.Table, g.shelf)
		if err != nil {
			return claim.Figure{}, err
		}
		p = newRanking(c, f, entered, estimate.Ensemble{Seed: g.assay.Seed, N: 1 + min(g.assay.Draws, drawsOfRanks)}).place()
		g.places[asked] = p
	}
	g.among, g.drawn = p.among, append(g.drawn, p)
	return p.figure, nil
}

// entered is the foods of tables as they enter the ledger, each table once.
type entered map[string][]*food.Profile

func (e entered) of(table string, shelf Shelf) ([]*food.Profile, error) {
	if list, ok := e[table]; ok {
		return list, nil
	}
	foods, err := shelf.Table(table)
	if err != nil {
		return nil, err
	}
	list := make([]*food.Profile, len(foods))
	for i, f := range foods {
		list[i] = food.Enter(f, nil)
	}
	e[table] = list
	return list, nil
}

// placed is a food at its place.
type placed struct {
	figure  claim.Figure
	among   string // among how many it was ranked
	profile *food.Profile
	own     estimate.Entry // what it holds, drawn
}

// shelved is a food of a table as it enters a ranking: what 100 g are known to hold, at central values and
// within what any draw is near, and what they may hold besides.
type shelved struct {
	profile         *food.Profile
	known, low, top float64
	most            float64 // +Inf where nothing bounds it
	loose           bool    // it is bound by its mass alone

	drawn []float64 // what 100 g are known to hold; nil until it is asked for
}

// ranking is the foods of a table by one constituent.
type ranking struct {
	of    *constituent.Constituent
	ens   estimate.Ensemble
	asked *shelved
	rest  []*shelved // the others
	open  []*shelved // of them: those that may come before it for all that anybody knows
	none  int        // of them: nobody has a figure
}

func newRanking(c *constituent.Constituent, f *food.Food, table []*food.Profile, ens estimate.Ensemble) *ranking {
	r := &ranking{of: c, ens: ens}
	profiles := make([]*food.Profile, 1, len(table))
	for _, p := range table {
		switch {
		case p.Food.ID == f.ID:
			profiles[0] = p
		case !p.Food.Chemical:
			profiles = append(profiles, p)
		}
	}
	pot := pouredOut(profiles, estimate.Ensemble{Seed: ens.Seed, N: 1})
	sort := composition.SortOf(pot, c)
	for row, p := range profiles {
		s := &shelved{profile: p}
		for _, x := range sort.Of(row) {
			s.known = x
		}
		if most := sort.UnknownOf(row); most != nil {
			if s.most = most[0]; math.IsNaN(s.most) {
				s.most, s.loose = room(pot, row, c)[0], true
			}
		}
		s.low, s.top = s.reach(c)
		if row == 0 {
			r.asked = s
			continue
		}
		if s.known == 0 && s.most > 0 {
			r.none++
		}
		r.rest = append(r.rest, s)
	}
	return r
}

// pouredOut pours 100 g of each food.
func pouredOut(profiles []*food.Profile, ens estimate.Ensemble) *ledger.Pot {
	drawer := ledger.NewDrawer(ens, ledger.NewColumns(profiles))
	drawer.Draw(profiles)
	pot, grams := drawer.NewPot(), ens.Of(unit.Hundred)
	for _, p := range profiles {
		pot.Pour(p, drawer.PerGram(p), grams, p.Food.ID.String())
	}
	return pot
}

// reach is between what any draw of a food lies, as lognormal as its least certain part is. Our own bound:
// four standard deviations, and a tenth for the mass that is closed.
func (s *shelved) reach(c *constituent.Constituent) (low, top float64) {
	const deviations, closing = 4, 1.1
	relative, limits := 0.0, 0.0
	for _, leaf := range append([]*constituent.Constituent{c}, constituent.Sums().Leaves(c.ID)...) {
		cell := s.profile.Cells[leaf.Order]
		switch {
		case !cell.Known || cell.Amount <= 0:
		case cell.Limit > 0:
			limits += cell.Limit * unit.Hundred
		default:
			relative = max(relative, cell.SD/cell.Amount, cell.Apart)
		}
	}
	for _, t := range s.profile.Totals {
		if t.Cell.Amount > 0 {
			relative = max(relative, t.Cell.SD/t.Cell.Amount)
		}
	}
	width := closing * math.Exp(deviations*math.Sqrt(math.Log1p(relative*relative)))
	low, top = s.known/width, s.known*width+limits
	if limits > 0 {
		low = 0
	}
	return low, top
}

// place counts, draw by draw, the foods that hold more. Places are counted from the best that the food may
// have; what it may hold itself, and what others may, each make it worse.
func (r *ranking) place() placed {
	r.draw([]*shelved{r.asked})
	own, most := r.asked.drawn, r.asked.most
	best := make([]float64, r.ens.N)
	for d := range best {
		best[d] = own[d] + most
	}
	places := r.before(best, false)
	f := claim.Figure{Known: places, Unknown: r.asked.known == 0 && most > 0}
	add := func(next []float64, gap claim.Gap) {
		gap.Most = make([]float64, len(next))
		for d := range next {
			gap.Most[d] = next[d] - places[d]
		}
		if places = next; slices.Max(gap.Most) > 0 {
			f.Gaps = append(f.Gaps, gap)
		}
	}
	if most > 0 {
		add(r.before(own, false), claim.Gap{Key: "rank of " + r.name() + " by " + string(r.of.ID), What: r.of.Words() + " of " + shortName(r.asked.profile.Food)})
	}
	last := r.before(own, true)
	add(last, claim.Gap{Key: "others by " + string(r.of.ID) + " in " + r.asked.profile.Food.ID.Table, What: r.openWords()})
	name := r.of.Name + " of " + r.name()
	return placed{f, r.among(), r.asked.profile, estimate.Entry{Cause: estimate.Tables, Name: name, Column: own}}
}

func (r *ranking) name() string { return r.asked.profile.Food.ID.String() }

// before gives the places of columns: one more than the foods that hold more, or that may with what
// nobody knows of them.
func (r *ranking) before(own []float64, unknown bool) []float64 {
	places := r.ens.Of(1)
	least, most := slices.Min(own), slices.Max(own)
	var near []*shelved
	for _, s := range r.rest {
		more := 0.0
		if unknown {
			more = s.most
		}
		switch {
		case s.top+more <= least:
		case s.low+more > most*(1+unit.Closeness):
			for d := range places {
				places[d]++
			}
			if unknown && s.most > 0 && s.low <= most {
				r.open = append(r.open, s)
			}
		default:
			near = append(near, s)
		}
	}
	r.draw(near)
	for _, s := range near {
		r.count(s, places, own, unknown)
	}
	return places
}

// count adds a place in every draw in which a food holds more.
func (r *ranking) count(s *shelved, places, own []float64, unknown bool) {
	opened := false
	for d, x := range s.drawn {
		before := x > own[d]*(1+unit.Closeness)
		after := unknown && x+s.most > own[d]*(1+unit.Closeness)
		if before || after {
			places[d]++
		}
		opened = opened || after && !before
	}
	if opened {
		r.open = append(r.open, s)
	}
}

// drawnAtOnce bounds the memory of foods that are drawn side by side (our own bound: some 20 MB).
const drawnAtOnce = 128

// draw draws foods, each once, and keeps what they hold of what is ranked.
func (r *ranking) draw(list []*shelved) {
	list = slices.DeleteFunc(slices.Clone(list), func(s *shelved) bool { return s.drawn != nil })
	for some := range slices.Chunk(list, drawnAtOnce) {
		profiles := make([]*food.Profile, len(some))
		for i, s := range some {
			profiles[i] = s.profile
		}
		pot := pouredOut(profiles, r.ens)
		sort := composition.SortOf(pot, r.of)
		for row, s := range some {
			if s.drawn = slices.Clone(sort.Of(row)); s.drawn == nil {
				s.drawn = r.ens.Of(0)
			}
		}
	}
}

// openWords names the foods that may come before for all that anybody knows: first those that may hold the most. One
// that only its mass bounds is counted, and not named: nobody would think of it.
func (r *ranking) openWords() string {
	const named = 3
	rivals := slices.DeleteFunc(slices.Clone(r.open), func(s *shelved) bool { return s.loose })
	slices.SortStableFunc(rivals, func(a, b *shelved) int { return cmp.Compare(b.known+b.most, a.known+a.most) })
	var list []string
	for _, s := range rivals {
		if name := shortName(s.profile.Food); !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	of := fmt.Sprintf("%s of %d foods of %s that may hold more", r.of.Words(), len(r.open), r.asked.profile.Food.ID.Table)
	switch shown := list[:min(len(list), named)]; {
	case len(shown) == 0:
	case len(shown) < len(r.open):
		of += ", such as " + clean.Listed(shown)
	default:
		of += ": " + clean.Listed(shown)
	}
	return of
}

// among says among how many foods a food was ranked.
func (r *ranking) among() string {
	text := fmt.Sprintf("ranked among %d foods of %s, pure substances apart", 1+len(r.rest), r.asked.profile.Food.ID.Table)
	if r.none > 0 {
		text += fmt.Sprintf("; of %d nobody has a figure", r.none)
	}
	return text
}

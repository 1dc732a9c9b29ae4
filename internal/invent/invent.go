package invent

import (
	"context"
	"math"
	"slices"
	"sync"

	"sipsum/internal/allergen"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// Kitchen is a drink with its targets, and what is needed to make others of it.
type Kitchen struct {
	Bench  fit.Bench
	Recipe *recipe.Recipe
	Text   []byte // of its file
	Aims   []fit.Aim
	Foods  recipe.Foods
	Seed   uint64

	Read  func(ctx context.Context, text []byte) (fit.Bench, error)            // a text in its place, as a drink
	Hurts func(ctx context.Context, a *assay.Assay) ([]caution.Caution, error) // what of a drink may hurt
}

// Result is what was found.
type Result struct {
	Passed
	Before  *fit.Result // the drink as it is written
	Already bool        // it meets every target, and as surely as an answer must
	Designs []Design
	Unread  []Unread // foods that would be answers if a figure that nobody knows were read
	Unmet   []Unmet  // of no design: what no foods of the tables bring
	Stops   []string // of no design: conditions each of which, were it not, would leave some
	Still   []string // foods of the drink as it is written that hold, or may hold, what is not wanted
	Missed  []Missed // what sets missed that were calculated and are no designs
	Refused []Refused
	Whole   bool // every set was tried

	Calculated int // sets that were calculated as the drinks that they make

	Enough   float64  // in what share of the draws an answer holds
	Forbids  []string // allergens that targets do not want
	Declared []string // those of them that the drink as it is written declares
	Goals    []string // targets that are no condition and order nothing
	Loose    []string // conditions that are no sum: they were judged where a design was calculated
}

// Refused is a set of foods that was found and is proposed to nobody.
type Refused struct {
	Parts []Part
	Why   caution.Caution
}

// search is one search.
type search struct {
	Kitchen
	pantry
	want       assay.Want
	aims       []fit.Aim // conditions alone
	conditions []condition
	liquids    []liquid
	pool       pool
	res        *Result
	own        addends // of the drink as it is written
	base       columns
	calculated int
	hurts      map[string]bool  // codes of what of the drink as written may hurt
	banned     map[food.ID]bool // foods that may kill by themselves
}

// ensemble gives the draws by which sets are searched: the first of the run's.
func (s *search) ensemble() estimate.Ensemble {
	n := int(unit.LimitOf("draws by which inventions are searched", "").High)
	return estimate.Ensemble{Seed: s.Seed, N: n + 1}
}

func (s *search) central() estimate.Ensemble { return estimate.Ensemble{Seed: s.Seed, N: 1} }

// Find looks for designs: what to put into a drink so that it meets its targets. Errors are *fail.Error.
func Find(ctx context.Context, k Kitchen, foods []*food.Food, f Filter) (*Result, error) {
	s := &search{Kitchen: k, pantry: newPantry(foods), res: &Result{Whole: true, Enough: enough()}, hurts: map[string]bool{}, banned: map[food.ID]bool{}}
	s.still(f)
	s.read(&f)
	var err error
	if s.res.Before, err = k.Bench.Judge(ctx, s.aims); err != nil {
		return nil, err
	}
	if s.res.Already = s.res.Before.Met && !(s.res.Before.Sure < s.res.Enough); s.res.Already {
		return s.res, nil
	}
	f.Alcohol = f.Alcohol || alcoholic(s.res.Before.After)
	s.liquids, s.res.Passed = candidates(foods, f)
	for _, step := range []func(context.Context) error{s.shelve, s.measure, s.look, s.unread} {
		if err := step(ctx); err != nil {
			return nil, err
		}
	}
	if s.res.Calculated = s.calculated; len(s.res.Designs) == 0 {
		s.unmet()
		return s.res, s.stops()
	}
	return s.res, nil
}

// still notes what of the drink as it is written nobody wants put in: nothing takes it out.
func (s *search) still(f Filter) {
	for _, it := range s.Recipe.Items {
		if holds, _ := f.judge(it.Food); holds && !slices.Contains(s.res.Still, it.Food.Name()) {
			s.res.Still = append(s.res.Still, it.Food.Name())
		}
	}
}

// alcoholic reports whether a drink has alcohol, so that more of it is no surprise.
func alcoholic(a *assay.Assay) bool {
	grams, _, _ := a.AmountOf(constituent.Alcohol)
	return hundred*grams > a.Mass.Mean*unit.LimitOf("alcohol of what is put into a drink without any", "g/100 g").High
}

// enough is the share of the draws in which an answer holds: what a verdict calls likely.
func enough() float64 { return claim.LikelyFrom() }

// read takes the targets for what they are to a search.
func (s *search) read(f *Filter) {
	for _, a := range s.Aims {
		if a.Goal != nil {
			s.res.Goals = append(s.res.Goals, a.Text)
			continue
		}
		var kept []*claim.Claim
		for _, c := range a.Conditions {
			if word, ok := c.Forbids(); ok {
				s.res.Forbids = append(s.res.Forbids, word)
				if is, err := s.Bench.Declared(word); err == nil && is {
					s.res.Declared = append(s.res.Declared, word)
				}
				f.Leaves = append(f.Leaves, allergen.LeavesOf(word)...)
				continue
			}
			kept = append(kept, c)
		}
		if len(kept) == 0 {
			continue
		}
		f.Alcohol = f.Alcohol || slices.Contains(a.Constituents(), constituent.Alcohol)
		f.Sodium = f.Sodium || slices.Contains(a.Constituents(), constituent.Sodium)
		for _, c := range kept {
			form, ok := c.Form()
			if !ok {
				s.res.Loose = append(s.res.Loose, c.Text)
				continue
			}
			s.conditions = append(s.conditions, condition{form, len(s.aims)})
			s.askOf(form, f)
		}
		s.aims = append(s.aims, a)
	}
	if g := s.Bench.Drink.Glass; g != nil {
		s.conditions = append(s.conditions, condition{claim.Form{Terms: []claim.Term{{Times: -1, Of: claim.Addend{Property: claim.Volume}}}, Const: g.Base()}, -1})
	}
	s.want = assay.Want{Draws: true, Chemistry: slices.ContainsFunc(s.conditions, func(c condition) bool {
		return slices.ContainsFunc(c.Terms, func(t claim.Term) bool { return t.Of.Property == claim.Brix })
	})}
}

// askOf lets in what a condition is about.
func (s *search) askOf(form claim.Form, f *Filter) {
	for _, t := range form.Terms {
		f.Alcohol = f.Alcohol || t.Of.Property == claim.Strength
	}
}

// shelve finds what preparations need beside the foods.
func (s *search) shelve(ctx context.Context) error {
	for _, l := range s.liquids {
		for _, in := range l.by.ingredients {
			a, name, err := unit.ParseAmount(in)
			id, coded := food.ParseID(name)
			if _, have := s.pantry[id]; err != nil || !coded || have || a.Number == 0 {
				continue
			}
			f, err := s.Foods.Food(ctx, id)
			if err != nil {
				return err
			}
			s.pantry[id] = f
		}
	}
	return nil
}

// measure works out what the drink as written is of each condition, and what a gram of each candidate adds.
func (s *search) measure(ctx context.Context) error {
	a, err := assay.Prepare(s.Recipe, s.ensemble()).Run(ctx, nil, s.want)
	if err != nil {
		return err
	}
	s.own = newAddends(a, s.ensemble().N)
	s.base = s.own.columns(s.conditions, nil, 1)
	for k, c := range s.conditions {
		for d := range s.base.hurt[k] {
			s.base.hurt[k][d] += c.Const
			s.base.help[k][d] += c.Const
		}
		s.pool.strict = append(s.pool.strict, c.Strict)
	}
	s.pool.base = s.base.hurt
	s.pool.most = unit.LimitOf("what is invented into a serving", "g").High
	s.pool.together = int(unit.LimitOf("foods of three that are tried together", "").High)
	s.pool.enough, s.pool.sure = s.res.Enough, claim.FirmFrom()
	return s.weigh(ctx)
}

// weigh measures a gram of each candidate at central values; what no pot can be made of is left out.
func (s *search) weigh(ctx context.Context) error {
	all := make([]columns, len(s.liquids))
	made := make([]bool, len(s.liquids))
	err := estimate.InBlocks(len(s.liquids), func(from, to int) error {
		water, err := s.assayed(ctx, waterCup, s.central()) // what a glass was asked it keeps: each block has its own
		if err != nil {
			return err
		}
		off := newAddends(water, 1)
		for i := from; i < to; i++ {
			if err := ctx.Err(); err != nil {
				return err
			}
			if a, err := s.assayed(ctx, s.liquids[i].cup(), s.central()); err == nil {
				all[i], made[i] = ofFood(s.liquids[i].food, a, 1).columns(s.conditions, &off, measured), true
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	var kept []liquid
	for i, l := range s.liquids {
		if !made[i] {
			s.res.Unmade++
			continue
		}
		c := candidate{grams: s.amounts(l), words: l.words, plain: l.plain()}
		if len(c.grams) == 0 {
			continue
		}
		for k := range s.conditions {
			c.centre = append(c.centre, all[i].hurt[k][0])
			c.helped = append(c.helped, all[i].help[k][0])
		}
		n := len(kept)
		kept = append(kept, l)
		c.drawn = sync.OnceValues(func() (columns, error) { return s.draw(ctx, n) })
		s.pool.list = append(s.pool.list, c)
	}
	s.liquids = kept
	s.pool.prepare()
	return nil
}

// draw measures a gram of a candidate in its draws.
func (s *search) draw(ctx context.Context, i int) (columns, error) {
	a, err := s.assayed(ctx, s.liquids[i].cup(), s.ensemble())
	if err != nil {
		return columns{}, err
	}
	water, err := s.assayed(ctx, waterCup, s.ensemble())
	if err != nil {
		return columns{}, err
	}
	off := newAddends(water, s.ensemble().N)
	c := ofFood(s.liquids[i].food, a, s.ensemble().N).columns(s.conditions, &off, measured)
	c.hand = s.hand(i)
	return c, nil
}

// hand is by how many grams of a serving whoever pours a candidate is off.
func (s *search) hand(i int) []float64 {
	p := s.parts(answer{of: []int{i}, grams: s.pool.list[i].grams})[0]
	off := amount.Hand{Ens: s.ensemble(), Scale: s.Bench.Drink.Scale}.Draw(p.Pour, "build/"+p.Name)
	pours := off[0]
	for d := range off {
		off[d] = (off[d] - pours) / float64(max(s.Bench.Drink.Serves, 1))
	}
	return off
}

// amounts are those of a serving that are tried, on the steps of the bar's scale.
func (s *search) amounts(l liquid) []float64 {
	serves := float64(max(s.Bench.Drink.Serves, 1))
	step := math.Pow10(-decimalsOf(s.Bench.Drink, l))
	if scale := s.Bench.Drink.Scale; scale != nil {
		step = scale.Base()
	}
	n := unit.LimitOf("amounts of a food that are tried", "").High
	var list []float64
	for i := range int(n) {
		total := serves * l.from * math.Pow(l.to/l.from, float64(i)/(n-1))
		x := math.Round(total/step) * step
		if x < step || x > serves*l.to+unit.Closeness {
			continue
		}
		if x /= serves; len(list) == 0 || x > list[len(list)-1]+unit.Closeness {
			list = append(list, x)
		}
	}
	return list
}

// decimalsOf are those with which an amount of a candidate is written.
func decimalsOf(d *drink.Drink, l liquid) int {
	if scale := d.Scale; scale != nil {
		return scale.Decimals
	}
	if l.from < littlest {
		return 1
	}
	return 0
}

// littlest is the amount in g from which on whole grams are fine enough.
const littlest = 5

// look finds designs: of as few foods as do, and calculates each as the drink that it makes.
func (s *search) look(ctx context.Context) error {
	if err := s.written(ctx); err != nil {
		return err
	}
	foods := unit.LimitOf("foods of an invention", "")
	for size := int(foods.Low); size <= int(foods.High); size++ {
		list, whole, err := s.pool.answers(size)
		if err != nil {
			return err
		}
		s.res.Whole = s.res.Whole && whole
		for _, a := range list {
			if s.full() {
				return nil
			}
			if s.alike(a) || slices.ContainsFunc(a.of, func(i int) bool { return s.banned[s.liquids[i].food.ID] }) {
				continue
			}
			if err := s.try(ctx, a); err != nil {
				return err
			}
		}
	}
	return nil
}

// written notes what of the drink as it is written may hurt.
func (s *search) written(ctx context.Context) error {
	list, err := s.Hurts(ctx, s.res.Before.After)
	for _, c := range list {
		s.hurts[c.Code] = true
	}
	return err
}

// full reports whether there are as many designs as anybody wants to see, or as many were calculated as may
// be.
func (s *search) full() bool {
	return len(s.res.Designs) >= int(unit.LimitOf("inventions that are shown", "").High) || s.calculated >= int(unit.LimitOf("inventions that are calculated", "").High)
}

// alike reports whether somebody would take a set for one that is a design already: what it pours beside
// sugar, acid and water is called alike.
func (s *search) alike(a answer) bool {
	words := func(of []int, plain bool) []string {
		var list []string
		for _, i := range of {
			if c := s.pool.list[i]; c.plain == plain {
				list = append(list, c.words...)
			}
		}
		return list
	}
	mine := words(a.of, false)
	for _, d := range s.res.Designs {
		theirs := words(d.of, false)
		if len(mine)+len(theirs) == 0 { // nothing but sugar, acid and water
			mine, theirs = words(a.of, true), words(d.of, true)
		}
		if slices.ContainsFunc(mine, func(w string) bool { return slices.Contains(theirs, w) }) {
			return true
		}
	}
	return false
}

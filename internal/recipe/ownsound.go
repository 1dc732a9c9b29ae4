package recipe

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// claim is what an own food states of a constituent, in grams in 100 g, or of energy in
// its own unit.
type claim struct {
	Least, most float64 // alike, unless only a limit is stated
	rounding    float64 // half of the last digit written
	variance    float64 // of the stated ±
	place       fail.Place
	text        string // as the file has it
	stated      bool   // and not the sum of what stands below it
}

// Claims are those of one own food, by constituent.
type Claims map[constituent.ID]claim

// ClaimOf gives what is stated of a constituent; factor brings it to the vocabulary's
// unit. ok is false for what states no amount.
func ClaimOf(v drink.Stated, c *constituent.Constituent, factor float64) (claim, bool) {
	_, scale, _ := food.LimitOf(c)
	if scale *= factor; scale == 0 || v.State == drink.Trace || v.State == drink.Unknown {
		return claim{}, false
	}
	k := claim{
		Least: v.Number * scale, most: v.Number * scale, place: v.Place, stated: true,
		rounding: math.Pow(10, -float64(v.Decimals)) / 2 * scale, variance: math.Pow(amount.HalfSD(&v.Quantity)*scale, 2),
		text: fmt.Sprintf("%s %s %s", v.Tag, note.Grams(v.Number), v.Unit),
	}
	if v.State == drink.Below {
		k.Least, k.most, k.rounding = 0, v.Limit*scale, 0
		k.text = fmt.Sprintf("%s < %s %s", v.Tag, note.Grams(v.Limit), v.Unit)
	}
	return k, true
}

// ownCheck looks at one own food.
type ownCheck struct {
	*resolver
	food  *drink.OwnFood
	found Claims
}

// checkOwn reports what no food can be: more of something than there is of the whole,
// parts that are more than what they are parts of, more energy than fat has. The last
// digit of a label is rounded and a ± is a ±: within these figures may differ. What is
// found first would only be said again by what follows.
func (r *resolver) checkOwn(o *drink.OwnFood, found Claims) (sound bool) {
	before, c := r.faults.Len(), ownCheck{r, o, found}
	for _, check := range []func(){c.each, c.salt, c.parts, c.whole} {
		if check(); r.faults.Len() > before {
			return false
		}
	}
	return true
}

func (c ownCheck) fault(at fail.Place, do, format string, args ...any) {
	c.faults.Add(at, do, "own food "+note.Quote(c.food.Code)+": "+format, args...)
}

func (c ownCheck) each() {
	for _, of := range constituent.All() {
		k, ok := c.found[of.ID]
		if limit, _, in := food.LimitOf(of); ok && k.most > limit.High+k.rounding {
			c.fault(k.place, "check the figure, its unit and per:", "%s makes %s %s in 100 g, and there is no food with more than %s", k.text, note.Grams(k.most), in, note.Grams(limit.High))
		}
	}
}

// salt holds sodium to what its densest salt has of it.
func (c ownCheck) salt() {
	k, ok := c.found[constituent.Sodium]
	formula, share := densestSalt()
	// guard: sodium is of a salt
	if most := 100 * share; ok && k.Least > most+tolerance(k, claim{}) {
		c.fault(k.place, "check the figure, its unit and per:", "%s makes %s g in 100 g, and the salt with the most of it (%s) has %s g", k.text, note.Grams(k.Least), formula, note.Grams(most))
	}
}

// sodiumSalts are those that foods are made with; all others have less sodium.
var sodiumSalts = []struct {
	formula string
	sodium  float64 // atoms
}{{"Na2CO3", 2}, {"NaCl", 1}}

// densestSalt gives the salt with the most sodium and its share of it, from the atomic weights.
func densestSalt() (formula string, share float64) {
	sodium := constituent.Must(constituent.Sodium).Molar
	for _, s := range sodiumSalts {
		molar, err := constituent.MolarMass(s.formula)
		if err != nil {
			panic("recipe: " + err.Error())
		}
		if x := s.sodium * sodium / molar; x > share {
			formula, share = s.formula, x
		}
	}
	return formula, share
}

func (c ownCheck) parts() {
	const do = "check the figures; a part is not more than what it is a part of"
	for _, of := range constituent.All() {
		k, ok := c.found[of.ID]
		parts, sum := c.found.below(of.ID)
		if of.Kind == constituent.Parent && ok && sum.Least > k.most+tolerance(sum, k) {
			c.fault(k.place, do, "%s is less than its parts: %s", k.text, strings.Join(parts, ", "))
		}
	}
	for _, pair := range besides {
		part, ok := c.found[pair.part]
		all, known := c.found[pair.of]
		if ok && known && part.Least > all.most+tolerance(part, all) {
			c.fault(part.place, do, "%s is more than %s", part.text, all.text)
		}
	}
}

func (c ownCheck) whole() {
	const do = "check the figures, their units and per:"
	if parts, sum, over := c.found.OverTheWhole(); over {
		c.fault(c.food.Place, do, "%s make %s g in 100 g", parts, note.Grams(sum.Least))
		return
	}
	wet := c.found[constituent.Water].plus(c.found[constituent.Alcohol])
	together, riders := wet, []string{}
	for _, id := range apart {
		if k, ok := c.found[id]; ok {
			together, riders = together.plus(k), append(riders, k.text)
		}
	}
	// guard: riders share the room
	if len(riders) > 1 && beyond(together) {
		c.fault(c.food.Place, do, "%s together leave no room beside its water and alcohol", strings.Join(riders, ", "))
		return
	}
	for _, of := range constituent.All() {
		if k, ok := c.found[of.ID]; ok && of.Kind == constituent.Rider && beyond(k.plus(wet)) {
			c.fault(k.place, do, "%s leaves no room beside its water and alcohol", k.text)
			return
		}
	}
	if parts, over := c.found.overByName(); over {
		c.fault(c.food.Place, do, "%s together make more than 100 g in 100 g", parts)
	}
}

// OverTheWhole tells whether all that is stated together is more than 100 g in 100 g,
// and names it.
func (found Claims) OverTheWhole() (parts string, sum claim, over bool) {
	list, sum := found.below(constituent.Mass)
	return strings.Join(list, ", "), sum, beyond(sum)
}

// overByName tells whether single substances are more than the whole together: sugars, acids
// and others of the ledger's mass, and what is counted beside it. No part of the one is of the
// other; what ash holds is left to ash.
func (found Claims) overByName() (parts string, over bool) {
	var list []string
	var sum claim
	for _, of := range constituent.All() {
		k, ok := found[of.ID]
		substance := of.Kind == constituent.Leaf && of.Molar > 0
		if beside := slices.Contains(apart, of.ID) && !slices.Contains(salts, of.ID); ok && (substance || beside) {
			list, sum = append(list, k.text), sum.plus(k)
		}
	}
	return strings.Join(list, ", "), beyond(sum)
}

func beyond(sum claim) bool {
	return sum.Least > unit.LimitOf("amount", "g/100 g").High+tolerance(sum, claim{})
}

// besides lists what is part of something without being a part of the ledger's mass.
var besides = []struct{ part, of constituent.ID }{
	{constituent.AddedSugar, constituent.Sugar}, {"FATRN", constituent.Fat}, {"CHOLE", constituent.Fat},
}

// salts are what ash is mostly made of.
var salts = []constituent.ID{constituent.Sodium, "K", "CA", "MG", "CLD"}

// apart are substances that are no parts of each other, so that their masses add up.
var apart = append([]constituent.ID{
	"CAFFN", "THEBRN", "trigonelline", "CHLRAC", "NARIN", "HESPD", "VITC", "BENAC", "SORAC", "GALLAC", "CATEC", "theaflavins", "theanine", "SO2", "quinine", "glycyrrhizin",
	"ASPM", "ACESK", "sucralose", "saccharin", "cyclamate", "steviol", "neohesperidin-DC",
}, salts...)

// below adds up what is stated below a total, each part by its own figure or else by what
// stands below it, and names the figures.
func (found Claims) below(total constituent.ID) (parts []string, sum claim) {
	if total == constituent.Ash {
		for _, id := range salts {
			if k, ok := found[id]; ok {
				parts, sum = append(parts, k.text), sum.plus(k)
			}
		}
		return parts, sum
	}
	for _, c := range constituent.Sums().Children(total) {
		k, ok := found[c.ID]
		under, least := found.below(c.ID)
		if !ok || least.Least > k.most { // more than rounded: kept as the parts have it
			parts, sum = append(parts, under...), sum.plus(least)
			continue
		}
		parts, sum = append(parts, k.text), sum.plus(k)
	}
	return parts, sum
}

func (k claim) plus(other claim) claim {
	k.Least, k.most = k.Least+other.Least, k.most+other.most
	k.rounding, k.variance = k.rounding+other.rounding, k.variance+other.variance
	return k
}

// tolerance is by how much two claims may differ and still say the same.
func tolerance(a, b claim) float64 {
	const slack = 1e-9
	return a.rounding + b.rounding + unit.LimitOf("excess of parts", "sd").High*math.Sqrt(a.variance+b.variance) + slack
}

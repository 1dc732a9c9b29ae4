package sweep_test

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// partners are what each liquid is mixed with, half and half. Sugar syrup is made
// of equal parts.
var partners = []struct{ name, line string }{
	{"water", "50 g core:water-pure"},
	{"tap water", "50 g core:water-tap"},
	{"lemon juice", "50 g core:lemon-juice"},
	{"espresso", "50 g core:espresso"},
	{"milk", "50 g core:milk-whole"},
	{"sugar syrup", "25 g core:sugar-white\n  - 25 g core:water-pure"},
}

func blendOf(lines ...string) string {
	text := "drink: \"Half and Half\"\nserves: 1\nbuild:\n"
	for _, l := range lines {
		text += "  - " + l + "\n"
	}
	return text
}

// liquids are the foods that pour: by the table's own figures they hold enough water
// or alcohol, and their group is one of liquids.
func (k *kitchen) liquids() []*food.Food {
	var list []*food.Food
	state := map[string]string{}
	for _, row := range rowsOf("groups.csv") {
		state[row["group"]] = row["state"]
	}
	for _, f := range k.list {
		wet := in100(f, "WATER") + in100(f, "ALC")
		if wet >= limit("water least") && state[f.Group] == "liquid" {
			list = append(list, f)
		}
	}
	return list
}

// blend is a liquid, what it is mixed with, and both together.
type blend struct{ liquid, partner, both *subject }

// blendLaw is something that holds of a blend and its two liquids.
type blendLaw struct {
	law
	broken func(blend, say)
}

var blendLaws = []blendLaw{
	{law{name: "blend adds up", says: "a blend holds what its two halves hold", from: "conservation of mass"}, blendAddsUp},
	{law{name: "blend pH between", says: "a blend's pH lies between those of its halves", from: "charge rises strictly with acidity: package acid"}, blendPHBetween},
	{law{name: "blend acidity is the mean", says: "a blend's titratable acidity is the mean of its halves'", from: "base adds up"}, blendAcidityIsTheMean},
	{law{name: "water thins", says: "water raises no acidity, sugar, caffeine in 100 g, and no °Brix but of strong alcohol", from: "conservation of mass"}, waterThins},
}

func blendAddsUp(b blend, broken say) {
	for _, f := range b.both.assay.PerServing {
		id := f.Constituent.ID
		x, y := b.liquid.mean(id)*50/b.liquid.assay.Mass.Mean, b.partner.mean(id)*50/b.partner.assay.Mass.Mean
		if id == constituent.AddedSugar && b.both.mean(id) <= x+y {
			continue // the water of the one brings the concentrated juice of the other back: 21 CFR 101.9(c)(6)(iii)
		}
		if got := b.both.mean(id); math.Abs(got-x-y) > 1e-6*math.Max(got, 1e-6) {
			broken(math.Abs(got-x-y)/math.Max(got, 1e-6), "%s: %.5g and %.5g make %.5g", id, x, y, got)
		}
	}
}

// ph gives the pH of a meter, if it is not withheld.
func (s *subject) ph() (float64, bool) {
	e := s.assay.Chemistry.PHMeter
	return e.Mean, e.Why == "" && e.Unit != ""
}

// acidity gives g/100 g to pH 8.1, if it is not withheld.
func (s *subject) acidity() (float64, bool) {
	if len(s.assay.Chemistry.Acidity) == 0 {
		return 0, false
	}
	e := s.assay.Chemistry.Acidity[0].Per100g
	return e.Mean, e.Why == "" && e.Unit != ""
}

func blendPHBetween(b blend, broken say) {
	x, okX := b.liquid.ph()
	y, okY := b.partner.ph()
	got, ok := b.both.ph()
	if !ok || !okX || !okY {
		return
	}
	low, high := math.Min(x, y)-limit("blend pH"), math.Max(x, y)+limit("blend pH")
	if got < low || got > high {
		broken(math.Max(low-got, got-high), "pH %.2f and %.2f make %.2f", x, y, got)
	}
}

func blendAcidityIsTheMean(b blend, broken say) {
	x, okX := b.liquid.acidity()
	y, okY := b.partner.acidity()
	got, ok := b.both.acidity()
	if !ok || !okX || !okY || x == 0 || y == 0 { // an alkaline water takes some of the other's acid
		return
	}
	want := (x + y) / 2
	if off := math.Abs(got - want); off > limit("blend acidity")*want+limit("blend acidity least") {
		broken(off/math.Max(want, 0.01), "acidity %.3g and %.3g make %.3g g/100 g", x, y, got)
	}
}

func waterThins(b blend, broken say) {
	if b.partner.name != partners[0].name {
		return
	}
	for _, id := range []constituent.ID{"SUGAR", "CAFFN", "OA", "ALC", "ENERC"} {
		x, ok := b.liquid.assay.Per100g.Find(id)
		y, ok2 := b.both.assay.Per100g.Find(id)
		if ok && ok2 && !x.Unknown && !y.Unknown && y.Mean > x.Mean*(1+1e-6)+rounding {
			broken(y.Mean/x.Mean, "%s: %.4g in 100 g, with water %.4g", id, x.Mean, y.Mean)
		}
	}
	x, okX := b.liquid.acidity()
	if y, ok := b.both.acidity(); ok && okX && y > x*(1+1e-6)+1e-6 && y > chemistry.HardlySour { // less no burette reads
		broken(y/math.Max(x, 1e-3), "acidity %.4g, with water %.4g g/100 g", x, y)
	}
	if b.liquid.mean("ALC")/b.liquid.assay.Mass.Mean > limit("alcohol refracts most") {
		return // more water bends light more there
	}
	bx, by := b.liquid.assay.Chemistry.Brix, b.both.assay.Chemistry.Brix
	if isNumber(bx.Mean) && isNumber(by.Mean) && by.Mean > bx.Mean*(1+1e-6) {
		broken(by.Mean/bx.Mean, "%.4g °Bx, with water %.4g", bx.Mean, by.Mean)
	}
}

// judgeBlend asks the laws of blends.
func (b *breaches) judgeBlend(x blend) {
	for _, l := range blendLaws {
		var worst *breach
		l.broken(x, func(size float64, format string, args ...any) {
			if worst == nil || size > worst.size {
				worst = &breach{size, x.both.name, x.both.text, fmt.Sprintf(format, args...)}
			}
		})
		if worst != nil {
			b.add(l.name, *worst)
		}
	}
}

// everyNthLiquid is in the sample.
const everyNthLiquid = 41

// Each liquid half and half with each partner keeps every law.
func TestEveryLiquidHalfAndHalf(t *testing.T) {
	k := newKitchen(t)
	named := make([]law, len(blendLaws))
	for i, l := range blendLaws {
		named[i] = l.law
	}
	b := newBreaches(laws, printedLaws, named, refusalLaws)
	halves := map[string]*subject{}
	for _, p := range partners {
		s, refused := k.serve(p.name, blendOf(p.line))
		if refused != nil {
			t.Fatal(refused.err)
		}
		halves[p.name] = s
	}
	var phs, known sync.Map
	sideBySide(sample(k.liquids(), everyNthLiquid), func(f *food.Food) {
		liquid, refused := k.serve(f.ID.String(), alone(f))
		if refused != nil {
			return // TestEveryFoodAlone says so
		}
		for _, p := range partners {
			name := f.ID.String() + " and " + p.name
			text := blendOf("50 g "+f.ID.String(), p.line)
			both, refused := k.serve(name, text)
			if refused != nil {
				b.add(foodIsServed.name, breach{1, name, text, refused.err.Error()})
				continue
			}
			b.judge(both, laws, printedLaws)
			b.judgeBlend(blend{liquid, halves[p.name], both})
			phs.Store(name, true)
			if _, ok := both.ph(); ok {
				known.Store(name, true)
			}
		}
	})
	t.Logf("%d liquids, %d blends, %d of them with a pH", len(sample(k.liquids(), everyNthLiquid)), count(&phs), count(&known))
	b.report(t)
}

func count(m *sync.Map) (n int) {
	m.Range(func(any, any) bool { n++; return true })
	return n
}

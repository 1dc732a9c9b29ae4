package sweep_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/food"
)

// cook writes random drink files. What it writes is as text, so that the parser is
// swept too; the seed is of the drink, so that each drink is the same in every sample.
type cook struct {
	*rand.Rand
	kitchen *kitchen
	number  int

	components []string // as written
	names      []string
	build      []string
	finish     []string
	foods      []string
	mass       float64 // of the first component as made, about
	used       []use   // what is in the drink, for coverage
}

// use is a group, step or reading that a drink has.
type use struct{ kind, name string }

func (c *cook) note(kind, name string) { c.used = append(c.used, use{kind, name}) }

// stepNames are every step of the grammar; a drink has at least the one whose turn it is.
var stepNames = []string{
	"reduce", "strain", "press", "curdle", "brew", "steep", "add", "chill", "dilute", "invert", "hydrolyse", "ferment",
	"caramelise", "concentrate", "wash", "heat", "split", "carbonate", "foam", "treat", "adjust", "clarify", "convert", "cool", "measured",
}

// readingNames are every reading; each is written so that it agrees and so that it does not.
var readingNames = []string{"mass", "brix", "tds", "density", "abv", "ph", "ta", "titration"}

// pick gives one of several.
func pick[T any](c *cook, list []T) T { return list[c.IntN(len(list))] }

// between gives a number in a range, with the digits that a hand would write.
func (c *cook) between(low, high float64) float64 {
	x := low + (high-low)*c.Float64()
	switch {
	case x >= 100:
		return math.Round(x)
	case x >= 1:
		return math.Round(x*10) / 10
	}
	return math.Max(math.Round(x*1000)/1000, 0.001)
}

// from gives a random food of some groups.
func (c *cook) from(groups ...string) *food.Food {
	return pick(c, c.kitchen.groups[pick(c, groups)])
}

// turn gives the food of the group whose turn it is, so that all come up.
func (c *cook) turn() *food.Food {
	groups := order(c.kitchen.groups)
	return c.from(groups[c.number%len(groups)])
}

// line writes so many grams of a food, now and then by volume or with a range.
func (c *cook) line(grams float64, f *food.Food) string {
	c.note("group", f.Group)
	switch d := f.Density.GramsPerMl; {
	case d > 0 && c.IntN(5) == 0:
		return fmt.Sprintf("%.4g ml %s", math.Max(grams/d, 0.1), f.ID)
	case c.IntN(6) == 0:
		return fmt.Sprintf("%.4g g ± %.3g g %s", grams, grams*0.05, f.ID)
	}
	return fmt.Sprintf("%.4g g %s", grams, f.ID)
}

// pot is a component in the making.
type pot struct {
	lines, steps []string
	mass         float64 // about
}

// Groups by what a step needs.
var (
	pouring = []string{"water", "coffee drink", "tea drink", "whey", "plant drink", "fruit juice", "citrus juice", "vegetable juice", "syrup", "vinegar", "wine", "beer", "soft drink", "spirit", "milk"}
	juicy   = []string{"fruit juice", "citrus juice", "vegetable juice"}
	milky   = []string{"milk"}
	fatty   = []string{"oil", "cream"}
	leafy   = []string{"herb", "spice", "tea leaf", "citrus fruit", "fruit", "cocoa", "coffee bean", "seed", "nut"}
	sugary  = []string{"sugar", "syrup", "honey"}
)

// step adds a step to a pot, with ingredients that it can work on and parameters that
// are usually possible.
func (c *cook) step(p *pot, name string) {
	c.note("step", name)
	part := func(low, high float64) float64 { return math.Round(p.mass * c.between(low, high)) }
	write := func(format string, args ...any) { p.steps = append(p.steps, fmt.Sprintf(format, args...)) }
	need := func(grams float64, groups ...string) {
		p.lines = append(p.lines, c.line(grams, c.from(groups...)))
		p.mass += grams
	}
	through := pick(c, []string{"cloth", "paper", "metal", "sieve", "bag"})
	switch name {
	case "reduce":
		if c.IntN(2) == 0 {
			need(200, pouring[:8]...)
			write("reduce: {by: %.2g %%%s}", c.between(0.5, 30), pick(c, []string{"", ", at: 101 °C, for: 15 min"}))
			p.mass *= 0.9
			return
		}
		need(200, pouring[:8]...)
		p.mass = part(0.6, 0.98)
		write("reduce: {to: %g g}", p.mass)
	case "strain", "press":
		need(100, juicy...)
		p.mass = part(0.3, 0.8)
		write("%s: {collect: %g g, through: %s}", name, p.mass, through)
	case "curdle":
		need(200, milky...)
		need(8, "citrus juice", "vinegar")
		p.mass = part(0.3, 0.7)
		write("curdle: {collect: %g g, by: %s%s}", p.mass, pick(c, []string{"acid", "rennet"}), pick(c, []string{"", ", at: 20 °C", ", at: 90 °C"}))
	case "brew":
		dose := c.between(10, 30)
		p.lines, p.steps = nil, nil
		need(dose, "coffee bean", "tea leaf")
		need(dose*15, "water")
		p.mass = math.Round(dose * c.between(3, 11))
		write("brew: {out: %g g, yield: %.3g %%}", p.mass, c.between(14, 24))
	case "steep":
		need(150, pouring...)
		f := c.line(c.between(0.5, 12), c.from(leafy...))
		p.mass = part(0.4, 0.9)
		write("steep: {ingredients: [%s]%s%s, collect: %g g}", f, pick(c, []string{"", ", at: 90 °C", ", at: 4 °C"}), pick(c, []string{"", ", for: 5 min", ", for: 12 h"}), p.mass)
	case "add":
		f := c.turn()
		grams := c.between(0.2, 30)
		p.mass += grams
		write("add: [%s]", c.line(grams, f))
	case "cool":
		write("cool: {to: %d °C}", pick(c, []int{-2, 4, 20}))
	case "clarify":
		need(150, juicy...)
		by := pick(c, []string{"milk", "egg white", "gelatine", "agar", "centrifuge"})
		with, sour := "", 0.0
		switch by {
		case "milk":
			with, sour = c.line(60, c.from(milky...)), 60
			need(30, "citrus juice")
		case "egg white":
			with = "8 g core:egg-white"
		case "gelatine":
			with = "1.5 g core:gelatin"
		case "agar":
			with = "0.4 g core:agar"
		}
		if p.mass = math.Round((p.mass + sour) * c.between(0.3, 0.7)); with != "" {
			with = ", with: " + with
		}
		write("clarify: {by: %s%s, collect: %g g}", by, with, p.mass)
	case "convert":
		need(60, "cereal")
		need(120, "water")
		write("convert: {starch: %.2g %%, to: %s}", c.between(1, 95), pick(c, []string{"glucose", "maltose"}))
	case "chill":
		if c.IntN(3) == 0 {
			write("chill: {from: %d °C ± 2 °C, to: %d °C%s}", pick(c, []int{20, 45, 80}), pick(c, []int{1, 4, 10}), pick(c, []string{"", ", ice: -18 °C"}))
			p.mass *= 1.2
			return
		}
		melt := part(0.02, 0.4)
		p.mass += melt
		write("chill: {melt: %g g ± %.3g g}", melt+1, (melt+1)/5)
	case "dilute":
		if c.IntN(3) == 0 {
			need(60, "sugar")
			need(60, "water")
			write("dilute: {brix: %.3g}", c.between(3, 12))
			p.mass *= 4
			return
		}
		p.mass = part(1.15, 4)
		write("dilute: {to: %g g}", p.mass)
	case "invert":
		need(60, sugary...)
		need(40, "water")
		write("%s", pick(c, []string{"invert: {share: 40 %}", "invert: {share: 2 % ± 1 %}", "invert: {share: 100 %}", "invert: {ph: 2.8, at: 90 °C, for: 20 min}"}))
	case "hydrolyse":
		need(100, "milk", "whey", "cultured milk")
		write("hydrolyse: {lactose: %.3g %%}", c.between(1, 99))
	case "ferment":
		need(200, juicy...)
		need(12, "sugar")
		if c.IntN(3) == 0 {
			write("ferment: {after: {%s}}", pick(c, []string{"abv: 0.8 %", "abv: 1.5 % ± 0.3 %"}))
			return
		}
		write("ferment: {after: {%s}, for: 2 days, because: \"invented\"}", pick(c, []string{
			"ALC: 0.6 g", "ALC: 0.2 g, LACAC: 120 mg", "LACAC: 300 mg, ACEAC: < 50 mg", "ALC: 1.1 g ± 0.2 g, ACEAC: 80 mg", "ACEAC: 200 mg",
		}))
	case "caramelise":
		need(80, "sugar")
		need(30, "water")
		write("caramelise: {loss: %.3g %% ± %.2g %%}", c.between(3, 40), c.between(0.1, 3))
	case "concentrate":
		need(250, juicy...)
		p.mass = part(0.6, 0.95)
		write("concentrate: {by: %s, to: %g g}", pick(c, []string{"freezing", "vacuum"}), p.mass)
	case "wash":
		need(120, "spirit", "wine", "coffee drink")
		f := c.line(c.between(5, 30), c.from(fatty...))
		p.mass = part(0.3, 0.8)
		write("wash: {fat: [%s], collect: %g g}", f, p.mass)
	case "heat":
		rows := rowsOf("retention.csv")
		if c.IntN(2) == 0 {
			need(20, "sugar")
			need(150, juicy...)
			write("heat: {at: %.3g °C, for: %.2g min}", c.between(50, 100), c.between(0.5, 60))
			return
		}
		write("heat: {code: \"%s\"}", pick(c, rows)["code"])
	case "adjust":
		p.lines, p.steps, p.mass = nil, nil, 0
		need(150, "fruit juice", "citrus juice")
		need(100, "water")
		write("adjust: {%s}", pick(c, []string{"ph: 2.1, with: core:citric-acid", "ph: 5.2, with: core:sodium-bicarbonate", "ta: 30 g/l, with: core:malic-acid", "ta: 0.1 %, with: core:water-pure", "brix: 45, with: core:sugar-white", "brix: 2.5, with: core:water-pure"}))
	case "split":
		p.mass = part(0.2, 0.7)
		write("split: {keep: {FAT: %.3g %%, PROCNT: %.3g %% ± 5 %%, FIBTG: %.2g %%}, collect: %g g, because: \"invented\"}", c.between(1, 30), c.between(10, 90), c.between(1, 20), p.mass)
	case "foam":
		need(100, "water")
		write("%s", pick(c, []string{"foam: {overrun: 80 %}", "foam: {charge: 4 g, gas: N2O, bottle: 1 l, at: 4 °C, overrun: 250 % ± 50 %}", "foam: {charge: 4 g, gas: CO2, bottle: 1 l, at: 6 °C, overrun: 20 %}", "foam: {charge: 2 g, gas: N2, bottle: 1.5 l, at: 4 °C}", "foam: {charge: 8 g, gas: N2O}"}))
	case "treat":
		write("treat: \"smoked, apple wood\"")
	case "carbonate":
		need(100, "water")
		write("%s", pick(c, []string{"carbonate: {left: 3.0 g/l ± 0.5 g/l}", "carbonate: {left: 0.4 g/l}", "carbonate: {bottle: 1 l, charge: 4 g, at: 4 °C}", "carbonate: {bottle: 1 l, charge: 8 g, at: 6 °C, left: 2 g/l ± 1 g/l}"}))
	}
}

// componentNames are ordinary and odd: what stands in a name is printed.
var componentNames = []string{"base", "syrup", "sour mix", "sirop d’été", "the 50/50 %d blend", "甘酒", "a name so long that it will not stand in any column of any page, however wide it be made"}

// component writes a house-made part with steps; reading is what was read of it, or
// empty.
func (c *cook) component(steps []string, reading string) string {
	name := pick(c, componentNames)
	for _, have := range c.names {
		if have == name {
			name = fmt.Sprintf("%s %c", name, 'b'+len(c.names))
		}
	}
	p := &pot{}
	for range 1 + c.IntN(3) {
		grams := c.between(5, 120)
		f := c.turn()
		if c.IntN(2) == 0 {
			f = c.from(pouring...)
		}
		if f.Group == "salt" || f.Group == "acid" || f.Group == "gum" {
			grams = c.between(0.1, 3)
		}
		p.lines, p.mass = append(p.lines, c.line(grams, f)), p.mass+grams
	}
	if c.number%3 == 0 && readingNames[c.number/3%len(readingNames)] == "abv" {
		p.lines, p.mass = append(p.lines, c.line(90, c.from("spirit", "wine"))), p.mass+90 // an alcoholometer wants alcohol
	}
	for _, s := range steps {
		c.step(p, s)
	}
	var out strings.Builder
	fmt.Fprintf(&out, "  \"%s\":\n    ingredients:\n", name)
	for _, l := range p.lines {
		fmt.Fprintf(&out, "      - %s\n", l)
	}
	if len(p.steps) > 0 {
		out.WriteString("    steps:\n")
		for _, s := range p.steps {
			fmt.Fprintf(&out, "      - %s\n", s)
		}
	}
	if reading != "" {
		fmt.Fprintf(&out, "    measured: {%s}\n", reading)
	}
	if c.IntN(4) == 0 {
		out.WriteString("    keeps: 5 days at 4 °C\n")
	}
	if len(c.names) == 0 {
		c.mass = p.mass
	}
	c.names, c.components = append(c.names, name), append(c.components, out.String())
	return name
}

// ownFood writes a food of the file itself, plausible and incomplete.
func (c *cook) ownFood() string {
	groups := order(c.kitchen.groups)
	group := ""
	if c.IntN(3) > 0 {
		group = fmt.Sprintf("    group: %s\n", groups[c.IntN(len(groups))])
	}
	fill := ""
	if c.IntN(2) == 0 {
		fill = fmt.Sprintf("    fill: \"%s\"\n", c.from(pouring...).ID)
	}
	values := []string{fmt.Sprintf("CHOAVL: %.3g g", c.between(6, 14)), fmt.Sprintf("SUGAR: %.3g g", c.between(0, 6)), fmt.Sprintf("FAT: %.3g g", c.between(0, 4)), "FASAT: trace", "PROCNT: < 0.5 g", fmt.Sprintf("NA: %.3g mg", c.between(1, 90)), "CAFFN: unknown"}
	c.note("group", "own")
	c.foods = append(c.foods, fmt.Sprintf("  house:\n    name: \"House %d\"\n%s%s    per: 100 ml\n    density: 1.03 g/ml\n    values: {%s}\n%s    source: \"invented\"\n",
		c.number, group, fill, strings.Join(values[:2+c.IntN(len(values)-2)], ", "), pick(c, []string{"", "    allergens: [oats]\n", "    allergens: []\n"})))
	return "own:house"
}

// newCook gives the cook of a drink. Its steps and readings are those whose turn it is.
func newCook(k *kitchen, number int) *cook {
	c := &cook{Rand: rand.New(rand.NewPCG(11, uint64(number))), kitchen: k, number: number}
	return c
}

// drink writes the drink. reading is a reading for its first component; an empty one
// leaves it out.
func (c *cook) drink(reading, finishReading string) string {
	n := c.IntN(4)
	for i := range max(n, 1) {
		steps := []string{}
		if i == 0 {
			if s := stepNames[c.number%len(stepNames)]; s != "measured" {
				steps = append(steps, s)
			}
		}
		for range c.IntN(3) {
			if i > 0 || c.IntN(2) == 0 {
				steps = append(steps, stepNames[c.IntN(len(stepNames)-1)])
			}
		}
		r := ""
		if i == 0 {
			r = reading
		}
		name := c.component(steps, r)
		c.build = append(c.build, fmt.Sprintf("%.3g g \"%s\"", c.between(5, 90), name))
	}
	for range c.IntN(3) {
		f := c.turn()
		grams := c.between(3, 60)
		if f.Group == "salt" || f.Group == "acid" {
			grams = c.between(0.05, 2)
		}
		c.build = append(c.build, c.line(grams, f))
	}
	if c.IntN(7) == 0 {
		c.build = append(c.build, fmt.Sprintf("%.3g ml %s", c.between(5, 80), c.ownFood()))
	}
	if c.IntN(9) == 0 {
		c.build = append(c.build, fmt.Sprintf("4 %% %s", c.from(pouring...).ID))
	}
	switch c.IntN(6) {
	case 0:
		c.note("step", "chill")
		c.finish = append(c.finish, "chill: {melt: 20 g ± 5 g}")
	case 1:
		c.note("step", "carbonate")
		c.finish = append(c.finish, "carbonate: {left: 2.5 g/l ± 0.5 g/l}")
	case 2:
		c.note("step", "add")
		c.finish = append(c.finish, fmt.Sprintf("add: %s", c.line(5, c.from(pouring...))))
	}
	if finishReading != "" {
		c.note("step", "measured")
		c.finish = append(c.finish, "measured: {"+finishReading+"}")
	}
	return c.text()
}

func (c *cook) text() string {
	var out strings.Builder
	name := pick(c, []string{"Random", "Coffee Random", "Tea and %s", "Ånd “quoted”"})
	fmt.Fprintf(&out, "drink: \"%s %d\"\nserves: %d\n", name, c.number, 1+c.IntN(4))
	if c.IntN(2) == 0 {
		fmt.Fprintf(&out, "at: %d °C\n", pick(c, []int{4, 6, 20, 45, 62}))
	}
	if c.IntN(3) == 0 {
		out.WriteString("scale: 0.1 g\n")
	}
	if c.IntN(4) == 0 {
		out.WriteString("glass: 180 ml\n")
	}
	if c.IntN(3) == 0 && len(c.names) > 0 {
		fmt.Fprintf(&out, "compare-with: \"%s\"\n", c.names[0])
	}
	if len(c.foods) > 0 {
		out.WriteString("foods:\n" + strings.Join(c.foods, ""))
	}
	if len(c.components) > 0 {
		out.WriteString("components:\n" + strings.Join(c.components, ""))
	}
	out.WriteString("build:\n")
	for _, l := range c.build {
		fmt.Fprintf(&out, "  - %s\n", strings.ReplaceAll(l, "\"", ""))
	}
	if len(c.finish) > 0 {
		out.WriteString("finish:\n")
		for _, s := range c.finish {
			fmt.Fprintf(&out, "  - %s\n", s)
		}
	}
	switch c.IntN(5) {
	case 0:
		fmt.Fprintf(&out, "garnish:\n  - {food: \"%s\", amount: 2 g, eaten: false}\n", c.from("herb", "citrus fruit").ID)
	case 1:
		fmt.Fprintf(&out, "garnish:\n  - {food: \"%s\", amount: 2 g}\n", c.from("herb", "nut", "cocoa").ID)
	}
	if c.IntN(6) == 0 {
		out.WriteString("may-contain: [almond]\n")
	}
	return out.String()
}

// reading writes what was read of the first component: near what is expected of it
// (agree), or far from it.
func (c *cook) reading(kind string, agree bool, first assay.Component) string {
	off := 1.0
	if !agree {
		off = pick(c, []float64{0.5, 0.7, 1.3, 2})
	} else {
		off = 0.98 + 0.04*c.Float64()
	}
	ch := first.Chemistry
	switch kind {
	case "mass":
		return fmt.Sprintf("mass: %.1f g ± 1 g", c.mass*off)
	case "brix":
		return fmt.Sprintf("brix: %.3f ± 0.2", math.Min(math.Max(orElse(ch.Brix.Mean, 10)*off, 0.3), 85))
	case "tds":
		return fmt.Sprintf("tds: %.3f %% ± 0.1 %%", math.Min(math.Max(orElse(ch.Brix.Mean, 10)*0.9*off, 0.3), 90))
	case "density":
		return fmt.Sprintf("density: %.4f g/ml ± 0.002 g/ml", ch.Density.Mean*(1+(off-1)/8))
	case "abv":
		f, _ := first.Constituents.Find("ALC")
		abv := 100 * f.Mean / 0.7893 * ch.Density.Mean / first.Mass.Mean
		return fmt.Sprintf("abv: %.3f %% ± 0.3 %%", math.Min(orElse(abv, 0.5)*off, 95))
	case "ph":
		return fmt.Sprintf("ph: %.2f ± 0.05", math.Min(math.Max(orElse(ch.PHMeter.Mean, 4)*(1+(off-1)/3), 1.5), 8))
	case "ta":
		ta := 0.5
		if len(ch.Acidity) > 0 {
			ta = orElse(ch.Acidity[0].Per100g.Mean, 0.5)
		}
		return fmt.Sprintf("ta: %.4f g/100 g ± 0.05 g/100 g", math.Max(ta*off, 0.06))
	}
	points, before := []string{}, -1.0
	for _, p := range ch.Curve {
		if p.Base >= 0 && p.Base > before+0.05 {
			points = append(points, fmt.Sprintf("[%.2f ml, %.2f]", p.Base*off, p.PH))
			before = p.Base
		}
	}
	if len(points) < 3 || !strings.HasPrefix(points[0], "[0.00") {
		points = []string{"[0 ml, 4.10]", "[2 ml, 4.70]", "[4 ml, 5.40]", "[6 ml, 6.60]", "[8 ml, 8.30]"}
	}
	return "titration: [" + strings.Join(points, ", ") + "], base: 0.1 mol/l, sample: 10 g"
}

func orElse(x, other float64) float64 {
	if isNumber(x) && x > 0 {
		return x
	}
	return other
}

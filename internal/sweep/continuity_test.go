package sweep_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"sipsum/internal/assay/assaytest"
)

// path is a step whose parameter goes from no effect (0) to a strong one (1). mass is
// that of the pot before it.
type path struct {
	name  string
	write func(p, mass float64) string // the step as written
	sets  bool                         // at 0 the step does something all the same: there is no drink without it
}

// f writes a number without an exponent.
func f(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// paths are every parameter of every step that can change a pH or an acidity.
var paths = []path{
	{name: "reduce by", write: func(p, _ float64) string { return "reduce: {by: " + f(40*p) + " %}" }},
	{name: "reduce to", write: func(p, m float64) string { return "reduce: {to: " + f(m*(1-0.4*p)) + " g}" }},
	{name: "heat", write: func(p, _ float64) string { return "heat: {at: 90 °C, for: " + f(30*p) + " min}" }},
	{name: "boil down in a time", write: func(p, _ float64) string { return "reduce: {by: " + f(40*p) + " %, at: 100 °C, for: 10 min}" }, sets: true},
	{name: "chill", write: func(p, m float64) string { return "chill: {melt: " + f(m*p) + " g}" }},
	{name: "dilute", write: func(p, m float64) string { return "dilute: {to: " + f(m*(1+2*p)) + " g}" }},
	{name: "concentrate", write: func(p, m float64) string { return "concentrate: {by: freezing, to: " + f(m*(1-0.4*p)) + " g}" }},
	{name: "concentrate in vacuum", write: func(p, m float64) string { return "concentrate: {by: vacuum, to: " + f(m*(1-0.4*p)) + " g}" }},
	{name: "chill by heat", write: func(p, _ float64) string { return "chill: {from: " + f(4.001+70*p) + " °C, to: 4 °C}" }},
	{name: "clarify", write: func(p, m float64) string { return "clarify: {by: centrifuge, collect: " + f(m*(0.2+0.5*p)) + " g}" }, sets: true},
	{name: "ferment to a strength", write: func(p, _ float64) string { return "ferment: {after: {abv: " + f(2*p) + " %}}" }},
	{name: "invert", write: func(p, _ float64) string { return "invert: {share: " + f(100*p) + " %}" }},
	{name: "hydrolyse", write: func(p, _ float64) string { return "hydrolyse: {lactose: " + f(100*p) + " %}" }},
	{name: "caramelise", write: func(p, _ float64) string { return "caramelise: {loss: " + f(60*p) + " %}" }},
	{name: "ferment to alcohol", write: func(p, _ float64) string { return "ferment: {after: {ALC: " + f(2*p) + " g}, because: \"invented\"}" }},
	{name: "ferment to lactic acid", write: func(p, _ float64) string {
		return "ferment: {after: {ALC: 0.1 g, LACAC: " + f(900*p) + " mg}, because: \"invented\"}"
	}, sets: true},
	{name: "carbonate", write: func(p, _ float64) string { return "carbonate: {left: " + f(6*p) + " g/l}" }},
	{name: "carbonate a bottle", write: func(p, _ float64) string { return "carbonate: {bottle: 2 l, charge: " + f(10*p) + " g, at: 5 °C}" }},
	{name: "foam with carbon dioxide", write: func(p, _ float64) string {
		return "foam: {gas: CO2, bottle: 2 l, charge: " + f(10*p) + " g, at: 5 °C, overrun: 50 %}"
	}},
	{name: "add lemon juice", write: add("core:lemon-juice", 60)},
	{name: "add espresso", write: add("core:espresso", 60)},
	{name: "add milk", write: add("core:milk-whole", 60)},
	{name: "add citric acid", write: add("core:citric-acid", 3)},
	{name: "add sugar", write: add("core:sugar-white", 60)},
	{name: "add carrot juice", write: add("core:carrot-juice", 60)},
	{name: "add hard water", write: add("core:water-mineral-high", 60)},
	{name: "add spirit", write: add("core:vodka-40", 60)},
	{name: "steep", write: func(p, _ float64) string {
		return "steep: {ingredients: [" + f(20*p) + " g core:spearmint], for: 10 min}"
	}},
	{name: "wash", write: func(p, _ float64) string { return "wash: {fat: [" + f(30*p) + " g core:butter-unsalted]}" }},
	{name: "strain", write: func(p, m float64) string { return "strain: {collect: " + f(m*(0.2+0.5*p)) + " g, through: cloth}" }, sets: true},
	{name: "split", write: func(p, _ float64) string {
		return "split: {keep: {FAT: " + f(100-99*p) + " %, FIBTG: " + f(100-99*p) + " %}, because: \"invented\"}"
	}},
}

func add(food string, most float64) func(p, mass float64) string {
	return func(p, _ float64) string { return "add: [" + f(most*p) + " g " + food + "]" }
}

// along are the pots that the paths start from; each has something for every step.
var along = []struct {
	name, lines string
	mass        float64
}{
	{"orange juice", "200 g core:orange-juice, 20 g core:sugar-white, 2 g core:lactose-monohydrate", 222},
	{"sour syrup", "60 g core:sugar-white, 100 g core:water-pure, 3 g core:citric-acid, 2 g core:lactose-monohydrate", 165},
	{"espresso", "100 g core:espresso, 10 g core:sugar-white, 2 g core:lactose-monohydrate", 112},
	{"apple and coffee", "150 g core:apple-juice, 80 g core:filter-coffee, 10 g core:sugar-white, 2 g core:lactose-monohydrate", 242},
	{"whey", "150 g core:whey-acid, 20 g core:sugar-white", 170},
	{"wine", "150 g core:wine-riesling, 10 g core:sugar-white, 2 g core:lactose-monohydrate", 162},
	{"plain syrup", "60 g core:sugar-white, 100 g core:water-tap, 2 g core:lactose-monohydrate", 162},
}

var continuous = []law{
	{name: "no effect", says: "with its parameter next to no effect, a step moves pH and acidity next to nothing", from: "must show 1"},
	{name: "continuous", says: "pH and acidity do not jump in a step's parameter", from: "must show 1"},
}

// point is pH and acidity somewhere on a path; NaN where they are withheld.
type point struct{ p, ph, acidity float64 }

// off gives how far two points are apart, in parts of what may be left of a jump.
func (x point) off(y point) float64 {
	off := 0.0
	if d := math.Abs(x.ph - y.ph); isNumber(d) {
		off = d / limit("continuous pH")
	}
	if d := math.Abs(x.acidity - y.acidity); isNumber(d) {
		off = math.Max(off, d/limit("continuous acidity"))
	}
	return off
}

// walk is one path from one pot.
type walk struct {
	kitchen *kitchen
	path    path
	from    int
}

func (w walk) text(step string) string {
	steps := ""
	if step != "" {
		steps = "    steps:\n      - " + step + "\n"
	}
	return fmt.Sprintf("drink: \"Path\"\nserves: 1\ncomponents:\n  pot:\n    ingredients: [%s]\n%sbuild:\n  - 50 g pot\n", along[w.from].lines, steps)
}

func (w walk) at(p float64) (point, error) {
	step := w.path.write(p, along[w.from].mass)
	if p == 0 {
		step = ""
	}
	a, err := w.kitchen.run(w.text(step), assaytest.Options{Draws: draws, Seed: 1})
	if err != nil {
		return point{}, err
	}
	s := subject{assay: a}
	got := point{p, math.NaN(), math.NaN()}
	if x, ok := s.ph(); ok {
		got.ph = x
	}
	if x, ok := s.acidity(); ok {
		got.acidity = x
	}
	return got, nil
}

// halvings follow a jump into its interval.
const halvings = 12

// jump halves an interval, keeping the half in which more happens. What is left is a
// jump, not a slope.
func (w walk) jump(x, y point) (point, point, error) {
	for range halvings {
		middle, err := w.at((x.p + y.p) / 2)
		if err != nil {
			return x, y, err
		}
		if x.off(middle) >= middle.off(y) {
			y = middle
		} else {
			x = middle
		}
	}
	return x, y, nil
}

func (w walk) judge(b *breaches) {
	grid := []float64{0, 1e-5, 1e-4, 1e-3, 0.01, 0.05, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9}
	if w.path.sets {
		grid = grid[1:]
	}
	name := w.path.name + ", " + along[w.from].name
	say := func(law string, x, y point) {
		b.add(law, breach{x.off(y), name, w.text(w.path.write(y.p, along[w.from].mass)), fmt.Sprintf("pH %.3f, acidity %.4f at %.6g; pH %.3f, acidity %.4f at %.6g", x.ph, x.acidity, x.p, y.ph, y.acidity, y.p)})
	}
	before, err := w.at(grid[0])
	if err != nil {
		b.add(foodIsServed.name, breach{1, name, w.text(""), err.Error()})
		return
	}
	for _, p := range grid[1:] {
		here, err := w.at(p)
		if err != nil {
			return // the path ends where the step is refused
		}
		switch off := before.off(here); {
		case before.p == 0 && off > 1:
			say(continuous[0].name, before, here)
		case off > 2:
			x, y, err := w.jump(before, here)
			if err == nil && x.off(y) > 1 {
				say(continuous[1].name, x, y)
			}
		}
		before = here
	}
}

// everyNthPath is in the sample.
const everyNthPath = 41

// pH and acidity are continuous in every step's parameter, down to no effect.
func TestStepsAreContinuous(t *testing.T) {
	k, b := newKitchen(t), newBreaches(continuous, refusalLaws)
	var walks []walk
	for _, p := range paths {
		for from := range along {
			if along[from].name == "wine" && strings.HasPrefix(p.name, "ferment") {
				continue // it has more alcohol than these ferments leave, and none takes any away
			}
			walks = append(walks, walk{k, p, from})
		}
	}
	sideBySide(sample(walks, everyNthPath), func(w walk) {
		w.judge(b)
		b.lock.Lock()
		b.asked++
		b.lock.Unlock()
	})
	b.report(t)
}

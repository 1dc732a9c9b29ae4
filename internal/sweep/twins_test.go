package sweep_test

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// twin is the same drink written otherwise, or with one thing changed. write gives its
// text; ok is false where the law does not speak of the drink.
type twin struct {
	law
	write func(text string) (string, bool)
	as    assaytest.Options // of the twin; draws and seed are the subject's where they are zero
	agree func(s *subject, other *assay.Assay, broken say)
}

// twins are laws of two runs.
var twins = []twin{
	{law{name: "order of the build", says: "the order of the build's lines changes nothing", from: "addition"}, reversed, assaytest.Options{}, sameFigures},
	{law{name: "serves", says: "twice the build for twice the guests is the same serving", from: "proportion"}, doubled(true), assaytest.Options{}, sameMeans},
	{law{name: "scale", says: "twice the build is the same in 100 g", from: "proportion"}, doubled(false), assaytest.Options{}, sameIn100g},
	{law{name: "more draws", says: "the first draws are those of fewer: central values stay", from: "design §5, ensemble"}, unread, assaytest.Options{Draws: 2 * draws}, sameMeans},
	{law{name: "another seed", says: "central values do not hang on the seed", from: "design §5, ensemble"}, unread, assaytest.Options{Seed: 2}, sameMeans},
	{law{name: "the same again", says: "one seed gives one result, to the bit", from: "design §5, ensemble"}, same, assaytest.Options{}, identical},
	{law{name: "one more food", says: "adding a food lowers no amount of a serving", from: "addition"}, oneMore, assaytest.Options{}, noLess},
	{law{name: "poured directly", says: "a component that is only mixed is its ingredients poured directly", from: "addition"}, unfolded, assaytest.Options{}, sameMeans},
}

func twinNames() []law {
	list := make([]law, len(twins))
	for i, t := range twins {
		list[i] = t.law
	}
	return list
}

// judgeTwins asks the twin law whose turn it is, in the whole sweep two of them.
func (b *breaches) judgeTwins(s *subject, number int) {
	for i := range 2 {
		t := twins[(number+i*3)%len(twins)]
		text, ok := t.write(s.text)
		if !ok {
			continue
		}
		o := t.as
		if o.Draws == 0 {
			o.Draws = draws
		}
		if o.Seed == 0 {
			o.Seed = 1
		}
		o.Whole = true
		other, err := s.kitchen.run(text, o)
		if err != nil {
			b.add(t.name, breach{1, s.name, text, "the twin is refused: " + err.Error()})
			continue
		}
		var worst *breach
		t.agree(s, other, func(size float64, format string, args ...any) {
			if worst == nil || size > worst.size {
				worst = &breach{size, s.name, s.text, fmt.Sprintf(format, args...)}
			}
		})
		if worst != nil {
			b.add(t.name, *worst)
		}
	}
}

// section gives the lines of a key at the top of a drink file, and what stands before
// and after them.
func section(text, key string) (before string, lines []string, after string) {
	before, rest, _ := strings.Cut(text, "\n"+key+":\n")
	var list []string
	for line := range strings.SplitAfterSeq(rest, "\n") {
		if !strings.HasPrefix(line, "  ") {
			break
		}
		list = append(list, line)
		rest = rest[len(line):]
	}
	return before + "\n" + key + ":\n", list, rest
}

func same(text string) (string, bool) { return text, true }

// unread is a drink without readings: those move central values by the draws'
// covariance, so by draws and seed too. A dose is what brings a pot to a reading; and how sour a
// pot is whose pH is withheld, on which hangs what a boil splits, lies between ends that the
// draws show.
func unread(text string) (string, bool) {
	return text, !strings.Contains(text, "measured") && !strings.Contains(text, "- adjust:") && !strings.Contains(text, "- reduce:")
}

func reversed(text string) (string, bool) {
	before, lines, after := section(text, "build")
	turned := slices.Clone(lines)
	slices.Reverse(turned)
	return before + strings.Join(turned, "") + after, len(lines) > 1 && !sameFoodTwice(lines)
}

// sameFoodTwice reports lines of one food: the order of those counts (package drink).
func sameFoodTwice(lines []string) bool {
	seen := map[string]bool{}
	for _, l := range lines {
		words := strings.Fields(l)
		name := words[len(words)-1]
		if seen[name] {
			return true
		}
		seen[name] = true
	}
	return false
}

var (
	amountOf = regexp.MustCompile(`^(  - )([\d.]+)( g| ml)( ± ([\d.]+)( g| ml))?`)
	servesOf = regexp.MustCompile(`\nserves: (\d+)`)
)

// doubled writes every amount of the build twice as large.
func doubled(guests bool) func(string) (string, bool) {
	return func(text string) (string, bool) {
		if strings.Contains(text, "\nfinish:") || strings.Contains(text, "\ngarnish:") {
			return "", false // their amounts are of the whole too
		}
		before, lines, after := section(text, "build")
		var out []string
		for _, l := range lines {
			out = append(out, amountOf.ReplaceAllStringFunc(l, func(m string) string {
				parts := amountOf.FindStringSubmatch(m)
				m = parts[1] + twice(parts[2]) + parts[3]
				if parts[4] != "" {
					m += " ± " + twice(parts[5]) + parts[6]
				}
				return m
			}))
		}
		if guests {
			before = servesOf.ReplaceAllStringFunc(before, func(m string) string {
				return "\nserves: " + twice(servesOf.FindStringSubmatch(m)[1])
			})
		}
		return before + strings.Join(out, "") + after, true
	}
}

func twice(number string) string {
	x, err := strconv.ParseFloat(number, 64)
	if err != nil {
		panic(err)
	}
	return strconv.FormatFloat(2*x, 'f', -1, 64)
}

func oneMore(text string) (string, bool) {
	before, lines, after := section(text, "build")
	mixes := !strings.Contains(after, "finish:") || strings.Contains(after, "chill:")
	return before + strings.Join(lines, "") + "  - 7 g core:apple-juice\n" + after, mixes && !strings.Contains(after, "measured")
}

var mixedComponent = regexp.MustCompile(`(?m)^  "([^"]+)":\n    ingredients:\n((?:      - .*\n)+)((?:    .*\n)*)`)

// unfolded pours the ingredients of the first component directly, where all of it is
// used and nothing is done to it: it writes the subject anew in both forms, so it
// speaks of drinks whose components have neither steps nor readings.
func unfolded(text string) (string, bool) {
	if strings.Contains(text, "steps:") || strings.Contains(text, "measured") || strings.Contains(text, "compare-with") || strings.Contains(text, " % ") {
		return "", false
	}
	before, lines, after := section(text, "build")
	for _, m := range mixedComponent.FindAllStringSubmatch(text, -1) {
		total, ok := massOf(m[2])
		if !ok {
			return "", false
		}
		var out []string
		for _, l := range lines {
			amount, rest, _ := strings.Cut(strings.TrimPrefix(l, "  - "), " g ")
			if strings.TrimSpace(rest) != m[1] {
				out = append(out, l)
				continue
			}
			grams, err := strconv.ParseFloat(amount, 64)
			if err != nil {
				return "", false
			}
			for ingredient := range strings.Lines(m[2]) {
				parts := amountOf.FindStringSubmatch("  - " + strings.TrimPrefix(ingredient, "      - "))
				x, _ := strconv.ParseFloat(parts[2], 64)
				words := strings.Fields(ingredient)
				out = append(out, fmt.Sprintf("  - %.12f g %s\n", x*grams/total, words[len(words)-1]))
			}
		}
		lines = out
	}
	if _, components, _ := section(text, "components"); len(components) == 0 {
		return "", false
	}
	return before + strings.Join(lines, "") + after, true
}

// massOf adds up ingredient lines, if all are in grams.
func massOf(ingredients string) (sum float64, ok bool) {
	for l := range strings.Lines(ingredients) {
		parts := amountOf.FindStringSubmatch("  - " + strings.TrimPrefix(l, "      - "))
		if parts == nil || parts[3] != " g" {
			return 0, false
		}
		x, _ := strconv.ParseFloat(parts[2], 64)
		sum += x
	}
	return sum, sum > 0
}

// means gives the known central values of a composition.
func means(list composition.Composition) map[constituent.ID]float64 {
	all := map[constituent.ID]float64{}
	for _, f := range list {
		if !f.Unknown {
			all[f.Constituent.ID] = f.Mean
		}
	}
	return all
}

// near reports whether two figures are one but for rounding.
func near(x, y float64) bool { return math.Abs(x-y) <= 1e-6*math.Max(math.Abs(x), math.Abs(y))+1e-9 }

func compare(x, y map[constituent.ID]float64, broken say) {
	all := maps.Clone(x)
	maps.Copy(all, y)
	for _, id := range order(all) {
		if !near(x[id], y[id]) {
			broken(math.Abs(x[id]-y[id])/math.Max(math.Abs(x[id]), 1e-9), "%s: %.6g and %.6g", id, x[id], y[id])
		}
	}
}

// compareChemistry compares what a liquid reads at central values.
func compareChemistry(x, y *chemistry.Chemistry, broken say) {
	if x.PHMeter.Why == "" && y.PHMeter.Why == "" && math.Abs(x.PHMeter.Mean-y.PHMeter.Mean) > limit("same pH") {
		broken(math.Abs(x.PHMeter.Mean-y.PHMeter.Mean), "pH %.4f and %.4f", x.PHMeter.Mean, y.PHMeter.Mean)
	}
	if isNumber(x.Brix.Mean) && isNumber(y.Brix.Mean) && math.Abs(x.Brix.Mean-y.Brix.Mean) > 1e-3 {
		broken(math.Abs(x.Brix.Mean-y.Brix.Mean), "%.4f and %.4f °Bx", x.Brix.Mean, y.Brix.Mean)
	}
}

func sameMeans(s *subject, other *assay.Assay, broken say) {
	compare(means(s.assay.PerServing), means(other.PerServing), broken)
	compareChemistry(s.assay.Chemistry, other.Chemistry, broken)
}

func sameIn100g(s *subject, other *assay.Assay, broken say) {
	compare(means(s.assay.Per100g), means(other.Per100g), broken)
	compareChemistry(s.assay.Chemistry, other.Chemistry, broken)
}

func sameFigures(s *subject, other *assay.Assay, broken say) {
	sameMeans(s, other, broken)
	for _, f := range s.assay.PerServing {
		if g, ok := other.PerServing.Find(f.Constituent.ID); ok && !f.Unknown && (!near(f.Low, g.Low) || !near(f.High, g.High)) {
			broken(math.Abs(f.High-g.High), "%s: %.6g–%.6g and %.6g–%.6g", f.Constituent.ID, f.Low, f.High, g.Low, g.High)
		}
	}
}

func identical(s *subject, other *assay.Assay, broken say) {
	for _, f := range s.assay.PerServing {
		g, ok := other.PerServing.Find(f.Constituent.ID)
		if !ok || !f.Unknown && f.Summary != g.Summary {
			broken(1, "%s: %v and %v", f.Constituent.ID, f.Summary, g.Summary)
		}
	}
	x, y := s.assay.Chemistry.PHMeter, other.Chemistry.PHMeter
	if x.Why == "" && x.Summary != y.Summary {
		broken(1, "pH %v and %v", x.Summary, y.Summary)
	}
}

func noLess(s *subject, other *assay.Assay, broken say) {
	// What rides on the sugars is cut at them in every draw, and their draws change with what
	// else has a column: its mean may move by that, and by a tenth of its own spread.
	const riding, ofItsSpread = 0.01, 0.1
	after := means(other.PerServing)
	for _, f := range s.assay.PerServing {
		slack := 1e-6
		if f.Constituent.ID == constituent.AddedSugar {
			slack = max(riding, ofItsSpread*f.SD/f.Mean)
		}
		if f.Constituent.ID == constituent.CarbonDioxide && strings.Contains(s.text, "bicarbonate") {
			continue // an acid frees what a bicarbonate holds, and an open drink loses it
		}
		if id := f.Constituent.ID; !f.Unknown && after[id] < f.Mean*(1-slack)-1e-9 {
			broken(1-after[id]/f.Mean, "%s: %.6g, with more in it %.6g", id, f.Mean, after[id])
		}
	}
}

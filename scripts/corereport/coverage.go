package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// line is one line of the report: for which foods a question is asked.
type line struct {
	name   string
	asked  func(*food.Food) bool
	wanted func(*food.Food) bool
	bounds []constituent.ID // of which constituents the bounds are shown for foods that miss
}

var (
	fruits  = groups("fruit", "citrus fruit", "fruit juice", "citrus juice")
	coffees = groups("coffee bean", "coffee drink")
	xanthic = groups("coffee bean", "coffee drink", "tea leaf", "tea drink", "cocoa")
)

var lines = []line{
	{"citric and malic acid, fruits and juices", fruits, all("CITAC", "MALAC"), acids("CITAC", "MALAC")},
	{"total acid, titratable acidity, or citric and malic, fruits and juices", fruits, func(f *food.Food) bool {
		return has(f, "OA") || has(f, "titratable") || all("CITAC", "MALAC")(f)
	}, nil},
	{"glucose, fructose and sucrose, fruits and juices", fruits, all("GLUS", "FRUS", "SUCS"), nil},
	{"K, Na, Ca, Mg and P, all but pure substances", func(f *food.Food) bool { return !f.Chemical }, all("K", "NA", "CA", "MG", "P"), nil},
	{"caffeine, coffees, teas and cocoa", xanthic, all("CAFFN"), acids("CAFFN")},
	{"chlorogenic acids, coffees", coffees, all("CHLRAC"), acids("CHLRAC")},
	{"trigonelline, coffees", coffees, all("trigonelline"), acids("trigonelline")},
	{"quinic acid, coffees", coffees, all("QUINAC"), acids("QUINAC")},
	{"malic acid, coffees", coffees, all("MALAC"), acids("MALAC")},
	{"citric acid, coffees", coffees, all("CITAC"), acids("CITAC")},
	{"lactic acid, coffees", coffees, all("LACAC"), acids("LACAC")},
	{"acetic acid, coffees", coffees, all("ACEAC"), acids("ACEAC")},
}

func groups(names ...string) func(*food.Food) bool {
	return func(f *food.Food) bool { return slices.Contains(names, f.Group) }
}

func all(ids ...constituent.ID) func(*food.Food) bool {
	return func(f *food.Food) bool {
		return !slices.ContainsFunc(ids, func(id constituent.ID) bool { return !has(f, id) })
	}
}

func acids(ids ...constituent.ID) []constituent.ID { return ids }

func has(f *food.Food, id constituent.ID) bool {
	v, ok := f.Value(id)
	return ok && v.State != estimate.Unknown
}

// coverage is a line with its answer.
type coverage struct {
	line
	asked, known int
	missing      []*food.Food
}

func (l line) measure(foods []*food.Food) coverage {
	c := coverage{line: l}
	for _, f := range foods {
		if !l.asked(f) {
			continue
		}
		c.asked++
		if l.wanted(f) {
			c.known++
		} else {
			c.missing = append(c.missing, f)
		}
	}
	return c
}

func (c coverage) share() float64 { return float64(c.known) / float64(c.asked) }

func (c coverage) write(w io.Writer) error {
	if _, err := fmt.Fprintf(w, "\n%s: %d of %d (%.0f %%)\n", c.name, c.known, c.asked, 100*c.share()); err != nil {
		return err
	}
	for _, f := range c.missing {
		if _, err := fmt.Fprintf(w, "  %s%s\n", f.ID.Code, c.bound(f)); err != nil {
			return err
		}
	}
	return nil
}

// bound writes the most that what is missing could be, where the table says it.
func (c coverage) bound(f *food.Food) string {
	var parts []string
	for _, id := range c.bounds {
		if v, ok := f.Value(id); ok && v.State == estimate.Unknown && food.Stated(v.Limit) {
			known := constituent.Must(id)
			parts = append(parts, fmt.Sprintf("%s up to %g %s", known.Name, v.Limit, known.Unit))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return ": " + strings.Join(parts, ", ")
}

type groupCount struct {
	name  string
	count int
}

// byGroup counts foods by group, in the order of the first of each.
func byGroup(foods []*food.Food) []groupCount {
	var counts []groupCount
	for _, f := range foods {
		i := slices.IndexFunc(counts, func(g groupCount) bool { return g.name == f.Group })
		if i < 0 {
			counts, i = append(counts, groupCount{name: f.Group}), len(counts)
		}
		counts[i].count++
	}
	return counts
}

package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/phrase"
	"sipsum/internal/unit"
)

// standing is how much of an acid of a food stands on a published work.
type standing string

const (
	known   standing = "known"   // the food's own figure, trace or limit, or one borrowed with its name
	byKin   standing = "by kin"  // its share of a published total, as in foods of its kind
	bounded standing = "bounded" // a published work says that it is less than smallAcid
	open    standing = "open"    // unknown, with whatever bound the row's balance or its group leaves
)

var standings = []standing{known, byKin, bounded, open}

// smallAcid is what the tables at hand cannot tell from nothing, in grams per gram: half of
// the last place of acids printed to 0.1 g/100 g, and what rounds to it (a juice without its
// fibre holds a little more than the fruit).
const smallAcid = 0.055 / unit.Hundred

// asking is an acid, of which foods it is asked for.
type asking struct {
	name  string
	asked func(*food.Food) bool
	acids func(*food.Food) []constituent.ID
}

var (
	drunk = groups("fruit", "citrus fruit", "fruit juice", "citrus juice", "vegetable juice", "vinegar", "wine", "tea drink")

	// What leads in a food beside citric and malic acid.
	tartaric  = phrase.Read("grape|raisin|raisins|currants dried|verjuice|wine|vermouth|tamarind")
	noGrapes  = phrase.Read("rice wine|grapefruit|vinegar|shaoxing")
	acidsLead = asking{"citric and malic acid, and acetic or tartaric where it leads", drunk, leading}
	quinic    = asking{"quinic acid", drunk, func(*food.Food) []constituent.ID { return []constituent.ID{"QUINAC"} }}
)

func leading(f *food.Food) []constituent.ID {
	lead := []constituent.ID{"CITAC", "MALAC"}
	words := phrase.Words(f.Name())
	switch {
	case f.Group == "vinegar":
		lead = append(lead, "ACEAC")
	case tartaric.In(words) && !noGrapes.In(words):
		lead = append(lead, "TARAC")
	}
	return lead
}

// standingOf judges one acid of a food as it enters the ledger.
func standingOf(p *food.Profile, id constituent.ID) standing {
	c := constituent.Must(id)
	cell := p.Cell(id)
	switch {
	case cell.By == food.ByKin:
		return byKin
	case cell.Known && cell.State == estimate.Assumed: // nobody measured this food: a rule says with its source that there is none
		return bounded
	case cell.Known && cell.Source != "":
		return known
	}
	for up := c; up.Parent != "" && up.ID != constituent.Carbohydrate; up = constituent.Must(up.Parent) {
		if v, stated := p.Food.Value(up.ID); stated && most(v)/(unit.Hundred*up.PerGram) < smallAcid {
			return bounded
		}
	}
	if limit, _ := food.LessInItsKind(p.Food, c); limit/(unit.Hundred*c.PerGram) < smallAcid { // None is not less
		return bounded
	}
	return open
}

// most is the most that a published value can be: its amount, else its limit; None if neither.
func most(v food.Value) float64 {
	if food.Stated(v.Amount) {
		return v.Amount
	}
	return v.Limit
}

// acidCoverage counts the foods of an asking by the standing of the worst of its acids.
type acidCoverage struct {
	asking
	byGroup map[string]map[standing]int
	all     map[standing]int
	asked   int
	groups  []string
	left    []string // food and acid, of the foods that nothing published answers
}

func (a asking) measure(foods []*food.Food) acidCoverage {
	c := acidCoverage{asking: a, byGroup: map[string]map[standing]int{}, all: map[standing]int{}}
	for _, f := range foods {
		if !a.asked(f) {
			continue
		}
		if c.byGroup[f.Group] == nil {
			c.byGroup[f.Group], c.groups = map[standing]int{}, append(c.groups, f.Group)
		}
		p, worst := food.Enter(f, nil), known
		var unanswered []string
		for _, id := range a.acids(f) {
			s := standingOf(p, id)
			if slices.Index(standings, s) > slices.Index(standings, worst) {
				worst = s
			}
			if s == open {
				unanswered = append(unanswered, constituent.Must(id).Name)
			}
		}
		c.asked++
		c.all[worst]++
		c.byGroup[f.Group][worst]++
		if worst == open {
			c.left = append(c.left, f.ID.Code+" ("+strings.Join(unanswered, ", ")+")")
		}
	}
	return c
}

// share is how many of the foods that were asked have one of these standings.
func (c acidCoverage) share(of ...standing) float64 {
	n := 0
	for _, s := range of {
		n += c.all[s]
	}
	return float64(n) / float64(c.asked)
}

func (c acidCoverage) write(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "\n%s, fruits, juices, vinegars, wines, teas: %d foods\n", c.name, c.asked)
	fmt.Fprintf(&b, "  answered by a published work %.0f %%, measured or by kin %.0f %%\n",
		unit.Hundred*c.share(known, byKin, bounded), unit.Hundred*c.share(known, byKin))
	line := func(name string, counts map[standing]int) {
		fmt.Fprintf(&b, "  %-16s", name)
		for _, s := range standings {
			fmt.Fprintf(&b, "  %s %3d", s, counts[s])
		}
		b.WriteByte('\n')
	}
	for _, g := range c.groups {
		line(g, c.byGroup[g])
	}
	line("all", c.all)
	for _, l := range c.left {
		fmt.Fprintf(&b, "    %s\n", l)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

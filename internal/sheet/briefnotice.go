package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/ladder"
	"sipsum/internal/taste"
)

// way is a taste that a change makes more or less of.
type way struct {
	taste taste.Taste
	more  bool
	words string
}

var ways = []way{{taste.Sweet, true, "sweeter"}, {taste.Sweet, false, "less sweet"}, {taste.Sour, true, "sourer"}, {taste.Sour, false, "less sour"}}

// notice finds the smallest change of a line of the build that a judge notices.
func (p *proposer) notice() (*Change, error) {
	if p.tasteOf(p.base).Why != "" {
		return nil, nil
	}
	var goals []goal
	for _, w := range ways {
		goals = append(goals, func(before, after *assay.Assay) (float64, bool) {
			was := p.tasteOf(before)
			by, ok := shift(before, was, taste.Of(after.Glass()), w.taste)
			if p.withheld(w.taste) {
				return 0, false
			}
			// As logarithms: a taste goes with an amount by a power of it.
			if !w.more {
				return math.Log1p(-noticeable(was, w.taste)) - math.Log1p(by), ok
			}
			return math.Log1p(by) - math.Log1p(noticeable(was, w.taste)), ok
		})
	}
	moves, err := p.moves(p.written(p.s.Assay.Drink.Build), goals)
	if err != nil {
		return nil, err
	}
	for _, m := range moves[:min(len(moves), 2)] { // a run with draws takes its time
		b, err := p.reach(m, proof{want: assay.Want{Chemistry: true, Draws: true}, holds: func(after *assay.Assay) bool {
			return fits(after) && p.inEveryDraw(after, ways[m.what])
		}})
		if err != nil {
			return nil, err
		}
		if b != nil {
			return p.noticed(m, b), nil
		}
	}
	return nil, nil
}

// noticed tells what a change does.
func (p *proposer) noticed(m move, b *borne) *Change {
	c := p.change(ChangeNotice, m.line, b)
	by, _ := shift(p.s.Assay, p.tasteOf(p.s.Assay), taste.Of(b.after.Glass()), ways[m.what].taste)
	c.Short = fmt.Sprintf("%s by %.0f %%", ways[m.what].words, math.Abs(hundred*by))
	if told := effectsTold(c.Effects, len(b.after.Chemistry.Unseen) > 0); told != "" {
		c.Short += ", " + told
	}
	c.What = "about the least a judge notices: " + c.Short
	return c
}

// inEveryDraw reports whether a taste goes the way that is said in every draw.
func (p *proposer) inEveryDraw(after *assay.Assay, w way) bool {
	was, now := p.tasteOf(p.s.Assay), taste.Of(after.Glass())
	a, b := was.Sweet.Draws, now.Sweet.Draws
	if w.taste == taste.Sour {
		a, b = was.Sour.Titratable.Draws, now.Sour.Titratable.Draws
	}
	for d := range min(len(a), len(b)) {
		if w.more != (b[d] > a[d]) {
			return false
		}
	}
	return true
}

// withheld reports whether the brief itself does not tell a taste: central values may, where the draws
// are too far apart.
func (p *proposer) withheld(of taste.Taste) bool {
	t := p.tasteOf(p.s.Assay)
	return of == taste.Sour && t.Sour.Titratable.Why != "" || of == taste.Sweet && t.Sweet.Why != ""
}

// tasteOf gives the numbers beside the tastes of the drink as written; they are kept.
func (p *proposer) tasteOf(a *assay.Assay) taste.Profile {
	if t, ok := p.tastes[a]; ok {
		return t
	}
	p.tastes[a] = taste.Of(a.Glass())
	return p.tastes[a]
}

// shift is the share by which a taste changes, with what is unknown of it at its most; ok is false
// where it is withheld, or too little to be tasted.
func shift(before *assay.Assay, was, now taste.Profile, of taste.Taste) (by float64, ok bool) {
	if of == taste.Sweet {
		sugars := constituent.Must(constituent.Sugar)
		if !ladder.Worth(sugars, before.Serving.Central(sugars.ID)*sugars.PerGram, before.Volume.Mean) {
			return 0, false
		}
		by = (now.Sweet.Mean - was.Sweet.Mean) / was.Sweet.WithBounds
		return by, was.Sweet.Why == "" && now.Sweet.Why == "" && !math.IsNaN(by)
	}
	a, b := was.Sour.Titratable, now.Sour.Titratable
	if a.Why != "" || b.Why != "" || was.Sour.Hardly || now.Sour.Hardly {
		return 0, false
	}
	by = b.Mean/a.Mean - 1
	return by, !math.IsNaN(by)
}

// noticeable is the share of a taste that a judge notices (data/taste_differences.csv). It moves with
// the mixture, and how strong the mixtures were nobody has said where we read it: so it is the end at
// which most is wanted, but for what is sweet and not sour.
func noticeable(was taste.Profile, of taste.Taste) float64 {
	d := taste.Noticed(of)
	if of == taste.Sweet && was.Sour.Hardly {
		return d.Low / hundred
	}
	return d.High / hundred
}

// effectsTold are the sugars and the pH of a change; a pH that rests on constants from memory bears
// the mark.
func effectsTold(list []Effect, fromMemory bool) string {
	var told []string
	for _, e := range list {
		by := e.To - e.From
		switch e.Key {
		case string(constituent.Sugar):
			if text := fmt.Sprintf("%.1f g", math.Abs(by)); text != "0.0 g" {
				told = append(told, text+" "+map[bool]string{true: "more", false: "less"}[by > 0]+" sugars")
			}
		case "ph":
			if text := fmt.Sprintf("%.2f", math.Abs(by)); text != "0.00" {
				told = append(told, daggered("pH "+sign(by)+text, fromMemory))
			}
		}
	}
	return strings.Join(told, ", ")
}

func sign(x float64) string {
	if x < 0 {
		return "−"
	}
	return "+"
}

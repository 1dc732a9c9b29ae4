package batch

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// measure is how something is measured at home, and how far that may be off.
type measure struct {
	to    unit.Amount // spoons or cups
	count float64     // of pieces
	of    string      // the piece, or how a spoon is filled
	grams float64     // that it is
	step  float64     // g, the finest that it can be told from
	sd    float64     // relative, of filling it
	said  bool        // a drink file can say it
}

// pours reports whether a food is poured: no powder and no leaves.
func pours(f *food.Food) bool { return food.Stated(f.Density.GramsPerMl) && f.Group != sugarGroup }

// measured gives the measure of so many grams of a food: pieces where few are counted, else the
// largest spoon or cup whose steps are fine enough.
func measured(f *food.Food, grams float64) (m measure, ok bool) {
	if m, ok = counted(f, grams, false); ok {
		return m, true
	}
	per, how := perMillilitre(f)
	if m, ok = spooned(per, grams, pours(f)); !ok {
		return pinched(per, grams)
	}
	m.of, m.said = how, how == "" && sayable(f)
	return m, true
}

// counted gives so many grams of a food as pieces, if rounding to whole ones is off by no more than
// these differ among themselves, or nobody minds. What pours is not counted.
func counted(f *food.Food, grams float64, roughly bool) (best measure, ok bool) {
	home := atHome()
	if pours(f) {
		return best, false
	}
	for _, p := range f.Portions {
		for word, part := range home.pieces {
			if !unit.IsPortion(p.Name, word) || p.Grams <= 0 {
				continue
			}
			sd := home.spread[byPiece]
			if p.SD > 0 {
				sd = p.SD / p.Grams
			}
			n := math.Round(grams/p.Grams/part) * part
			step := part * p.Grams
			if n >= part && n <= home.filling.most && (roughly || step/2 <= sd*grams) && (!ok || step < best.step) {
				name, _, _ := strings.Cut(p.Name, " (")
				best, ok = measure{count: n, of: name, grams: n * p.Grams, step: step, sd: sd}, true
			}
		}
	}
	return best, ok
}

// spooned gives so many grams as spoons or cups: the largest of which half a step is within the share
// of a batch, else the finest; not ok if it is less than half of that.
func spooned(per, grams float64, liquid bool) (m measure, ok bool) {
	if !(per > 0) {
		return m, false
	}
	home, ml := atHome(), grams/per
	for _, s := range home.spoons {
		step := s.Factor * s.part
		n := math.Round(ml / step)
		if n == 0 {
			continue
		}
		ok = true
		m = measure{to: largest(n * step), grams: n * step * per, step: step * per, sd: home.spread[bySpoon], said: true}
		if step/2 <= limits().share*ml {
			break
		}
	}
	if liquid && ml >= home.cupFrom {
		m.sd = home.spread[byCup]
	}
	return m, ok
}

// pinched gives so many grams of a powder as pinches, with the spread of these.
func pinched(per, grams float64) (m measure, ok bool) {
	pinch, _ := unit.FindMeasure("pinch")
	n := math.Round(grams / per / pinch.Factor)
	if !(per > 0) || n < 1 || n > atHome().pinches {
		return m, false
	}
	step := per * pinch.Factor
	return measure{to: unit.Amount{Number: n, Measure: pinch}, grams: n * step, step: step, sd: pinch.Spread / amount.Sqrt3, said: true}, true
}

// largest writes a volume that a spoon measures with the largest that does: three teaspoons are one
// tablespoon.
func largest(ml float64) unit.Amount {
	const dust = 1e-4 // by which a cup is no sixteen tablespoons
	for _, s := range atHome().spoons {
		n := math.Round(ml / s.Factor / s.part)
		if n > 0 && math.Abs(n*s.Factor*s.part/ml-1) < dust {
			return unit.Amount{Number: n * s.part, Measure: s.Measure, Decimals: decimals(s.part)}
		}
	}
	return unit.Amount{}
}

// sayable reports whether a file may write a spoon of a food: by its density, or by a portion of that name.
func sayable(f *food.Food) bool {
	return food.Stated(f.Density.GramsPerMl) || slices.ContainsFunc(f.Portions, func(p food.Portion) bool {
		return slices.ContainsFunc(atHome().spoons, func(s spoon) bool { return p.Name == s.Name })
	})
}

// oneSpoon is a portion that a table says to be a spoon or a cup.
var oneSpoon = regexp.MustCompile(`\(1 (tsp|tbsp|cup)\)$`)

// perMillilitre is what a millilitre of a food weighs: by its density, or by what its table says of a
// spoon or a cup of it, and how that is filled; 0: nobody says.
func perMillilitre(f *food.Food) (per float64, how string) {
	if food.Stated(f.Density.GramsPerMl) && f.Density.GramsPerMl > 0 {
		return f.Density.GramsPerMl, ""
	}
	as := 0.0
	for _, p := range f.Portions {
		word, rest := p.Name, ""
		if of := oneSpoon.FindStringSubmatch(p.Name); of != nil { // an envelope (1 tbsp)
			word = of[1]
		} else if i := strings.IndexAny(p.Name, " ,"); i > 0 {
			word, rest = p.Name[:i], strings.Trim(p.Name[i:], " ,()")
		}
		i := slices.IndexFunc(atHome().spoons, func(s spoon) bool { return s.Name == word })
		if i < 0 || per > 0 && (how == "") != (rest == "") && how == "" {
			continue
		}
		m := atHome().spoons[i].Measure
		if m.Factor > as || rest == "" && how != "" {
			per, how, as = p.Grams/m.Factor, rest, m.Factor
		}
	}
	return per, how
}

// Spoons parts an amount of spoons or cups as a kitchen pours it: cups first, whole tablespoons, the rest.
func Spoons(a unit.Amount) []unit.Amount {
	const dust = 1e-3 // of a step: a cup is sixteen tablespoons but for its last digit
	var parts []unit.Amount
	rest := a.Base()
	for i, s := range atHome().spoons {
		if s.Factor <= a.Measure.Factor {
			break
		}
		step := s.Factor
		if i == 0 {
			step *= s.part
		}
		if n := math.Floor(rest/step + dust); n > 0 {
			parts = append(parts, unit.Amount{Number: n * step / s.Factor, Measure: s.Measure})
			rest -= n * step
		}
	}
	if rest > dust*a.Measure.Factor {
		parts = append(parts, unit.Amount{Number: rest / a.Measure.Factor, Measure: a.Measure})
	}
	return parts
}

// Nearest is the nearest amount of spoons or cups of a volume.
func Nearest(ml float64) (unit.Amount, bool) {
	m, ok := spooned(1, ml, true)
	return m.to, ok
}

// Large is much of a volume in the largest US measure that holds it often enough; no word: in none.
func Large(ml float64) (n float64, word string) {
	for _, m := range limits().large {
		if ml/m.Factor >= limits().largeFrom {
			n, word = ml/m.Factor, m.Name
		}
	}
	return n, word
}

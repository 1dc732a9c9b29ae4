package afcd

import (
	"context"
	"fmt"
	"io"
	"math"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// liquid is a row of the sheet per 100 mL.
type liquid struct {
	at      fail.Place
	columns []column
	figures []float64 // beside the columns
}

// readLiquids reads the foods per 100 mL by code; none if there is no such sheet.
func readLiquids(ctx context.Context, s sheet) (map[string]liquid, error) {
	all := map[string]liquid{}
	if !s.there() {
		return all, nil
	}
	rows, err := s.open()
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns, err := match(rows)
	if err != nil {
		return nil, err
	}
	key, seen := headings(rows).is(keyColumn), map[string]bool{}
	for {
		if err := rows.Next(); err == io.EOF {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if len(seen) == 0 && unitsOnly(rows) {
			continue // the second line of the header
		}
		code, err := codeOf(rows, key, seen)
		if err != nil {
			return nil, err
		}
		l := liquid{at: fail.Place{File: s.file, Line: rows.SheetRows.Number(), Col: 1}, columns: columns}
		for _, c := range columns {
			x, err := rows.Number(c.at)
			if err != nil {
				return nil, err
			}
			l.figures = append(l.figures, x)
		}
		all[code] = l
	}
}

// unitsOnly recognises the second line of the header: it has no key, and says
// "per 100 mL" below every column.
func unitsOnly(rows *table.HeadedSheet) bool {
	for _, column := range rows.Header {
		if text := squeezed(rows.Text(column)); text != "" && text != "per100ml" {
			return false
		}
	}
	return true
}

// Figures of one food must agree about its density: so many at least, and so
// large a share of them (our own bounds: of the release of 2022 the fewest are 6,
// and no more than one of a food's disagrees).
const (
	leastFigures = 3
	leastAgreed  = 0.9
)

// The specific gravities that a food can have: from a foam to far above syrup.
const (
	leastGravity = 0.05
	mostGravity  = 5
)

// gravityStep is the last digit of the publisher's specific gravities: between
// the bounds of every food of the release of 2022 lies a number of two decimals,
// of one food (breast milk) within slack of them.
const (
	gravityStep = 0.01
	slack       = gravityStep / 100
)

// density takes the density from the masses per 100 mL and per 100 g, which
// printed holds by column. A note says what disagrees.
func (l liquid) density(printed map[string]float64) (d food.Density, notes []string) {
	d = food.Density{GramsPerMl: food.None, SD: food.None}
	ratios, names := l.ratios(printed)
	low, high, agreed := most(ratios)
	if agreed < leastFigures || float64(agreed) < leastAgreed*float64(len(ratios)) {
		return d, []string{fmt.Sprintf("figures per 100 mL and per 100 g agree about no density (%d of %d do)", agreed, len(ratios))}
	}
	gravity := (low + high) / 2
	if printed := math.Round(gravity/gravityStep) * gravityStep; printed > low-slack && printed < high+slack {
		gravity = printed
	}
	if gravity < leastGravity || gravity > mostGravity {
		return d, []string{fmt.Sprintf("figures per 100 mL and per 100 g give the density %.3g g/ml, which no food has", gravity)}
	}
	d.GramsPerMl = gravity
	d.SD = math.Hypot((high-low)/2, gravityStep/2) / math.Sqrt(3) // rectangular: JCGM 100:2008, 4.3.7
	d.Source = fmt.Sprintf("%s: %d figures per 100 mL and per 100 g, density %.4f to %.4f g/ml", work, agreed, low, high)
	for i, r := range ratios {
		if r.low > high || r.high < low {
			notes = append(notes, fmt.Sprintf("%s per 100 mL and per 100 g give another density (%.3g g/ml) than the other figures: left out", names[i], r.middle))
		}
	}
	return d, notes
}

// ratio is between which bounds a density lies by the figures of one column.
type ratio struct{ low, middle, high float64 }

// ratios gives them for each column in mass that is above zero on both sheets.
// A printed figure is anything that rounds to it.
func (l liquid) ratios(printed map[string]float64) (all []ratio, names []string) {
	for i, c := range l.columns {
		per100ml, per100g, half := l.figures[i], printed[c.Column], c.half()
		if c.energy() || c.share() || !(per100ml > 0) || !(per100g > half) {
			continue
		}
		all = append(all, ratio{(per100ml - half) / (per100g + half), per100ml / per100g, (per100ml + half) / (per100g - half)})
		names = append(names, c.name())
	}
	return all, names
}

// most finds the range that the most ratios share, and how many those are.
func most(all []ratio) (low, high float64, agreed int) {
	for _, start := range all {
		n, end := 0, math.Inf(1)
		for _, r := range all {
			if r.low <= start.low && r.high >= start.low {
				n++
				end = min(end, r.high)
			}
		}
		if n > agreed {
			low, high, agreed = start.low, end, n
		}
	}
	return low, high, agreed
}

package rewrite

import (
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/batch"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Change is another amount at a path.
type Change struct{ Path, Amount string }

// Set writes another amount, "32 g", or another count, "3", at the path of a line or of an amount of
// a step. Errors are *fail.Error.
func (t Text) Set(path, to string) ([]byte, error) { return t.Write([]Change{{path, to}}) }

// Write writes several amounts at once.
func (t Text) Write(changes []Change) ([]byte, error) {
	d := t.draft()
	written, other, counts := amount.Amounts{}, amount.Amounts{}, map[string]string{}
	for _, c := range changes {
		at := find(d.drink, c.Path)
		switch {
		case at == nil:
			return nil, d.missing("amount " + c.Path)
		case at.line != nil && at.line.Portion != "":
			counts[c.Path] = strings.TrimSpace(c.Amount)
			continue
		}
		next, err := amountLike(c.Amount, *at.amount)
		if err != nil {
			return nil, err
		}
		written[c.Path], other[c.Path] = *at.amount, next
	}
	text, err := amount.Rewrite(d.drink, t.Bytes, written, other)
	if err != nil {
		return nil, err
	}
	d.rows = amount.RowsOf(text)
	for path, to := range counts {
		if err := d.count(find(d.drink, path).line, to); err != nil {
			return nil, err
		}
	}
	return d.done("the amounts", func(after *drink.Drink) bool {
		for _, c := range changes {
			now, was := find(after, c.Path), find(d.drink, c.Path)
			if now == nil {
				return false
			}
			if to, counted := counts[c.Path]; counted {
				n, _, err := unit.ParseNumber(to)
				if err != nil || now.line == nil || now.line.Count != n {
					return false
				}
				now.line.Count = was.line.Count
				continue
			}
			if !near(now.amount.Base(), other[c.Path].Base()) {
				return false
			}
			*now.amount = *was.amount
		}
		return true
	})
}

func near(x, y float64) bool { return unit.AtLeast(x, y) && unit.AtLeast(y, x) }

// amountLike reads an amount. Without a range of its own it keeps that of the one in whose place it
// stands, if it has its unit and is not less than half of the range.
func amountLike(text string, was unit.Amount) (unit.Amount, error) {
	a, rest, err := unit.ParseAmount(unit.PlainSpaces(text))
	switch {
	case err != nil:
		return a, err
	case rest != "":
		return a, fail.New(fail.Wrong, "\""+rest+"\" stands behind the amount", "write the amount alone: "+a.String())
	}
	if a.Half == 0 && !a.Exact && a.Measure == was.Measure && was.Half <= a.Number {
		a.Half, a.Exact, a.Sigma = was.Half, was.Exact, was.Sigma
	}
	return a, nil
}

// place is an amount of the drink, and its line if it is one of a line.
type place struct {
	line   *drink.Line
	amount *unit.Amount
}

// find gives what stands at a path; nil: nothing.
func find(d *drink.Drink, path string) *place {
	lines := func(list []drink.Line) *place {
		if i := slices.IndexFunc(list, func(l drink.Line) bool { return l.Path == path }); i >= 0 {
			return &place{&list[i], &list[i].Amount}
		}
		return nil
	}
	steps := func(list []drink.Step) *place {
		for _, s := range list {
			if at := lines(s.Lines()); at != nil {
				return at
			}
			for _, p := range batch.Growing(s) {
				if s.StepPath()+"/"+p.Name == path {
					return &place{nil, p.Amount}
				}
			}
		}
		return nil
	}
	found := []*place{lines(d.Build), lines(d.Garnish), steps(d.Finish)}
	for i := range d.Components {
		found = append(found, lines(d.Components[i].Ingredients), steps(d.Components[i].Steps))
	}
	for _, at := range found {
		if at != nil {
			return at
		}
	}
	return nil
}

var countKey = regexp.MustCompile(`(?i)[\s{,"']count["']?\s*:\s*["']?`)

// count writes another count of a line: the number that it begins with, or the one of its key.
func (d *draft) count(l *drink.Line, to string) error {
	byHand := fail.New(fail.Wrong, "the count of "+l.Food+" is not found in the row of its line", "write it by hand: "+to)
	if _, _, err := unit.ParseNumber(to); err != nil {
		return fail.New(fail.Wrong, "\""+to+"\" is no count", "write a number, such as 2 or 1/2")
	}
	if l.Place.File != d.drink.File || l.Place.Line > len(d.rows) {
		return byHand
	}
	row := d.rows[l.Place.Line-1]
	from := min(len(string([]rune(row)[:l.Place.Col-1])), len(row))
	text := strings.TrimLeft(row[from:], `"'`)
	from = len(row) - len(text)
	if !l.Counted {
		at := countKey.FindStringIndex(row)
		if at == nil {
			return byHand
		}
		from, text = at[1], row[at[1]:]
	}
	_, rest, ok := unit.ParseCount(text)
	if !ok {
		return byHand
	}
	number := strings.TrimRight(text[:len(text)-len(rest)], " ")
	d.rows[l.Place.Line-1] = row[:from] + to + row[from+len(number):]
	return nil
}

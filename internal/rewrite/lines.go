package rewrite

import (
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Build and Garnish are where lines are added that no component holds.
const (
	Build   = "build"
	Garnish = "garnish"
)

// list gives the lines of a component, of the build or of the garnish; nil: there is none of that name.
func list(d *drink.Drink, of string) *[]drink.Line {
	if c, ok := d.Component(of); ok {
		return &c.Ingredients
	}
	switch of {
	case Build:
		return &d.Build
	case Garnish:
		return &d.Garnish
	}
	return nil
}

// Add writes a line, "20 g core:lemon-juice", behind the others of a component, Build or Garnish.
// Errors are *fail.Error.
func (t Text) Add(into, line string) ([]byte, error) {
	line = strings.TrimSpace(line)
	if err := oneRow(line); err != nil {
		return nil, err
	}
	want, err := lineOf(line)
	if err != nil {
		return nil, err
	}
	d := t.draft()
	lines := list(d.drink, into)
	if lines == nil || len(*lines) == 0 {
		return nil, d.missing("line of " + into)
	}
	byHand := "- " + scalar(line) + ", under " + into
	if err := d.append((*lines)[len(*lines)-1].Place, byHand, scalar(line)); err != nil {
		return nil, err
	}
	want.Eaten = into != Garnish
	return d.done(byHand, func(after *drink.Drink) bool {
		now := list(after, into)
		if now == nil || len(*now) == 0 {
			return false
		}
		added := (*now)[len(*now)-1]
		*now = (*now)[:len(*now)-1]
		return added.Food == want.Food && added.Amount == want.Amount && added.Count == want.Count && added.Portion == want.Portion && added.Eaten == want.Eaten
	})
}

// lineOf reads a line by itself.
func lineOf(line string) (drink.Line, error) {
	const above = "drink: x\nserves: 1\nbuild:\n  - "
	d, faults := drink.Parse("", []byte(above+scalar(line)+"\n"), nil)
	if err := faults.Err(fail.Wrong); err != nil {
		told := fail.List{}
		for _, f := range faultsOf(faults) {
			told.Add(fail.Place{}, f.Do, "%s", f.What)
		}
		return drink.Line{}, told.Err(fail.Wrong)
	}
	return d.Build[0], nil
}

// append writes an entry behind the last one of a list, which begins at a place; rows below the first
// are those of a block.
func (d *draft) append(behind fail.Place, byHand string, rows ...string) error {
	refused := fail.New(fail.Wrong, "the list is not in this file, or not in a form in which it can be added to", "write it by hand: "+byHand)
	row, head, tail, ok := d.at(behind)
	if !ok {
		return refused
	}
	if indent, block := entry(head); block {
		for i := range rows {
			lead := "  "
			if i == 0 {
				lead = "- "
			}
			rows[i] = indent + lead + rows[i]
		}
		d.insert(d.end(row), rows...)
		return nil
	}
	n, ok := closing(tail)
	if !ok || tail[n] != ']' || len(rows) > 1 {
		return refused
	}
	body := strings.TrimRight(tail[:n], " ")
	d.rows[row] = head + body + ", " + rows[0] + tail[len(body):]
	return nil
}

// Remove takes a line out, by its path.
func (t Text) Remove(path string) ([]byte, error) {
	d := t.draft()
	lines, i := holding(d.drink, path)
	if lines == nil {
		return nil, d.missing("line " + path)
	}
	line := lines[i]
	if len(lines) == 1 {
		return nil, fail.New(fail.Wrong, line.Food+" is the only line there", "take out what it stands in, by hand")
	}
	byHand := "take line " + line.Place.String() + " out"
	row, head, tail, ok := d.at(line.Place)
	if !ok {
		return nil, fail.New(fail.Wrong, line.Food+" does not stand in this file", byHand)
	}
	if _, block := entry(head); block {
		d.rows = slices.Delete(d.rows, row, d.end(row))
	} else if n, ok := closing(tail); ok {
		switch rest := tail[n:]; {
		case rest[0] == ',':
			d.rows[row] = head + strings.TrimLeft(rest[1:], " ")
		default:
			before, _ := strings.CutSuffix(strings.TrimRight(head, " "), ",")
			d.rows[row] = before + tail[n-len(tail[:n])+len(strings.TrimRight(tail[:n], " ")):]
		}
	}
	return d.done(byHand, func(after *drink.Drink) bool { return restore(d.drink, after, path) })
}

// holding gives the list that a line of a path stands in, and its place there.
func holding(d *drink.Drink, path string) ([]drink.Line, int) {
	for _, l := range listsOf(d) {
		if i := slices.IndexFunc(*l, func(l drink.Line) bool { return l.Path == path }); i >= 0 {
			return *l, i
		}
	}
	return nil, 0
}

// restore puts a line back where it stood; false if there is no room for it.
func restore(before, after *drink.Drink, path string) bool {
	was, now := listsOf(before), listsOf(after)
	for k, l := range was {
		i := slices.IndexFunc(*l, func(l drink.Line) bool { return l.Path == path })
		if i < 0 {
			continue
		}
		if k >= len(now) || len(*now[k]) != len(*l)-1 {
			return false
		}
		*now[k] = slices.Insert(slices.Clone(*now[k]), i, (*l)[i])
		return true
	}
	return false
}

// listsOf gives the lists of lines that a person adds to and takes from.
func listsOf(d *drink.Drink) []*[]drink.Line {
	all := []*[]drink.Line{&d.Build, &d.Garnish}
	for i := range d.Components {
		all = append(all, &d.Components[i].Ingredients)
	}
	return all
}

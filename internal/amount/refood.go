package amount

import (
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// Refood gives the text of a drink file with other foods, and other amounts of them, in the place of
// those that lines name, by path. Comments and layout stay.
func Refood(d *drink.Drink, text []byte, foods map[string]string, written, other Amounts) ([]byte, error) {
	text, err := Rewrite(d, text, written, other)
	if err != nil {
		return nil, err
	}
	rows := RowsOf(text)
	for _, line := range d.Poured() {
		to, ok := foods[line.Path]
		if !ok {
			continue
		}
		if err := refood(rows, d, line, to); err != nil {
			return nil, err
		}
	}
	return rows.Text(), nil
}

// refood names another food in the row of a line.
func refood(rows Rows, d *drink.Drink, line drink.Line, to string) error {
	if line.Fill != "" || line.As == "whole" || line.Portion != "" {
		return fail.New(fail.Wrong, note.Quote(line.Path)+" says more of its food than its name, which is not of the other", "write the line by hand: "+to)
	}
	return rows.Swap(d, line, to)
}

// Unread gives the text of a drink file without what was read of some components.
func Unread(d *drink.Drink, text []byte, components []string) ([]byte, error) {
	rows := RowsOf(text)
	cut := func(s drink.Step) error {
		if _, is := s.(*drink.Measured); !is {
			return nil
		}
		return rows.Cut(d, s.At(), s.Kind())
	}
	for i := range d.Components {
		c := &d.Components[i]
		if !slices.Contains(components, c.Name) {
			continue
		}
		for _, s := range c.Steps {
			if err := cut(s); err != nil {
				return nil, err
			}
		}
		if c.Measured != nil {
			if err := cut(c.Measured); err != nil {
				return nil, err
			}
		}
	}
	for _, s := range d.Finish {
		if err := cut(s); err != nil {
			return nil, err
		}
	}
	return rows.Text(), nil
}

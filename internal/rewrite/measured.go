package rewrite

import (
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Readings are those that Measured writes, each the key of a measured: in the file.
var Readings = []string{"mass", "brix", "ph", "tds", "ta", "density", "abv"}

// Measured writes what an instrument read of a component, or of the drink (of is empty), after its
// last step: "14.8", "212 g ± 1 g". What was read before gives way to it.
func (t Text) Measured(of, reading, value string) ([]byte, error) {
	value = strings.TrimSpace(value)
	if err := oneRow(value); err != nil {
		return nil, err
	}
	if !slices.Contains(Readings, reading) {
		return nil, fail.New(fail.Wrong, "no instrument reads \""+reading+"\"", "it is one of "+fail.Or(Readings))
	}
	d := t.draft()
	pair := reading + ": " + scalar(value)
	byHand := "measured: {" + pair + "}"
	refused := fail.New(fail.Wrong, "what was read of it is not written in this file, or not in a form that can be added to", "write it by hand: "+byHand)
	was := measuredOf(d.drink, of)
	switch {
	case was != nil:
		if !d.setReading(was.Place, reading, scalar(value)) {
			return nil, refused
		}
	case of == "":
		row := slices.IndexFunc(d.rows, func(row string) bool { return strings.HasPrefix(row, "finish:") })
		if row < 0 {
			row = slices.IndexFunc(d.rows, func(row string) bool { return strings.HasPrefix(row, "build:") })
		}
		if row < 0 {
			return nil, refused
		}
		d.insert(d.end(row), byHand)
	default:
		c, ok := d.drink.Component(of)
		if !ok {
			return nil, d.missing("component " + of)
		}
		row, _, _, ok := d.at(c.Place)
		if !ok || row+1 >= len(d.rows) {
			return nil, refused
		}
		first := row + 1
		for first < len(d.rows) && idle(d.rows[first]) {
			first++
		}
		if first == len(d.rows) || depth(d.rows[first]) <= depth(d.rows[row]) {
			return nil, refused
		}
		d.insert(d.end(row), d.rows[first][:depth(d.rows[first])]+byHand)
	}
	return d.done(byHand, func(after *drink.Drink) bool {
		now := measuredOf(after, of)
		if now == nil || !reads(now, reading) {
			return false
		}
		if was != nil {
			*now = *was
			return true
		}
		if c, ok := after.Component(of); ok && of != "" {
			c.Measured = nil
			return true
		}
		after.Finish = after.Finish[:len(after.Finish)-1]
		if len(after.Finish) == 0 {
			after.Finish = d.drink.Finish
		}
		return true
	})
}

// measuredOf gives what was read of a component or of the drink after its last step; nil: nothing.
func measuredOf(d *drink.Drink, of string) *drink.Measured {
	if of != "" {
		if c, ok := d.Component(of); ok {
			return c.Measured
		}
		return nil
	}
	for _, s := range d.Finish {
		if m, is := s.(*drink.Measured); is && m.Pot() != m.StepPath() {
			return m
		}
	}
	return nil
}

// reads reports whether a reading is there.
func reads(m *drink.Measured, reading string) bool {
	return map[string]bool{
		"mass": m.Mass != nil, "brix": m.Brix != nil, "ph": m.PH != nil, "tds": m.TDS != nil, "ta": m.TA != nil, "density": m.Density != nil, "abv": m.ABV != nil,
	}[reading]
}

// setReading writes a reading into the map that begins at a place, in { } or as a block.
func (d *draft) setReading(at fail.Place, reading, value string) bool {
	row, head, tail, ok := d.at(at)
	if !ok {
		return false
	}
	key := regexp.MustCompile(`(?i)^["']?` + regexp.QuoteMeta(reading) + `["']?\s*:\s+`)
	if strings.HasPrefix(tail, "{") {
		return d.setInBraces(row, head, tail, key, reading+": "+value)
	}
	deep := depth(d.rows[row])
	end := row
	for i := row; i < len(d.rows); i++ {
		text := d.rows[i]
		switch {
		case idle(text) || depth(text) > deep:
			continue
		case depth(text) < deep:
			i = len(d.rows)
			continue
		}
		end = d.end(i)
		if found := key.FindString(text[deep:]); found != "" {
			rest := text[deep+len(found):]
			n := len(strings.TrimRight(rest, "\r\n"))
			if c := strings.Index(rest, " #"); c >= 0 {
				n = c
			}
			old := strings.TrimRight(rest[:n], " ")
			d.rows[i] = text[:deep] + found + value + rest[len(old):]
			return true
		}
	}
	d.insert(end, strings.Repeat(" ", deep)+reading+": "+value)
	return true
}

// setInBraces does so in a map that stands in one row.
func (d *draft) setInBraces(row int, head, tail string, key *regexp.Regexp, pair string) bool {
	for from := 1; ; {
		n, ok := closing(tail[from:])
		if !ok {
			return false
		}
		entry := strings.TrimSpace(tail[from : from+n])
		start := from + strings.Index(tail[from:], entry)
		switch {
		case key.MatchString(entry):
			d.rows[row] = head + tail[:start] + pair + tail[start+len(entry):]
			return true
		case tail[from+n] == '}':
			body := strings.TrimRight(tail[:from+n], " ")
			d.rows[row] = head + body + ", " + pair + tail[len(body):]
			return true
		}
		from += n + 1
	}
}

package drink

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"sipsum/internal/benchlog"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// This file takes the readings of a drink from the bench log that lies beside it: of each pot and quantity the
// latest line, in the place of what the drink file says of it; other quantities stay as the file has them.

// Logged is a reading of which the bench log has the latest line.
type Logged struct {
	benchlog.Line        // that counts
	Instead       string // what the drink file says, which does not count; "" if it says nothing
	Spread        benchlog.Spread
	Spreads       bool // there are lots enough to tell their spread
	NextLot       bool // the drink is asked for as the next lot may be
}

// Told says which line of the log counts, in the place of what, and what its lots say of the next one: nine in ten
// lie between the figures.
func (l Logged) Told() string {
	text := "the log has " + l.Written() + " of " + l.When
	for _, of := range []struct{ what, is string }{{" by ", l.Who}, {", lot ", l.Lot}, {", read with ", l.Meter}} {
		if of.is != "" {
			text += of.what + clip(of.is)
		}
	}
	if l.Instead != "" {
		text += "; it counts in the place of " + l.Instead + " of the drink file"
	}
	if !l.Spreads {
		return text
	}
	low, high := l.Next()
	return text + fmt.Sprintf("; %d readings of %d lots, on average %.3g: nine in ten of the next lie between %.3g and %.3g", l.Spread.Readings, l.Spread.Lots, l.Spread.Mean, low, high)
}

// Next gives the range in which nine in ten of the next lots lie.
func (l Logged) Next() (low, high float64) {
	reach := distuv.UnitNormal.Quantile(estimate.HighShare) * l.Spread.Next
	return max(l.Spread.Mean-reach, 0), l.Spread.Mean + reach
}

// LoggedOf gives what the log has of a reading; nil: nothing.
func (m *Measured) LoggedOf(reading string) *Logged {
	for i := range m.Logged {
		if m.Logged[i].Quantity == reading {
			return &m.Logged[i]
		}
	}
	return nil
}

// logKey is a reading that a log may have: how its value is read, and where it is kept.
type logKey struct {
	key   string
	scale *unit.Scale // nil: a mass
	field func(m *Measured) **Quantity
}

var logKeys = []logKey{
	{"mass", nil, nil},
	{"brix", &brixScale, func(m *Measured) **Quantity { return &m.Brix }},
	{"tds", &percent, func(m *Measured) **Quantity { return &m.TDS }},
	{"ph", &phScale, func(m *Measured) **Quantity { return &m.PH }},
	{"ta", &acidity, func(m *Measured) **Quantity { return &m.TA }},
	{"density", &density, func(m *Measured) **Quantity { return &m.Density }},
	{"abv", &percent, func(m *Measured) **Quantity { return &m.ABV }},
}

// LogQuantities are the readings that a bench log may have: keys of measured.
func LogQuantities() []string { return each(logKeys, func(k logKey) string { return k.key }) }

// ReadLogged reads the value of a line of the log; a mass in grams.
func ReadLogged(quantity, written string) (Quantity, error) {
	i := slices.IndexFunc(logKeys, func(k logKey) bool { return k.key == quantity })
	if i < 0 {
		return Quantity{}, fail.New(fail.Wrong, "no instrument reads "+quoted(quantity), "it is one of "+fail.Or(LogQuantities()))
	}
	return logKeys[i].read(written)
}

func (k logKey) read(written string) (Quantity, error) {
	if k.scale != nil {
		q, err := k.scale.Parse(written)
		if slices.Contains(k.scale.Units, "") { // with its unit or without
			q.Unit = ""
		}
		return q, err
	}
	a, err := massLogged(written)
	return Quantity{Number: a.Base(), Unit: "g"}, err
}

// keep puts a value that can be read in the place of what was read, and gives that as it was written.
func (k logKey) keep(m *Measured, written string) (instead string) {
	if k.scale == nil {
		if m.Mass != nil {
			instead = m.Mass.String()
		}
		a, _ := massLogged(written)
		m.Mass = &a
		return instead
	}
	field := k.field(m)
	if *field != nil {
		instead = (*field).String()
	}
	q, _ := k.scale.Parse(written)
	*field = &q
	return instead
}

// massLogged reads a mass.
func massLogged(written string) (unit.Amount, error) {
	a, rest, err := unit.ParseAmount(unit.PlainSpaces(written))
	if err == nil && (rest != "" || a.Measure.Kind != unit.Mass || a.Base() > mostBase) {
		err = fail.New(fail.Wrong, quoted(written)+" is not a mass", "write it like 212 g ± 1 g")
	}
	return a, err
}

// logBeside takes the readings of the log that lies beside a drink, if there is one.
func logBeside(r *reader, d *Drink, beside func(string) ([]byte, error)) {
	text, err := beside(benchlog.File)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return
	case err != nil:
		r.unread(r.at(1, 1), benchlog.File, err)
		return
	case len(text) > mostBytes:
		r.faults.Add(fail.Place{File: benchlog.File, Line: 1, Col: 1}, "move its oldest lines to another file", "the log has more than %d bytes", mostBytes)
		return
	}
	lines, faults := benchlog.Parse(benchlog.File, text)
	r.faults.Take(faults)
	byPot := map[[2]string][]benchlog.Line{}
	for _, l := range benchlog.Latest(lines) {
		if l.Drink != d.Name {
			continue
		}
		if _, err := ReadLogged(l.Quantity, l.Written()); err != nil {
			column := "value"
			if !slices.Contains(LogQuantities(), l.Quantity) {
				column = "quantity"
			}
			r.faults.Join(l.At(column), err)
			continue
		}
		byPot[[2]string{l.Pot, l.Quantity}] = append(byPot[[2]string{l.Pot, l.Quantity}], l)
	}
	for _, k := range logKeys {
		for i := range d.Components {
			c := &d.Components[i]
			all := byPot[[2]string{c.Name, k.key}]
			if len(all) == 0 {
				continue
			}
			if c.Measured == nil {
				c.Measured = &Measured{Head: Head{Word: "measured", Place: all[0].Place, Path: escape(c.Name) + "/end/measured"}}
			}
			c.Measured.log(k, all)
		}
		if all := byPot[[2]string{"", k.key}]; len(all) > 0 {
			d.measuredAtEnd(all[0].Place).log(k, all)
		}
	}
}

// measuredAtEnd gives what was read of the drink after its last step, begun if nothing was.
func (d *Drink) measuredAtEnd(at fail.Place) *Measured {
	const path = finish + "/end/measured"
	for _, s := range d.Finish {
		if m, is := s.(*Measured); is && m.StepPath() == path {
			return m
		}
	}
	m := &Measured{Head: Head{Word: "measured", Place: at, Path: path}}
	d.Finish = append(d.Finish, m)
	return m
}

// log lets the latest of the lines of a quantity be what is read; all of them can be read.
func (m *Measured) log(k logKey, all []benchlog.Line) {
	last := all[len(all)-1]
	now, _ := k.read(last.Written())
	lots := map[string]float64{}
	for _, x := range all {
		if q, _ := k.read(x.Written()); q.Unit == now.Unit { // an acidity in another unit is of another scale
			lots[x.Batch()] = q.Number
		}
	}
	l := Logged{Line: last}
	l.Spread, l.Spreads = benchlog.SpreadOf(lots, len(all))
	l.Instead = k.keep(m, last.Written())
	m.Logged = append(m.Logged, l)
}

// ForNextLot asks of the readings of which several lots were logged for the next lot: it reads their mean, and as far from
// it as lots differ. It gives how many readings are so.
func (d *Drink) ForNextLot() (changed int) {
	for _, m := range d.Measurements() {
		for i := range m.Logged {
			l := &m.Logged[i]
			if !l.Spreads || l.Spread.Next <= 0 {
				continue
			}
			changed++
			l.NextLot = true
			k := logKeys[slices.IndexFunc(logKeys, func(k logKey) bool { return k.key == l.Quantity })]
			q, _ := k.read(l.Written())
			q.Number, q.Half = l.Spread.Mean, 0
			k.keep(m, q.String())
		}
	}
	return changed
}

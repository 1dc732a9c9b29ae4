package drink

import (
	"slices"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// MetersFile is the shelf of meters that is read beside a drink unasked.
const MetersFile = "meters.yaml"

// Instruments is what a bar measures with.
type Instruments struct {
	Scale  *unit.Amount // resolution of the bar's scale, a mass; nil if not stated
	Meters []Meter      // of the shelf, in its order
}

// Meter is an instrument of the bar.
type Meter struct {
	Name       string
	Place      fail.Place
	Kind       string     // of data/meter_kinds.csv
	Resolution *Quantity  // of what it shows; nil: that of its kind
	Class      string     // of OIML R 76; "" if not stated
	Checked    int        // the day of its check (unit.Day); 0 if not stated
	Standards  []Standard // what was read then
	Zero       *Quantity  // mV of an electrode in pH 7, as its meter tells it
	Slope      *Quantity  // % of Nernst, as its meter tells it
	Note       string
}

// Standard is what an instrument showed of something known.
type Standard struct {
	Place fail.Place
	Text  string    // as it is written: "ph 4.01 at 22 °C"
	Known Quantity  // a buffer by its name
	At    *Quantity // °C; nil if not stated
	Shown []Quantity
}

// meterNamed tells whether a reading names a meter: one of the log by its line.
func (m *Measured) meterNamed(reading string) func(name string) bool {
	if l := m.LoggedOf(reading); l != nil {
		return func(name string) bool { return name == l.Meter }
	}
	return func(name string) bool {
		return slices.ContainsFunc(m.Meters, func(w Word) bool { return w.Text == name })
	}
}

// DayOf gives the day of a reading (unit.Day); 0: nobody says.
func (m *Measured) DayOf(reading string) int {
	if l := m.LoggedOf(reading); l != nil {
		return l.Line.Day()
	}
	return m.Day
}

// Measurements gives everything that was read, in the order of the file: of components, then of the drink.
func (d *Drink) Measurements() []*Measured {
	var list []*Measured
	steps := func(steps []Step) {
		for _, s := range steps {
			if m, is := s.(*Measured); is {
				list = append(list, m)
			}
		}
	}
	for i := range d.Components {
		steps(d.Components[i].Steps)
		if m := d.Components[i].Measured; m != nil {
			list = append(list, m)
		}
	}
	steps(d.Finish)
	return list
}

// Kinds gives what was read, as keys of measured.
func (m *Measured) Kinds() []string {
	var list []string
	if m.Mass != nil {
		list = append(list, "mass")
	}
	for _, q := range []struct {
		key string
		q   *Quantity
	}{{"brix", m.Brix}, {"tds", m.TDS}, {"ph", m.PH}, {"ta", m.TA}, {"density", m.Density}, {"abv", m.ABV}} {
		if q.q != nil {
			list = append(list, q.key)
		}
	}
	if m.Titration != nil {
		list = append(list, "titration")
	}
	return list
}

// Reads tells whether a meter can take a reading: a key of measured.
func (m *Meter) Reads(reading string) bool {
	return slices.Contains(meterKinds()[m.Kind].reads, reading)
}

// MeterOf gives the instrument that took a reading: the one that is named, or the only one on the shelf that
// can. Nil: nobody says.
func (d *Drink) MeterOf(m *Measured, reading string) *Meter {
	named := m.meterNamed(reading)
	var can []*Meter
	for i := range d.Meters {
		meter := &d.Meters[i]
		if !meter.Reads(reading) {
			continue
		}
		if named(meter.Name) {
			return meter
		}
		can = append(can, meter)
	}
	if len(can) == 1 {
		return can[0]
	}
	return nil
}

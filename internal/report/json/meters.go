package jsonreport

import (
	"io"

	"sipsum/internal/meter"
	"sipsum/internal/sheet"
)

// instrument is an instrument of the shelf of meters, on the day on which it is asked for.
type instrument struct {
	Name      string            `json:"name"`
	Kind      string            `json:"kind"`
	Unit      string            `json:"unit"`
	Off       []offAt           `json:"off"`
	ReadingSD number            `json:"reading_sd"`
	Readings  int               `json:"readings"`
	Freedom   number            `json:"degrees_of_freedom"`
	Zero      number            `json:"zero_mv"` // of an electrode; null: it has none, or nobody knows
	Slope     number            `json:"slope_percent"`
	Age       *int              `json:"days_since_check"` // null: nobody says
	DueIn     *int              `json:"due_in_days"`
	Faults    []instrumentFault `json:"out_of_tolerance"`
	Advices   []instrumentFault `json:"advice"`
}

// offAt is what is shown too much of a standard; most is null where nothing is published.
type offAt struct {
	Standard string `json:"standard"`
	Known    number `json:"known"`
	Off      number `json:"off"`
	SD       number `json:"sd"`
	Most     number `json:"most"`
	Readings int    `json:"readings"`
}

type instrumentFault struct {
	What   string `json:"what"`
	Do     string `json:"do"`
	Source string `json:"source"`
}

// Meters writes sipsum.meters/1.
func Meters(w io.Writer, program string, list []sheet.Instrument) error {
	faults := func(list []meter.Fault) []instrumentFault {
		return each(list, func(f meter.Fault) instrumentFault { return instrumentFault{f.What, f.Do, f.Source} })
	}
	return write(w, struct {
		Schema  string       `json:"schema"`
		Program string       `json:"program"`
		Meters  []instrument `json:"meters"`
	}{"sipsum.meters/1", program, each(list, func(x sheet.Instrument) instrument {
		out := instrument{
			Name: x.Name, Kind: x.Kind, Unit: x.Unit, ReadingSD: number(x.Noise), Readings: x.Shown, Freedom: number(x.Free),
			Off: each(x.Offs, func(o sheet.Off) offAt {
				return offAt{o.At, number(o.X), number(o.Off), number(o.U), number(o.Most), o.N}
			}),
			Faults: faults(x.Faults), Advices: faults(x.Advices), Zero: number(x.Zero), Slope: number(x.Slope),
		}
		if x.Dated {
			out.Age, out.DueIn = &x.Age, &x.In
		}
		return out
	})})
}

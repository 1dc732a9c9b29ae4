package jsonreport

import (
	"io"

	"sipsum/internal/benchlog"
	"sipsum/internal/sheet"
)

// loggedLine is a line of the bench log.
type loggedLine struct {
	When     string `json:"when"`
	Who      string `json:"who"`
	Drink    string `json:"drink"`
	Pot      string `json:"pot"` // empty: the drink itself
	Quantity string `json:"quantity"`
	Value    string `json:"value"`
	Unit     string `json:"unit"`
	Meter    string `json:"meter"`
	Lot      string `json:"lot"`
}

func lineOf(l benchlog.Line) loggedLine {
	return loggedLine{l.When, l.Who, l.Drink, l.Pot, l.Quantity, l.Value, l.Unit, l.Meter, l.Lot}
}

// Logged writes sipsum.logged/1: what was added to a log.
func Logged(w io.Writer, file string, lines []benchlog.Line) error {
	return write(w, struct {
		Schema string       `json:"schema"`
		File   string       `json:"file"`
		Lines  []loggedLine `json:"lines"`
	}{"sipsum.logged/1", file, each(lines, lineOf)})
}

// loggedReading is a reading of which the bench log has the latest line, and what its lots tell of the next.
type loggedReading struct {
	loggedLine
	Instead  string  `json:"instead,omitempty"` // what the drink file says, which does not count
	Readings int     `json:"readings"`
	Lots     int     `json:"lots"`
	Mean     *number `json:"mean,omitempty"` // with two lots or more
	LotSD    *number `json:"lot_sd,omitempty"`
	NextSD   *number `json:"next_sd,omitempty"`
	NextLow  *number `json:"next_low,omitempty"`
	NextHigh *number `json:"next_high,omitempty"`
}

func loggedOf(s *sheet.Sheet) []loggedReading {
	list := []loggedReading{}
	for _, m := range s.Assay.Drink.Measurements() {
		for _, l := range m.Logged {
			x := loggedReading{loggedLine: lineOf(l.Line), Instead: l.Instead, Readings: l.Spread.Readings, Lots: l.Spread.Lots}
			if l.Spreads {
				low, high := l.Next()
				given := func(x float64) *number { n := number(x); return &n }
				x.Mean, x.LotSD, x.NextSD, x.NextLow, x.NextHigh = given(l.Spread.Mean), given(l.Spread.SD), given(l.Spread.Next), given(low), given(high)
			}
			list = append(list, x)
		}
	}
	return list
}

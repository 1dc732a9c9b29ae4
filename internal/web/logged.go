package web

import (
	"net/url"
	"strings"
	"time"

	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/rewrite"
)

// Logger is where readings are written down: lines are added, and what is there stays.
type Logger interface {
	Log(lines ...benchlog.Line) error
}

// The fields of a reading that goes into the log instead of the file: the pots whose do, and of each who read it, which
// lot it is, and with which meter.
const (
	logField   = "log"    // log=POT
	whoField   = "who|"   // who|POT
	lotField   = "lot|"   // lot|POT
	meterField = "meter|" // meter|POT
)

var (
	errNoPot  = fail.New(fail.Wrong, "the drink has no such component", "open the drink again: the file may have changed")
	errNoName = fail.New(fail.Wrong, "the drink has no name, by which the log could call it", "write: drink: \"A Name\"")
)

// withLine adds what was read of a pot to the lines of the log, or says why it cannot be read.
func withLine(lines []benchlog.Line, form url.Values, pot, kind, value string) ([]benchlog.Line, error) {
	if _, err := drink.ReadLogged(kind, value); err != nil {
		return nil, err
	}
	said := func(field string) string { return strings.TrimSpace(form.Get(field + pot)) }
	return append(lines, benchlog.Line{
		When: time.Now().Format(benchlog.Moment), Who: said(whoField), Pot: potOf(pot), Quantity: kind, Value: value, Meter: said(meterField), Lot: said(lotField),
	}), nil
}

// writeDown writes lines into a log, under the name of the drink that the page has.
func writeDown(log Logger, t rewrite.Text, lines []benchlog.Line) error {
	d, _ := drink.Parse(t.Name, t.Bytes, t.Open)
	for i := range lines {
		if _, ok := d.Component(lines[i].Pot); !ok && lines[i].Pot != "" {
			return errNoPot
		}
		lines[i].Drink = d.Name
	}
	if d.Name == "" {
		return errNoName
	}
	return log.Log(lines...)
}

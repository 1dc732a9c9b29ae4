package cli

import (
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/unit"
	"sipsum/internal/workshop"
)

// logging is a line for the bench log, as the flags of log have it.
type logging struct {
	pot, by, lot, meter, on string
	values                  map[string]*string // by the key of the reading
}

// logFlags are those of a reading that log writes down.
func logFlags(cmd *cobra.Command) *logging {
	l := &logging{values: map[string]*string{}}
	f := cmd.Flags()
	for _, key := range drink.LogQuantities() {
		l.values[key] = f.String(key, "", "write down what was read, as under measured: "+logExamples[key])
	}
	f.StringVar(&l.pot, "pot", "", "the component that was read (default: the drink itself)")
	f.StringVar(&l.by, "by", "", "who read it")
	f.StringVar(&l.lot, "lot", "", "the lot that was read (default: the one of its day)")
	f.StringVar(&l.meter, "meter", "", "what it was read with, by its name on the shelf of meters")
	f.StringVar(&l.on, "on", "", "when, 2027-03-31 or \"2027-03-31 14:05\" (default: now)")
	return l
}

var logExamples = map[string]string{"mass": "212 g", "brix": "62.1", "tds": "9.5 %", "ph": "3.12", "ta": "6.2 g/l", "density": "1.03 g/ml", "abv": "12 %"}

// asked reports whether something is to be written down.
func (l *logging) asked(cmd *cobra.Command) bool {
	return slices.ContainsFunc(append(drink.LogQuantities(), "pot", "by", "lot", "meter", "on"), cmd.Flags().Changed)
}

// write adds what was read to the log beside a drink, and says what it wrote.
func (l *logging) write(a *app, cmd *cobra.Command, arg string, now time.Time) error {
	if _, demo := demoName(arg); demo || arg == "-" {
		return fail.New(fail.Wrong, "beside this drink lies no log", "name a drink file: sipsum log FILE --brix 62.1")
	}
	path, err := drinkNamed(arg)
	if err != nil {
		return err
	}
	d, faults, err := drinks{a}.read(arg)
	if err != nil {
		return err
	}
	if err := faults.Err(fail.Wrong); err != nil {
		return err
	}
	lines, err := l.lines(cmd, d, now)
	if err != nil {
		return err
	}
	folder, err := workshop.Open(filepath.Dir(path), mostText)
	if err != nil {
		return err
	}
	defer folder.Close()
	if err := folder.Log(lines...); err != nil {
		return err
	}
	if a.json() {
		return jsonreport.Logged(a.streams.Out, filepath.Join(filepath.Dir(path), benchlog.File), lines)
	}
	for _, x := range lines {
		of := "the drink"
		if x.Pot != "" {
			of = x.Pot
		}
		fmt.Fprintf(a.streams.Out, "%s: %s of %s, %s, lot %s\n", benchlog.File, x.Quantity, of, x.Written(), x.Batch())
	}
	return nil
}

// lines makes a line of each reading; all that is wrong is told at once.
func (l *logging) lines(cmd *cobra.Command, d *drink.Drink, now time.Time) ([]benchlog.Line, error) {
	var faults fail.List
	at := func(flag string) fail.Place { return fail.Place{File: "--" + flag, Line: 1, Col: 1} }
	line := benchlog.Line{When: now.Format(benchlog.Moment), Who: l.by, Drink: d.Name, Pot: l.pot, Meter: l.meter, Lot: l.lot}
	if l.on != "" {
		line.When = l.on
	}
	if _, wrong := benchlog.Parse("--on", slices.Concat(benchlog.Header(), benchlog.Line{When: line.When, Drink: "x", Quantity: "ph", Value: "7"}.Text())); wrong.Len() > 0 {
		faults.Add(at("on"), "write year, month and day, and if you like the time: 2027-03-31 14:05", "%q is no date", l.on)
	} else if line.When > now.AddDate(0, 0, 1).Format(benchlog.Moment) { // somewhere it is tomorrow already
		faults.Add(at("on"), "write when it was read: the latest line counts until a later one", "%q is yet to come", l.on)
	}
	if _, ok := d.Component(l.pot); !ok && l.pot != "" {
		var names []string
		for _, c := range d.Components {
			names = append(names, strconv.Quote(c.Name))
		}
		do := "leave --pot out: it has none, and the drink itself was read"
		if len(names) > 0 {
			do = "it has " + fail.Or(names) + "; leave --pot out for the drink itself"
		}
		faults.Add(at("pot"), do, "the drink has no component %q", l.pot)
	}
	var lines []benchlog.Line
	for _, key := range drink.LogQuantities() {
		if !cmd.Flags().Changed(key) {
			continue
		}
		written := strings.TrimSpace(*l.values[key])
		if _, err := drink.ReadLogged(key, written); err != nil {
			faults.Join(at(key), err)
			continue
		}
		x := line
		x.Quantity = key
		x.Value, x.Unit = parted(written)
		if err := l.fitsMeter(d, key); err != nil {
			faults.Join(at("meter"), err)
		}
		lines = append(lines, x)
	}
	if len(lines) == 0 && faults.Len() == 0 {
		return nil, fail.New(fail.Wrong, "nothing was read", "add what was: --"+strings.Join(drink.LogQuantities(), ", --"))
	}
	return lines, faults.Err(fail.Wrong)
}

// fitsMeter refuses a meter that is not on the shelf, or takes no such reading.
func (l *logging) fitsMeter(d *drink.Drink, key string) error {
	if l.meter == "" {
		return nil
	}
	var names []string
	for i := range d.Meters {
		m := &d.Meters[i]
		if m.Name == l.meter && m.Reads(key) {
			return nil
		}
		if m.Reads(key) {
			names = append(names, strconv.Quote(m.Name))
		}
	}
	do := "write one onto the shelf of meters, " + drink.MetersFile + " beside the drink"
	if len(names) > 0 {
		do = "the shelf has " + fail.Or(names)
	}
	return fail.New(fail.Wrong, fmt.Sprintf("no meter of the shelf that reads %s is called %q", key, l.meter), do)
}

// parted parts a value from the unit behind it, where the number stands alone before it.
func parted(written string) (value, in string) {
	number, rest, found := strings.Cut(written, " ")
	if _, _, err := unit.ParseNumber(number); err == nil && found && !unit.StatesSpread(written) {
		return number, strings.TrimSpace(rest)
	}
	return written, ""
}

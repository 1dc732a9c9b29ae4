package cli

import (
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/meter"
	"sipsum/internal/report/json"
	"sipsum/internal/report/markdown"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/unit"
)

func newMeters(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "meters [FILE]", Short: "how far the bar's own instruments are off, and what is due", Annotations: map[string]string{asMarkdown: "yes"},
		Long: "meters reads a shelf of meters (default: " + drink.MetersFile + "): pH meter, refractometer, scale and others, with what each showed\n" +
			"of what is known. It prints what each shows too much today, how sure that is, how its electrode is, and when it is\n" +
			"due; the exit code is 3 if one is out of tolerance. Drinks beside the shelf are read with it.",
		Args: cobra.ArbitraryArgs, // too many are RunE's to refuse, in our words
		RunE: func(_ *cobra.Command, args []string) error {
			path := drink.MetersFile
			switch len(args) {
			case 0:
			case 1:
				path = args[0]
			default:
				return fail.New(fail.Wrong, "more than one shelf of meters", "name one")
			}
			return showMeters(a, path, time.Now())
		},
	}
}

// showMeters prints a shelf of meters as it is on a day.
func showMeters(a *app, path string, now time.Time) error {
	text, err := a.readAll(path, mostText, "name the shelf of meters, or write one: meters: and below it a name, kind: pH meter, standards: {ph 4.01 at 22 °C: [4.05, 4.04]}")
	if err != nil {
		return err
	}
	shelf, faults := drink.ParseMeters(path, text)
	if err := faults.Err(fail.Wrong); err != nil {
		return err
	}
	states := make([]*meter.State, len(shelf))
	for i := range shelf {
		states[i] = meter.Of(&shelf[i])
		if len(states[i].Faults) > 0 {
			a.findings = fail.Findings
		}
	}
	today, _ := unit.Day(now.Format(time.DateOnly))
	list := sheet.InstrumentsOf(states, today)
	switch a.options.format {
	case formatJSON:
		return jsonreport.Meters(a.streams.Out, program, list)
	case formatMarkdown:
		return markdownreport.Meters(a.streams.Out, list)
	}
	return textreport.Meters(a.streams.Out, list, a.style())
}

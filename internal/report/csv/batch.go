package csvreport

import (
	"io"
	"math"
	"strconv"

	"sipsum/internal/batch"
	"sipsum/internal/sheet"
)

// batchHeader are the columns of a batch.
var batchHeader = []string{"drink", "what", "of", "times", "name", "food", "amount", "unit", "grams", "bought_g", "weigh_to", "text"}

// Batch prints what is bought, weighed and done, a thing a line, in the order of work.
func Batch(w io.Writer, s *sheet.Sheet, b *batch.Batch) error {
	var rows [][]string
	name := text(s.Assay.Drink.Name)
	for _, x := range b.Purchases {
		rows = append(rows, []string{name, "buy", "", "", text(x.Name), text(x.Food.ID.String()), plain(x.Bought), "g", plain(x.Grams), plain(x.Bought), "", ""})
	}
	add := func(what, of string, times float64, list ...batch.Weighed) {
		for _, w := range list {
			amount, unit := plain(w.Rounded.Number), w.Rounded.Measure.Name
			if w.Portion != "" {
				amount, unit = plain(w.Count), w.Portion
			} else if w.Dosed {
				amount = ""
			}
			rows = append(rows, []string{name, what, text(of), plain(times), text(w.Name), text(w.Food), amount, text(unit), plain(w.Grams), "", text(sheet.StepText(w)), text(sheet.WeighedText(w))})
		}
	}
	moves := func(of string, times float64, list []batch.Move) {
		for _, m := range list {
			rows = append(rows, []string{name, "step", text(of), plain(times), m.Step.Kind(), "", "", "", "", "", "", text(sheet.StepOf(m))})
			add("step amount", of, times, append(m.Lines, m.Amounts...)...)
		}
	}
	for _, p := range sheet.EarliestFirst(b.Pots) {
		times := 1.0
		if p.Whole != nil {
			times = p.Times
		}
		add("weigh", p.Name, times, p.Lines...)
		moves(p.Name, times, p.Moves)
	}
	for _, p := range b.Build {
		add("pour a serve", "", b.Serves, p.Weighed)
		add("pour all", "", 1, p.All)
	}
	moves("", b.Serves, b.Finish)
	for _, p := range b.Garnish {
		add("garnish a serve", "", b.Serves, p.Weighed)
	}
	told := sheet.DeclaredBy(s)
	for _, of := range []struct {
		what  string
		texts []string
	}{{"contains", told.Contains}, {"may contain", told.MayContain}, {"to check", told.Check}} {
		for _, x := range of.texts {
			rows = append(rows, []string{name, of.what, "", "", "", "", "", "", "", "", "", text(x)})
		}
	}
	for _, c := range s.Cautions() {
		rows = append(rows, []string{name, "caution", "", "", text(c.Code), "", "", "", "", "", "", text(c.Text)})
	}
	return write(w, batchHeader, rows)
}

// plain writes a number; nothing where there is none.
func plain(x float64) string {
	if math.IsNaN(x) {
		return ""
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}

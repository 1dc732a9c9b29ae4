package meter

import (
	"fmt"
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// Titration is the key of a reading whose meter is found with its acids (package burette).
const Titration = "titration"

// readings counts what each instrument of the shelf read, by name; titrations apart.
func readings(d *drink.Drink) (single, titrations map[string]int) {
	single, titrations = map[string]int{}, map[string]int{}
	for _, m := range d.Measurements() {
		for _, kind := range m.Kinds() {
			switch by := d.MeterOf(m, kind); {
			case by == nil:
			case kind == Titration:
				titrations[by.Name]++
			default:
				single[by.Name]++
			}
		}
	}
	return single, titrations
}

// Several names the instruments that took more than one reading.
func Several(d *drink.Drink) map[string]bool {
	several := map[string]bool{}
	single, _ := readings(d)
	for name, n := range single {
		if n > 1 {
			several[name] = true
		}
	}
	return several
}

// Notes says of the instruments that read a drink which are out of tolerance, before their readings are believed,
// which nobody checked, and what the pots tell of those that read several.
func (r *Run) Notes() (notes []note.Note) {
	if r == nil {
		return nil
	}
	single, titrations := readings(r.drink)
	for i := range r.drink.Meters {
		m := &r.drink.Meters[i]
		if single[m.Name]+titrations[m.Name] == 0 {
			continue
		}
		state, called := Of(m), m.Kind+" "+note.Quote(m.Name)
		for _, f := range state.Faults {
			notes = append(notes, note.Note{Kind: "meter out of tolerance", Text: called + " is out of tolerance, and its readings count as so much wider: " + f.String()})
		}
		if !state.Checked() {
			notes = append(notes, note.Note{Kind: "meter not checked", Text: called + " has shown nothing that is known, so its readings are as wide as those of any of its kind: write on the shelf of meters what it shows of a standard"})
		}
	}
	for _, f := range r.Found() {
		notes = append(notes, note.Note{Kind: "meter found", Text: f.String()})
	}
	return notes
}

// String says in one sentence what the pots tell of an instrument.
func (f Found) String() string {
	return fmt.Sprintf("%s %s: its %d readings together say that around %s it shows %s %s too much (%s to %s); its check alone says %s, give or take %s",
		f.Kind, note.Quote(f.Name), f.Readings, note.Number(f.At), thousandth(f.Is), f.Unit, thousandth(f.Low), thousandth(f.High), thousandth(f.Was), note.Number(f.U))
}

// thousandth writes what an instrument is off by: a figure near nothing has no digits of its own.
func thousandth(x float64) string {
	const parts = 1000
	return unit.Number(math.Round(x*parts) / parts)
}

package titration

import (
	"cmp"
	"fmt"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/note"
)

// notes says what a curve tells: the acids, which of them it does not tell apart, and what is wrong
// with the instruments or with the recipe.
func (t Told) notes(where string) []note.Note {
	var said []string
	joined := map[int]bool{}
	for _, group := range t.Joined {
		var names []string
		for _, i := range group.Acids {
			joined[i] = true
			names = append(names, t.Acids[i].Name)
		}
		said = append(said, fmt.Sprintf("%s together %s; which of them, this curve does not tell", listed(names), interval(group.Sum)))
	}
	for i, a := range t.Acids {
		if !joined[i] && a.narrowed() {
			said = append(said, fmt.Sprintf("%s %s (the recipe: %s)", a.Name, interval(a.Used), interval(a.Expected)))
		}
	}
	if len(said) == 0 {
		said = []string{"nothing of its acids that the recipe does not"}
	}
	of := cmp.Or(t.Component(), "the drink")
	list := t.contradictions(where)
	list = append(list, note.Note{Kind: "titration acids", Text: fmt.Sprintf("%s: the titration tells of 100 g: %s", of, strings.Join(said, "; "))})
	if !t.Adjusted && !t.Contradicts {
		list = append(list, note.Note{Kind: "titration meter", Text: fmt.Sprintf(
			"%s: a meter that is off fits these points, and one that is right does not: at pH 7 it shows %+.2f too much (%+.2f to %+.2f), with %.0f %% of its slope; that is taken away, and until somebody adjusts it with two buffers and titrates again its pH lifts no control of time and temperature",
			of, t.Zero.Read.Mean, t.Zero.Read.Low, t.Zero.Read.High, 100*t.Slope.Read.Mean)})
	}
	if t.Scatter > 1 {
		list = append(list, note.Note{Kind: "titration scatter", Text: fmt.Sprintf(
			"%s: the points scatter %s times as much as the meter and the volumes should, so all that they tell is that much less sure: wait for each reading, and read the volumes again",
			of, note.Number(t.Scatter))})
	}
	return list
}

// contradictions says what was read, expected and used of the acids where the curve is beyond what
// the recipe allows of them; what somebody has to decide stands on the first page, figures first.
func (t Told) contradictions(where string) []note.Note {
	var said []string
	for _, a := range t.Acids {
		if a.Held {
			said = append(said, fmt.Sprintf("%s: read %s · expected %s (%s–%s) · used %s g",
				a.Name, note.Number(a.Read.Mean), note.Number(a.Expected.Mean), note.Number(a.Expected.Low), note.Number(a.Expected.High), note.Number(a.Used.Mean)))
		}
	}
	if !t.Contradicts && len(said) == 0 {
		return nil
	}
	why := "no mixture of the acids of its recipe titrates like this"
	if !t.Contradicts {
		why = "that is more than its recipe allows"
	}
	if len(said) > 0 {
		where += ", in 100 g"
		why = strings.Join(said, "; ") + "; " + why
	}
	text := where + ": " + why + ": check the sample, the strength, the meter and the recipe"
	if t.Contradicts {
		text += "; until then what hangs on its acids spans both"
	}
	return []note.Note{{Kind: disagrees, Text: text}}
}

// worthTelling is how much of its spread an acid has to lose by a curve to be told: our own bound,
// as for readings that nobody has taken yet is a fiftieth, of a sentence with figures a tenth.
const worthTelling = 0.1

// narrowed reports whether the curve tells more of an acid than the recipe does.
func (a Acid) narrowed() bool {
	return a.Read.High-a.Read.Low < (1-worthTelling)*(a.Expected.High-a.Expected.Low)
}

func interval(s estimate.Summary) string {
	return fmt.Sprintf("%s g (%s–%s)", note.Number(s.Mean), note.Number(s.Low), note.Number(s.High))
}

// listed joins names by commas and an "and".
func listed(names []string) string {
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

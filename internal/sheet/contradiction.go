package sheet

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/figure"
	"sipsum/internal/ledger"
	"sipsum/internal/reading"
)

// contradicting are the readings that contradict their recipe, so that what hangs on them spans
// both.
func contradicting(s *Sheet) []reading.Reading {
	return slices.DeleteFunc(slices.Clone(s.Assay.Readings), func(r reading.Reading) bool { return !r.Doubted && !r.Decide })
}

// Contradicted reports whether a reading contradicts the recipe so far that neither can be used
// before somebody has said which is right; a titration does that has little to do with it.
func Contradicted(s *Sheet) bool {
	return slices.ContainsFunc(s.Assay.Readings, func(r reading.Reading) bool { return r.Decide }) || len(s.Read().Notes) > 0
}

// Contradictions says in a line each which readings contradict their recipe, for every page with
// figures that hang on them.
func Contradictions(s *Sheet) []string {
	var lines []string
	for _, r := range contradicting(s) {
		shown := func(x float64) string { return figure.Shortened(x, readingDigits(r)) }
		of := say("the drink")
		if len(r.Path) > 0 {
			of = clean.Name(r.Path[len(r.Path)-1])
		}
		expected := say("contradicted.untold")
		if !math.IsNaN(r.Expected) {
			expected = shown(r.Expected)
		}
		kind := "contradicted"
		if !r.Decide {
			kind = "contradicted.part"
		}
		lines = append(lines, say(kind, of, readingName(r), shown(r.Read), expected, strings.TrimSpace(shown(r.Used)+" "+unitBeside(r))))
	}
	for _, text := range s.Read().Notes {
		lines = append(lines, clean.Prose(text))
	}
	return lines
}

// contradictions is the block of a leaf that says it.
func contradictions(s *Sheet, role Role) Block {
	return Block{Role: role, Heading: say("contradictions"), Lines: plainLines(Contradictions(s))}
}

// hangs reports whether a figure hangs on a reading that contradicts its recipe: a part of it that
// weighs comes through a pot that was read so. A reading of acidity is of acids alone.
func hangs(s *Sheet, id constituent.ID, parts []composition.Contribution) bool {
	total, through := 0.0, 0.0
	doubted := contradicting(s)
	for _, c := range parts {
		total += c.Mean
		if slices.ContainsFunc(doubted, func(r reading.Reading) bool {
			acidity := r.Kind == "ph" || r.Kind == "ta"
			if acidity && constituent.Must(id).Parent != constituent.OrganicAcids && id != constituent.OrganicAcids {
				return false
			}
			return len(r.Path) == 0 || slices.Contains(c.Path, r.Path[len(r.Path)-1])
		}) {
			through += c.Mean
		}
	}
	return through > 0 && through >= ledger.Weighty*total
}

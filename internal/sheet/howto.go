package sheet

import (
	"slices"
	"strconv"

	"sipsum/internal/composition"
)

// What the signs say that stand at figures, whatever the form.
const (
	AtLeastMeans = "what is known; of the rest nobody has a figure"
	UpToMeans    = "the upper end of the range if every unknown part is at its most; where it is missing beside ≥, nobody can say"
	ShareMeans   = "beside ≥, a share of what is known"
)

// RangeMeans says what a range is.
func RangeMeans(draws string) string {
	return "a range: the drink was worked out " + draws + " times with everything that is not certain drawn anew, and nine results in ten lie within it. A food of a table is any food of its name, wherever it is bought"
}

// howTo says how the figures and signs of a sheet on paper are read, those that stand on it.
func (p annexed) howTo() Block {
	b := Block{Lines: []Line{{Strong: say("paper.range.sign"), Text: RangeMeans(strconv.Itoa(p.Assay.Draws))}}}
	if slices.ContainsFunc(p.Assay.PerServing, func(f composition.Figure) bool { return f.Partial }) {
		b.Lines = append(b.Lines, Line{Strong: "≥", Text: AtLeastMeans}, Line{Strong: say("paper.upto.sign"), Text: UpToMeans}, Line{Strong: "%", Text: ShareMeans})
	}
	return b
}

package sheet

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
)

// What the signs say that stand at figures, whatever the form.
const (
	AtLeastMeans = "what is known; of the rest nobody has a figure"
	UpToMeans    = "the upper end of the range if every unknown part is at its most; where it is missing beside ≥, nobody can say"
	ShareMeans   = "beside ≥, a share of what is known"

	AssumedMeans  = "part of it is assumed, by a rule or by who published it"
	TraceMeans    = "part of it is a trace: there, and too little to state"
	BelowMeans    = "part of it was looked for, and is less than could be seen"
	ByKinMeans    = "by kin: nobody measured it in this food; its kin share their acids so"
	BorrowedMeans = "another food's figure: nobody has measured this one's own"
)

// RangeMeans says what a range is.
func RangeMeans(draws string) string {
	return "a range: the drink was worked out " + draws + " times with everything that is not certain drawn anew, and nine results in ten lie within it. A food of a table is any food of its name, wherever it is bought"
}

// MemoryMeans says what was entered from memory, where it decides something: rules, the strengths of
// acids at a pH, how a solute binds water; empty if nothing.
func MemoryMeans(rules bool, unseen []string, activity bool) string {
	var list []string
	if rules {
		list = append(list, "look up a rule or a caution in the official text before you rely on it")
	}
	if len(unseen) > 0 {
		list = append(list, "at a pH it is the strength of "+clean.Listed(unseen))
	}
	if activity {
		list = append(list, "at a water activity it is how a solute binds water")
	}
	if len(list) == 0 {
		return ""
	}
	return "entered from memory and checked by nobody: " + strings.Join(list, "; ")
}

// howTo says how the figures and signs of a sheet on paper are read, those that stand on it.
func (p annexed) howTo() Block {
	b := Block{Lines: []Line{{Strong: say("paper.range.sign"), Text: RangeMeans(strconv.Itoa(p.Assay.Draws))}}}
	if slices.ContainsFunc(p.Assay.PerServing, func(f composition.Figure) bool { return f.Partial }) {
		b.Lines = append(b.Lines, Line{Strong: "≥", Text: AtLeastMeans}, Line{Strong: say("paper.upto.sign"), Text: UpToMeans}, Line{Strong: "%", Text: ShareMeans})
	}
	if text := p.memory(); text != "" {
		b.Lines = append(b.Lines, Line{Strong: "†", Text: text})
	}
	return b
}

// memory says what on the sheet was entered from memory.
func (p annexed) memory() string {
	var unseen []string
	activity := false
	of := func(c *chemistry.Chemistry) {
		if c == nil {
			return
		}
		for _, a := range c.Unseen {
			if !slices.Contains(unseen, a) {
				unseen = append(unseen, a)
			}
		}
		activity = activity || c.Keeping != nil && c.Keeping.FromMemory
	}
	of(p.Assay.Chemistry)
	for i := range p.Assay.Components {
		of(p.Assay.Components[i].Chemistry)
	}
	rules := slices.ContainsFunc(slices.Concat(p.CardLeaf().Blocks, p.AllergensLeaf().Blocks), func(b Block) bool { return b.hasDagger() })
	return MemoryMeans(rules, unseen, activity)
}

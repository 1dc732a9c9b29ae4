package claims

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/clean"
	"sipsum/internal/note"
)

// Line is the verdict on a claim in one line.
func (c Said) Line() string {
	parts := []string{c.verdict()}
	if c.Among != "" {
		parts = append(parts, c.Among)
	}
	if l := c.Weakest; l != nil {
		if l.Name != "" {
			weakest := "weakest: " + l.Name
			if l.Rests != "" {
				weakest += " (" + l.Rests + ")"
			}
			parts = append(parts, weakest)
		}
		parts = append(parts, "asked next: "+l.Asked+" → "+l.Answer)
	}
	return strings.Join(parts, " · ")
}

// verdict says how surely a claim holds; where the unknown decides, what would settle it.
func (c Said) verdict() string {
	switch {
	case c.Outcome.Logic == claim.Never:
		return c.Says() + ": never true, holds in 0 of 100: its parts exclude one another in any drink"
	case c.Outcome.Logic == claim.Always:
		return c.Says() + ": always true, holds in 100 of 100: of any drink, so that it says nothing of this one"
	case c.Word == claim.Unknown:
		text := fmt.Sprintf("unknown: holds in %d to %d of 100", ofHundred(c.Hurt), ofHundred(c.Help))
		if c.Settle != nil {
			text += "; nobody knows " + c.UnknownWords()
		}
		return text
	case c.Firm():
		return fmt.Sprintf("%s in %d of 100", c.Says(), ofHundred(c.P))
	}
	return fmt.Sprintf("%s: holds in %d of 100", c.Says(), ofHundred(c.P))
}

const hundred = 100

// ofHundred counts draws of a hundred. Only all are all, and only none are none.
func ofHundred(p float64) int {
	n := int(math.Round(p * hundred))
	switch {
	case n == hundred && p < 1:
		return hundred - 1
	case n == 0 && p > 0:
		return 1
	}
	return n
}

// mostNamed is how many unknown things are named with what settles them: our own bound.
const mostNamed = 3

// Unknowns are what nobody knows and the verdict waits for; none where it is given.
func (c Said) Unknowns() []*claim.Gap {
	if c.Word != claim.Unknown || c.Settle == nil {
		return nil
	}
	return append([]*claim.Gap{c.Settle}, c.Also...)
}

// UnknownWords names what nobody knows and the verdict waits for; of many a few, and how many more there are.
func (c Said) UnknownWords() string {
	var names []string
	list := c.Unknowns()
	for _, gap := range list[:min(len(list), mostNamed)] {
		names = append(names, gap.What)
	}
	if more := len(list) - len(names); more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return clean.Listed(names)
}

// Lines are what else must be known of a claim: how its names were meant, what would settle
// it, in which world it is false and which reading closes that.
func (c Said) Lines() []string {
	lines := append([]string(nil), c.Remarks...)
	for i, gap := range c.Unknowns() {
		switch {
		case i >= mostNamed:
		case gap.Settle != "":
			lines = append(lines, "settle it: "+gap.Settle+" (in "+gap.Where+")")
		case gap.Where != "":
			lines = append(lines, gap.Where)
		}
	}
	if c.Nearest != nil {
		words := make([]string, len(c.Nearest.Changes))
		for i, x := range c.Nearest.Changes {
			if words[i] = x.Words + ", which nobody knows"; !math.IsNaN(x.Is) {
				taken := "taken to be " + note.Grams(rounded(x.Is))
				if x.Among != "" {
					taken += "; " + x.Among
				}
				words[i] = x.Words + " (" + taken + ")"
			}
		}
		lines = append(lines, "false if "+strings.Join(words, " and "))
	} else if text := c.noWorld(); text != "" {
		lines = append(lines, text)
	}
	if c.Closes != nil {
		of := "the finished drink"
		if c.Closes.Of != "" {
			of = c.Closes.Of
		}
		lines = append(lines, fmt.Sprintf("surest by a reading of %s: measured: {%s: …} (narrows it by %d %%)", of, c.Closes.Reading, ofHundred(c.Closes.Narrows[0].By)))
	}
	return lines
}

// noWorld says of a claim that holds without a nearest world why none is told; empty if none was looked for.
func (c Said) noWorld() string {
	if !c.Sought {
		return ""
	}
	many := ""
	if n := ofHundred(c.P); n < hundred {
		many = fmt.Sprintf("; in the %d of 100 draws in which it fails many things are a little off", hundred-n)
	}
	if !c.Searched {
		return "its nearest world was not found: a file cannot state it, or the search takes too long" + many
	}
	return "no single figure of a food or amount breaks it within the range of its draws, nor do up to " + "three together" + many
}

// rounded keeps three digits of a figure.
func rounded(x float64) float64 {
	if x == 0 {
		return 0
	}
	step := lastOf(x)
	return math.Round(x/step) * step
}

// lastOf is one in the last digit that is said of a figure.
func lastOf(x float64) float64 {
	const digits = 3
	return math.Pow10(int(math.Floor(math.Log10(math.Abs(x)))) - digits + 1)
}

package claims

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/note"
)

// Line is the verdict on a claim in one line.
func (c Said) Line() string {
	parts := []string{c.verdict()}
	if c.Among != "" {
		parts = append(parts, c.Among)
	}
	if c.Weakest != nil {
		weakest := "weakest: " + c.Weakest.Name
		if c.Weakest.Rests != "" {
			weakest += " (" + c.Weakest.Rests + ")"
		}
		parts = append(parts, weakest, "asked next: "+c.Weakest.Asked+" → "+c.Weakest.Answer)
	}
	return strings.Join(parts, " · ")
}

// verdict says how surely a claim holds; where the unknown decides, what would settle it.
func (c Said) verdict() string {
	switch {
	case c.Word == claim.Unknown:
		text := fmt.Sprintf("unknown: holds in %d to %d of 100", ofHundred(c.Hurt), ofHundred(c.Help))
		if c.Settle != nil {
			text += "; nobody knows " + c.Settle.What
		}
		return text
	case c.Holds():
		return fmt.Sprintf("holds in %d of 100", ofHundred(c.P))
	case c.Unclear():
		return fmt.Sprintf("unclear: holds in %d of 100", ofHundred(c.P))
	}
	return fmt.Sprintf("fails: holds in %d of 100", ofHundred(c.P))
}

// ofHundred counts draws of a hundred. Only all are all, and only none are none.
func ofHundred(p float64) int {
	const all = 100
	n := int(math.Round(p * all))
	switch {
	case n == all && p < 1:
		return all - 1
	case n == 0 && p > 0:
		return 1
	}
	return n
}

// Lines are what else must be known of a claim: how its names were meant, what would settle
// it, in which world it is false and which reading closes that.
func (c Said) Lines() []string {
	lines := append([]string(nil), c.Remarks...)
	if c.Word == claim.Unknown && c.Settle != nil && c.Settle.Settle != "" {
		lines = append(lines, "settle it: "+c.Settle.Settle+" (in "+c.Settle.Where+")")
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
	} else if c.Searched {
		lines = append(lines, "no figure of a food or amount makes it false within the range of its draws")
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

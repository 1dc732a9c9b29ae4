package sheet

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/estimate"
	"sipsum/internal/fit"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// This file tells changes: of what a wish asks for, and of what it keeps.

// Changed tells by what share a figure of a ready target moved, and in how many draws that is as much as is asked, or as
// little: both are of the change, which whatever is uncertain before and after leaves alone. Empty where none is told.
func Changed(h FittedTarget) string {
	if h.Says == "" || math.IsNaN(h.Moved.Mean) {
		return ""
	}
	return movedBy(h.Moved) + " beside the drink as it is written; that holds, draw by draw, in " + Chance(h.Hurt, h.Help)
}

// movedBy writes a change with its interval: "−20 % (−22 to −18)".
func movedBy(s estimate.Summary) string {
	mean, low, high := inPercent(s.Mean), inPercent(s.Low), inPercent(s.High)
	if low == high {
		return mean + " %"
	}
	return mean + " % (" + low + " to " + high + ")"
}

// inPercent writes a share in per cent, to a tenth below ten.
func inPercent(x float64) string {
	const fine = 10
	x *= unit.Hundred
	if tenths := math.Round(x*fine) / fine; math.Abs(tenths) < fine {
		x = tenths
	} else {
		x = math.Round(x)
	}
	switch {
	case x < 0:
		return "−" + note.Number(-x)
	case x > 0:
		return "+" + note.Number(x)
	}
	return "0"
}

// against says first of all that what was asked for went the other way, and which of the drink's own targets pull there.
func (f *Fitted) against() string {
	var own, against []string
	for _, h := range f.Held {
		if h.Says == "" && h.Text != fit.TheGlass {
			if own = append(own, h.Text); slices.Contains(f.Together, h.Text) {
				against = append(against, h.Text)
			}
		}
	}
	if len(against) > 0 {
		own = against
	}
	for _, h := range f.Held {
		if h.Says == "" || h.Kept || h.Met || math.IsNaN(h.Moved.Mean) {
			continue
		}
		asked, _, _ := strings.Cut(h.Says, ",")
		more := h.Least > 1
		text := ""
		switch still := math.Abs(h.Moved.Mean) < nothingMoved; {
		case still:
			text = "Asked for " + asked + ", and it stays as it is"
		case more && h.Moved.Mean < 0, !more && h.Moved.Mean > 0:
			text = "Asked for " + asked + ", and this goes the other way: " + h.Words + " " + three(h.Before.Mean) + " → " + figureIn(h) + ", " + movedBy(h.Moved)
		default:
			continue
		}
		if len(own) > 0 {
			text += ". What the drink's own targets ask for stands against it (" + clean.Listed(own) + "): leave one out or write it wider"
		}
		return text + ". "
	}
	return ""
}

// nothingMoved is the change that is none: half of the last digit that is told.
const nothingMoved = 0.0005

func figureIn(h fit.Held) string { return strings.TrimSpace(three(h.After.Mean) + " " + h.After.Unit) }

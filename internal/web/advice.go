package web

import (
	"context"
	"math"

	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/figure"
	"sipsum/internal/sheet"
)

// Adviser tries what a drink could be, and what could be said of it.
type Adviser interface {
	// Fit looks for amounts at which the targets of a drink, and a wish, are met.
	Fit(ctx context.Context, file File, wish Wish, draws int) (*sheet.Fitted, error)
	// Swap looks for a food in the place of one of a drink.
	Swap(ctx context.Context, file File, ask Exchange, draws int) (*Swapped, error)
	// Weigh judges one claim in the place of those of the drink.
	Weigh(ctx context.Context, file File, claim drink.Claim, draws int) ([]claims.Said, error)
}

// told is a figure as a page tells it.
type told struct {
	Text, Unit, Range string
	Path              string // where the document has it; empty: it is not known
	Finer             string // the unit that it is told in, where the document has a larger one
}

// toldOf writes a figure; path is that of the object that holds it.
func toldOf(r composition.Result, path string) told {
	f := figure.Of(r)
	t := told{Text: f.Number, Unit: f.Unit, Path: path + ".mean"}
	switch {
	case r.Unit == "pH": // the word stands before it
		t.Unit = ""
	case f.Unit != r.Unit:
		t.Finer = f.Unit
	}
	switch {
	case f.Unknown || math.IsNaN(r.Mean):
		t = told{Text: "not known"}
	case f.AtLeast:
		t.Text = "≥ " + t.Text
	}
	if f.Low != "" && t.Path != "" {
		t.Range = f.Low + " to " + f.High
	}
	if f.UpTo != "" {
		if t.Range != "" {
			t.Range += "; "
		}
		t.Range += "up to " + f.UpTo
	}
	return t
}

// shift is a figure before and after.
type shift struct {
	Words   string
	Was, Is told
}

// Moved tells whether it reads otherwise.
func (s shift) Moved() bool { return s.Was.Text != s.Is.Text || s.Was.Unit != s.Is.Unit }

// odds is in how many of a hundred draws something holds.
type odds struct {
	Low, High   int
	LowP, HighP string // where the document has them
}

// oddsOf writes chances with what nobody knows at either end.
func oddsOf(low, high float64, lowPath, highPath string) odds {
	return odds{claims.OfHundred(low), claims.OfHundred(high), lowPath, highPath}
}

// One tells whether the unknown decides nothing that is printed.
func (o odds) One() bool { return o.Low == o.High }

package data_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// The match of a pair says how like its two foods are, by their descriptions
// (after FAO/INFOODS 2012, Guidelines for Food Matching, version 1.2; the limits
// in numbers are ours):
//
//	A  the same food: species and group of cultivars, part, ripeness, preparation,
//	   strength, enrichment, salt and sugar; alike in water, and in fat where there
//	   is any to speak of; printed per 100 g
//	B  like it, but one of these differs or is not stated; the reason says which
//	C  a stand-in: another strength or class of fat
//
// Tables that are made from SR28 themselves (fndds) are not matched; the rows of
// sr are those that the core foods are made from.
const (
	waterAlike    = 0.1 // of the greater; foods with moistFrom g/100 g or more
	moistFrom     = 20
	waterAlikeDry = 5 // g/100 g, of drier foods
	fatAlike      = 0.1
	fatFrom       = 3 // g/100 g: less fat does not make a food
)

func TestCrosswalkSaysHowLikeTheFoodsAre(t *testing.T) {
	for _, r := range rows(t, "crosswalk.csv") {
		at := fmt.Sprintf("%s %s", r["core"], r["table"])
		switch r["match"] {
		case "A":
			assert.Empty(t, r["reason"], at)
		case "B", "C":
			assert.NotEmpty(t, r["reason"], at)
		default:
			assert.Equal(t, "fndds", r["table"], "%s: match %q", at, r["match"])
		}
	}
}

func TestSameFoodsAreAlikeInWaterAndFat(t *testing.T) {
	for _, p := range crossPairs(t, sharedTables(t)) {
		if p.match != "A" {
			continue
		}
		at := fmt.Sprintf("%s and %s", p.ours.ID, p.theirs.ID)
		if ours, theirs, ok := p.both(constituent.Water); ok {
			limit := waterAlike * max(ours, theirs)
			if max(ours, theirs) < moistFrom {
				limit = waterAlikeDry
			}
			assert.LessOrEqual(t, math.Abs(ours-theirs), limit, "%s: water", at)
		}
		if ours, theirs, ok := p.both(constituent.Fat); ok && max(ours, theirs) >= fatFrom {
			assert.LessOrEqual(t, math.Abs(ours-theirs), fatAlike*max(ours, theirs), "%s: fat", at)
		}
	}
}

// both gives what the two foods of a pair hold, g/100 g.
func (p crossPair) both(id constituent.ID) (ours, theirs float64, ok bool) {
	a, b := p.own.Cell(id), p.other.Cell(id)
	return 100 * a.Amount, 100 * b.Amount, a.Known && b.Known
}

package reading

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
)

// Reading is what an instrument said of a pot, what the recipe expects of it, and what the
// pot reads now that both have been taken into account.
type Reading struct {
	Path     []string // of the component; none: the drink
	Kind     string
	Unit     string
	Read     float64
	Expected float64 // NaN: the recipe hardly tells
	Used     float64
	Agrees   bool
	Doubted  bool   // what hangs on it spans the recipe and the reading, or part of the way
	Decide   bool   // it contradicts the recipe beyond all that the recipe explains: somebody has to say which is right
	Advice   string // what was made of a reading that does not agree, and what to do
	By       By     // the instrument of the shelf
}

// By is the instrument that took a reading, and how much it shows too much there.
type By struct {
	Meter string // empty: nobody says which it was
	Off   float64
	OffU  float64 // standard uncertainty
}

// asRead is how many standard deviations of its instrument may lie between a reading and
// what is used for it to be used as read.
const asRead = 1

// dust is the part of the standard deviation of an instrument below which what it shows is
// nothing.
const dust = 1e-3

// report writes down what was read, expected and used. A reading disagrees that is further
// from the recipe than chance takes it, or from what is used, since then the readings
// contradict one another. It gives how far each is doubted.
func (b *Bench) report(pot *ledger.Pot, list []reading, before *kept) []doubt {
	doubts := make([]doubt, len(list))
	if len(list) == 0 {
		return doubts
	}
	used := b.readAgain(pot.First(1), list, true)
	for j, r := range list {
		if used[j] == nil {
			continue // reported as a fault
		}
		e := Reading{Path: r.of, Kind: r.kind, Unit: r.unit, Read: r.read, Expected: r.positive(r.shown(r.h[0]))}
		if r.by != nil {
			e.By = By{r.by.Name(), r.by.Off(r.read)[0], r.by.U(r.read)}
		}
		now := used[j][0]
		if !r.linear() {
			now = math.Log(now)
		}
		off, left := math.Abs(r.noisy[0]-r.h[0])/max(r.spread, r.r), math.Abs(r.noisy[0]-now)/math.Hypot(r.own, r.natural())
		e.Used = r.positive(r.shown(now))
		if pot.N > estimate.FewestDraws {
			doubts[j] = r.doubtOf(before.causes, off, left, now)
		}
		e.Doubted = doubts[j].any()
		if e.Agrees = r.open || max(off, left) <= estimate.Disagreement; r.open {
			e.Expected = math.NaN()
		}
		if !e.Agrees {
			b.Doubted = b.Doubted || r.kind == amount.ReadPH || r.kind == amount.ReadTA
			e.Advice = r.advice(before.causes, left)
			e.Decide = left > estimate.Disagreement || r.linear() && off > limitOf("decision")
			b.note(note.Note{Kind: "reading disagrees", Text: e.Note()})
		} else if !r.open && !r.linear() && math.Abs(r.noisy[0]-now) > estimate.Disagreement*r.own {
			b.note(note.Note{Kind: "reading kept apart", Text: e.apart()})
		}
		b.Readings = append(b.Readings, e)
	}
	return doubts
}

// positive shows no acidity below zero: a burette with base reads none of an alkaline pot.
func (r reading) positive(x float64) float64 {
	if r.kind == amount.ReadTA {
		return max(x, 0)
	}
	return x
}

func (r Reading) of() string {
	if len(r.Path) > 0 {
		return strings.Join(r.Path, ", ")
	}
	return "the drink"
}

// Note says in one sentence that a reading and the recipe disagree.
func (r Reading) Note() string {
	return fmt.Sprintf("%s: %s: read %s · expected %s · used %s %s; recipe and reading disagree: %s",
		r.of(), r.Kind, note.Number(r.Read), note.Number(r.Expected), note.Number(r.Used), r.Unit, r.Advice)
}

// apart says in one sentence why a reading that agrees with the recipe is not used as read: a
// constant of nature lies between what it reads and what there is.
func (r Reading) apart() string {
	unsure := "how strongly what is dissolved in it refracts"
	if r.Kind == amount.ReadDensity {
		unsure = "how much room what is in it takes"
	}
	return fmt.Sprintf("%s: %s: read %s %s, and the recipe expects %s: %s is not known better than that, so this reading hardly tells how much there is, and the amounts stay as the recipe has them (%s %s)",
		r.of(), r.Kind, note.Number(r.Read), r.Unit, note.Number(r.Expected), unsure, note.Number(r.Used), r.Unit)
}

// natural is the standard deviation that the constants of nature leave between a pot and
// its reading.
func (r reading) natural() float64 { return math.Sqrt(r.nature * estimate.Variance(r.h)) }

// shown gives what a reading is in its own unit.
func (r reading) shown(x float64) float64 {
	if r.linear() {
		if math.Abs(x) < dust*r.own {
			return 0
		}
		return x / r.scale
	}
	return math.Exp(x)
}

// advice says what a reading that disagrees was taken for, and what to do; left is
// how many standard deviations of it are left over.
func (r reading) advice(c causes, left float64) string {
	const (
		gram = 1.0
		part = 0.005
	)
	then := "weigh the pot and give its mass, or correct the amounts"
	switch {
	case left > estimate.Disagreement:
		then = "that does not meet it: read again, and check the amounts"
	case r.kind == amount.ReadMass:
		then = "weigh again, or correct the amounts"
	}
	told := r.told >= limitOf("notice")
	switch {
	case r.linear() && left > estimate.Disagreement:
		return "used as far as the acids may reach: check the meter, the sample and the amounts"
	case r.linear():
		return "met by acid or base that no food names: check the meter and the amounts"
	case r.kind == amount.ReadMass && c.lost >= part:
		return fmt.Sprintf("%.0f %% of all count as lost: check what stayed behind, and the amounts", 100*c.lost)
	case r.kind == amount.ReadABV && c.alcohol > 0 && left < asRead:
		return fmt.Sprintf("%s g of alcohol count as still in it that should have boiled off: check how long and how far it boiled, and what the instrument reads beside sugar", note.Number(c.alcohol))
	case r.kind == amount.ReadABV && c.alcohol < 0 && left < asRead:
		return fmt.Sprintf("%s g of alcohol count as gone in the heat, which the recipe does not count", note.Number(-c.alcohol))
	case told && c.water <= -gram:
		return fmt.Sprintf("%s g of water count as gone; %s", note.Number(-c.water), then)
	case told && c.water >= gram:
		return fmt.Sprintf("%s g of water count as in it that the recipe does not name; %s", note.Number(c.water), then)
	case left < asRead:
		return "used as read: " + then
	}
	return "used as far as the recipe allows: read again, and check the amounts and the mass"
}

package prep

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// invertSugar is what sucrose becomes in a hot pot that is sour.
var invertSugar = []constituent.ID{constituent.Glucose, constituent.Fructose}

// boil is how hot and how long a pot is, and how sour: columns. Nothing that is said of it
// is more certain than these.
type boil struct {
	pH, celsius, minutes []float64 // pH is nil where there is no sucrose, or nobody knows the pH
	why                  string    // nobody knows the pH
	stated               bool      // at and for are written
}

// boiling tells how hot, how long and how sour a pot is before anything is done to it. Where
// nobody has written the first two (gone is then the share of its mass that boils away),
//
//	minutes = gone · m     m rectangular (data/kinetics.csv, boiling away)
//
// so that a pot that hardly boils hardly changes, and it boils as a syrup does. The pH is
// that under the meter: of what hardly buffers it is drawn, and where foods leave it open it
// lies anywhere between its ends. It is an error if the heat is stated, there is sucrose worth a
// word and nothing tells the pH on which it hangs how much of it is left.
func (a at) boiling(s drink.Boil, gone []float64) (boil, error) {
	hot := boil{stated: s.Stated()}
	if hot.stated {
		hot.celsius, hot.minutes = a.figure(s.Temperature, 1, "at"), a.figure(s.Minutes, 1, "for")
	}
	if a.pot.Central(constituent.Sucrose) <= 0 {
		return hot, nil
	}
	if !hot.stated {
		hot.celsius = a.draw("boiling syrup", kinetics()["boiling syrup"])
		hot.minutes = a.draw("boiling away", kinetics()["boiling away"])
		for d := range hot.minutes {
			hot.minutes[d] *= gone[d]
		}
	}
	hot.pH, hot.why = a.sourness()
	if hot.why == "" {
		return hot, nil
	}
	if sourest := a.sourest(); sourest != nil {
		if hot.pH = sourest; slices.Max(hot.splits(quiet(a))) < notable {
			return hot, nil // next to nothing splits, however sour it may be
		}
		hot.pH = nil
	}
	if hot.stated && weighty(a.pot) {
		return hot, fail.New(fail.Wrong, "how much sucrose it splits hangs on the pH of the pot, which is not known: "+hot.why,
			"read it before this step, - measured: {ph: …}, or leave at and for out")
	}
	return hot, nil
}

// notable is the share of the sucrose of which a word is said where at and for are written.
const notable = 0.01

// splits gives the share of the sucrose that splits.
func (hot boil) splits(a at) []float64 {
	return Inverted(hot.pH, hot.celsius, hot.minutes, a.Factors)
}

// quiet draws without writing down what was drawn: nothing hangs on it.
func quiet(a at) at {
	a.Factors.Journal = nil
	return a
}

// sourest gives the least pH of a pot whose protein leaves it open (data/kinetics.csv, pH
// beside protein); nil if nothing can be said.
func (a at) sourest() []float64 {
	pH, _, err := a.Laboratory().Acidity(a.pot.First(1))
	if err != nil {
		return nil
	}
	return estimate.Constant(a.pot.N, pH[0]-kinetics()["pH beside protein"].value)
}

// sourness gives the pH of the pot; why says that nobody knows it.
func (a at) sourness() (pH []float64, why string) {
	c := chemistry.Of(a.Laboratory(), chemistry.Liquid{Pot: a.pot, Celsius: acidity.MeterCelsius, Read: a.Surely()})
	switch m := c.PHMeter; {
	case m.Why == "":
		pH, _, err := a.Laboratory().Acidity(a.pot)
		if err != nil {
			return nil, err.Error()
		}
		return pH, ""
	case m.Why == chemistry.HardlyBuffers:
		return a.draw("pH of what hardly buffers", kinetics()["pH of what hardly buffers"]), ""
	case !math.IsNaN(m.Low) && !math.IsNaN(m.High):
		return a.draw("pH", factor{(m.Low + m.High) / 2, m.Low, m.High}), ""
	default:
		return nil, m.Why
	}
}

// splitHot splits the sucrose that the heat has split, as far as there is water, and says how
// much that is.
func (a at) splitHot(hot boil, out *Outcome) {
	const much = 0.05 // of which a word is said where nobody wrote how long
	if hot.pH == nil {
		if hot.why != "" && (hot.stated || weighty(a.pot)) {
			out.note("part of its sucrose may split into glucose and fructose, and is counted as sucrose: its pH is not known (%s)", hot.why)
		}
		return
	}
	wordy, share := weighty(a.pot), hot.splits(a)
	KeepAdded(a.pot, func() {
		a.pot.React(hydrolysis(constituent.Sucrose, constituent.Glucose, constituent.Fructose), share)
	})
	is := estimate.Summarise(share)
	switch {
	case !wordy:
	case hot.stated && is.High >= notable:
		out.note("at pH %.3g, %.3g min at %.4g °C split %s of its sucrose into glucose and fructose", hot.pH[0], hot.minutes[0], hot.celsius[0], spanned(is))
	case is.High >= much:
		out.note("how long it boils is not written: at pH %.3g it splits %s of its sucrose into glucose and fructose; at: 100 °C and for: 20 min, or what it was, tell it better", hot.pH[0], spanned(is))
	}
	if hottest := kinetics()["boiling syrup"].high; hot.stated && hot.celsius[0] > hottest {
		out.note("above %.4g °C nobody has tested how fast sucrose splits: it is taken to go on as below", hottest)
	}
}

// spanned writes a share by its ends.
func spanned(s estimate.Summary) string {
	low, high := fmt.Sprintf("%.2g", unit.Shown(unit.Hundred*s.Low)), fmt.Sprintf("%.2g", unit.Shown(unit.Hundred*s.High))
	const all = "100"
	switch {
	case low == all:
		return "all"
	case low == high:
		return low + " %"
	}
	return low + " to " + high + " %"
}

// weighty reports whether sucrose is at least a hundredth of the pot: less is worth no word.
func weighty(pot *ledger.Pot) bool {
	return unit.Hundred*pot.Central(constituent.Sucrose) >= pot.Central(constituent.Mass)
}

// warnSplit says what a sour pot may lose of its sucrose in a step that does not count it:
// what an hour's simmer would split.
func (a at) warnSplit(out *Outcome) {
	const much = 0.05
	if !weighty(a.pot) {
		return
	}
	still := quiet(a)
	pH, why := still.sourness()
	if why != "" {
		return
	}
	hour, simmer := kinetics()["simmer"].value, kinetics()["simmering"].value
	share := estimate.Summarise(Inverted(pH, estimate.Constant(a.pot.N, simmer), estimate.Constant(a.pot.N, hour), still.Factors))
	if share.High >= much {
		out.note("its sucrose is counted as whole: at pH %.3g, %.3g min at %.3g °C split %s of it into glucose and fructose; heat: {at: …, for: …} counts that", pH[0], hour, simmer, spanned(share))
	}
}

// vitaminC is the rider that heat and air destroy.
const vitaminC constituent.ID = "VITC"

// fade makes unknown what the heat may have taken of vitamin C: at least what the fastest
// published loss leaves,
//
//	least = exp(−k·t)     k by data/kinetics.csv, vitamin C loss
//
// stays, and all of it may. Sulphur dioxide may go as from a pot that boils away fastest.
// Limits: copper and air take more; below the temperatures of the
// source it goes more slowly.
func (hot boil) fade(pot *ledger.Pot, out *Outcome) {
	least := math.Exp(-kinetics()["vitamin C loss"].high * hot.minutes[0])
	const some = 1e-5              // g/g, of which a word is said: our own bound, a milligram in 100 g
	const all, none = 0.995, 0.005 // what prints as 100 and as 0 %
	switch {
	case pot.Central(vitaminC) <= some*pot.Central(constituent.Mass) || least >= all:
	case least < none:
		out.note("heat destroys vitamin C: how much of it is left is not known, perhaps nothing")
	default:
		out.note("heat destroys vitamin C: at least %.2g %% of it is left", unit.Hundred*least)
	}
	doubtOf(pot, vitaminC, least)
	doubt(pot, sulphurDioxideKept(max(1-hot.minutes[0]/kinetics()["boiling away"].low, 0)))
}

// boilOff is a model that keeps a share of the water and one of burnt sugar.
type boilOff struct{ water, burnt []float64 }

func (m *boilOff) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	switch c.ID {
	case constituent.Water:
		copy(share, m.water)
	case burnt:
		copy(share, m.burnt)
	default:
		estimate.Fill(share, 1)
	}
}

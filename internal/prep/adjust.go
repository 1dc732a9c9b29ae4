package prep

import (
	"errors"
	"fmt"
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/dosing"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/unit"
)

// Dosed is a dose that was calculated.
type Dosed struct {
	Step    string // its path
	Name    string // of the food or component that is dosed
	Reading string // "ph", "ta" or "brix"
	To      float64
	Unit    string           // of To; empty: none
	Pot     float64          // grams, before
	Grams   estimate.Summary // at central values, and in the draws of foods and reading
}

// adjust pours the dose that brings the pot to a reading, draw by draw:
//
//	read(pot + dose) = target + ε
//
// with read what a meter, a burette or a refractometer shows of the pot (packages acidity and
// liquid), and ε what it may be off by: as the target is written, else as in
// data/instruments.csv. That is what whoever adjusts does, adding and reading until it is
// there. So the pot is as sure as the instrument, and what is dosed is as unsure as what it
// was poured into: an interval around the dose at central values. What is read beside it
// afterwards moves the dose, and not what it was brought to (package reading). Nobody has
// read anything yet: where safety hangs on a pH, only measured tells it.
//
// Valid where the pot with the dose in it has the reading that is asked for: a pH or an
// acidity that package chemistry withholds is refused, with its reason; so are a target that
// lies behind the pot, one that no dose reaches (a solid up to what sugar dissolves at 20 °C,
// data/solubility.csv; a liquid up to data/kinetics.csv, largest dilution) and one that two
// doses make.
//
// Limits: a draw whose pot has passed the target before anything is poured gets none, and a
// draw in which no dose reaches it the one that comes nearest; what is unknown, and in no
// draw, still opens the interval of the pH. What a pot holds of a carbonate's gas
// under carbon dioxide alone counts as still dissolved: where that leaves too, the pH goes on
// rising. What does not dissolve counts as dissolved.
func (a at) adjust(s *drink.Adjust) (Outcome, error) {
	line, in := s.Lines()[0], a.instrument(s)
	pour, name := a.Doser(line)
	most, tried := a.mostOf(pour)
	search := dosing.Search{Pot: a.pot, Pour: pour, Read: in.read, Most: most, Near: in.near}
	dose, err := search.Central(in.want.Number)
	if passed := (dosing.Passed{}); errors.As(err, &passed) && math.Abs(passed.Now-in.want.Number) <= in.coarse {
		dose, err = 0, nil // its instrument cannot tell the two apart
	}
	if err != nil {
		return Outcome{}, a.noDose(err, in, name, tried)
	}
	with := a.pot.Copy()
	pour(with, estimate.Constant(with.N, dose))
	if why := in.why(a.dissolved(with, acidity.Surely{})); why != "" {
		return Outcome{}, in.unknown(why)
	}
	draws, err := search.Draws(a.shown(in), dose)
	if err != nil {
		return Outcome{}, in.unknown(err.Error())
	}
	out := Outcome{Dosed: &Dosed{
		Step: a.Path, Name: name, Reading: in.key, To: in.want.Number, Unit: in.want.Unit,
		Pot: a.pot.Central(constituent.Mass), Grams: estimate.Summarise(draws),
	}}
	a.Weigh(a.pot, line, draws)
	out.Notes = append(out.Notes, out.Dosed.sentence(in))
	return out, nil
}

// Met tells which reading of its acidity a step brings a pot to.
func Met(step drink.Step) acidity.Surely {
	s, ok := step.(*drink.Adjust)
	return acidity.Surely{PH: ok && s.PH != nil, Acidity: ok && s.TA != nil}
}

// sentence says what the dose is, and what to read then.
func (d *Dosed) sentence(in instrument) string {
	grams := func(x float64) string { return fmt.Sprintf("%.3g", unit.Shown(x)) }
	if d.Grams.Mean == 0 {
		return fmt.Sprintf("it reads %s already: no %s is added", in.shows(d.To), d.Name)
	}
	return fmt.Sprintf("%s g (%s to %s g) of %s bring its %s g to %s: add the least, read, and go on; then measured: {%s: …} says what it came to",
		grams(d.Grams.Mean), grams(d.Grams.Low), grams(d.Grams.High), d.Name, fmt.Sprintf("%.4g", unit.Shown(d.Pot)), in.shows(d.To), d.Reading)
}

// shown draws what the pot has when the instrument shows the target: whoever adjusts goes on
// until it does, and however few digits are written, it is off by what instruments are.
func (a at) shown(in instrument) []float64 {
	q := *in.want
	if q.Half == 0 {
		q.Half = amount.MustInstrument(in.key).HalfAt(q.Number)
	}
	return a.Quantity(q, 1, a.Path+"/"+in.key)
}

// dissolved works a pot out as a solution.
func (a at) dissolved(pot *ledger.Pot, read acidity.Surely) *chemistry.Chemistry {
	return chemistry.Of(a.Laboratory(), chemistry.Liquid{Pot: pot, Celsius: acidity.MeterCelsius, Read: read})
}

// mostOf gives the largest dose that is looked at, in grams; tried is the same where more of it
// could be poured, and beyond all where more does not dissolve.
func (a at) mostOf(pour func(*ledger.Pot, []float64)) (most, tried float64) {
	const usual = 20 // °C
	alone := ledger.New(a.pot.Columns, 1)
	pour(alone, []float64{1})
	if alone.Central(constituent.Water)+alone.Central(constituent.Alcohol) > 0 && liquid.TooDry(alone) == "" {
		most = kinetics()["largest dilution"].value * a.pot.Central(constituent.Mass)
		return most, most
	}
	return Saturated(usual) * a.pot.Central(constituent.Water), math.Inf(1)
}

// instrument is what an adjusted pot is read with.
type instrument struct {
	key, says string // in the file; how a reading of it begins in a sentence
	want      *drink.Quantity
	near      float64 // so near the target is the target: a tenth of what a reader is promised
	coarse    float64 // so near the target it reads the target
	read      func(pot *ledger.Pot) ([]float64, error)
	why       func(c *chemistry.Chemistry) string // it is withheld; empty if it is not
}

// instrument gives what the target is read with.
func (a at) instrument(s *drink.Adjust) instrument {
	const near, part = 0.001, 0.0005
	lab := a.Laboratory()
	off := func(key string, q *drink.Quantity) float64 { return amount.MustInstrument(key).HalfAt(q.Number) }
	switch {
	case s.PH != nil:
		return instrument{"ph", "pH ", s.PH, near, off("ph", s.PH), func(pot *ledger.Pot) ([]float64, error) {
			pH, _, err := lab.Acidity(pot)
			return pH, err
		}, func(c *chemistry.Chemistry) string { return c.PHMeter.Why }}
	case s.TA != nil:
		least := chemistry.HardlySour
		if s.TA.Unit == "g/l" {
			least *= acidity.PerLitre / unit.Hundred
		}
		return instrument{"ta", "a titratable acidity of ", s.TA, part * s.TA.Number, max(off("ta", s.TA), least), func(pot *ledger.Pot) ([]float64, error) {
			_, read, err := lab.Acidity(pot)
			if err == nil && (s.TA.Unit == "g/l" || s.TA.Unit == "g/100 ml") {
				for d, density := range lab.Gauge.Density(pot) {
					read[d] *= density
					if s.TA.Unit == "g/l" {
						read[d] *= acidity.PerLitre / unit.Hundred
					}
				}
			}
			return read, err
		}, func(c *chemistry.Chemistry) string { return c.Acidity[0].Per100g.Why }}
	}
	return instrument{"brix", "", s.Brix, part * s.Brix.Number, off("brix", s.Brix), func(pot *ledger.Pot) ([]float64, error) {
		if why := liquid.TooDry(pot); why != "" {
			return nil, errors.New(why)
		}
		return lab.Gauge.Brix(pot), nil
	}, func(c *chemistry.Chemistry) string { return c.TooDry }}
}

// shows writes a reading.
func (in instrument) shows(x float64) string {
	text := in.says + fmt.Sprintf("%.3g", unit.Shown(x))
	switch {
	case in.key == "brix":
		return text + " °Bx"
	case in.want.Unit != "":
		return text + " " + in.want.Unit
	}
	return text
}

// otherWay names what moves a reading from now towards what is wanted.
func (in instrument) otherWay(now float64) string {
	up := in.want.Number > now
	switch {
	case in.key == "ph" && up:
		return "adjust with something that raises a pH, such as core:sodium-bicarbonate"
	case in.key == "brix" && up:
		return "adjust with something sweet, such as core:sugar-white"
	case in.key == "brix", !up && in.key == "ta":
		return "adjust with something that dilutes it, such as core:water-pure"
	}
	return "adjust with something sour, such as core:citric-acid"
}

// unknown is the error of a pot that has no such reading.
func (in instrument) unknown(why string) error {
	return fail.New(fail.Wrong, "no dose can be calculated, its "+map[string]string{"ph": "pH", "ta": "acidity", "brix": "°Brix"}[in.key]+" is not known: "+why,
		"read the pot before this step (- measured: {ph: …, ta: …}), or weigh the dose and write add:")
}

// noDose says why there is no dose at central values.
func (a at) noDose(err error, in instrument, name string, tried float64) error {
	var passed dosing.Passed
	var short dosing.OutOfReach
	var twice dosing.Twice
	hardly := errors.As(err, &short) || errors.As(err, &twice) // it buffers once something is in it
	if why := in.why(a.dissolved(a.pot, a.Surely())); why != "" && !(hardly && why == chemistry.HardlyBuffers) {
		return in.unknown(why)
	}
	switch {
	case errors.As(err, &passed):
		leads := "leads it away from"
		if math.Abs(passed.Led-passed.Now) <= in.coarse {
			leads = "hardly moves it towards"
		}
		return fail.New(fail.Wrong, fmt.Sprintf("it reads %s, and %s %s %s", in.shows(passed.Now), name, leads, in.shows(in.want.Number)),
			in.otherWay(passed.Now)+", or take the step out")
	case errors.As(err, &short) && unit.AtLeast(short.Dose, tried):
		return fail.New(fail.Wrong, fmt.Sprintf("%.4g g of %s, the most that is tried, do not bring it to %s: it reads %s then", unit.Shown(short.Dose), name, in.shows(in.want.Number), in.shows(short.Nearest)),
			"aim at what it reads then, or take something stronger")
	case errors.As(err, &short):
		return fail.New(fail.Wrong, fmt.Sprintf("%s does not bring it to %s: the nearest that it reaches is %s, with %.4g g", name, in.shows(in.want.Number), in.shows(short.Nearest), unit.Shown(short.Dose)),
			"aim at what it reaches, or take something stronger")
	case errors.As(err, &twice):
		return fail.New(fail.Wrong, fmt.Sprintf("two doses of %s bring it to %s: %.3g g and %.3g g", name, in.shows(in.want.Number), unit.Shown(twice.First), unit.Shown(twice.Second)),
			"write the one that you mean with add:")
	}
	return in.unknown(err.Error())
}

package acid

import (
	"fmt"
	"math"
	"sync"
)

// medium holds the constants at one temperature.
type medium struct {
	activity activityModel
	kw       float64
	acids    []mediumAcid
}

// mediumAcid is an acid as the solver wants it: one entry a form, the bare one
// first. A form's weight relative to the others is
//
//	exp(lnBeta)·aH^protons·γ(bare)/γ(form)   (·[M]·γ(M) for a pair)
type mediumAcid struct {
	bare  int // charge of the bare form
	size  int // which of the sized coefficients its ions have; common: those of all
	forms []form
	pairs [metals][]form
}

type form struct {
	protons int
	charge  int
	beta    float64 // cumulative constant of M + h·H + L
	shift   int     // carboxyl groups protonated, which ethanol favours

	power     int     // of the activity coefficient of a single charge in the form's weight
	p, pp, zz float64 // protons, their square, that of the charge: what its weight is summed with
}

// PKw gives −log₁₀ of the ionic product of water at I = 0.
func PKw(celsius float64) float64 {
	t := celsius + constant("zero celsius")
	return -(constant("log kw 0") + constant("log kw 1")*t + constant("log kw 2")/t + constant("log kw 3")*math.Log10(t) + constant("log kw 4")*t*t)
}

// At gives a step's pK at a temperature and I = 0.
func (s Step) At(celsius float64) float64 {
	return s.PK - moved(s.DH, s.DCp, celsius)/math.Ln10
}

// moved gives ln K(T) − ln K°.
func moved(dh, dcp, celsius float64) float64 {
	t, t0, r := celsius+constant("zero celsius"), constant("reference temperature"), constant("gas constant")
	return -dh/r*(1/t-1/t0) + dcp/r*(t0/t-1+math.Log(t/t0))
}

func newMedium(celsius float64) (*medium, error) {
	lowest, highest := constant("lowest temperature"), constant("highest temperature")
	if !(celsius >= lowest && celsius <= highest) {
		return nil, fmt.Errorf("the acid constants hold from %g to %g °C, not at %g °C", lowest, highest, celsius)
	}
	m := &medium{activity: newActivityModel(celsius), kw: math.Exp(-PKw(celsius) * math.Ln10)}
	for _, a := range All() {
		m.acids = append(m.acids, newMediumAcid(a, celsius))
	}
	m.activity.reach = reachOf(m.acids)
	return m, nil
}

// media keeps those that were asked for: a run asks for two or three, again and again.
var media = struct {
	sync.Mutex
	at map[float64]*medium
}{at: map[float64]*medium{}}

const manyMedia = 64 // kept at most; a drink has a few temperatures

// mediumAt gives the medium of a temperature, which is read and never written.
func mediumAt(celsius float64) (*medium, error) {
	media.Lock()
	defer media.Unlock()
	if m, ok := media.at[celsius]; ok {
		return m, nil
	}
	m, err := newMedium(celsius)
	if err != nil {
		return nil, err
	}
	if len(media.at) >= manyMedia {
		clear(media.at)
	}
	media.at[celsius] = m
	return m, nil
}

func newMediumAcid(a Acid, celsius float64) mediumAcid {
	n := len(a.Steps)
	out := mediumAcid{bare: a.Charge - n, size: sizeOf(a.ID), forms: make([]form, n+1)}
	out.forms[0] = form{charge: out.bare, beta: 1}.summed(out.bare * out.bare)
	for h := 1; h <= n; h++ { // protons come on in the reverse order of the steps
		step, below := a.Steps[n-h], out.forms[h-1]
		f := form{protons: h, charge: out.bare + h, beta: below.beta * math.Pow(10, step.At(celsius)), shift: below.shift}
		if step.Group == "carboxyl" {
			f.shift++
		}
		out.forms[h] = f.summed(out.bare * out.bare)
	}
	for _, p := range a.Pairs {
		out.pairs[p.Metal] = append(out.pairs[p.Metal], form{
			protons: p.Hydrogens, charge: out.bare + p.Hydrogens + metalCharge,
			beta:  math.Exp(p.LogBeta*math.Ln10 + moved(p.DH, 0, celsius)),
			shift: out.forms[p.Hydrogens].shift,
		}.summed(out.bare*out.bare+metalPower))
	}
	return out
}

// summed works out what the sums of a form's weight take; power is that of γ(bare),
// with γ(M) for a pair.
func (f form) summed(power int) form {
	f.power = power - f.charge*f.charge
	f.p, f.zz = float64(f.protons), float64(f.charge*f.charge)
	f.pp = f.p * f.p
	return f
}

package chemistry

import (
	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// solved holds the results draw by draw.
type solved struct {
	pH, meter         []float64
	why               string      // pH is nil
	protonated        []float64   // mmol/l under the meter
	per100g, perLitre [][]float64 // by end point
}

// solveDraws solves the equilibria of each draw, each from those of the central
// values: so no draw depends on another, and any number of cores gives the same.
func solveDraws(in acidity.Ions, pot *ledger.Pot, density []float64, celsius float64) (solved, error) {
	out := solved{meter: make([]float64, in.N), protonated: make([]float64, in.N)}
	for range acidity.EndPoints {
		out.per100g, out.perLitre = append(out.per100g, make([]float64, in.N)), append(out.perLitre, make([]float64, in.N))
	}
	if celsius == acidity.MeterCelsius {
		out.pH = out.meter
	} else if _, err := acid.NewSolver(celsius); err == nil {
		out.pH = make([]float64, in.N)
	} else {
		out.why = err.Error()
	}
	l := solving{in: in, mass: pot.Mass(), density: density, celsius: celsius, out: out}
	central, err := l.solve(0, 1, newEquilibria())
	if err != nil {
		return solved{}, err
	}
	return out, estimate.InBlocks(in.N-1, func(from, to int) error {
		_, err := l.solve(1+from, 1+to, central)
		return err
	})
}

// solving is what solving the draws of a pot reads, and where it writes.
type solving struct {
	in            acidity.Ions
	mass, density []float64 // g, g/ml
	celsius       float64   // of serving
	out           solved
}

// equilibria are those of one draw: at serving temperature, under the meter, and at
// each end point of a titration.
type equilibria struct {
	served, read acid.State
	ends         []acid.State
}

func newEquilibria() equilibria { return equilibria{ends: make([]acid.State, len(acidity.EndPoints))} }

// solve solves the draws from first to before end, starting each near the given
// equilibria, and gives those of the last.
func (l solving) solve(first, end int, near equilibria) (equilibria, error) {
	atMeter, err := acid.NewSolver(acidity.MeterCelsius)
	if err != nil {
		return equilibria{}, err
	}
	var atServing *acid.Solver
	if l.out.pH != nil && l.celsius != acidity.MeterCelsius {
		if atServing, err = acid.NewSolver(l.celsius); err != nil {
			return equilibria{}, err
		}
	}
	sol, last := acid.New(0), newEquilibria()
	for d := first; d < end; d++ {
		l.in.Fill(sol, d)
		if atServing != nil {
			if last.served, err = l.in.Solve(atServing, sol, near.served, l.celsius); err != nil {
				return equilibria{}, err
			}
			l.out.pH[d] = last.served.PH
		}
		if last.read, err = l.in.Solve(atMeter, sol, near.read, acidity.MeterCelsius); err != nil {
			return equilibria{}, err
		}
		l.out.meter[d] = last.read.PH
		l.out.protonated[d] = protonatedIn(atMeter, sol, l.mass[d], l.density[d])
		if err := acidity.Degas(atMeter, sol, last.read); err != nil {
			return equilibria{}, err
		}
		for i, end := range acidity.EndPoints {
			start := near.ends[i]
			if i > 0 { // what the first end point has shown, the others have nearly
				start.Ionic += last.ends[0].Ionic - near.ends[0].Ionic
			}
			if last.ends[i], err = atMeter.Titrate(sol, end, start); err != nil {
				return equilibria{}, err
			}
			l.acidity(d, i, last.ends[i].Base*sol.Solvent)
		}
	}
	return last, nil
}

// acidity writes what a draw took of base to an end point, in mol, as citric acid.
func (l solving) acidity(d, end int, base float64) {
	// guard: no acidity below zero
	grams := acidity.AsGrams(max(base, 0))
	l.out.per100g[end][d] = unit.Hundred * grams / l.mass[d]
	l.out.perLitre[end][d] = acidity.PerLitre * grams / l.mass[d] * l.density[d]
}

package reading

import (
	"math"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// meet takes away what the joint update leaves between a pot and its
// readings of acidity (nil: not read), in every draw.
//
// The titratable acidity (g/100 g) is met by acid without a name, as citric; where
// even none of it is too much, by potassium if the pH was not read, and by less of the
// named acids, within their range, if it was. The pH is met by the strong ion that is missing: potassium if
// a base is, chloride if an acid is. Later steps and blends carry these with what is
// dissolved. spareNamed is the share of the named acids that can be taken away.
func meet(lab *acidity.Laboratory, pot *ledger.Pot, spareNamed, pH, per100g []float64) error {
	in, mass, spare := lab.IonsOf(pot, pot.N), pot.Mass(), make([]float64, pot.N)
	for row := range pot.Rows {
		for d, x := range pot.Carry(row, acidity.UnmeasuredOf(acidity.Citric)) {
			spare[d] += x / constituent.Must(acidity.Citric).Molar
		}
	}
	closings := make([]closing, pot.N)
	err := acidity.EachDraw(pot.N, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		near, end, err := in.Central(s, sol)
		if err != nil {
			return err
		}
		still := acid.New(0)
		for d := from; d < to; d++ {
			c := closing{solver: s, sol: sol, still: still, near: near, end: end, pH: math.NaN(), want: math.NaN(), spare: spare[d], spareNamed: spareNamed[d]}
			in.Fill(sol, d)
			in.Fill(still, d)
			if err := acidity.Degas(s, still, near); err != nil {
				return err
			}
			if pH != nil {
				c.pH = pH[d]
			}
			if per100g != nil {
				c.want = per100g[d] * mass[d] / acidity.AsCitric(1)
			}
			if err := c.close(); err != nil {
				return err
			}
			closings[d] = c
		}
		return nil
	})
	if err == nil {
		shareOut(pot, closings)
	}
	return err
}

// closing finds what one draw lacks.
type closing struct {
	solver     *acid.Solver
	sol, still *acid.Solution // as it stands, and without its gas
	near, end  acid.State     // of the central values
	pH, want   float64        // as read; mol of base to the end point. NaN: not read
	spare      float64        // mol of acid without a name that can be taken away
	spareNamed float64        // share of the named acids that can be

	nameless, strong float64 // mol to add; negative: to take away
	weaker           float64 // share of the named acids to take away
}

// The search ends at this part of the wanted acidity, after so many steps: it is
// numerical, a burette reads to a hundredth.
const (
	closeEnough = 1e-7
	closeSteps  = 30
)

func (c *closing) close() error {
	if !math.IsNaN(c.want) {
		if err := c.meetAcidity(); err != nil {
			return err
		}
	}
	if math.IsNaN(c.pH) {
		return nil
	}
	missing, err := c.solver.Calibrate(c.sol, c.pH)
	c.strong += missing * c.sol.Solvent
	return err
}

func (c *closing) meetAcidity() error {
	const protons = 3 // of citric acid
	miss, err := c.excess()
	if err != nil {
		return err
	}
	c.nameless, err = c.find(0, -miss/protons, -c.spare, math.Inf(1), func(from, to float64) {
		citric := acid.Must("citric")
		c.sol.Acids[citric] += to - from
		c.still.Acids[citric] += to - from
	})
	if err != nil {
		return err
	}
	if miss, err = c.excess(); err != nil || miss <= closeEnough*math.Abs(c.want) {
		return err
	}
	if math.IsNaN(c.pH) {
		c.strong = miss
		return nil
	}
	const first = 0.1
	c.weaker, err = c.find(0, first, 0, c.spareNamed, func(from, to float64) {
		for _, sol := range []*acid.Solution{c.sol, c.still} {
			for i, a := range acid.All() {
				if acidity.IsOrganic(a) {
					sol.Acids[i] *= (1 - to) / (1 - from)
				}
			}
		}
	})
	return err
}

// excess gives how much more base the liquid takes to the end point than was read, in
// mol: counted from the pH as read, or from its own.
func (c *closing) excess() (float64, error) {
	end, err := c.solver.Base(c.still, acidity.EndPoints[0], c.end)
	if err != nil {
		return 0, err
	}
	start := 0.0
	if !math.IsNaN(c.pH) {
		if start, err = c.solver.Base(c.sol, c.pH, c.near); err != nil {
			return 0, err
		}
	}
	return (end-start)*c.sol.Solvent - c.want, nil
}

// find moves one thing, by secants within its limits, until there is no excess; at a
// limit it stays there.
func (c *closing) find(x, next, low, high float64, move func(from, to float64)) (float64, error) {
	before, err := c.excess()
	if err != nil {
		return x, err
	}
	for range closeSteps {
		next = min(max(next, low), high)
		if next == x || math.Abs(before) <= closeEnough*math.Abs(c.want) {
			break
		}
		move(x, next)
		now, err := c.excess()
		if err != nil {
			return next, err
		}
		slope := (now - before) / (next - x)
		x, before = next, now
		if slope == 0 {
			break
		}
		next = x - now/slope
	}
	return x, nil
}

// shareOut puts what the draws lack into the rows, by their water.
func shareOut(pot *ledger.Pot, closings []closing) {
	water := pot.Total(constituent.Water)
	molar := func(id constituent.ID) float64 { return constituent.Must(id).Molar }
	for row := range pot.Rows {
		part := pot.Of(row, constituent.Water)
		base, anion, acids := pot.Carry(row, acidity.UnmeasuredOf(acidity.Potassium)), pot.Carry(row, acidity.UnmeasuredOf(acidity.Chloride)), pot.Carry(row, acidity.UnmeasuredOf(acidity.Citric))
		for d, c := range closings {
			if water[d] <= 0 {
				continue
			}
			share := part[d] / water[d]
			base[d] += max(c.strong, 0) * share * molar(acidity.Potassium)
			anion[d] += max(-c.strong, 0) * share * molar(acidity.Chloride)
			if c.nameless < 0 { // in the proportion in which they are there
				acids[d] *= 1 + c.nameless/c.spare
			} else {
				acids[d] += c.nameless * share * molar(acidity.Citric)
			}
		}
		for _, col := range pot.Columns.Below(constituent.OrganicAcids) {
			if !pot.Has(row, col) || acidity.Titrated(pot, row) {
				continue
			}
			cell := pot.Write(row, col)
			for d, c := range closings {
				cell[d] *= 1 - c.weaker
			}
		}
	}
}

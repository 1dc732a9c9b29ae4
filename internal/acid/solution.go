package acid

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Solution is what decides a liquid's pH: amounts in a mass of solvent. The zero
// value is empty; New gives one to fill.
type Solution struct {
	Solvent    float64   // kg of water and ethanol
	Ethanol    float64   // kg of ethanol in the solvent
	Acids      []float64 // mol of each acid, all forms together, by Index
	Strong     float64   // mol of charge on the ions that take no part: Na⁺ + K⁺ − Cl⁻ …
	Background float64   // ½Σz²n of the same ions, mol
	Metals     [metals]float64
}

// New gives an empty solution in kg of water.
func New(kg float64) *Solution {
	return &Solution{Solvent: kg, Acids: make([]float64, len(All()))}
}

// Reset empties a solution and keeps its storage.
func (s *Solution) Reset(kg float64) {
	acids := s.Acids
	clear(acids)
	*s = Solution{Solvent: kg, Acids: acids}
}

// AddIon adds mol of an ion that is wholly dissociated and pairs with nothing.
func (s *Solution) AddIon(charge int, mol float64) {
	z := float64(charge)
	s.Strong += z * mol
	s.Background += z * z * mol / 2
}

// Pour adds factor times another solution. Amounts add; nothing else is assumed.
func (s *Solution) Pour(other *Solution, factor float64) {
	s.Solvent += factor * other.Solvent
	s.Ethanol += factor * other.Ethanol
	s.Strong += factor * other.Strong
	s.Background += factor * other.Background
	for i, n := range other.Acids {
		s.Acids[i] += factor * n
	}
	for m, n := range other.Metals {
		s.Metals[m] += factor * n
	}
}

// StrongIonDifference gives the charge of all metals less that of chloride, in
// mol/kg: with the acids' totals it decides the pH.
func (s *Solution) StrongIonDifference() float64 {
	return (s.Strong + metalCharge*s.Metals[Calcium] + metalCharge*s.Metals[Magnesium]) / s.Solvent
}

type ion struct {
	constituent *constituent.Constituent
	charge      int
	metal       Metal // metals if it pairs with nothing
}

var ions = sync.OnceValue(func() []ion {
	var list []ion
	for _, row := range embedded.Rows("acid_ions.csv") {
		in := ion{constituent: constituent.Must(constituent.ID(row.Text("constituent"))), charge: row.Whole("charge"), metal: metals}
		if row.Text("part") == "metal" {
			in.metal = metalNames[row.Text("ion")]
			if in.charge != metalCharge {
				row.Fail("a metal that pairs has a charge of %d", metalCharge)
			}
		}
		list = append(list, in)
	}
	return list
})

// bringer is a constituent that brings an acid.
type bringer struct {
	acid  Index
	id    constituent.ID
	molar float64
}

var bringers = sync.OnceValue(func() []bringer {
	var list []bringer
	for i, a := range All() {
		if a.Constituent != "" {
			list = append(list, bringer{Index(i), a.Constituent, a.Molar})
		}
	}
	return list
})

// AddGrams adds what a composition brings: grams gives the mass of the constituent
// at a place of Constituents (0 if there is none). Water and alcohol are the solvent,
// so a composition without either makes a solution that cannot be solved.
func (s *Solution) AddGrams(grams func(at int) float64) {
	const kilo = 1000
	water, alcohol, at := grams(0), grams(1), 2
	s.Ethanol += alcohol / kilo
	s.Solvent += (water + alcohol) / kilo
	for _, b := range bringers() {
		s.Acids[b.acid] += grams(at) / b.molar
		at++
	}
	for _, in := range ions() {
		mol := grams(at) / in.constituent.Molar
		at++
		if in.metal == metals {
			s.AddIon(in.charge, mol)
		} else {
			s.Metals[in.metal] += mol
		}
	}
}

// Constituents lists what AddGrams asks for, in its order: water and alcohol, what
// brings an acid, the ions. The list may not be changed.
var Constituents = sync.OnceValue(func() []constituent.ID {
	list := []constituent.ID{constituent.Water, constituent.Alcohol}
	for _, b := range bringers() {
		list = append(list, b.id)
	}
	for _, in := range ions() {
		list = append(list, in.constituent.ID)
	}
	return list
})

// solvable tells what is wrong with the amounts, if anything.
func (s *Solution) solvable() error {
	if !(s.Solvent > 0) || math.IsInf(s.Solvent, 0) {
		return errNoSolvent
	}
	sum := s.Ethanol + s.Background + s.Metals[Calcium] + s.Metals[Magnesium]
	negative := min(s.Ethanol, s.Background, s.Metals[Calcium], s.Metals[Magnesium]) < 0
	for _, n := range s.Acids {
		if n != 0 {
			sum += n
			negative = negative || n < 0
		}
	}
	if math.IsNaN(sum+s.Strong) || math.IsInf(sum+s.Strong, 0) || negative {
		return errAmounts
	}
	return nil
}

package acid

import (
	"math"
	"sync"

	"sipsum/internal/embedded"
)

// Activity coefficients. All ions share those of Davies, but for the few whose size
// in water is known and matters (data/acid_sizes.csv): theirs are
//
//	log γ = −A·z²·√I/(1 + B·å·√I)
//
// with å their size in ångström. The hydrogen ion's is larger than any other, which
// shows in strong acids; Davies makes carbonate's too small by a fortieth of a pH.

// common are the coefficients of Davies; the others are numbered after them.
const common = 0

// size is a row of data/acid_sizes.csv.
type size struct {
	acid     string // whose ions have it; empty: the hydrogen ion
	angstrom float64
}

var sizes = sync.OnceValue(func() []size {
	var list []size
	for _, row := range embedded.Rows("acid_sizes.csv") {
		list = append(list, size{acid: row.Text("acid"), angstrom: row.Number("angstrom")})
	}
	return list
})

// sizeOf numbers the coefficients of an acid's ions.
func sizeOf(acid string) int {
	for i, s := range sizes() {
		if s.acid == acid {
			return i + 1
		}
	}
	return common
}

// activityModel gives coefficients at one temperature.
type activityModel struct {
	a       float64   // of Debye and Hückel, for natural logarithms
	davies  float64   // of Davies
	ownSize []float64 // B·å of each size
	proton  float64   // B·å of the hydrogen ion
	reach   []reach   // of the powers that the medium's acids need
}

func newActivityModel(celsius float64) activityModel {
	a, b := debyeHuckel(celsius)
	m := activityModel{a: a * math.Ln10, davies: constant("davies b")}
	for _, s := range sizes() {
		m.ownSize = append(m.ownSize, b*s.angstrom)
	}
	m.proton = m.ownSize[sizeOf("")-1]
	return m
}

type activityRow struct{ celsius, a, b float64 }

var activity = sync.OnceValue(func() []activityRow {
	var list []activityRow
	for _, row := range embedded.Rows("acid_activity.csv") {
		list = append(list, activityRow{row.Number("celsius"), row.Number("debye_huckel_a"), row.Number("debye_huckel_b")})
	}
	return list
})

// debyeHuckel gives A in √(kg/mol), of decadic logarithms, and B in √(kg/mol)/Å.
func debyeHuckel(celsius float64) (a, b float64) {
	list := activity()
	for i := 1; i < len(list); i++ {
		if lo, hi := list[i-1], list[i]; celsius <= hi.celsius {
			part := (celsius - lo.celsius) / (hi.celsius - lo.celsius)
			return lo.a + (hi.a-lo.a)*part, lo.b + (hi.b-lo.b)*part
		}
	}
	last := list[len(list)-1]
	return last.a, last.b
}

// gammas is g^k with g the activity coefficient of a single charge, for k from
// −maxPower to maxPower − 1, as far as reach: γ of charge z is g^(z²).
type gammas [2 * maxPower]float64

// maxPower bounds what weights need: a pair of a trivalent anion has
// γ(M)·γ(bare) = g^(4+9).
const maxPower = 16

func (g *gammas) pow(k int) float64 { return g[uint(k+maxPower)%uint(len(g))] }

// set fills the powers of exp(−slope) as far as they are asked for.
func (g *gammas) set(slope float64, to reach) {
	up := math.Exp(-slope)
	g[maxPower] = 1
	for k := 1; k <= to.up; k++ {
		g[maxPower+k] = g[maxPower+k-1] * up
	}
	if to.down == 0 {
		return
	}
	down := 1 / up
	for k := 1; k <= to.down; k++ {
		g[maxPower-k] = g[maxPower-k+1] * down
	}
}

// reach is how far the powers go that the forms of a medium's acids ask for.
type reach struct{ up, down int }

// reachOf gives the reach of each of the coefficients.
func reachOf(acids []mediumAcid) []reach {
	all := make([]reach, 1+len(sizes()))
	all[common].up = 1 // the hydroxide ion's
	for i := range acids {
		a := &acids[i]
		to := &all[a.size]
		for _, list := range append([][]form{a.forms}, a.pairs[:]...) {
			for _, f := range list {
				to.up, to.down = max(to.up, f.power), max(to.down, -f.power)
			}
		}
		if to.up >= maxPower || to.down > maxPower {
			panic("acid: an ion has too many charges for its activity coefficient")
		}
	}
	return all
}

// coefficients are the activity coefficients at an ionic strength.
type coefficients struct {
	proton float64  // of the hydrogen ion
	ions   []gammas // common first, then each size's
	used   []bool   // by the acids that are present
}

func newCoefficients() coefficients {
	n := 1 + len(sizes())
	return coefficients{ions: make([]gammas, n), used: make([]bool, n)}
}

// at works the coefficients out for an ionic strength.
func (c *coefficients) at(m *activityModel, ionic float64) {
	root := math.Sqrt(ionic)
	c.proton = math.Exp(-m.a * root / (1 + m.proton*root))
	c.ions[common].set(m.a*(root/(1+root)-m.davies*ionic), m.reach[common])
	for i, own := range m.ownSize {
		if c.used[i+1] {
			c.ions[i+1].set(m.a*root/(1+own*root), m.reach[i+1])
		}
	}
}

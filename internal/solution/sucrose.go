package solution

import (
	"sync"

	"gonum.org/v1/gonum/mat"

	"sipsum/internal/embedded"
)

// HighestSucrose is the strongest sucrose solution, in per cent by mass, that
// the curves of this file were built on.
const HighestSucrose = 70.0

// sucrose holds two smooth curves through published points of sucrose in water at
// 20 °C, as polynomials of the mass fraction w:
//
//	ρ = ρ(water) + w·(c₀ + c₁w + c₂w² + c₃w³)      n = d₀ + d₁w + … + d₄w⁴
type sucroseCurves struct{ density, index []float64 }

var sucrose = sync.OnceValue(func() sucroseCurves {
	const densityTerms, indexTerms = 4, 5
	water := waterDensity()
	var w, rho, n []float64
	for _, row := range embedded.Rows("solution_sucrose.csv") {
		x := row.Number("percent") / percent
		w = append(w, x)
		rho = append(rho, (row.Number("density_g_ml")-water)/x)
		n = append(n, row.Number("index"))
	}
	return sucroseCurves{density: polynomial(w, rho, w, densityTerms), index: polynomial(w, n, nil, indexTerms)}
})

const percent = 100

// polynomial fits coefficients, the constant first, in least squares; weights
// may be nil.
func polynomial(x, y, weights []float64, terms int) []float64 {
	a, b := mat.NewDense(len(x), terms, nil), mat.NewVecDense(len(x), nil)
	for i := range x {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		b.SetVec(i, w*y[i])
		for j := range terms {
			a.Set(i, j, w)
			w *= x[i]
		}
	}
	var c mat.VecDense
	if err := c.SolveVec(a, b); err != nil {
		panic("solution: the sucrose table does not fix its curve: " + err.Error())
	}
	return c.RawVector().Data
}

func horner(c []float64, x float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}

// SucroseDensity gives g/ml at 20 °C of a sucrose solution of so many per cent by
// mass (°Brix), 0 to HighestSucrose.
func SucroseDensity(brix float64) float64 {
	w := brix / percent
	return waterDensity() + w*horner(sucrose().density, w)
}

// SucroseIndex gives the refractive index at 20 °C and 589 nm.
func SucroseIndex(brix float64) float64 { return horner(sucrose().index, brix/percent) }

// BrixOfDensity gives the sucrose solution of a density in g/ml at 20 °C; ok is
// false outside 0 to HighestSucrose.
func BrixOfDensity(gramsPerMl float64) (brix float64, ok bool) {
	return inverse(SucroseDensity, gramsPerMl)
}

// BrixOfIndex gives what a refractometer shows at an index; ok is false outside
// 0 to HighestSucrose.
func BrixOfIndex(index float64) (brix float64, ok bool) { return inverse(SucroseIndex, index) }

// inverse finds where a rising curve reaches a value, to 1e-9 °Bx.
func inverse(curve func(float64) float64, want float64) (float64, bool) {
	const exact = 1e-9
	lo, hi := 0.0, HighestSucrose
	if !(want >= curve(lo) && want <= curve(hi)) {
		return 0, false
	}
	for hi-lo > exact {
		if mid := (lo + hi) / 2; curve(mid) < want {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, true
}

// CorrectedBrix gives the Brix value of a juice from the refractometer's reading
// and its acid, in per cent of anhydrous citric acid: acid refracts less than
// sugar.
func CorrectedBrix(reading, acid float64) float64 {
	return reading + constants()["acid correction"]*acid
}

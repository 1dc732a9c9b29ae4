package solution

import (
	"sync"

	"gonum.org/v1/gonum/mat"

	"sipsum/internal/embedded"
)

// HighestSucrose is the strongest sucrose solution, in per cent by mass, that
// the curve of this file was built on.
const HighestSucrose = 70.0

// sucrose is a smooth curve through published densities of sucrose in water at 20 °C,
// a polynomial of the mass fraction w:
//
//	ρ = ρ(water) + w·(c₀ + c₁w + c₂w² + c₃w³)
var sucrose = sync.OnceValue(func() []float64 {
	const terms = 4
	water := waterDensity()
	var w, rho []float64
	for _, row := range embedded.Rows("solution_sucrose.csv") {
		x := row.Number("percent") / percent
		w = append(w, x)
		rho = append(rho, (row.Number("density_g_ml")-water)/x)
	}
	return polynomial(w, rho, w, terms)
})

const percent = 100

// polynomial fits coefficients, the constant first, in weighted least squares.
func polynomial(x, y, weights []float64, terms int) []float64 {
	a, b := mat.NewDense(len(x), terms, nil), mat.NewVecDense(len(x), nil)
	for i := range x {
		w := weights[i]
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
	return waterDensity() + w*horner(sucrose(), w)
}

// CorrectedBrix gives the Brix value of a juice from the refractometer's reading
// and its acid, in per cent of anhydrous citric acid: acid refracts less than
// sugar.
func CorrectedBrix(reading, acid float64) float64 {
	return reading + constants()["acid correction"]*acid
}

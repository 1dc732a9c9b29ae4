package estimate

import "math"

// Shape is the form of an input's distribution.
type Shape uint8

// The shapes.
const (
	Exact     Shape = iota // no spread
	Lognormal              // positive, by mean and SD
	Uniform                // on [Low, High]
	Normal                 // by mean and SD, cut at Low and High by clamping
)

// Input is one uncertain number and where its randomness comes from.
type Input struct {
	Central float64
	Shape   Shape
	SD      float64 // Lognormal, Normal
	Tail    float64 // Lognormal: how heavy the tails of the logarithm are; 0 is normal
	Low     float64 // Uniform, Normal
	High    float64 // Uniform, Normal
	Stream  Key
	Shared  []float64 // standard normal draws shared with other inputs; nil if none
	Rho     float64   // share of the variance (of z) that is shared
}

// Fill writes the column of the input: col[0] is the central value, col[1:]
// the draws.
func (in Input) Fill(col []float64) {
	col[0] = in.Central
	draws := col[1:]
	if in.Stream == steady {
		in.Shape = Exact
	}
	switch in.Shape {
	case Exact:
		for i := range draws {
			draws[i] = in.Central
		}
	case Uniform:
		stream := in.Stream.stream()
		for i := range draws {
			draws[i] = in.Low + uniform(stream)*(in.High-in.Low)
		}
	case Normal:
		in.normals(draws)
		for i, z := range draws {
			// guard: a normal is cut
			draws[i] = min(max(in.Central+in.SD*z, in.Low), in.High)
		}
	case Lognormal:
		if in.Central <= 0 || in.SD <= 0 {
			Input{Central: in.Central}.Fill(col)
			return
		}
		in.normals(draws)
		ratio := in.SD / in.Central
		variance := math.Log1p(ratio * ratio)
		sigma, above := math.Sqrt(variance), variance/2 // the mean above the median
		if in.Tail > 0 {
			heavy(draws, in.Tail)
			above = aboveMedian(sigma, in.Tail)
		}
		scale := in.Central * math.Exp(-above)
		for i, z := range draws {
			draws[i] = scale * math.Exp(sigma*z)
		}
	}
}

func (in Input) normals(z []float64) {
	in.Stream.Normals(z)
	if in.Shared == nil || in.Rho == 0 {
		return
	}
	a, b := math.Sqrt(in.Rho), math.Sqrt(1-in.Rho)
	for i := range z {
		z[i] = a*in.Shared[i] + b*z[i]
	}
}

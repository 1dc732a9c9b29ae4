package estimate_test

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// normals gives n draws of each of many keys, one after the other.
func normals(keys, n int) []float64 {
	z := make([]float64, keys*n)
	for k := range keys {
		estimate.KeyOf(1, "value", fmt.Sprint("core:", k), "CITAC").Normals(z[k*n : (k+1)*n])
	}
	return z
}

func phi(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }

func TestZigguratIsThePublishedOne(t *testing.T) {
	// Marsaglia and Tsang 2000, J. Stat. Softw. 5(8), 128 strips: r = 3.442619855899,
	// v = 9.91256303526217e-3. r is printed to 12 decimals, which v follows.
	x, f, tail := estimate.Strips()
	assert.InDelta(t, 3.442619855899, tail, 1e-11)
	assert.InEpsilon(t, 9.91256303526217e-3, x[0]*math.Exp(-tail*tail/2), 1e-10)
	assert.Equal(t, tail, x[1])
	require.Len(t, x, 129)
	assert.Zero(t, x[128])
	for i := 1; i < 128; i++ { // one area, and the curve at its corners
		assert.InEpsilon(t, 9.91256303526217e-3, x[i]*(f[i+1]-f[i]), 1e-10, "strip %d", i)
		assert.InEpsilon(t, math.Exp(-x[i+1]*x[i+1]/2), f[i+1], 1e-12, "strip %d", i)
		assert.Greater(t, x[i], x[i+1])
	}
}

// The moments of the standard normal distribution are 0, 1, 0, 3, 0, 15, and the
// variance of the k-th power is m(2k) − m(k)². Four standard errors are allowed.
func TestNormalMoments(t *testing.T) {
	z := normals(1000, 1000)
	moments := []float64{1, 0, 1, 0, 3, 0, 15, 0, 105, 0, 945, 0, 10395}
	for k := 1; k <= 6; k++ {
		sum := 0.0
		for _, x := range z {
			sum += math.Pow(x, float64(k))
		}
		n := float64(len(z))
		assert.InDelta(t, moments[k], sum/n, 4*math.Sqrt((moments[2*k]-moments[k]*moments[k])/n), "moment %d", k)
	}
}

// andersonDarling gives A² against Φ: Anderson and Darling 1954, JASA 49:765. It
// sorts z.
func andersonDarling(z []float64) float64 {
	slices.Sort(z)
	n, sum := len(z), 0.0
	for i := range z {
		sum += float64(2*i+1) * (math.Log(phi(z[i])) + math.Log(phi(-z[n-1-i])))
	}
	return -float64(n) - sum/float64(n)
}

func TestNormalsFollowTheNormalDistribution(t *testing.T) {
	// Of streams that are normal, one in ten has an A² above 1.933, one in twenty above
	// 2.492 and one in a hundred above 3.857, whatever their length: Stephens 1974, JASA
	// 69:730, table 1. Four standard errors of the count are allowed.
	const keys, n = 2000, 200
	z := normals(keys, n)
	above := map[float64]float64{}
	for k := range keys {
		a := andersonDarling(slices.Clone(z[k*n : (k+1)*n]))
		for _, limit := range []float64{1.933, 2.492, 3.857} {
			if a > limit {
				above[limit] += 1.0 / keys
			}
		}
	}
	for limit, want := range map[float64]float64{1.933: 0.10, 2.492: 0.05, 3.857: 0.01} {
		assert.InDelta(t, want, above[limit], 4*math.Sqrt(want*(1-want)/keys), "A² above %v", limit)
	}

	// All together: D·√n below 1.628 has a chance of 0.99 (Smirnov 1948, Ann. Math.
	// Stat. 19:279), A² below 3.857 likewise.
	all := normals(1000, 1000)
	assert.Less(t, andersonDarling(all), 3.857)
	far := 0.0
	for i, x := range all { // sorted
		far = max(far, phi(x)-float64(i)/float64(len(all)), float64(i+1)/float64(len(all))-phi(x))
	}
	assert.Less(t, far*math.Sqrt(float64(len(all))), 1.628)
}

// In bins of one chance the counts vary as chance does: χ² has a mean of bins − 1 and a
// variance of twice that. Strips that were not alike, or that told the place in
// them, would show here.
func TestNormalsInFineBins(t *testing.T) {
	const bins, keys, n = 500, 4000, 1000
	count := [bins]float64{}
	for _, x := range normals(keys, n) {
		count[min(int(bins*phi(x)), bins-1)]++
	}
	chi2, want := 0.0, float64(keys*n)/bins
	for _, c := range count {
		chi2 += (c - want) * (c - want) / want
	}
	assert.InDelta(t, 0, (chi2-(bins-1))/math.Sqrt(2*(bins-1)), 4)
}

func TestTheTailsBeyondTheZiggurat(t *testing.T) {
	// 1 − Φ: Abramowitz and Stegun 1964, Handbook of Mathematical Functions, tables 26.1
	// and 26.2, which also print it for 4 and 5 as 3.1671e-5 and 2.8665e-7. The ziggurat
	// ends at 3.4426. Four standard errors of the count are allowed.
	const keys, n = 20, 2_000_000
	limits := []float64{2, 3.44, 3.45, 4, 4.5, 5}
	share := map[float64]float64{2: 0.0227501, 3.44: 2.9086e-4, 3.45: 2.8029e-4, 4: 3.1671e-5, 4.5: 3.3977e-6, 5: 2.8665e-7}
	above, below := map[float64]float64{}, map[float64]float64{}
	z := make([]float64, n)
	for k := range keys {
		estimate.KeyOf(uint64(k), "tail").Normals(z)
		for _, x := range z {
			for _, limit := range limits {
				if math.Abs(x) <= limit {
					break
				}
				if x > 0 {
					above[limit]++
				} else {
					below[limit]++
				}
			}
		}
	}
	for _, limit := range limits {
		want := share[limit] * keys * n
		assert.InDelta(t, want, above[limit], 4*math.Sqrt(want), "above %v", limit)
		assert.InDelta(t, want, below[limit], 4*math.Sqrt(want), "below −%v", limit)
	}
}

// The side and the distance are independent: in each tenth of |z| half are negative.
func TestNormalsAreSymmetric(t *testing.T) {
	const tenths = 10
	var negative, all [tenths]float64
	for _, x := range normals(1000, 1000) {
		tenth := min(int(tenths*(2*phi(math.Abs(x))-1)), tenths-1)
		all[tenth]++
		if x < 0 {
			negative[tenth]++
		}
	}
	for i := range all {
		assert.InDelta(t, all[i]/2, negative[i], 4*math.Sqrt(all[i])/2, "tenth %d", i)
	}
}

// Streams of keys that are neighbours, in their hash or in what is hashed, have nothing
// in common, nor have numbers that follow each other: not in their values, nor in how far
// out they lie. A correlation of n pairs has a standard error of 1/√n; of some hundred,
// none may pass four and a half.
func TestStreamsAreIndependent(t *testing.T) {
	const n = 20_000
	limit := 4.5 / math.Sqrt(n)
	of := func(k estimate.Key) []float64 {
		z := make([]float64, n)
		k.Normals(z)
		return z
	}
	squares := func(z []float64) []float64 {
		out := make([]float64, len(z))
		for i, x := range z {
			out[i] = x * x
		}
		return out
	}
	check := func(a, b []float64, what string) {
		assert.InDelta(t, 0, stat.Correlation(a, b, nil), limit, what)
		assert.InDelta(t, 0, stat.Correlation(squares(a), squares(b), nil), limit, "%s, squared", what)
	}
	key := estimate.KeyOf(1, "value", "core:lemon", "CITAC")
	one := of(key)
	for bit := range 64 {
		check(one, of(key^1<<bit), fmt.Sprintf("bit %d", bit))
	}
	check(one, of(key+1), "next key")
	check(one, of(estimate.KeyOf(2, "value", "core:lemon", "CITAC")), "next seed")
	check(one, of(estimate.KeyOf(1, "value", "core:lemon", "MALAC")), "next constituent")
	for lag := 1; lag <= 5; lag++ {
		check(one[lag:], one[:n-lag], fmt.Sprintf("lag %d", lag))
	}
}

func TestFewerNormalsAreTheFirstOfMore(t *testing.T) {
	for k := range 50 { // some draw a number twice on the way
		key, more := estimate.KeyOf(uint64(k), "x"), make([]float64, 1000)
		key.Normals(more)
		for _, n := range []int{0, 1, 200, 999} {
			few := make([]float64, n)
			key.Normals(few)
			require.Equal(t, more[:n], few)
		}
	}
}

// The generator under the streams is PCG-DXSM with the cheap multiplier, as its author
// (M. E. O'Neill, pcg-cpp) and NumPy define it: 128 bits of state, here in big integers.
// The constants are theirs. If Go's own ever differed, this would tell.
func TestStreamsArePCG(t *testing.T) {
	number := func(hex string) *big.Int {
		x, ok := new(big.Int).SetString(hex, 16)
		require.True(t, ok)
		return x
	}
	multiplier, increment := number("2360ed051fc65da44385df649fccf645"), number("5851f42d4c957f2d14057b7ef767814f")
	const cheap = 0xda942042e4dd58b5
	key, bits := estimate.KeyOf(1, "x"), make([]uint64, 100)
	key.Bits(bits)
	state := new(big.Int).Lsh(new(big.Int).SetUint64(uint64(key)), 64)
	state.Or(state, number("9e3779b97f4a7c15"))
	low := new(big.Int).SetUint64(math.MaxUint64)
	for i, got := range bits {
		state.Mul(state, multiplier).Add(state, increment)
		state.And(state, number("ffffffffffffffffffffffffffffffff"))
		hi, lo := new(big.Int).Rsh(state, 64).Uint64(), new(big.Int).And(state, low).Uint64()
		hi ^= hi >> 32
		hi *= cheap
		hi ^= hi >> 48
		hi *= lo | 1
		require.Equal(t, hi, got, "number %d", i)
	}
}

// What was printed once is printed again: the numbers of one key, as they are. A change of
// the method changes every figure's interval, and must be meant.
func TestNormalsStayWhatTheyAre(t *testing.T) {
	z := make([]float64, 5)
	estimate.KeyOf(1, "value", "core:lemon", "CITAC").Normals(z)
	assert.InDeltaSlice(t, []float64{0.971949539524764, 0.561912883016928, 1.592663498213058, -0.036181500352977, 0.611235807514180}, z, 1e-12)
}

func TestUniformReachesNeitherEnd(t *testing.T) {
	for _, bits := range []uint64{0, 1, 1 << 63, math.MaxUint64 - 1, math.MaxUint64} {
		u := estimate.Unit(bits)
		assert.Positive(t, u)
		assert.Less(t, u, 1.0)
	}
	assert.InDelta(t, 0.5, estimate.Unit(1<<63), 1e-15)
}

func BenchmarkNormals(b *testing.B) {
	z := make([]float64, 1000)
	b.ReportAllocs()
	for b.Loop() {
		estimate.KeyOf(1, "x").Normals(z)
	}
}

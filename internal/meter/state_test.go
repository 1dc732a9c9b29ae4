package meter_test

import (
	"fmt"
	"io/fs"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/meter"
)

// one assesses a shelf of one meter.
func one(t testing.TB, text string) *meter.State {
	t.Helper()
	list, faults := drink.ParseMeters("meters.yaml", []byte("meters:\n  x: {"+text+"}\n"))
	require.NoError(t, faults.Err(fail.Wrong))
	require.Len(t, list, 1)
	return meter.Of(&list[0])
}

// The 4.01 buffer of a maker's table has pH 4.00 at 20 °C and 4.01 at 25, the 7.01 one 7.03 and 7.01: at 22 °C they lie
// between. A slope is in per cent of Nernst, whose volt is 59.16 mV a pH at 25 °C.
func TestAnElectrodeIsToldByItsBuffers(t *testing.T) {
	s := one(t, "kind: pH meter, standards: {ph 4.01 at 22 °C: 4.324, ph 7.01 at 22 °C: 7.02}")
	assert.InDelta(t, 4.004, s.Points[0].Known, 1e-9)
	assert.InDelta(t, 7.022, s.Points[1].Known, 1e-9)
	assert.InDelta(t, 100*(7.02-4.324)/(7.022-4.004), s.Slope, 1e-6)
	require.Len(t, s.Advices, 1, "89 %% wants to be cleaned")
	assert.Empty(t, s.Faults)
	assert.InDelta(t, -59.16*(7.02-0.022*(7.02-4.324)/(7.022-4.004)-7), s.Zero, 0.001)
	off, _ := s.At(4.324, 0)
	assert.InDelta(t, 0.32, off, 0.04, "what it shows too much is taken off")
}

// Beyond 30 mV or below 85 % an electrode is out of tolerance, and read wider; so is a scale of class III beyond what OIML
// R 76 allows in service: one division up to 500, two up to 2000, three above.
func TestOutOfToleranceIsSaidAndReadWider(t *testing.T) {
	const buffers = "kind: pH meter, checked: 2027-03-31, standards: {ph 4.01 at 25 °C: 4.01, ph 7.01 at 25 °C: 7.01}"
	for text, faults := range map[string]int{
		"zero: 30 mV": 0, "zero: -30.5 mV": 1, "slope: 85 %": 0, "slope: 84.9 %": 1, "zero: 40 mV, slope: 70 %": 2,
	} {
		s := one(t, buffers+", "+text)
		assert.Len(t, s.Faults, faults, text)
		_, good := one(t, buffers).At(4, 0)
		_, u := s.At(4, 0)
		if faults > 0 {
			assert.Greater(t, u, 0.29, text)
		} else {
			assert.Equal(t, good, u, text)
		}
	}
	for text, faults := range map[string]int{
		"500 g ± 0.1 g: 501 g": 0, "500 g ± 0.1 g: 501.1 g": 1, "501 g ± 0.1 g: 503 g": 0, "2000 g ± 0.1 g: 2002.1 g": 1, "2001 g ± 0.1 g: 2004 g": 0, "2001 g ± 0.1 g: 2004.1 g": 1,
	} {
		assert.Len(t, one(t, "kind: scale, resolution: 1 g, standards: {"+text+"}").Faults, faults, text)
	}
}

// No meter is sharper than its display: a step /√12 (JCGM 100:2008, F.2.2.1), however often it showed the same.
func TestNoMeterIsSharperThanItsDisplay(t *testing.T) {
	for _, step := range []float64{0.001, 0.1, 1, 5} {
		s := one(t, fmt.Sprintf("kind: refractometer, resolution: %g, checked: 2027-03-31, standards: {0 °Bx: [0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0], 20.0 °Bx ± 0 °Bx: [20,20,20,20,20,20,20,20,20,20,20,20]}", step))
		assert.GreaterOrEqual(t, s.Noise, step/math.Sqrt(12))
		_, u := s.At(0, s.Meter.Checked)
		assert.Greater(t, u, step/math.Sqrt(12)/2)
	}
}

// The longer ago a check, the less is known; and a wider standard, a coarser display or fewer repeats never tell more.
func TestAWiderMeterKnowsNoMore(t *testing.T) {
	u := func(text string, day int) float64 {
		_, u := one(t, "kind: refractometer, checked: 2027-03-31, "+text).At(15, day)
		return u
	}
	s := one(t, "kind: refractometer, checked: 2027-03-31, standards: {10.0 °Bx ± 0.1 °Bx: [10.1, 10.0]}")
	before := 0.0
	for days := range 400 {
		_, now := s.At(15, s.Meter.Checked+days)
		assert.GreaterOrEqual(t, now, before)
		before = now
	}
	day := s.Meter.Checked
	assert.Greater(t, u("standards: {10.0 °Bx ± 0.5 °Bx: [10.1, 10.0]}", day), u("standards: {10.0 °Bx ± 0.1 °Bx: [10.1, 10.0]}", day))
	assert.Greater(t, u("resolution: 0.5, standards: {10.0 °Bx ± 0.1 °Bx: [10, 10]}", day), u("resolution: 0.1, standards: {10.0 °Bx ± 0.1 °Bx: [10, 10]}", day))
	assert.Greater(t, u("standards: {10.0 °Bx ± 0.1 °Bx: [10.1]}", day), u("standards: {10.0 °Bx ± 0.1 °Bx: [10.1, 10.1, 10.1, 10.1]}", day))
}

// What an instrument is off by is one draw for all that it reads.
func TestOneMeterOneDraw(t *testing.T) {
	d, faults := drink.ParseBeside("t", []byte("drink: x\nserves: 1\ncomponents:\n  a: {ingredients: [9 g core:water-pure], measured: {ph: 6}}\n  b: {ingredients: [9 g core:water-pure], measured: {ph: 6}}\nbuild: [1 g a, 1 g b]\n"), nil,
		func(name string) ([]byte, error) {
			if name == drink.MetersFile {
				return []byte("meters:\n  pen: {kind: pH meter}\n"), nil
			}
			return nil, fail.Because(fail.Wrong, fs.ErrNotExist, "none", "")
		})
	require.NoError(t, faults.Err(fail.Wrong))
	r := meter.NewRun(d, estimate.Ensemble{Seed: 1, N: 101})
	a, b := r.Of(d.Components[0].Measured, "ph"), r.Of(d.Components[1].Measured, "ph")
	assert.Equal(t, a.Off(6), b.Off(6))
	assert.NotEqual(t, a.Off(6)[1], a.Off(6)[2])
	assert.InDelta(t, a.U(6), math.Sqrt(estimate.Variance(a.Off(6))), 0.15*a.U(6))
}

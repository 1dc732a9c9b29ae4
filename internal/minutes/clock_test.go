package minutes_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const juice = "serves: 4\nat: 6 °C\nbuild:\n  - 400 g core:orange-juice\nfinish:\n"

// A step is done with all glasses before the next begins; a glass stands from the first that is done glass by glass.
func TestClock(t *testing.T) {
	for _, x := range []struct {
		text                     string
		first, last, stood, late float64
	}{
		{"  - {treat: shaken, takes: 30 s}\n", 0.5, 0.5, 0, 0},
		{"  - {treat: poured, takes: 20 s a glass}\n", 1.0 / 3, 4.0 / 3, 1, 0},
		{"  - {treat: poured, takes: 20 s a glass, hands: 2}\n", 1.0 / 3, 2.0 / 3, 1.0 / 3, 0},
		{"  - {treat: poured, takes: 20 s a glass, hands: 3}\n", 1.0 / 3, 2.0 / 3, 1.0 / 3, 0},
		{"  - {treat: poured, takes: 20 s a glass, hands: 9}\n", 1.0 / 3, 1.0 / 3, 0, 0},
		{"  - {treat: shaken, takes: 30 s}\n  - {treat: poured, takes: 30 s a glass}\n  - {treat: flamed, takes: 1 min a glass}\n", 3.5, 6.5, 5.5, 4},
	} {
		c, _ := course(t, juice+x.text)
		assert.InDelta(t, x.first, c.Clock.First, 1e-9, x.text)
		assert.InDelta(t, x.last, c.Clock.Last, 1e-9, x.text)
		assert.InDelta(t, x.stood, c.Clock.Stood, 1e-9, x.text)
		assert.InDelta(t, x.late, c.Clock.LastStood, 1e-9, x.text)
	}
	still, _ := course(t, juice+"  - treat: poured\n")
	assert.Nil(t, still.Clock)
	assert.Equal(t, []float64{0, 1, 3, 5, 10}, still.Times)

	waits, _ := course(t, juice+"  - {treat: poured, takes: 40 s a glass}\n")
	assert.Equal(t, []float64{0, 1, 2, 3, 5, 10}, waits.Times, "how it is when the last glass is ready is told too")
	long, _ := course(t, juice+"  - {treat: poured, takes: 4 min a glass}\n")
	assert.Equal(t, []float64{0, 1, 3, 5, 10}, long.Times, "twelve minutes are longer than the rates were read")
}

func TestClockAgainstTheTimeOfTheDrink(t *testing.T) {
	c, _ := course(t, "takes: 2 min ± 0.5 min\n"+juice+"  - {treat: poured, takes: 1 min a glass}\n")
	assert.InDelta(t, 1.5, c.Clock.Over, 1e-9)
	in, _ := course(t, "takes: 9 min\n"+juice+"  - {treat: poured, takes: 1 min a glass}\n")
	assert.Zero(t, in.Clock.Over)
}

package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// The time of a step stands beside it or between its parameters, of all glasses or of each.
func TestTimesOfFinish(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+`build: [100 g core:orange-juice]
finish:
  - chill: {melt: 30 g, takes: 12 s}
  - add: 2 g core:salt
    takes: 0.5 min ± 0.1 min
  - {treat: smoked, takes: 10 s a glass, hands: 2}
  - shake: {from: 20 °C, to: 0 °C, takes: 15 s}
  - dilute: {to: 200 g}
`), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	require.Len(t, d.Tasks, 4)
	assert.Len(t, d.Finish, 5, "a step without a time is a step all the same")
	for i, want := range []struct {
		word    string
		minutes float64
		each    bool
		hands   int
	}{{"chill", 0.2, false, 1}, {"add", 0.5, false, 1}, {"treat", 1.0 / 6, true, 2}, {"shake", 0.25, false, 1}} {
		got := d.Tasks[i]
		assert.Equal(t, want.word, got.Word)
		assert.InDelta(t, want.minutes, got.Takes.Number, 1e-12, want.word)
		assert.Equal(t, want.each, got.Each, want.word)
		assert.Equal(t, want.hands, got.Hands, want.word)
	}
	assert.InDelta(t, 0.1, d.Tasks[1].Takes.Half, 1e-12)
	assert.Equal(t, "finish/chill", d.Finish[0].StepPath(), "its time changes nothing of what a step is")
}

func TestFaultsOfTimesAndStands(t *testing.T) {
	for _, c := range []struct{ text, says, do string }{
		{"finish: [{chill: {melt: 3 g}, takes: 12 s, hands: 2}]", "hands counts where each glass takes its time", "write takes: 12 s a glass, or take hands out"},
		{"finish: [{chill: {melt: 3 g}, hands: 2}]", `the time of a step needs "takes"`, "10 s a glass"},
		{"finish: [{chill: {melt: 3 g}, takes: 12 s a glass, hands: 0}]", `hands is "0"`, "a whole number from 1 to 10"},
		{"finish: [{chill: {melt: 3 g}, takes: 12 s a glass, hands: 1.5}]", `hands is "1.5"`, "a whole number"},
		{"finish: [{chill: {melt: 3 g}, takes: -12 s}]", "out of range", "between 0"},
		{"finish: [{chill: {melt: 3 g}, takes: 12}]", "needs a unit", "takes: 12 s"},
		{"finish: [{takes: 12 s}]", `"takes" is not a step`, ""},
		{"components: {c: {ingredients: [1 g core:salt], steps: [{dilute: {to: 3 g, takes: 1 min}}]}}", `"takes" is of a step of finish`, "not on the clock"},
		{"at: 62 °C\nstands: {ice: 60 g}", "ice melts at once in a drink of 62 °C", "chill: {from: 62 °C, to: 4 °C}"},
		{"stands: {melts: 1 g/min}", "melts is of ice", "ice: 60 g"},
		{"stands: {rooms: 20 °C}", `stands has no key "rooms"`, `did you mean "room"`},
		{"stands: {room: 200 °C}", "out of range", "between 0 and 50 °C"},
		{"stands: {room: 22 °C ± 30 °C}", "reaches out of what the temperature of a room can be", "between 0 and 50 °C: write a smaller ±"},
		{"stands: {loses: 6 %}", "is not given in", "%/min"},
		{"stands: {ice: 60 ml}", "ice", ""},
	} {
		_, faults := drink.Parse("t", []byte(head+"build: [100 g core:orange-juice]\n"+c.text+"\n"), nil)
		err := faults.Err(fail.Wrong)
		if assert.Error(t, err, c.text) {
			assert.Contains(t, err.Error(), c.says, c.text)
			assert.Contains(t, err.Error(), c.do, c.text)
		}
	}
}

func TestStands(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+"build: [100 g core:orange-juice]\nat: 3 °C\nstands: {room: 24 °C ± 2 °C, ice: 60 g ± 10 g, melts: 1.2 g a minute, loses: 4-8 % per minute}\n"), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	require.NotNil(t, d.Stands)
	assert.Equal(t, drink.Quantity{Number: 24, Half: 2, Unit: "°C"}, *d.Stands.Room)
	assert.Equal(t, 60.0, d.Stands.Ice.Base())
	assert.Equal(t, "g/min", d.Stands.Melts.Unit)
	assert.Equal(t, drink.Quantity{Number: 6, Half: 2, Unit: "%/min"}, *d.Stands.Loses)
}

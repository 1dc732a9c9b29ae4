package drink_test

import (
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// lying reads a drink with files beside it.
func lying(text string, files map[string]string) (*drink.Drink, *fail.List) {
	return drink.ParseBeside("x.drink.yaml", []byte(text), nil, func(name string) ([]byte, error) {
		if text, ok := files[name]; ok {
			return []byte(text), nil
		}
		return nil, fs.ErrNotExist
	})
}

const (
	logHead  = "when,who,drink,pot,quantity,value,unit,meter,lot\n"
	tideFile = "drink: Tide\nserves: 1\ncomponents:\n  syrup: {ingredients: [9 g core:sugar-white, 9 g core:water-pure], measured: {brix: 50, ph: 6.1, meter: [pen, glass]}}\nbuild: [9 g syrup]\n"
	twoPens  = "meters:\n  pen: {kind: pH meter}\n  other: {kind: pH meter}\n  glass: {kind: refractometer}\n"
)

// The latest line of a quantity counts, in whatever order the lines stand, in the place of the file's; the file keeps the others.
func TestTheLatestLineOfTheLogCounts(t *testing.T) {
	older, newer := "2027-03-30,a,Tide,syrup,brix,51,°Bx,,1\n", "2027-03-31 09:00,b,Tide,syrup,brix,49.5,,,2\n"
	for _, order := range []string{older + newer, newer + older} {
		d, faults := lying(tideFile, map[string]string{"log.csv": logHead + order + "2027-04-02,b,Another,syrup,brix,80,,,2\n2027-04-02,b,Tide,,mass,8.9 g,,,\n", "meters.yaml": twoPens})
		require.NoError(t, faults.Err(fail.Wrong))
		m := d.Components[0].Measured
		assert.Equal(t, 49.5, m.Brix.Number)
		assert.Equal(t, 6.1, m.PH.Number)
		l := m.LoggedOf("brix")
		require.NotNil(t, l)
		assert.Equal(t, "50", l.Instead)
		assert.Equal(t, 2, l.Spread.Lots)
		assert.InDelta(t, 50.25, l.Spread.Mean, 1e-12)
		assert.Equal(t, "pen", d.MeterOf(m, "ph").Name, "two of a kind: the one that is named")
		assert.Equal(t, "glass", d.MeterOf(m, "brix").Name, "the only one of its kind")
		last := d.Finish[len(d.Finish)-1].(*drink.Measured)
		assert.Equal(t, 8.9, last.Mass.Base())
		assert.Nil(t, d.MeterOf(last, "mass"))
		assert.Equal(t, 1, d.ForNextLot())
		assert.InDelta(t, 50.25, m.Brix.Number, 1e-12)
	}
	d, faults := lying(tideFile, nil)
	require.NoError(t, faults.Err(fail.Wrong))
	assert.Equal(t, 50.0, d.Components[0].Measured.Brix.Number, "beside it lies nothing")
}

// What is wrong beside a drink is told with its place, and what is no shelf of meters shows nothing of itself.
func TestFaultsBesideADrinkHaveTheirPlaces(t *testing.T) {
	for says, files := range map[string]map[string]string{
		`log.csv:2:30`:                    {"log.csv": logHead + "2027-03-30,a,Tide,syrup,brix,wet,,,\n"},
		`log.csv:2:25`:                    {"log.csv": logHead + "2027-03-30,a,Tide,syrup,taste,5,,,\n"},
		`no meter of the shelf is called`: {"meters.yaml": "meters:\n  glass: {kind: refractometer}\n"},
		`takes none of these readings`:    {"meters.yaml": "meters:\n  glass: {kind: scale}\n  pen: {kind: pH meter}\n"},
		`has no electrode`:                {"meters.yaml": "meters:\n  glass: {kind: refractometer, slope: 90 %}\n  pen: {kind: pH meter}\n"},
		`this is not a file of meters`:    {"meters.yaml": "secret: 1234\n"},
		`meters.yaml:2:34`:                {"meters.yaml": "meters:\n  pen: {kind: pH meter, checked: soon}\n  glass: {kind: refractometer}\n"},
	} {
		_, faults := lying(tideFile, files)
		err := faults.Err(fail.Wrong)
		require.Error(t, err, says)
		assert.Contains(t, err.Error(), says)
		assert.NotContains(t, err.Error(), "1234")
	}
}

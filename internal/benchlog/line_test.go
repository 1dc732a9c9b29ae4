package benchlog_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/benchlog"
	"sipsum/internal/fail"
)

const head = "when,who,drink,pot,quantity,value,unit,meter,lot\n"

// What is written is read again, whatever a stranger calls himself; and no cell is one that a spreadsheet runs.
func TestALineIsReadAsItWasWritten(t *testing.T) {
	for _, who := range []string{"anna", "=cmd|' /C calc'!A0", "+1", "-a", "@x", "'quoted", "a \"b\", c", "ünïcode", "＝wide", ""} {
		l := benchlog.Line{When: "2027-03-31 14:05", Who: who, Drink: "Tide, low", Pot: "mint veil", Quantity: "brix", Value: "9.5 ± 0.1", Unit: "°Bx", Lot: "3"}
		text := string(l.Text())
		for cell := range strings.SplitSeq(strings.TrimSuffix(text, "\n"), ",") {
			assert.False(t, strings.ContainsAny(strings.TrimPrefix(cell, `"`)[:min(1, len(cell))], "=+-@"), "%s", text)
		}
		list, faults := benchlog.Parse("log.csv", append(benchlog.Header(), text...))
		require.NoError(t, faults.Err(fail.Wrong))
		require.Len(t, list, 1, text)
		assert.Equal(t, []string{l.When, l.Who, l.Drink, l.Value, l.Unit}, []string{list[0].When, list[0].Who, list[0].Drink, list[0].Value, list[0].Unit})
	}
}

// A line at fault is told with its place, and hides none of the others.
func TestFaultsOfALogHaveTheirPlaces(t *testing.T) {
	list, faults := benchlog.Parse("log.csv", []byte(head+
		"2027-03-31,a,x,p,ph,3.1,,,1\n"+
		"yesterday,a,x,p,ph,3.1,,,1\n"+
		"2027-03-31,a,x,p,ph\n"+
		"\n"+
		head+
		"2027-03-31 25:00,a,x,p,ph,3.1,,,1\n"+
		"2027-03-31,a,x,p,ph,,,,1\n"+
		"2027-04-01,a,x,p,ph,3.2,,,2\n"))
	require.Len(t, list, 2)
	var told *fail.Error
	require.ErrorAs(t, faults.Err(fail.Wrong), &told)
	var places []string
	for _, f := range told.Faults {
		places = append(places, f.Place.String())
	}
	assert.Equal(t, []string{"log.csv:3:1", "log.csv:4:1", "log.csv:7:1", "log.csv:8:21"}, places)
}

// Lots of 10, 12 and 14: their mean is 12 and s is 2; the next one scatters by 2·√(1 + 1/3), and t for two degrees of
// freedom is 2.92 against 1.645 (JCGM 100:2008, table G.2).
func TestLotsTellTheNext(t *testing.T) {
	s, ok := benchlog.SpreadOf(map[string]float64{"a": 10, "b": 14, "c": 12}, 5)
	require.True(t, ok)
	assert.InDelta(t, 12, s.Mean, 1e-12)
	assert.InDelta(t, 2, s.SD, 1e-12)
	assert.InDelta(t, 2*math.Sqrt(4.0/3)*2.92/1.645, s.Next, 0.005)
	_, ok = benchlog.SpreadOf(map[string]float64{"a": 10}, 3)
	assert.False(t, ok, "one lot says nothing of the next")
}

package unit_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/unit"
)

// The library's calendar counts the same days, and refuses the same dates.
func TestDaysOfTheCalendar(t *testing.T) {
	first, ok := unit.Day("1999-01-01")
	require.True(t, ok)
	from := time.Date(1999, 1, 1, 0, 0, 0, 0, time.UTC)
	for n := range 40000 {
		day, ok := unit.Day(from.AddDate(0, 0, n).Format(time.DateOnly))
		require.True(t, ok)
		require.Equal(t, n, day-first)
	}
	for _, text := range []string{"2027-02-29", "2027-02-30", "2100-02-29", "2027-13-01", "2027-00-10", "2027-04-31", "2027-4-1", "soon", ""} {
		_, ok := unit.Day(text)
		_, err := time.Parse(time.DateOnly, text)
		assert.Equal(t, err == nil, ok, text)
	}
	_, ok = unit.Day("2028-02-29")
	assert.True(t, ok)
}

package tablestest

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// Fault checks that an error is one of the files, with a place and advice.
func Fault(t testing.TB, err error, about ...any) *fail.Error {
	t.Helper()
	var faults *fail.Error
	require.True(t, errors.As(err, &faults), "%v: want a fault of the file, have %v", about, err)
	assert.Equal(t, fail.Wrong, faults.Exit, "%v: %v", about, err)
	assert.NotEmpty(t, faults.Faults[0].File, "%v: %v", about, err)
	assert.NotEmpty(t, faults.Faults[0].Do, "%v: %v", about, err)
	return faults
}

// Legal checks what a reader gave for any bytes, as Open returned it: a fault,
// or foods with a code, a name and legal values until a fault ends them.
func Legal(t testing.TB, release *table.Release, err error) {
	t.Helper()
	if err != nil {
		Fault(t, err)
		return
	}
	works := map[string]bool{}
	for _, w := range release.Works {
		works[w.ID] = true
	}
	for f, err := range release.Foods {
		if err != nil {
			Fault(t, err)
			return
		}
		if f.ID.Code == "" || len(f.Names) == 0 || f.Names[0].Text == "" || f.Density.GramsPerMl <= 0 {
			t.Fatalf("no code, name or density: %+v", f)
		}
		for _, v := range f.Values {
			checkValue(t, f.ID, v, works)
		}
	}
}

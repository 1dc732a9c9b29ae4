package acidity_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
)

// chemistryOf gives the chemistry of a component.
func chemistryOf(t *testing.T, a *assay.Assay, name string) *chemistry.Chemistry {
	t.Helper()
	for _, c := range a.Components {
		if c.Name == name {
			return c.Chemistry
		}
	}
	require.Fail(t, "no component "+name)
	return nil
}

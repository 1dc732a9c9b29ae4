package constituent_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
)

func TestMolarMass(t *testing.T) {
	// Molar masses as printed in the CRC Handbook of Chemistry and Physics,
	// "Physical Constants of Organic/Inorganic Compounds"; from memory, checked
	// to the second decimal.
	cases := []struct {
		formula string
		want    float64
	}{
		{"H2O", 18.015}, {"C6H8O7", 192.12}, {"C8H10N4O2", 194.19}, {"NaCl", 58.44}, {"MgSO4·7H2O", 246.47},
	}
	for _, c := range cases {
		got, err := constituent.MolarMass(c.formula)
		require.NoError(t, err)
		assert.InDelta(t, c.want, got, 0.011, c.formula)
	}
	for _, bad := range []string{"", "Xx2", "C6·", "c6", "C0", "C6H99999999999999999999", "NaCl·99999999999999999999H2O"} {
		molar, err := constituent.MolarMass(bad)
		assert.Error(t, err, bad)
		assert.Zero(t, molar, bad)
	}
}

func TestVocabularyIsWhole(t *testing.T) {
	for _, c := range constituent.All() {
		assert.NotEmpty(t, c.Name, c.ID)
		assert.NotEmpty(t, c.Unit, c.ID)
		assert.NotEmpty(t, c.Source, c.ID)
		if c.InLedger() {
			assert.Positive(t, c.PerGram, "%s must be a mass", c.ID)
			assert.NotEmpty(t, c.Phase, c.ID)
		}
		if c.Parent != "" {
			parent, ok := constituent.Find(string(c.Parent))
			require.True(t, ok, c.ID)
			assert.Equal(t, constituent.Parent, parent.Kind, c.ID)
			assert.Less(t, parent.Order, c.Order, "%s stands before its parent", c.ID)
		}
		switch c.Kind {
		case constituent.Leaf, constituent.Rest:
			assert.NotEmpty(t, c.Parent, c.ID)
		case constituent.Rider, constituent.Figure:
			assert.Empty(t, c.Parent, c.ID)
		case constituent.Parent:
			_, ok := constituent.Find(string(constituent.RestOf(c.ID)))
			assert.True(t, ok, "%s has no rest", c.ID)
		default:
			t.Errorf("%s: unknown kind %q", c.ID, c.Kind)
		}
	}
}

func TestEveryLeafAddsUpToMassOnce(t *testing.T) {
	seen := map[constituent.ID]int{}
	for _, c := range constituent.Sums().Leaves(constituent.Mass) {
		seen[c.ID]++
	}
	for _, c := range constituent.All() {
		want := 0
		if c.Kind == constituent.Leaf || c.Kind == constituent.Rest {
			want = 1
		}
		assert.Equal(t, want, seen[c.ID], c.ID)
	}
}

func TestFindByAlias(t *testing.T) {
	c, ok := constituent.Find("ENERC_KJ")
	require.True(t, ok)
	assert.Equal(t, constituent.Energy, c.ID)
	_, ok = constituent.Find("nothing")
	assert.False(t, ok)
}

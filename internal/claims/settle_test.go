package claims_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
)

// of is a drink of own foods with figures besides their water, and a claim.
func pouring(n int, values, check, more string) string {
	var foods, build strings.Builder
	for i := range n {
		fmt.Fprintf(&foods, "  f%d: {name: \"Pulp %c, invented\", per: 100 g, values: {WATER: 80 g ± 0%s}, source: \"x\"}\n", i, 'a'+i, values)
		fmt.Fprintf(&build, "  - 20.00 g own:f%d\n", i)
	}
	return "drink: \"x\"\nserves: 1\n" + more + "foods:\n" + foods.String() + "build:\n" + build.String() + "claims:\n  - {say: x, check: '" + check + "'}\n"
}

// What settles a claim is all that must be known: of three foods of which nobody knows the fat each, of five the first
// three and how many more.
func TestAllThatSettlesIsNamed(t *testing.T) {
	core := assaytest.Core(t)
	s := judged(t, core, pouring(3, ", FAT: unknown", "serving(FAT) < 0.5 g", ""))[0]
	require.Equal(t, claim.Unknown, s.Word, s.Line())
	for _, name := range []string{"fat of pulp a", "fat of pulp b", "fat of pulp c"} {
		assert.Contains(t, s.Line(), name)
	}
	assert.Equal(t, 3, strings.Count(strings.Join(s.Lines(), "\n"), "settle it: values: {FAT: … g}"))

	s = judged(t, core, pouring(5, ", FAT: unknown", "serving(FAT) < 0.5 g", ""))[0]
	assert.Contains(t, s.Line(), "and 2 more")
	assert.Equal(t, 3, strings.Count(strings.Join(s.Lines(), "\n"), "settle it"))

	pasted := judged(t, core, pouring(3, ", FAT: 0.2 g ± 0", "serving(FAT) < 0.5 g", ""))[0]
	assert.EqualValues(t, "supported", pasted.Word, pasted.Line())
}

// The energy that a food states is not what it is worked out of: what settles it are the parts that nobody knows, and
// with them written it is settled.
func TestEnergyIsSettledByItsParts(t *testing.T) {
	core := assaytest.Core(t)
	s := judged(t, core, pouring(1, ", sugars: 10 g ± 0, energy: 200 kJ ± 0 kJ", "serving(energy) < 40 kJ", ""))[0]
	require.Equal(t, claim.Unknown, s.Word, s.Line())
	line := s.Lines()[0]
	require.Contains(t, line, "settle it: values: {")
	assert.NotContains(t, line, "ENERC")
	_, line, _ = strings.Cut(line, "values: {")
	line, _, _ = strings.Cut(line, "}")
	values := ", sugars: 10 g ± 0"
	for _, value := range strings.Split(line, ", ") {
		tag, _, _ := strings.Cut(value, ":")
		amount := "0 g ± 0"
		if tag == "CHO" || strings.HasPrefix(tag, "CHO") || tag == "carbohydrate" {
			amount = "10 g ± 0"
		}
		values += ", " + tag + ": " + amount
	}
	pasted := judged(t, core, pouring(1, values, "serving(energy) < 40 kJ", ""))[0]
	assert.NotEqual(t, claim.Unknown, pasted.Word, values+": "+pasted.Line())
}

// No line of a file settles that something is not there, and none is told that would not; what the file says
// may come in is not said to be declared by nobody.
func TestNoLineSettlesAnAllergen(t *testing.T) {
	core := assaytest.Core(t)
	s := judged(t, core, pouring(1, "", `contains("milk")`, ""))[0]
	lines := strings.Join(s.Lines(), "\n")
	assert.NotContains(t, lines, "settle it")
	assert.NotContains(t, lines, "may-contain")
	assert.Contains(t, lines, "ask who made each food")
	s = judged(t, core, pouring(1, "", `contains("milk")`, "may-contain: [milk]\n"))[0]
	assert.NotContains(t, s.Line(), "nobody declares")
	assert.Contains(t, s.Line(), "by the file it may come in")
}

package claims_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claims"
)

// What a hand measures is told in the unit in which the file has it, and asked of by its name; a step by its name
// and what it acts on, without the signs by which a run tells its factors apart.
func TestLinksAreSaidInWords(t *testing.T) {
	core := assaytest.Core(t)
	of := func(text, check string) string {
		s := judged(t, core, text+"claims: [{say: x, check: '"+check+"'}]\n")[0]
		require.NotNil(t, s.Weakest, s.Line())
		return s.Line()
	}
	fizz := "drink: \"x\"\nserves: 1\nbuild: [100.00 g core:water-pure]\nfinish: [carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 4 g/l ± 0.5 g/l}]\n"
	line := of(fizz, "per100ml(CO2) < 0.44 g")
	assert.Regexp(t, `left \(3\.5\d* to 4\.4\d* g/l\)`, line)
	assert.Regexp(t, `how exactly do you measure [a-z, ]*left\?`, line)
	ice := "drink: \"x\"\nserves: 1\nbuild: [20.00 g core:sugar-white, 80.00 g core:water-pure]\nfinish: [chill: {melt: 40 g ± 5 g}]\n"
	assert.Regexp(t, `melt \(35\.\d+ to 44\.\d+ g\)`, of(ice, "per100g(SUGAR) < 14.6 g"))
	assert.Equal(t, "the step steep of cold brew (solids)", claims.StepWords("cold brew/steep: solids, *"))
	assert.Equal(t, "the step clarify of punch (fat)", claims.StepWords("punch/clarify: FAT, acid"))
	assert.Equal(t, "the step clarify of punch", claims.StepWords("punch/clarify: *"))
}

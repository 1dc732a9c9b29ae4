package textreport_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/text"
	"sipsum/internal/speech"
)

// The speeches of the demo drinks are read by a person.
func TestSpeechOfDemos(t *testing.T) {
	for _, name := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		var out bytes.Buffer
		require.NoError(t, textreport.Speech(&out, demos()["demo/"+name+".yaml"], speech.Registers, textreport.Style{}))
		golden := filepath.Join("testdata", "speech", name+".txt")
		if *update {
			require.NoError(t, os.WriteFile(golden, out.Bytes(), 0o644))
		}
		want, err := os.ReadFile(golden)
		require.NoError(t, err)
		assert.Equal(t, string(want), out.String(), name)
	}
}

// A speech ends with its sources, each number of a sentence is one of them, and no line is wider
// than its page.
func TestASpeechEndsWithItsSources(t *testing.T) {
	for name, s := range demos() {
		for _, columns := range []int{40, 80, 120} {
			var out bytes.Buffer
			require.NoError(t, textreport.Speech(&out, s, speech.Registers, textreport.Style{Width: columns}), name)
			spoken, sources, found := strings.Cut(out.String(), "\nSources\n")
			require.True(t, found, name)
			assert.Contains(t, sources, "[1]", name)
			assert.Contains(t, spoken, "To the judges", name)
			assert.Contains(t, spoken, "To a guest", name)
			assert.NotRegexp(t, never, out.String(), name)
			for line := range strings.Lines(out.String()) {
				assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), columns, "%s: %q", name, line)
			}
		}
	}
}

// One register alone has no other's words.
func TestASpeechToOne(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, textreport.Speech(&out, demos()["demo/garden-tide.yaml"], []speech.Register{speech.Guest}, textreport.Style{}))
	assert.NotContains(t, out.String(), "To the judges")
	assert.Contains(t, out.String(), "To a guest")
	assert.ErrorContains(t, textreport.Speech(full{}, demos()["demo/garden-tide.yaml"], speech.Registers, textreport.Style{}), "disk full")
}

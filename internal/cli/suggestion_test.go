package cli_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What an error tells to write can be written: each of its lines, with the figures that are missing
// filled in, is read. The inputs are those of people who tried the program without a manual.
func TestWhatAnErrorTellsToWriteIsRead(t *testing.T) {
	var list struct{ Contexts map[string]place }
	text, err := os.ReadFile(handInputs)
	require.NoError(t, err)
	require.NoError(t, yaml.Unmarshal(text, &list))
	db := filepath.Join(t.TempDir(), "db")
	inputs := map[string][]string{
		"build": {
			"- -30 g espresso", "- -3 g core:salt", "- to top core:soda-water", "- top up with core:soda-water", "- 1 shot core:espresso", "- 2 jiggers core:rum-40", "- 1 part of espresso",
			"- 4 mint leaves core:spearmint", "- 36 g espresso, 2", "- 0.2 %",
		},
		"steps": {
			"- dilute: {by: 50 g}", "- chill: {ice: 100 g}", "- shake: {ice: 100 g}", "- stir: {from: 20 °C, to: 2 °C}", "- shake: 30 g", "- filter: {through: paper}", "- filter: 300 g", "- sieve",
			"- infuse: {with: 10 g core:spearmint, at: 90 °C, for: 5 min}", "- infuse: 10 g core:spearmint", "- infuse: {at: 90 °C, for: 5 min}", "- clarify: {with: 2 g core:agar}", "- clarify: {by: agar}",
			"- clarify: {by: gelatin, collect: 300 g}", "- acidify: {ph: 2.6}", "- adjust: {ph: 2.6}", "- adjust: {with: core:citric-acid}", "- heat: {to: 80 °C}", "- heat: {at: 80 °C}", "- reduce: {to: 580}",
			"- reduce: 580", "- reduce: {for: 10 min}", "- boil: {at: 100 °C, for: 10 min}", "- simmer: {by: half}", "- boil: 10 min", "- boil", "- roast: 180 °C", "- roast: {at: 180 °C, for: 25 min}",
			"- vacuum", "- concentrate: {by: vacuum}", "- carbonate: {bottle: 1 l}", "- cool: 4 °C", "- invert: {at: 90 °C}", "- wash: {collect: 300 g}", "- hydrolyse: {}", "- convert: {starch: 60 %}",
			"- strain: {collect: 300 g}", "- steep: {for: 5 min}", "- double strain: {collect: 300 g}", "- fine strain", "- bring to a boil", "- pasteurise: 72 °C", "- rotovap: 300 g", "- sweeten: {brix: 20}",
			"- caramelise: {}", "- freeze", "- cook: {for: 1 h}",
		},
		"coffee steps": {"- brew: {out: 38 g}", "- brew: {at: 93 °C, for: 28 s}", "- cold brew: {for: 12 h}", "- brew: 38 g", "- brew: {tds: 9.5 %}"},
		"head":         {"serve: 1", "portions: 2"},
		"drink":        {"scale: 0.1", "serve: 6 °C", "glass: 160", "temp: 6 °C"},
	}
	told := 0
	for context, lines := range inputs {
		at := list.Contexts[context]
		require.NotEmpty(t, at.Before, context)
		for _, line := range lines {
			_, faults, code := hand(t, db, at.drink(line))
			if !assert.Equal(t, 2, code, "%s is read", line) {
				continue
			}
			for _, fault := range faultsOf(t, faults) {
				for _, write := range linesIn(fault) {
					told++
					if !strings.HasPrefix(write, "- ") && strings.HasPrefix(line, "- ") { // only a parameter is shown
						write = regexp.MustCompile(regexp.QuoteMeta(strings.SplitN(write, ": ", 2)[0])+`: [^,}]*`).ReplaceAllString(line, write)
					}
					_, faults, code := hand(t, db, at.drink(filled(write)))
					assert.Equal(t, 0, code, "%s\nis told: %s\nand %s is refused:\n%s", line, fault, filled(write), faults)
				}
			}
		}
	}
	assert.Greater(t, told, 50)
}

// linesIn gives the lines that an error tells to write.
func linesIn(fault string) []string {
	var lines []string
	_, do, _ := strings.Cut(fault, " (")
	do = strings.TrimSuffix(do, ")")
	lines = append(lines, regexp.MustCompile(`- [a-z ]+: (\{[^{}]*\}|"[^"]*")`).FindAllString(do, -1)...)
	if len(lines) > 0 {
		return lines
	}
	for _, m := range regexp.MustCompile(`(?:write|write what it weighs|or): (.*?)(?:; |, or: |$)`).FindAllStringSubmatch(do, -1) {
		if strings.HasPrefix(m[1], "… g") {
			m[1] = "- " + m[1]
		}
		lines = append(lines, m[1])
	}
	return lines
}

// filled gives a line with its gaps filled in, by what its step can do to a pot of 620 g.
func filled(line string) string {
	for step, grams := range map[string]string{"reduce": "500 g", "concentrate": "500 g", "dilute": "900 g", "caramelise": "120 g", "brew": "40 g"} {
		if strings.HasPrefix(line, "- "+step) {
			line = strings.ReplaceAll(line, "… g", grams)
		}
	}
	line = strings.ReplaceAll(line, "from: … °C, to: … °C", "from: 60 °C, to: 5 °C")
	line = strings.NewReplacer("fat: … g FOOD", "fat: 60 g core:butter-unsalted", "… g FOOD", "5 g core:sugar-white").Replace(line)
	line = strings.NewReplacer("FOOD", "core:sugar-white", "ph: …", "ph: 3", "brix: …", "brix: 30", "… g", "19 g", "… °C", "60 °C", "… min", "10 min", "… %", "8 %", "… ml", "750 ml").Replace(line)
	return line
}

package cli_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
	"sipsum/internal/drink"
)

// begin runs sipsum new.
func begin(t *testing.T, args ...string) (out, faults string, code int) {
	t.Helper()
	var o, f bytes.Buffer
	code = cli.Main(append([]string{"new"}, args...), cli.Streams{In: strings.NewReader(""), Out: &o, Err: &f, Env: func(string) string { return "" }})
	return o.String(), f.String(), code
}

func written(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

// What no drink file may hold, and sipsum would refuse to read again, starts no file.
func TestNewWritesNothingThatIsRefused(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"odd\u202ename", "odd\u0007name", "odd\u2028name", strings.Repeat("long ", 60)} {
		_, faults, code := begin(t, name)
		assert.Equal(t, 2, code, "%q", name)
		assert.Contains(t, faults, "cannot be the name", "%q", name)
	}
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	assert.Empty(t, files)
}

// The file to begin from shows each part of a drink, with a word on it, and is read in a
// minute: our own bounds.
func TestNewTeaches(t *testing.T) {
	const mostLines, mostColumns, fewestRemarks = 70, 110, 20
	t.Chdir(t.TempDir())
	_, _, code := begin(t, "First Light")
	require.Equal(t, 0, code)
	text := written(t, "first-light.drink.yaml")
	lines := strings.Split(strings.TrimSpace(text), "\n")
	assert.LessOrEqual(t, len(lines), mostLines)
	for i, line := range lines {
		assert.LessOrEqual(t, len([]rune(line)), mostColumns, "line %d", i+1)
	}
	for _, key := range []string{
		"serves", "glass", "at", "scale", "rules", "compare-with", "foods", "name", "group", "fill", "per", "density", "declared", "values", "allergens", "source",
		"components", "ingredients", "note", "steps", "measured", "brix", "ph", "keeps", "build", "finish", "garnish", "may-contain",
	} {
		assert.Regexp(t, `(?m)(^|[ {-])`+key+`:`, text)
	}
	assert.GreaterOrEqual(t, strings.Count(text, "# "), fewestRemarks)
	assert.Contains(t, text, "±")
}

// A copy differs in its name alone, whichever way the name is written; what is there stays.
func TestNewCopies(t *testing.T) {
	const body = "# first\n%s\nserves: 1 # one\nbuild:\n  - 1 g core:sugar-white # drink: \"this is no name\"\n"
	for before, after := range map[string]string{
		"drink: Old Tide":                     `drink: "New & Old"`,
		"drink: Old Tide   # its name":        `drink: "New & Old"   # its name`,
		`drink: "Old # \"Tide\""  # its name`: `drink: "New & Old"  # its name`,
		"drink: 'Old ''Tide'''":               `drink: "New & Old"`,
		`"drink":   Old#Tide`:                 `"drink":   "New & Old"`,
		"drink: Old Tide\r":                   "drink: \"New & Old\"\r",
	} {
		t.Run(before, func(t *testing.T) {
			t.Chdir(t.TempDir())
			require.NoError(t, os.WriteFile("old.drink.yaml", []byte(strings.Replace(body, "%s", before, 1)), 0o600))
			_, faults, code := begin(t, "New & Old", "--from", "old.drink.yaml")
			require.Equal(t, 0, code, faults)
			assert.Equal(t, strings.Replace(body, "%s", after, 1), written(t, "new-old.drink.yaml"))
			_, faults, code = begin(t, "New, old", "--from", "demo")
			assert.Equal(t, 2, code)
			assert.Contains(t, faults, "exists already")
			assert.Contains(t, written(t, "new-old.drink.yaml"), "this is no name")
		})
	}
}

// What cannot be copied is refused with what to do, and nothing is written; a shelf is
// copied as a shelf.
func TestNewCopiesNothingThatIsRefused(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("bar", 0o700))
	for path, text := range map[string]string{
		"bad.drink.yaml":      "drink: x\nserves: 1\nbuild: [1 zz core:sugar-white]\n",
		"flow.drink.yaml":     "{drink: x, serves: 1, build: [1 g core:sugar-white]}\n",
		"bar/house.yaml":      "components:\n  syrup: {ingredients: [1 g core:sugar-white]}\n",
		"bar/uses.drink.yaml": "use: [house.yaml]\ndrink: x\nserves: 1\nbuild: [1 g syrup]\n",
	} {
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	}
	for from, said := range map[string]string{
		"bad.drink.yaml": "bad.drink.yaml:3:9", "flow.drink.yaml": "write the drink's name so", "bar/uses.drink.yaml": "cd bar",
		"missing.drink.yaml": "cannot read", "bar": "a folder", "demo:moon": "no demo",
	} {
		_, faults, code := begin(t, "Copy", "--from", from)
		assert.Equal(t, 2, code, from)
		assert.Contains(t, faults, said, from)
	}
	assert.NoFileExists(t, "copy.drink.yaml")
	out, faults, code := begin(t, "House", "--from", "bar/house.yaml")
	require.Equal(t, 0, code, faults)
	assert.Contains(t, out, "use: [house.shelf.yaml]")
	assert.Equal(t, written(t, "bar/house.yaml"), written(t, "house.shelf.yaml"))
}

// All steps are shown, each once, in text and in the document.
func TestNewShowsEveryStep(t *testing.T) {
	out, _, code := begin(t, "--steps")
	require.Equal(t, 0, code)
	doc, _, code := begin(t, "--steps", "--format", "json")
	require.Equal(t, 0, code)
	var steps struct {
		Groups []struct {
			Steps []struct{ Word, Does, Example string }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(doc), &steps))
	shown := map[string]int{}
	for _, g := range steps.Groups {
		for _, s := range g.Steps {
			shown[s.Word]++
			assert.NotEmpty(t, s.Does, s.Word)
			assert.NotContains(t, s.Does, strings.TrimPrefix(s.Example, "- "+s.Word), "%s: its example stands below it", s.Word)
		}
	}
	for _, s := range drink.Steps() {
		assert.Equal(t, 1, shown[s.Word], "%s stands at no bench of newsteps.go, or at two", s.Word)
		assert.Equal(t, 1, strings.Count(out, s.Example+"\n"), s.Word)
	}
	assert.Len(t, shown, len(drink.Steps()))
}

// Without a name new says what to write; what does not go together is refused.
func TestNewExplains(t *testing.T) {
	_, said, code := begin(t)
	assert.Equal(t, 2, code)
	assert.Contains(t, said, "sipsum new --steps")
	for _, args := range [][]string{{"--from", "demo"}, {"--steps", "X"}, {"--steps", "--from", "demo"}, {"A", "B"}} {
		_, _, code := begin(t, args...)
		assert.Equal(t, 2, code, "%v", args)
	}
}

// The line that is shown of a step is one that works: pasted into a pot that has what the
// step is for, it is calculated.
func TestEveryExampleOfAStepIsCalculated(t *testing.T) {
	const usual, syrup = "200 g core:milk-whole, 100 g core:sugar-white, 220 g core:orange-juice", "440 g core:apple-juice, 40 g core:sugar-white"
	pots := map[string]string{
		"reduce": syrup, "heat": syrup, "ferment": "100 g core:sugar-white, 456 g core:water-pure",
		"brew":    "18 g core:coffee-roasted-arabica, 60 g core:water-brew",
		"dilute":  "300 g core:orange-juice",
		"convert": "100 g core:rice-koji, 200 g core:rice-white, 300 g core:water-pure",
	}
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Chdir(home)
	for _, s := range drink.Steps() {
		pot, own := pots[s.Word]
		if !own {
			pot = usual
		}
		text := "drink: x\nserves: 1\ncomponents:\n  pot:\n    ingredients: [" + pot + "]\n    steps:\n      " + s.Example + "\nbuild:\n  - 30 g pot\n"
		require.NoError(t, os.WriteFile("x.drink.yaml", []byte(text), 0o600))
		out, code := run(home, "assay", "x.drink.yaml")
		if s.Word == "measured" { // its figures are of another pot, which is said
			assert.Equal(t, 3, code, "%s: %s", s.Example, out)
			continue
		}
		assert.Equal(t, 0, code, "%s: %s", s.Example, out)
	}
}

package cli

import (
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/report/json"
)

// bench is what a kitchen does, and the steps that do it.
type bench struct {
	what  string
	words []string
}

// benches are the steps in the order of a day's work. Every step of the grammar stands in
// one of them (new_test.go).
var benches = []bench{
	{"Get the flavour out", []string{"brew", "steep", "wash"}},
	{"Put something in", []string{"add", "adjust", "dilute", "carbonate", "foam"}},
	{"Take water away", []string{"reduce", "concentrate"}},
	{"Make it clear", []string{"strain", "press", "clarify", "curdle"}},
	{"Make it hot or cold", []string{"heat", "caramelise", "chill", "cool"}},
	{"Turn one thing into another", []string{"invert", "convert", "hydrolyse", "ferment"}},
	{"Say what you read or know yourself", []string{"measured", "split", "treat"}},
}

// steps prints every step with one example, to be pasted under steps: or finish: as
// it stands.
func (a starter) steps() error {
	if a.json() {
		return jsonreport.Steps(a.streams.Out, stepsByBench())
	}
	var out strings.Builder
	out.WriteString("# Every step: a line to paste under steps: or finish:, and above it what it does.\n# Beside a step of finish its time may stand: takes: 40 s, or takes: 10 s a glass.\n")
	for _, g := range stepsByBench() {
		out.WriteString("\n# " + strings.ToUpper(g.What) + "\n")
		for _, s := range g.Steps {
			out.WriteString("# " + s.Does + "\n")
			if len(s.Also) > 0 {
				out.WriteString("# also written " + strings.Join(s.Also, ", ") + "\n")
			}
			out.WriteString(s.Example + "\n")
		}
	}
	_, err := fmt.Fprint(a.streams.Out, out.String())
	return err
}

func stepsByBench() (groups []jsonreport.StepGroup) {
	entries := drink.Steps()
	for _, b := range benches {
		g := jsonreport.StepGroup{What: b.what}
		for _, word := range b.words {
			if i := slices.IndexFunc(entries, func(e drink.StepEntry) bool { return e.Word == word }); i >= 0 {
				g.Steps = append(g.Steps, jsonreport.Step{Word: word, Does: does(entries[i]), Example: entries[i].Example, Also: also(word)})
			}
		}
		groups = append(groups, g)
	}
	return groups
}

// does says what a step does, without the example that stands below it; other ways to write
// it stay.
func does(e drink.StepEntry) string {
	example := strings.TrimPrefix(e.Example, "- "+e.Word)
	return strings.Replace(strings.Replace(e.Doc, example+" or ", ", or ", 1), example, "", 1)
}

// also lists what else a kitchen calls a step.
func also(step string) (words []string) {
	for word, of := range drink.KitchenWords() {
		if of == step {
			words = append(words, word)
		}
	}
	slices.Sort(words)
	return words
}

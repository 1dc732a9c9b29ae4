package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// This file shows a step as it should be: with what the writer gave of it, and an ellipsis for
// each figure that is missing.

// sayings are the ways in which a step says enough, the usual one first, and what may stand beside
// any of them.
type sayings struct{ enough, beside []string }

var waysOf = map[string]sayings{
	"reduce":      {[]string{"to: … g", "by: … %"}, []string{"at: … °C, for: … min"}},
	"strain":      {[]string{"collect: … g, through: cloth"}, nil},
	"press":       {[]string{"collect: … g, through: cloth"}, nil},
	"curdle":      {[]string{"collect: … g, by: acid"}, []string{"at: … °C"}},
	"clarify":     {[]string{"by: agar, with: … g FOOD, collect: … g", "by: centrifuge, collect: … g"}, []string{"at: … °C"}},
	"brew":        {[]string{"out: … g, strength: … %", "out: … g, yield: … %", "strength: … %, yield: … %"}, []string{"at: … °C", "for: … min"}},
	"steep":       {[]string{"ingredients: [… g FOOD]"}, []string{"at: … °C", "for: … min", "collect: … g"}},
	"chill":       {[]string{"melt: … g", "from: … °C, to: … °C"}, nil},
	"cool":        {[]string{"to: … °C"}, nil},
	"dilute":      {[]string{"to: … g", "brix: …"}, nil},
	"invert":      {[]string{"share: … %", "ph: …, at: … °C, for: … min"}, nil},
	"hydrolyse":   {[]string{"lactose: … %"}, nil},
	"convert":     {[]string{"starch: … %, to: glucose"}, []string{"at: … °C", "for: … min"}},
	"caramelise":  {[]string{"loss: … %", "to: … g"}, nil},
	"concentrate": {[]string{"by: freezing, to: … g"}, []string{"at: … °C", "for: … min"}},
	"wash":        {[]string{"fat: … g FOOD"}, []string{"collect: … g"}},
	"heat":        {[]string{"at: … °C, for: … min"}, nil},
	"adjust":      {[]string{"ph: …, with: core:citric-acid", "ta: … g/l, with: core:citric-acid", "brix: …, with: core:sugar-white"}, nil},
	"carbonate":   {[]string{"left: … g/l", "bottle: … ml, charge: … g, at: … °C"}, []string{"left: … g/l"}},
	"foam":        {[]string{"overrun: … %", "charge: … g, gas: N2O, bottle: … l, at: … °C"}, []string{"overrun: … %", "charge: … g, gas: N2O", "bottle: … l", "at: … °C"}},
}

// lineOf gives the line of a step as it should be, by its word. only are the parameters that may
// be shown; nil: all of them.
func lineOf(word string, given []entry, only []string) string {
	w, ok := waysOf[word]
	if !ok {
		return examples[word] // it has one way, or takes no map
	}
	var best []string
	most, least := -1, 0
	for i, way := range w.enough {
		params, had := filledIn(word, way, given)
		if i > 0 && otherWord(word, way, given) {
			continue
		}
		if lacks := len(params) - had; mayShow(way, only) && (had > most || had == most && lacks < least) {
			best, most, least = params, had, lacks
		}
	}
	for _, group := range w.beside {
		if params, had := filledIn(word, group, given); had > 0 && mayShow(group, only) {
			best = append(best, slices.DeleteFunc(params, func(p string) bool { return slices.Contains(best, p) })...)
		}
	}
	return "- " + word + ": {" + strings.Join(best, ", ") + "}"
}

// otherWord tells that a way is of one word of a closed list, and the writer gave another.
func otherWord(word, way string, given []entry) bool {
	for _, part := range splitParams(way) {
		name, shown, _ := strings.Cut(part, ": ")
		for _, e := range given {
			if text, ok := oneOfWords(word, name, givenText(e.value)); ok && e.key == name && text != shown {
				return true
			}
		}
	}
	return false
}

func mayShow(params string, only []string) bool {
	return len(only) == 0 || !slices.ContainsFunc(splitParams(params), func(p string) bool {
		name, _, _ := strings.Cut(p, ": ")
		return !slices.Contains(only, name)
	})
}

// filledIn gives parameters with what was given of them, and how many were.
func filledIn(word, params string, given []entry) (parts []string, had int) {
	for _, part := range splitParams(params) {
		name, shown, _ := strings.Cut(part, ": ")
		for _, e := range given {
			if !strings.EqualFold(e.key, name) && meant(e.key, givenText(e.value), []string{name}) == "" {
				continue
			}
			if text, ok := fits(word, name, shown, asMeant(name, givenText(e.value))); ok {
				shown = text
				had++
				break
			}
		}
		parts = append(parts, name+": "+shown)
	}
	return parts, had
}

// givenText gives a value as its line has it: a text, or a list of texts in brackets.
func givenText(n ast.Node) string {
	list, isList := n.(*ast.SequenceNode)
	if !isList {
		text, _ := raw(n)
		return text
	}
	texts := each(list.Values, func(n ast.Node) string { text, _ := raw(n); return text })
	if slices.Contains(texts, "") {
		return ""
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

// fits tells whether a text can stand where the one that is shown does, and how it is written there.
func fits(word, name, shown, text string) (string, bool) {
	switch {
	case text == "" || text == "[]":
		return "", false
	case strings.HasSuffix(strings.Trim(shown, "[]"), "FOOD"):
		line := strings.Trim(text, "[]")
		_, food, err := unit.ParseAmount(line)
		if food == "" || err != nil {
			return "", false
		}
		if strings.HasPrefix(shown, "[") {
			line = "[" + line + "]"
		}
		return line, true
	case strings.HasPrefix(shown, "core:"):
		_, isAmount, err := unit.ParseAmount(text)
		if err == nil && isAmount != "" {
			text = isAmount
		}
		return text, err != nil || isAmount != ""
	case !strings.Contains(shown, "…"):
		return oneOfWords(word, name, text)
	}
	return text, alike(strings.ReplaceAll(shown, "…", "1"), text)
}

// oneOfWords gives a word of a closed list as the grammar writes it.
func oneOfWords(step, name, text string) (string, bool) {
	of, _ := parameters[step][name].(shape)
	allowed, _ := of["enum"].([]string)
	return amongWords(text, name, allowed)
}

// amongWords finds a word in a closed list, in capitals or not, or as the kitchen calls it.
func amongWords(text, name string, allowed []string) (string, bool) {
	for _, w := range stepSynonyms() {
		if w.adds[0] == name && strings.EqualFold(w.word, text) {
			text = w.adds[1]
		}
	}
	i := slices.IndexFunc(allowed, func(a string) bool { return strings.EqualFold(a, text) })
	if i < 0 {
		return text, false
	}
	return allowed[i], true
}

// givenIn gives the parameters of a step as its map has them, or for a text alone each that it may
// be of.
func givenIn(n ast.Node) []entry {
	m, isMap := n.(*ast.MappingNode)
	if !isMap {
		if text := givenText(n); text != "" {
			return inWords(text)
		}
		return nil
	}
	var given []entry
	for _, v := range m.Values {
		if key, ok := raw(v.Key); ok {
			given = append(given, entry{key: strings.ToLower(strings.TrimSpace(key)), value: v.Value, node: v.Key})
		}
	}
	return given
}

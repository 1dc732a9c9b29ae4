package drink

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// stepWord is a word of the kitchen that is read as a step, from data/step_words.csv.
type stepWord struct {
	word string
	step string   // that it is read as; "" if that is not safe to guess
	only []string // parameters that it may have; nil: those of the step
	adds [2]string
	line string // what to write where it is not read
	echo string // what the sheet says of the reading
}

var stepSynonyms = sync.OnceValue(func() []stepWord {
	var list []stepWord
	for _, row := range embedded.Rows("step_words.csv") {
		w := stepWord{word: row.Text("word"), step: row.Text("step"), only: strings.Fields(row.Text("only")), line: row.Text("line"), echo: row.Text("echo")}
		w.adds[0], w.adds[1], _ = strings.Cut(row.Text("adds"), ": ")
		list = append(list, w)
	}
	return list
})

// findSynonym finds a word of the kitchen, in capitals or not.
func findSynonym(word string) (stepWord, bool) {
	list := stepSynonyms()
	i := slices.IndexFunc(list, func(w stepWord) bool { return strings.EqualFold(w.word, word) })
	if i < 0 {
		return stepWord{}, false
	}
	_, known := findStep(list[i].step)
	return list[i], known || list[i].step == ""
}

// treats reports whether a word stands beside its step as a technique too.
func (w stepWord) treats() bool { return w.adds[0] == treatKind.Word }

// said is what the sheet says of a word that was read as another, where that matters.
func (w stepWord) said() string {
	if w.echo == "" {
		return ""
	}
	return w.word + " is read as " + w.step + ": " + w.echo
}

// synonym reads a word of the kitchen as its step, in place of the entry that has it. What
// is not safe to read is answered with the line as it should be, and with what stands there.
func (r *reader) synonym(w stepWord, call entry) (stepKind, entry, bool) {
	k, known := findStep(w.step)
	switch {
	case !known:
		r.faults.Add(call.at, "write "+w.line, "%s can mean several steps", quoted(call.key))
		return stepKind{}, entry{}, false
	case k.Word == treatKind.Word:
		return r.synonymOfTreat(w, k, call)
	}
	given, isMap := call.value.(*ast.MappingNode)
	if !isMap || !w.takes(given) {
		r.faults.Add(call.at, "write "+w.shown(k, call.value), "%s does not say what %s needs", quoted(call.key), k.Word)
		return stepKind{}, entry{}, false
	}
	if w.adds[0] != "" && !w.treats() {
		call.value = withKey(given, w.adds[0], w.adds[1])
	}
	return k, call, !call.spoilt
}

// synonymOfTreat reads a word that changes no figure, with what stands behind it.
func (r *file) synonymOfTreat(w stepWord, k stepKind, call entry) (stepKind, entry, bool) {
	text, isText := raw(call.value)
	if !isText && !implicitNull(call.value) {
		r.faults.Add(call.at, "write - treat: \""+w.word+", …\" with what you do in words", "%s changes no figure and takes no parameters", quoted(call.key))
		return stepKind{}, entry{}, false
	}
	if text != "" && !strings.EqualFold(text, w.word) {
		text = ", " + text
	} else {
		text = ""
	}
	call.value = textNode(w.word+text, call.node.GetToken().Position)
	return k, call, !call.spoilt
}

// takes reports whether the parameters of a map are ones that the word may have, and some
// are there.
func (w stepWord) takes(given *ast.MappingNode) bool {
	for _, v := range given.Values {
		if name, ok := raw(v.Key); ok && len(w.only) > 0 && !slices.Contains(w.only, strings.ToLower(strings.TrimSpace(name))) {
			return false
		}
	}
	return len(given.Values) > 0
}

var figures = regexp.MustCompile(`[0-9][0-9.]*`)

// shown gives the line as it should be: the step's example, with what the writer has given
// of its parameters, and an ellipsis for each figure that is missing.
func (w stepWord) shown(k stepKind, n ast.Node) string {
	_, params, _ := strings.Cut(k.Example, "{")
	var parts []string
	for _, part := range splitParams(strings.TrimSuffix(params, "}")) {
		name, example, _ := strings.Cut(part, ": ")
		if name == w.adds[0] {
			parts = append(parts, name+": "+w.adds[1])
			continue
		}
		value := figures.ReplaceAllString(example, "…")
		if text, ok := givenAs(n, name, example); ok {
			value = text
		}
		parts = append(parts, name+": "+value)
	}
	line := "- " + k.Word + ": {" + strings.Join(parts, ", ") + "}"
	if w.treats() {
		line += " and - treat: \"" + w.adds[1] + "\""
	}
	return line
}

// splitParams parts the parameters of an example at the commas outside brackets.
func splitParams(text string) []string {
	var parts []string
	depth, from := 0, 0
	for i, c := range text {
		switch c {
		case '[', '{':
			depth++
		case ']', '}':
			depth--
		case ',':
			if depth == 0 {
				parts, from = append(parts, strings.TrimSpace(text[from:i])), i+1
			}
		}
	}
	return append(parts, strings.TrimSpace(text[from:]))
}

// givenAs gives what a writer has given of a parameter: by its name, or an amount alone of
// the kind that the example shows.
func givenAs(n ast.Node, name, example string) (string, bool) {
	if m, ok := n.(*ast.MappingNode); ok {
		for _, v := range m.Values {
			if key, ok := raw(v.Key); ok && strings.EqualFold(key, name) {
				return raw(v.Value)
			}
		}
		return "", false
	}
	text, ok := raw(n)
	if !ok {
		return "", false
	}
	given, tail, err := unit.ParseAmount(text)
	like, _, errLike := unit.ParseAmount(example)
	return text, err == nil && errLike == nil && tail == "" && given.Measure.Kind == like.Measure.Kind
}

// withKey gives a copy of a map with one key more, which stands where the map does.
func withKey(m *ast.MappingNode, name, value string) *ast.MappingNode {
	at := m.GetToken().Position
	longer := *m
	key := textNode(name, at)
	longer.Values = append(slices.Clone(m.Values), ast.MappingValue(key.Token, key, textNode(value, at)))
	return &longer
}

// textNode gives a plain text that stands at a place.
func textNode(text string, at *token.Position) *ast.StringNode {
	return ast.String(&token.Token{Type: token.StringType, Value: text, Origin: text, Position: at})
}

// nothingAt is the value of a word that stands alone.
func nothingAt(n ast.Node) ast.Node {
	return ast.Null(&token.Token{Type: token.ImplicitNullType, Position: n.GetToken().Position})
}

// KitchenWords gives the words that are read as a step, each with it; empty where the
// reading is refused.
func KitchenWords() map[string]string {
	words := map[string]string{}
	for _, w := range stepSynonyms() {
		words[w.word] = w.step
	}
	return words
}

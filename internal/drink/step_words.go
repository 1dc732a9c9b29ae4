package drink

import (
	"slices"
	"strings"
	"sync"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/embedded"
)

// stepWord is a word of the kitchen that is read as a step, from data/step_words.csv.
type stepWord struct {
	word string
	step string   // that it is read as; "" if that is not safe to guess
	only []string // parameters that it may have; nil: those of the step. With a + they do not say enough by themselves
	adds [2]string
	line string // what to write where it is not read; of a word that has a step, why it is not
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

// read reads a word of the kitchen as its step, in place of the entry that has it. What
// is not safe to read is answered with the line as it should be, and with what stands there.
func (w stepWord) read(r *reader, call entry) (stepKind, entry, bool) {
	k, known := findStep(w.step)
	switch {
	case !known:
		r.faults.Add(call.at, "write "+w.line, "%s can mean several steps", quoted(call.key))
		return stepKind{}, entry{}, false
	case k.Word == treatKind.Word:
		return w.readTreat(r, k, call)
	case k.Word == addKind.Word:
		return k, call, !call.spoilt
	}
	written := call.value
	given, isMap := written.(*ast.MappingNode)
	if isMap && w.treats() {
		if given, call.told = toldApart(&r.values, given); given == nil {
			return stepKind{}, entry{}, false
		}
		call.value = given
	}
	if !isMap || !w.takes(given) {
		why := ""
		if w.line != "" {
			why = ": " + w.line
		}
		r.faults.Add(call.at, "write "+w.shown(k, written), "%s does not say what %s needs%s", quoted(call.key), k.Word, why)
		return stepKind{}, entry{}, false
	}
	if w.adds[0] != "" && !w.treats() {
		call.value = withKey(given, w.adds[0], w.adds[1])
	}
	return k, call, !call.spoilt
}

// readTreat reads a word that changes no figure, with what stands behind it.
func (w stepWord) readTreat(r *reader, k stepKind, call entry) (stepKind, entry, bool) {
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
// are there that say enough.
func (w stepWord) takes(given *ast.MappingNode) bool {
	says := false
	for _, v := range given.Values {
		text, ok := raw(v.Key)
		name := strings.ToLower(strings.TrimSpace(text))
		beside := slices.Contains(w.only, "+"+name)
		if ok && len(w.only) > 0 && !beside && !slices.Contains(w.only, name) {
			return false
		}
		says = says || !beside
	}
	return says
}

// shown gives the line as it should be, with what the writer has given.
func (w stepWord) shown(k stepKind, n ast.Node) string {
	given := givenIn(n)
	if w.adds[0] != "" && !w.treats() {
		given = append(given, entry{key: w.adds[0], value: textNode(w.adds[1], nil)})
	}
	line := lineOf(k.Word, given, w.may())
	switch {
	case w.treats():
		technique := w.adds[1]
		for _, t := range told {
			for _, e := range given {
				if _, err := t.scale.Parse(givenText(e.value)); err == nil && e.key == t.name {
					technique += ", " + givenText(e.value)
				}
			}
		}
		line += " and - treat: \"" + technique + "\""
	case slices.Contains(w.only, "+at") && strings.Contains(line, "to: …"):
		line += " if water boils off, or " + lineOf("heat", given, nil) + " if the lid is on"
	}
	return line
}

// may gives the parameters that the word may have, nil for those of its step.
func (w stepWord) may() []string {
	if len(w.only) == 0 {
		return nil
	}
	names := append([]string{}, w.adds[0])
	for _, name := range w.only {
		names = append(names, strings.TrimPrefix(name, "+"))
	}
	return names
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

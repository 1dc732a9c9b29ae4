package drink

import (
	"cmp"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// StepEntry is what a step is called and how it is written.
type StepEntry struct {
	Word    string
	Doc     string // what it does
	Example string // one line, as it stands under steps:
}

// Steps lists every step that a drink file can name, in the order of the documentation.
func Steps() []StepEntry {
	entries := make([]StepEntry, len(stepKinds))
	for i, k := range stepKinds {
		entries[i] = k.StepEntry
	}
	return entries
}

// stepKind is one keyword of a step list: what the parser reads and the schema
// shows.
type stepKind struct {
	StepEntry
	shape shape
	read  func(r *reader, head Head, n ast.Node) (Step, bool)
}

// stepOf is a pointer to a step type.
type stepOf[T any] interface {
	*T
	Step
}

// stepWith makes a kind whose parameters are a map. Check says what the keys
// alone cannot: which of them go together. It is asked only if each key was
// read without fault.
func stepWith[T any, P stepOf[T]](entry StepEntry, g grammar[T], check func(present) (fault, do string)) stepKind {
	g.what = entry.Word
	return stepKind{entry, g.shape(), func(r *reader, head Head, n ast.Node) (Step, bool) {
		s := P(new(T))
		s.setHead(head)
		before := r.faults.Len()
		has, ok := g.read(r, (*T)(s), n)
		if !ok || r.faults.Len() > before {
			return nil, false
		}
		if check != nil && !r.torn {
			fault, do := check(has)
			if do == "" {
				do = "write: " + lineOf(entry.Word, givenIn(n), nil)
			}
			if fault != "" {
				r.faults.Add(head.Place, do, "%s %s", entry.Word, fault)
				return nil, false
			}
		}
		return s, true
	}}
}

// addKind reads lines instead of a map of keys.
var addKind = stepKind{StepEntry{"add", "later ingredients: a line, or a list of lines", "- add: 2 g core:salt"}, oneOrMoreShape, func(r *reader, head Head, n ast.Node) (Step, bool) {
	before := r.faults.Len()
	head.Ingredients = r.oneOrMore(n, "add", head.Path)
	return &Add{head}, r.faults.Len() == before && len(head.Ingredients) > 0
}}

// treatKind reads a text instead of a map of keys.
var treatKind = stepKind{StepEntry{"treat", "a technique in your own words, which changes no figure: \"smoked, apple wood\"", `- treat: "smoked, apple wood"`}, textShape(mostName), func(r *reader, head Head, n ast.Node) (Step, bool) {
	technique, ok := r.text(n, "treat", mostName)
	return &Treat{head, technique}, ok
}}

// measuredKind shares its keys with the readings at the end of a component.
var measuredKind = stepKind{StepEntry{"measured", "readings of the pot at this moment", "- measured: {mass: 280 g, brix: 52.5, ph: 3.1}"}, measuredShape, func(r *reader, head Head, n ast.Node) (Step, bool) {
	m, ok := readMeasured(r, head, n)
	return m, ok
}}

func stepWords() []string {
	return each(stepKinds, func(k stepKind) string { return k.Word })
}

// steps reads a list of steps, each a map with one key. Steps at fault are
// reported and left out. Owner is the part of the path that they share.
func (r *reader) steps(n ast.Node, what, owner string) []Step {
	entries, ok := r.list(n, what)
	if !ok {
		return nil
	}
	if len(entries) > mostKeys {
		r.faults.Add(r.nodeAt(entries[mostKeys]), "split it into components", "%s has more than %d steps", what, mostKeys)
		entries = entries[:mostKeys]
	}
	var steps []Step
	twins := occurrences{}
	for _, e := range entries {
		k, call, ok := r.stepCall(untimed(r, e, owner))
		if !ok {
			continue
		}
		head := Head{Word: k.Word, Place: call.at, Path: twins.path(owner, k.Word)}
		w, other := findSynonym(call.key)
		if other && call.key != k.Word {
			head.Echo = w.said()
		}
		if s, ok := k.read(r, head, call.value); ok {
			steps = append(steps, withReadings(s)...)
			if other && w.treats() {
				steps = append(steps, &Treat{Head{Word: treatKind.Word, Place: call.at, Path: twins.path(owner, treatKind.Word)}, w.adds[1] + call.told})
			}
		}
	}
	return steps
}

// stepCall finds the kind of a step and its parameters.
func (r *reader) stepCall(n ast.Node) (stepKind, entry, bool) {
	if text, ok := raw(n); ok {
		if k, known := findStep(text); known {
			r.faults.Add(r.nodeAt(n), "write them after a colon: "+k.Example, "%s has no parameters", k.Word)
			return stepKind{}, entry{}, false
		}
		if k, known := findStep(gluedStep(text)); known {
			r.faults.Add(r.nodeAt(n), "write: "+lineOf(k.Word, nil, nil), "there is no space after the colon of %s", k.Word)
			return stepKind{}, entry{}, false
		}
		if w, known := findSynonym(text); known {
			return w.read(r, entry{key: text, at: r.nodeAt(n), node: n, value: nothingAt(n)})
		}
		r.faults.Add(r.nodeAt(n), r.stepAdvice(text), "%s is not a step", quoted(text))
		return stepKind{}, entry{}, false
	}
	entries, ok := r.entries(n, "a step", stepWords())
	if !ok || len(entries) == 0 {
		if ok {
			r.faults.Add(r.nodeAt(n), r.allSteps(), "a step is empty")
		}
		return stepKind{}, entry{}, false
	}
	first := entries[0]
	k, known := findStep(first.key)
	w, other := findSynonym(first.key)
	switch {
	case !known && gluedStep(first.key) != "":
		r.faults.Add(first.at, "write: - "+gluedStep(first.key)+": {…}", "there is no space after the colon of %s", gluedStep(first.key))
		return stepKind{}, entry{}, false
	case !known && !other && examples[named(first)] != "": // "step: brew"
		r.faults.Add(first.at, "write: "+lineOf(named(first), entries[1:], nil), "the word of the step comes first, and its parameters in { } after it")
		return stepKind{}, entry{}, false
	case !known && !other:
		r.faults.Add(first.at, r.stepAdvice(first.key), "%s is not a step", quoted(first.key))
		return stepKind{}, entry{}, false
	case len(entries) > 1:
		second := entries[1]
		if _, alsoStep := findStep(second.key); alsoStep {
			r.faults.Add(second.at, "begin each step with its own \"- \"", "two steps stand in one entry: %s and %s", first.key, second.key)
		} else {
			r.faults.Add(second.at, "indent the parameters further than the step: "+lineOf(cmp.Or(k.Word, w.step), entries[1:], nil), "%s stands beside %s instead of inside it", quoted(second.key), first.key)
		}
		return stepKind{}, entry{}, false
	case !known:
		return w.read(r, first)
	case r.paramsInWords(k, first):
		return stepKind{}, entry{}, false
	}
	return k, first, !first.spoilt
}

// named gives the text after a key, as a word.
func named(e entry) string {
	text, _ := raw(e.value)
	return strings.ToLower(text)
}

// paramsInWords reports parameters that stand in one text: "reduce: by half".
func (r *file) paramsInWords(k stepKind, call entry) bool {
	text, ok := raw(call.value)
	if _, isMap := k.shape["properties"]; !ok || !isMap {
		return false
	}
	r.faults.Add(r.nodeAt(call.value), "write: "+lineOf(k.Word, inWords(text), nil), "%s must be written as key: value", k.Word)
	return true
}

// inWords takes a text for each parameter that it may be of.
func inWords(text string) []entry {
	var given []entry
	if _, _, err := unit.ParseNumber(text); err == nil { // a pot stands on a scale
		text += " g"
	}
	for _, key := range ofSteps {
		given = append(given, entry{key: key, value: textNode(text, nil)})
	}
	return given
}

// gluedStep gives the step of "brew:{out", "" if it is none.
func gluedStep(text string) string {
	word, _, _ := gluedKey(text, stepWords())
	if _, known := findStep(word); !known {
		return ""
	}
	return word
}

func findStep(word string) (stepKind, bool) {
	i := slices.IndexFunc(stepKinds, func(k stepKind) bool { return k.Word == word })
	if i < 0 {
		return stepKind{}, false
	}
	return stepKinds[i], true
}

// stepAdvice tells how a step is written: the one that was meant, by a slip of the pen or with a word
// more, else one line of each.
func (r *reader) stepAdvice(word string) string {
	known := append(stepWords(), each(stepSynonyms(), func(w stepWord) string { return w.word })...)
	meant := near(word, known)
	if meant == "" {
		within := spelling.Words(word)
		for _, k := range known {
			if slices.Contains(within, k) {
				meant = k
			}
		}
	}
	if k, ok := findStep(meant); ok {
		return `did you mean "` + k.Word + `"? Write ` + k.Example
	}
	if w, ok := findSynonym(meant); ok && w.step != "" {
		k, _ := findStep(w.step)
		return `did you mean "` + w.word + `"? It is read as ` + k.Word + ": " + w.shown(k, nil)
	} else if ok {
		return "write " + w.line
	}
	return r.allSteps()
}

// allSteps gives a line of every step, once for a file.
func (r *reader) allSteps() string {
	if r.allShown {
		return "the steps are listed above"
	}
	r.allShown = true
	return "the steps are, one line of each:\n" + strings.Join(each(stepKinds, func(k stepKind) string { return k.Example }), "\n")
}

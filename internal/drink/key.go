package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// key is one key of the grammar. The parser reads by it and the schema shows
// it, so that the two cannot differ.
type key[T any] struct {
	name  string
	doc   string
	must  bool
	shape shape
	read  func(r *reader, into *T, n ast.Node)
}

// grammar is the keys that one kind of map may have.
type grammar[T any] struct {
	what string // "a component": what the map describes
	keys []key[T]
}

func (g grammar[T]) names() []string {
	return each(g.keys, func(k key[T]) string { return k.name })
}

// present is the keys that a map has, and where.
type present map[string]fail.Place

func (p present) has(key string) bool { return p.count(key) > 0 }

func (p present) count(keys ...string) int {
	n := 0
	for _, k := range keys {
		if _, ok := p[k]; ok {
			n++
		}
	}
	return n
}

// read reads a map key by key, in the order of the grammar, and reports unknown,
// doubled, empty and missing keys. It gives the keys that are present; ok is
// false if the node is not a map.
func (g grammar[T]) read(r *reader, into *T, n ast.Node) (found present, ok bool) {
	entries, ok := r.entries(n, g.what, g.names())
	if !ok {
		return nil, false
	}
	byName := map[string]entry{}
	for _, e := range entries {
		byName[e.key] = e
	}
	found = present{}
	for _, e := range entries {
		if key, _, glued := gluedKey(e.key, g.names()); glued {
			found[key] = e.at // it is reported below; it does not lack
		} else if key := meant(e.key, givenText(e.value), g.names()); key != "" && !slices.Contains(g.names(), e.key) {
			found[key] = e.at
		}
	}
	var lacks []key[T]
	for _, k := range g.keys {
		e, stands := byName[k.name]
		delete(byName, k.name)
		switch {
		case !stands && k.must && !r.torn && !found.has(k.name):
			lacks = append(lacks, k)
		case stands:
			found[k.name] = e.at
			if !e.spoilt {
				k.read(r, into, e.value)
			}
		}
	}
	g.reportLacks(r, lacks, entries, n)
	for _, e := range entries {
		if _, left := byName[e.key]; left {
			r.unknownKey(e, entries, g.what, g.names())
		}
	}
	return found, true
}

// reportLacks reports keys that must stand and do not: those of a step at once, with its line.
func (g grammar[T]) reportLacks(r *reader, lacks []key[T], entries []entry, n ast.Node) {
	if _, isStep := waysOf[g.what]; isStep && len(lacks) > 0 {
		names := each(lacks, func(k key[T]) string { return quoted(k.name) })
		docs := each(lacks, func(k key[T]) string { return k.name + " is " + k.doc })
		r.faults.Add(r.nodeAt(n), "write: "+lineOf(g.what, entries, nil)+"; "+strings.Join(docs, ", "), "%s needs %s", g.what, strings.Join(names, ", "))
		return
	}
	for _, k := range lacks {
		r.faults.Add(r.nodeAt(n), "add "+k.name+": "+k.doc, "%s needs %q", g.what, k.name)
	}
}

func (r *file) unknownKey(e entry, entries []entry, what string, names []string) {
	if key, rest, glued := gluedKey(e.key, names); glued {
		r.faults.Add(e.at, "write: "+key+": "+clip(rest), "there is no space after the colon of %s", key)
		return
	}
	value := givenText(e.value)
	do := "it has " + fail.Or(names)
	if line := lineOf(what, entries, nil); line != "" {
		do += "; write: " + line
	}
	_, isStep := waysOf[what]
	other := elsewhere(e, what, names)
	switch key := meant(e.key, value, names); {
	case key != "" && isStep:
		do = "write: " + lineOf(what, entries, nil)
	case key != "" && value != "":
		do = "write: " + key + ": " + clip(asMeant(key, value))
	case key == "measured":
		do = "write: measured: {tds: …, brix: …, ph: …}, each with its figure; what was read of a component stands in it"
	case key != "":
		do = "write: " + key + ":"
	case other != "" && (near(e.key, names) == "" || examples[strings.ToLower(e.key)] != ""):
		do = other
	default:
		do = guess(e.key, names, do)
	}
	r.faults.Add(e.at, do, "%s has no key %s", what, quoted(e.key))
}

// asKnown gives a key as the grammar writes it, in whatever letters it stands: pH is ph.
func asKnown(key string, known []string) string {
	for _, k := range known {
		if strings.EqualFold(k, key) {
			return k
		}
	}
	return key
}

// shape gives the schema of the map.
func (g grammar[T]) shape() shape {
	properties := shape{}
	must := []string{}
	for _, k := range g.keys {
		properties[k.name] = k.shape.about(k.doc)
		if k.must {
			must = append(must, k.name)
		}
	}
	s := shape{"type": "object", "properties": properties, "additionalProperties": false}
	if len(must) > 0 {
		s["required"] = must
	}
	return s
}

// entry is one key and value of a map of the file.
type entry struct {
	key    string
	at     fail.Place // of the key
	node   ast.Node   // the key
	value  ast.Node
	flow   bool   // the map is written with { }
	spoilt bool   // reported already: the value lost its tail
	told   string // of a step: what changes no figure and is said of its technique, with a comma before each
}

// entries gives the keys of a map, each once. Doubled keys are reported, and
// texts that a comma cut in two; known names the keys that the map may have.
func (r *values) entries(n ast.Node, what string, known []string) ([]entry, bool) {
	m, ok := n.(*ast.MappingNode)
	if !ok {
		switch {
		case reported(n):
		case implicitNull(n):
			r.missing(n, what)
		default:
			r.faults.Add(r.nodeAt(n), r.mapAdvice(n, known), "%s must be written as key: value", what)
		}
		return nil, false
	}
	var entries []entry
	for _, v := range m.Values {
		text, ok := raw(v.Key)
		if !ok {
			continue // the check of tokens reported it
		}
		entries = append(entries, entry{key: asKnown(unit.PlainSpaces(strings.TrimSpace(text)), known), at: r.tokenAt(v.Key.GetToken()), node: v.Key, value: v.Value, flow: m.IsFlowStyle})
	}
	entries = r.commaCutKeys(entries, known)
	lines := map[string]int{}
	once := entries[:0]
	for _, e := range entries {
		if line, twice := lines[e.key]; twice {
			r.faults.Add(e.at, "keep one of them", "%s stands here again, first in line %d", quoted(e.key), line)
			continue
		}
		lines[e.key] = e.at.Line
		once = append(once, e)
	}
	return once, true
}

func (r *values) mapAdvice(n ast.Node, known []string) string {
	if text, ok := raw(n); ok {
		if key, rest, glued := gluedKey(text, known); glued {
			return "write a space after the colon: " + key + ": " + clip(rest)
		}
	}
	if len(known) == 0 {
		return "write each name, a colon, a space and its value"
	}
	return "its keys are " + fail.Or(known)
}

// named reads a map whose keys are names that the designer chose. Names at
// fault are reported by check and left out.
func (r *values) named(n ast.Node, what string, check func(name string) (fault, do string), each func(e entry)) {
	entries, ok := r.entries(n, what, nil)
	if !ok {
		return
	}
	for _, e := range entries {
		if fault, do := check(e.key); fault != "" {
			r.faults.Add(e.at, do, "%s", fault)
			continue
		}
		if !e.spoilt {
			each(e)
		}
	}
}

// tagFault says what is wrong with the id of a constituent, "" if nothing is.
// Whether the vocabulary knows it is the caller's business.
func tagFault(tag string) (fault, do string) {
	return textFault(tag, "the constituent's id", mostName)
}

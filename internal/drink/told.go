package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// This file reads how hot and how long a step was that is judged by what came of it. A cold brew is
// known by its strength, a roast by its mass: at: and for: change no figure, and the sheet says so.

// around is the temperature of what stands round a pot: an oven, a freezer.
var around = unit.Scale{What: "a temperature", Units: []string{"°C"}, Low: -200, High: 400, Example: "180 °C"}

// told are the keys that change no figure.
var told = []struct {
	name, doc string
	scale     unit.Scale
}{
	{"at", "the temperature, which changes no figure", around},
	{"for", "how long, which changes no figure", duration},
}

// toldKeys are they, as keys of a step, but for those of which it makes something.
func toldKeys[T any, P stepOf[T]](counted ...string) []key[T] {
	var keys []key[T]
	for _, t := range told {
		if slices.Contains(counted, t.name) {
			continue
		}
		keys = append(keys, key[T]{t.name, t.doc, false, quantityShape(t.scale), func(r *reader, s *T, n ast.Node) {
			if text, ok := raw(n); r.quantity(n, t.name, t.scale) != nil && ok {
				P(s).tell(text)
			}
		}})
	}
	return keys
}

// toldApart takes what is told out of the parameters of a step, and gives it as a text with a comma
// before each; nil if it cannot be read.
func toldApart(r *values, given *ast.MappingNode) (rest *ast.MappingNode, as string) {
	sound := true
	left := *given
	left.Values = slices.Clone(given.Values)
	for _, t := range told {
		at := slices.IndexFunc(left.Values, func(v *ast.MappingValueNode) bool {
			key, _ := raw(v.Key)
			return strings.EqualFold(strings.TrimSpace(key), t.name)
		})
		if at < 0 {
			continue
		}
		n := left.Values[at].Value
		if r.quantity(n, t.name, t.scale) == nil {
			sound = false
		}
		text, _ := raw(n)
		as += ", " + text
		left.Values = slices.Delete(left.Values, at, at+1)
	}
	if !sound {
		return nil, ""
	}
	return &left, as
}

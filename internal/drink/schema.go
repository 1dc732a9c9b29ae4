package drink

import (
	"bytes"
	"encoding/json"
	"maps"
	"regexp"
	"strings"
	"unicode"

	"sipsum/internal/unit"
)

// Schema gives a JSON Schema (draft 2020-12) of the drink file for editors. It
// is made from the same tables that the parser reads by. The parser is stricter:
// it also checks what goes together and what must exist.
func Schema() []byte {
	s := drinkKeys.shape()
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "sipsum drink file"
	s["description"] = "A drink: what goes in, what you do, what you read. Begin with: sipsum new NAME"
	s["$defs"] = shape{
		"line": anyOf(shape{"type": "string", "pattern": `^[0-9./½⅓⅔¼¾⅛]+ ?\S+`}, lineKeys.shape()).about("NUMBER UNIT FOOD: 36 g ± 2 g espresso shot; or {food: …, amount: …} with more to say"),
		"step": stepShape().about("one step, its word and what it takes: - reduce: {to: 375 g}; all of them: sipsum new --steps"),

		"timed-step": timedShape().about("a step of finish with its time beside it: takes: 10 s a glass"),

		"measured": measuredKeys.shape().about("what was read of the pot; at least one: {brix: 52.5 ± 0.2, ph: 3.1}"),
		"pantry":   pantryKeys.shape().about("a shelf: a file named in use:, which holds foods and components"),

		"house-rules": houseKeys.shape().about("house-rules.yaml: what a competition or a bar wants of a drink, read beside it or with --house-rules"),

		"meters": shelfKeys.shape().about("meters.yaml: the bar's instruments and what they showed of what is known, read beside a drink"),
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(s); err != nil {
		panic("drink: schema: " + err.Error())
	}
	return out.Bytes()
}

// shape is a piece of a JSON Schema.
type shape map[string]any

// about gives a copy with a description.
func (s shape) about(doc string) shape {
	s = maps.Clone(s)
	if doc != "" {
		s["description"] = doc
	}
	return s
}

var (
	numberShape = shape{"type": []string{"number", "string"}}
	codeShape   = shape{"type": []string{"string", "integer"}}
	lineShape   = shape{"$ref": "#/$defs/line"}
	linesShape  = shape{"type": "array", "items": lineShape, "minItems": 1}
	stepsShape  = shape{"type": "array", "items": shape{"$ref": "#/$defs/step"}}
	finishShape = shape{"type": "array", "items": anyOf(shape{"$ref": "#/$defs/step"}, shape{"$ref": "#/$defs/timed-step"})}

	measuredShape  = shape{"$ref": "#/$defs/measured"}
	oneOrMoreShape = anyOf(lineShape, linesShape)
	statedShape    = anyOf(shape{"enum": []string{Trace, Unknown}}, shape{"type": "string", "pattern": "^< ?" + figurePattern(figure.Units) + "$"}, quantityShape(figure))
)

func anyOf(shapes ...shape) shape { return shape{"anyOf": shapes} }

func textShape(most int) shape { return shape{"type": "string", "minLength": 1, "maxLength": most} }

func enumShape(words []string) shape { return shape{"enum": words} }

func listOf(items shape) shape { return shape{"type": "array", "items": items} }

func mapOf(values shape) shape { return shape{"type": "object", "additionalProperties": values} }

// amountShape is "NUMBER UNIT [± NUMBER UNIT [sd]]" in kitchen measures.
func amountShape(kinds []unit.Kind) shape {
	return rangeShape(measureNames(kinds))
}

// quantityShape is the same on another scale; a number alone where the scale
// needs no unit.
func quantityShape(s unit.Scale) shape {
	of := rangeShape(s.Units)
	if s.Units[0] == "" {
		low, high := s.Span("")
		return anyOf(shape{"type": "number", "minimum": low, "maximum": high}, of)
	}
	return of
}

// rangeShape is a figure with its unit, and another after ± or at the other end of a range. Which
// unit that one has only the parser checks.
func rangeShape(units []string) shape {
	const other = ` ?(±|\+ ?/? ?[-−–]|[-−–—]|to) ?` + numberPattern
	return shape{"type": "string", "pattern": "^" + numberPattern + `(` + other + `)? ?` + unitPattern(units) + `(` + other + `.*)?$`}
}

const numberPattern = `[-−]?[0-9½⅓⅔¼¾⅛][0-9./½⅓⅔¼¾⅛⁄ ]*`

// lookAlikes lets a pattern take the signs that are taken for another.
var lookAlikes = strings.NewReplacer("µ", "[µμ]", "°", "[°º]")

func figurePattern(units []string) string { return numberPattern + ` ?` + unitPattern(units) }

// unitPattern takes units in every form that is read: other words, capitals, an s at the end.
func unitPattern(units []string) string {
	forms := unit.Forms(units)
	for i, form := range forms {
		forms[i] = anyCase(form)
	}
	return `(` + strings.Join(forms, "|") + `)s?\.?`
}

// anyCase writes a word as a pattern that minds no capitals.
func anyCase(word string) string {
	var b strings.Builder
	for _, c := range word {
		if small, large := unicode.ToLower(c), unicode.ToUpper(c); small != large && c < unicode.MaxASCII {
			b.WriteString("[" + string(small) + string(large) + "]")
		} else {
			b.WriteString(lookAlikes.Replace(regexp.QuoteMeta(string(c))))
		}
	}
	return b.String()
}

// stepShape is a map with one key, the step's word.
func stepShape() shape {
	properties := shape{}
	for _, k := range stepKinds {
		properties[k.Word] = k.shape.about(k.Doc)
	}
	return shape{"type": "object", "properties": properties, "additionalProperties": false, "minProperties": 1, "maxProperties": 1}
}

// timedShape is a step of finish with its time beside it; what the step has the parser checks.
func timedShape() shape {
	s := taskKeys.shape()
	s["additionalProperties"], s["minProperties"], s["maxProperties"] = shape{}, 1+1, 1+len(taskKeys.keys)
	return s
}

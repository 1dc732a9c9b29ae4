package drink_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// object is a decoded JSON or YAML map.
type object = map[string]any

func schema(t *testing.T) object {
	t.Helper()
	var s object
	require.NoError(t, json.Unmarshal(drink.Schema(), &s))
	return s
}

func decode(t *testing.T, text []byte) any {
	t.Helper()
	var v any
	require.NoError(t, yaml.Unmarshal(text, &v))
	// by way of JSON, so that numbers and maps have the types of a JSON validator
	data, err := json.Marshal(v)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, &v))
	return v
}

// validator checks the part of JSON Schema 2020-12 that the schema uses and
// notes the properties that it meets.
type validator struct {
	root object
	met  map[string]bool // "path of the schema/property"
}

func (v validator) check(s object, at string, value any) error {
	if len(s) == 0 { // anything goes
		return nil
	}
	if ref, ok := s["$ref"].(string); ok {
		name := strings.TrimPrefix(ref, "#/$defs/")
		return v.check(v.root["$defs"].(object)[name].(object), "$defs/"+name, value)
	}
	if options, ok := s["anyOf"].([]any); ok {
		var all []string
		for i, o := range options {
			err := v.check(o.(object), fmt.Sprintf("%s|%d", at, i), value)
			if err == nil {
				return nil
			}
			all = append(all, err.Error())
		}
		return fmt.Errorf("%s: none of: %s", at, strings.Join(all, "; "))
	}
	if allowed, ok := s["enum"].([]any); ok && !slices.Contains(allowed, value) {
		return fmt.Errorf("%s: %v is not in %v", at, value, allowed)
	}
	if !typeFits(s["type"], value) {
		return fmt.Errorf("%s: %v is not a %v", at, value, s["type"])
	}
	switch value := value.(type) {
	case string:
		if p, ok := s["pattern"].(string); ok && !regexp.MustCompile(p).MatchString(value) {
			return fmt.Errorf("%s: %q does not match %s", at, value, p)
		}
		if most, ok := s["maxLength"].(float64); ok && len([]rune(value)) > int(most) {
			return fmt.Errorf("%s: too long", at)
		}
	case float64:
		if least, ok := s["minimum"].(float64); ok && value < least {
			return fmt.Errorf("%s: %v < %v", at, value, least)
		}
		if most, ok := s["maximum"].(float64); ok && value > most {
			return fmt.Errorf("%s: %v > %v", at, value, most)
		}
	case []any:
		if least, ok := s["minItems"].(float64); ok && len(value) < int(least) {
			return fmt.Errorf("%s: too few", at)
		}
		if most, ok := s["maxItems"].(float64); ok && len(value) > int(most) {
			return fmt.Errorf("%s: too many", at)
		}
		first, _ := s["prefixItems"].([]any)
		for i, item := range value {
			items, _ := s["items"].(object)
			if i < len(first) {
				items = first[i].(object)
			}
			if err := v.check(items, at+"[]", item); err != nil {
				return err
			}
		}
	case object:
		return v.checkObject(s, at, value)
	}
	return nil
}

func (v validator) checkObject(s object, at string, value object) error {
	if must, ok := s["required"].([]any); ok {
		for _, name := range must {
			if _, ok := value[name.(string)]; !ok {
				return fmt.Errorf("%s: %v is missing", at, name)
			}
		}
	}
	if most, ok := s["maxProperties"].(float64); ok && len(value) > int(most) {
		return fmt.Errorf("%s: too many keys", at)
	}
	properties, _ := s["properties"].(object)
	for name, item := range value {
		of, known := properties[name].(object)
		path := at + "/" + name
		if !known {
			if of, known = s["additionalProperties"].(object); !known {
				return fmt.Errorf("%s: no such key", path)
			}
			path = at + "/*"
		}
		if err := v.check(of, path, item); err != nil {
			return err
		}
		v.met[path] = true
	}
	return nil
}

func typeFits(types, value any) bool {
	list, ok := types.([]any)
	if !ok {
		if types == nil {
			return true
		}
		list = []any{types}
	}
	for _, t := range list {
		switch value := value.(type) {
		case string:
			ok = t == "string"
		case bool:
			ok = t == "boolean"
		case float64:
			ok = t == "number" || t == "integer" && value == float64(int(value))
		case []any:
			ok = t == "array"
		case object:
			ok = t == "object"
		}
		if ok {
			return true
		}
	}
	return false
}

// properties lists every property of a schema by the path that check gives it.
func properties(s object, at string, into map[string]bool) {
	for i, o := range list(s["anyOf"]) {
		properties(o.(object), fmt.Sprintf("%s|%d", at, i), into)
	}
	if items, ok := s["items"].(object); ok {
		properties(items, at+"[]", into)
	}
	if of, ok := s["additionalProperties"].(object); ok {
		properties(of, at+"/*", into)
	}
	named, _ := s["properties"].(object)
	for name, of := range named {
		into[at+"/"+name] = true
		properties(of.(object), at+"/"+name, into)
	}
}

func list(v any) []any { l, _ := v.([]any); return l }

func TestSchemaAcceptsWhatTheParserAccepts(t *testing.T) {
	v := validator{schema(t), map[string]bool{}}
	for _, name := range []string{"copper-orchard.drink.yaml", "every-key.drink.yaml"} {
		assert.NoError(t, v.check(v.root, "", decode(t, readDrink(t, name))), name)
	}
	assert.NoError(t, v.check(v.root["$defs"].(object)["pantry"].(object), "$defs/pantry", decode(t, readDrink(t, "house.shelf.yaml"))))
}

// every-key.drink.yaml parses without fault (TestEveryKeyAndStepParses), so each
// of its keys is known to the parser; here each key of the schema is in it.
func TestEveryKeyOfTheSchemaIsKnownToTheParser(t *testing.T) {
	v := validator{schema(t), map[string]bool{}}
	require.NoError(t, v.check(v.root, "", decode(t, readDrink(t, "every-key.drink.yaml"))))
	known := map[string]bool{}
	properties(v.root, "", known)
	for _, name := range []string{"line", "step", "measured"} {
		properties(v.root["$defs"].(object)[name].(object), "$defs/"+name, known)
	}
	require.Greater(t, len(known), 90)
	for _, path := range slices.Sorted(maps.Keys(known)) {
		assert.True(t, v.met[path], "%s is in the schema and not in every-key.drink.yaml", path)
	}
}

// The parser names the keys that it knows when it meets another; the schema
// must have the same ones.
func TestEveryKeyOfTheParserIsInTheSchema(t *testing.T) {
	s := schema(t)
	at := func(path string) object {
		o := s
		for _, p := range strings.Split(path, " ") {
			o = o[p].(object)
		}
		return o
	}
	cases := []struct{ text, schema string }{
		{head + "build: [1 g a]\nzzz: 1\n", "properties"},
		{head + "build: [{food: a, amount: 1 g, zzz: 1}]\n", "$defs line"},
		{head + "build: [1 g a]\nfoods: {f: {name: n, per: 1 g, fill: a:b, zzz: 1}}\n", "properties foods additionalProperties properties"},
		{head + "build: [1 g a]\ncomponents: {c: {ingredients: [1 g a], zzz: 1}}\n", "properties components additionalProperties properties"},
		{head + "build: [1 g a]\nclaims: [{say: a, check: b, zzz: 1}]\n", "properties claims items properties"},
		{head + "build: [1 g a]\nvary: [{of: a, from: 1 g, to: 2 g, zzz: 1}]\n", "properties vary items properties"},
		{head + "build: [1 g a]\nfinish: [zzz]\n", "$defs step properties"},
	}
	for word, step := range at("$defs step properties") {
		if _, isMap := step.(object)["properties"]; isMap {
			cases = append(cases, struct{ text, schema string }{head + "build: [1 g a]\nfinish: [{" + word + ": {zzz: 1}}]\n", "$defs step properties " + word + " properties"})
		}
	}
	for _, c := range cases {
		var keys object
		if c.schema == "$defs line" {
			keys = at(c.schema)["anyOf"].([]any)[1].(object)["properties"].(object)
		} else {
			keys = at(c.schema)
		}
		_, faults := drink.Parse("t", []byte(c.text), nil)
		said := faults.Err(fail.Wrong).Error()
		var parser []string
		if found := regexp.MustCompile(`\bit has ([^);]*)[);]`).FindStringSubmatch(said); found != nil {
			parser = regexp.MustCompile(`, | or `).Split(found[1], -1)
		}
		for _, line := range regexp.MustCompile(`(?m)^- (\w+): `).FindAllStringSubmatch(said, -1) {
			parser = append(parser, line[1])
		}
		assert.ElementsMatch(t, slices.Collect(maps.Keys(keys)), parser, c.schema)
	}
}

func TestSchemaRefusesSlips(t *testing.T) {
	v := validator{schema(t), map[string]bool{}}
	for _, text := range []string{
		"drink: x\nserves: 1\n",
		head + "build: []\n",
		head + "build: [1 g a]\nglas: 1 ml\n",
		head + "build: [1 g a]\nglass: 1 g\n",
		head + "build: [1 g a]\nat: 6\n",
		head + "build: [espresso]\n",
		head + "build: [1 g a]\nfinish: [{boil: {}}]\n",
		head + "build: [1 g a]\nfinish: [{chill: {melt: 1 g}, dilute: {to: 1 g}}]\n",
	} {
		assert.Error(t, v.check(v.root, "", decode(t, []byte(text))), text)
	}
}

func TestSchemaIsTheSameEveryTime(t *testing.T) {
	assert.Equal(t, string(drink.Schema()), string(drink.Schema()))
}

// An editor says in words what every key is for: what has a name has a description, and it
// says more than one word.
func TestEveryKeyOfTheSchemaIsDescribed(t *testing.T) {
	var described func(where string, x any)
	described = func(where string, x any) {
		switch x := x.(type) {
		case []any:
			for _, e := range x {
				described(where, e)
			}
		case object:
			for key, value := range x {
				if key != "properties" && key != "$defs" {
					described(where, value)
					continue
				}
				for name, named := range value.(object) {
					words, _ := named.(object)["description"].(string)
					assert.GreaterOrEqual(t, len(strings.Fields(words)), 2, "%s/%s: %q", where, name, words)
					described(where+"/"+name, named)
				}
			}
		}
	}
	root := decode(t, drink.Schema()).(object)
	assert.NotEmpty(t, root["description"])
	described("", root)
}

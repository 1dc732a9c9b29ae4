package drink

import (
	"maps"
	"slices"
	"strings"

	"sipsum/internal/unit"
)

// This file shows what was written in the wrong place, or by another word, as it should be.

// What a map at fault is compared with. The grammar reads by the functions that use it, so that
// it is filled from the grammar and not a part of it.
var (
	everyKey []string          // all keys and steps
	readings []string          // the keys of measured
	examples map[string]string // a line of each step, by its word and by those of the kitchen

	parameters map[string]shape // of each step, by name
	ofSteps    []string         // their names
)

func init() {
	everyKey = slices.Concat(drinkKeys.names(), componentKeys.names(), ownFoodKeys.names(), lineKeys.names(), measuredKeys.names(), coffeeKeys.names(),
		roastKeys.names(), labKeys.names(), claimKeys.names(), varyKeys.names(), aromaKeys.names(), standsKeys.names(), taskKeys.names(), stepWords())
	ofSteps = stepKeys()
	everyKey = append(everyKey, ofSteps...)
	readings = slices.DeleteFunc(measuredKeys.names(), func(key string) bool { return slices.Contains(aboutReadings, key) })
	examples = map[string]string{}
	for _, w := range stepSynonyms() {
		k, ok := findStep(w.step)
		if examples[w.word] = w.line; ok {
			examples[w.word] = k.Example
		}
	}
	parameters = map[string]shape{}
	for _, k := range stepKinds {
		examples[k.Word] = k.Example
		parameters[k.Word], _ = k.shape["properties"].(shape)
	}
}

// stepKeys is the keys of all steps, each once.
func stepKeys() []string {
	var names []string
	for _, k := range stepKinds {
		if properties, ok := k.shape["properties"].(shape); ok {
			names = slices.AppendSeq(names, maps.Keys(properties))
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// otherWords are what a hand writes for a key, unasked.
var otherWords = map[string][]string{
	"temp": {"at"}, "temperature": {"at"}, "serve": {"serves", "at"}, "time": {"for"}, "duration": {"for"}, "what": {"ingredients"}, "with": {"ingredients"},
	"servings": {"serves"}, "serving": {"serves"}, "portions": {"serves"}, "title": {"drink"}, "name": {"drink"},
	"notes": {"note"}, "comment": {"note"}, "comments": {"note"}, "remark": {"note"}, "description": {"note"},
	"readings": {"measured"}, "reading": {"measured"}, "my_foods": {"foods"}, "my foods": {"foods"}, "own foods": {"foods"},
	"recipe": {"build"}, "mix": {"build"}, "alcohol": {"abv"}, "tds": {"strength"}, "ey": {"yield"}, "extraction": {"yield"}, "extraction yield": {"yield"},
	"to": {"at"}, "cup": {"glass"}, "topping": {"garnish"}, "allergen": {"allergens"}, "quantity": {"amount"}, "weight": {"amount"}, "ingredient": {"food"},
}

// meant gives the key of a map that another word stands for, "" if none does. Of a word that
// stands for two, serves is the one with a count.
func meant(word, value string, names []string) string {
	keys := otherWords[strings.ToLower(word)]
	for _, key := range keys {
		_, rest, isCount := unit.ParseCount(value)
		if slices.Contains(names, key) && (key != "serves" || len(keys) == 1 || isCount && (rest == "" || sizeOfOne(rest) != "")) {
			return key
		}
	}
	return ""
}

// keyScales are the scales of keys that other words stand for.
var keyScales = map[string]unit.Scale{"at": temperature, "for": duration, "strength": percent, "yield": percent, "abv": percent}

// asMeant gives the value of a key in a form that can be read, as far as that can be told.
func asMeant(key, value string) string {
	if scale, ok := keyScales[key]; ok {
		if _, err := scale.Parse(value); err != nil {
			if text, ok := rewritten(err); ok {
				return text
			}
		}
		return value
	}
	switch key {
	case "serves":
		return servesAndGlass(value)
	case "ingredients":
		if line, ok := asLine(value); ok {
			return "[" + line + "]"
		}
	}
	return value
}

// servesAndGlass parts "4 x 90ml" into servings and the size of one.
func servesAndGlass(value string) string {
	n, rest, ok := unit.ParseCount(value)
	if !ok || rest == "" {
		return value
	}
	if size := sizeOfOne(rest); size != "" {
		return unit.Number(n) + " and glass: " + size
	}
	return unit.Number(n)
}

// sizeOfOne gives the amount of "x 90ml", "" if it is none.
func sizeOfOne(rest string) string {
	for _, times := range []string{"x", "×", "*", "of"} {
		if size, found := strings.CutPrefix(strings.ToLower(rest), times); found && isAmount(strings.TrimSpace(size)) {
			return strings.TrimSpace(size)
		}
	}
	return ""
}

// elsewhere tells where a key belongs that a map does not have: a reading, a step, an ingredient.
func elsewhere(e entry, what string, names []string) string {
	value, scalar := raw(e.value)
	reading := asKnown(e.key, readings)
	switch {
	case what != "measured" && examples[what] != "" && scalar && isAmount(value) && !slices.Contains(ofSteps, e.key):
		line, _ := asLine(value + " " + e.key)
		return "what goes into the pot stands under ingredients: - " + clip(line)
	case slices.Contains(readings, reading) && slices.Contains(names, "measured"):
		return "a reading stands under measured: measured: {" + reading + ": " + clip(value) + "}"
	case slices.Contains(names, "values") && strings.HasPrefix(strings.ToLower(e.key), "per "):
		return "write: per: " + clip(strings.TrimSpace(e.key[len("per "):])) + ", and the figures under values: {…}"
	case slices.Contains(names, "values") && strings.EqualFold(e.key, "alcohol"):
		return "figures of a pack stand under values: values: {ALC: … g}"
	case slices.Contains(names, "values") && scalar && isFigure(value):
		return "figures of a pack stand under values: values: {" + e.key + ": " + clip(value) + "}"
	case slices.Contains(names, "finish") || slices.Contains(names, "steps"):
		return stepElsewhere(e, names)
	}
	return ""
}

// stepElsewhere tells of a step that stands outside its list.
func stepElsewhere(e entry, names []string) string {
	list := "steps: of a component, or under finish:"
	if slices.Contains(names, "steps") {
		list = "steps:"
	}
	example, ok := examples[strings.ToLower(e.key)]
	value, _ := raw(e.value)
	if key := meant(e.key, value, []string{"yield"}); key != "" {
		example, ok = "- brew: {out: … g, "+key+": "+clip(asMeant(key, value))+"}", true
	}
	if !ok {
		return ""
	}
	return "a step stands under " + list + " " + example
}

func isAmount(text string) bool {
	_, rest, err := unit.ParseAmount(text)
	_, mended := rewritten(err)
	return err == nil && rest == "" || mended
}

func isFigure(text string) bool {
	text = strings.TrimLeft(text, "< ")
	_, err := figure.Parse(text)
	_, share := percent.Parse(text)
	return err == nil || share == nil
}

// alike tells whether a text can be read as the example is: as an amount of its kind, on its scale.
func alike(example, text string) bool {
	if like, rest, err := unit.ParseAmount(example); err == nil && rest == "" {
		a, rest, err := unit.ParseAmount(text)
		return err == nil && rest == "" && a.Measure.Kind == like.Measure.Kind
	}
	for _, s := range []unit.Scale{temperature, duration, percent, brixScale, acidity, gas} {
		if _, err := s.Parse(example); err == nil {
			_, err = s.Parse(text)
			return err == nil
		}
	}
	return false
}

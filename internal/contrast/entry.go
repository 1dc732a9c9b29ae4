package contrast

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// entries lists what a drink file says, as far as it bears on what is in the glass.
func entries(d *drink.Drink) []entry {
	list := []entry{{theDrink, "serves", fmt.Sprint(d.Serves), false}}
	add := func(what string, v any) {
		if text := textOf(reflect.ValueOf(v)); text != "" {
			list = append(list, entry{theDrink, what, text, false})
		}
	}
	add("glass", d.Glass)
	add("vessel", d.Vessel)
	add("at", d.At)
	add("scale", d.Scale)
	for _, word := range d.MayContain {
		add("may-contain", word.Text)
	}
	for _, a := range d.Aroma {
		add("aroma", a)
	}
	for i := range d.Foods {
		for _, text := range ownFood(&d.Foods[i]) {
			what, of, _ := strings.Cut(text, ": ")
			list = append(list, entry{"own:" + d.Foods[i].Code, what, of, false})
		}
	}
	for i := range d.Components {
		c := &d.Components[i]
		list = append(list, lines(c.Name, c.Ingredients)...)
		list = append(list, steps(c.Name, c.Steps)...)
		if c.Measured != nil {
			list = append(list, steps(c.Name, []drink.Step{c.Measured})...)
		}
		if k := c.Keeps; k != nil {
			text := note.Grams(k.Days) + " days"
			if k.At != nil {
				text += " at " + k.At.String()
			}
			list = append(list, entry{c.Name, "keeps", text, false})
		}
	}
	list = append(list, lines("build", d.Build)...)
	list = append(list, steps("finish", d.Finish)...)
	return append(list, lines("garnish", d.Garnish)...)
}

const theDrink = "the drink"

// lines are the lines of a list.
func lines(where string, of []drink.Line) []entry {
	var list []entry
	for _, l := range of {
		text, what := l.Amount.String(), l.Food
		if l.Portion != "" {
			text = note.Grams(l.Count) + " × " + l.Portion
		}
		for _, more := range []string{l.As, l.Fill} {
			if more != "" {
				what += ", " + more
			}
		}
		if where == "garnish" && l.Eaten {
			what += ", eaten"
		}
		list = append(list, entry{where, what, text, true})
	}
	return list
}

// steps are steps, and what they bring into the pot.
func steps(where string, of []drink.Step) []entry {
	var list []entry
	for _, s := range of {
		text := textOf(reflect.ValueOf(s))
		if _, calculated := s.(*drink.Adjust); calculated { // its line is a gram, whatever the dose
			for _, l := range s.Lines() {
				text += ", with " + l.Food
			}
			list = append(list, entry{where, s.Kind(), text, false})
			continue
		}
		if text != "" || len(s.Lines()) == 0 {
			list = append(list, entry{where, s.Kind(), text, false})
		}
		list = append(list, lines(where+", "+s.Kind(), s.Lines())...)
	}
	return list
}

// ownFood is what a file states of a food of its own, a text for each key.
func ownFood(f *drink.OwnFood) []string {
	list := []string{"name: " + f.Name, "per: " + f.Per.String()}
	for _, x := range []struct{ key, text string }{
		{"group", f.Group}, {"fill", f.Fill}, {"declared", f.Declared},
		{"density", textOf(reflect.ValueOf(f.Density))}, {"coffee", textOf(reflect.ValueOf(f.Coffee))},
	} {
		if x.text != "" {
			list = append(list, x.key+": "+x.text)
		}
	}
	for _, v := range f.Values {
		list = append(list, v.Tag+": "+stated(v))
	}
	if f.Assessed {
		var codes []string
		for _, word := range f.Allergens {
			codes = append(codes, word.Text)
		}
		list = append(list, "allergens: ["+strings.Join(codes, ", ")+"]")
	}
	return list
}

// stated writes a figure as a file does.
func stated(v drink.Stated) string {
	switch {
	case v.State == drink.Below:
		return "< " + note.Grams(v.Limit) + " " + v.Unit
	case v.State != "":
		return v.State
	}
	return v.Quantity.String()
}

// textOf writes what somebody has set of a step or another part of a file: a field a word, those
// that say where it stands left out. A step that gets a key has its words here.
func textOf(v reflect.Value) string {
	switch {
	case !v.IsValid() || v.Kind() == reflect.Pointer && v.IsNil():
		return ""
	case v.Kind() == reflect.Pointer:
		return textOf(v.Elem())
	}
	switch x := v.Interface().(type) {
	case unit.Amount:
		return x.String()
	case unit.Quantity:
		return x.String()
	case drink.Stated:
		return x.Tag + " " + stated(x)
	}
	switch v.Kind() {
	case reflect.Struct:
		return fieldsOf(v)
	case reflect.Slice:
		var list []string
		for i := range v.Len() {
			list = append(list, textOf(v.Index(i)))
		}
		return strings.Join(list, ", ")
	case reflect.Bool, reflect.Float64, reflect.Int:
		if v.IsZero() {
			return ""
		}
	}
	return fmt.Sprint(v.Interface())
}

// unsaid are the types that say where something stands.
var unsaid = []reflect.Type{reflect.TypeFor[drink.Head](), reflect.TypeFor[fail.Place]()}

// asWritten are the keys of a file that are not called like their field.
var asWritten = map[string]string{"Temperature": "at", "Minutes": "for"}

func fieldsOf(v reflect.Value) string {
	var list []string
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if !f.IsExported() || slices.Contains(unsaid, f.Type) {
			continue
		}
		switch text := textOf(v.Field(i)); {
		case text == "":
		case f.Anonymous, f.Type.Kind() == reflect.String:
			list = append(list, text)
		default:
			list = append(list, cmp.Or(asWritten[f.Name], strings.ToLower(f.Name))+" "+text)
		}
	}
	return strings.Join(list, ", ")
}

package drink_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// FuzzParse feeds the parser anything: it never panics, it ends soon, faults lie
// within the file and say something, and a drink without faults has legal values.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob(filepath.Join(drinks, "*.yaml"))
	if err != nil || len(files) < 4 {
		f.Fatalf("the example drinks are missing: %v %v", files, err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, seed := range []string{
		"", "\ufeff", "drink: |" + strings.Repeat("3", 3000), "drink: x\r\nserves: 1\r\nbuild: [1 g a]\r\n", "- - -\n", "{a, b: [c, d: e}", "drink: |\n\n\n  x\n", "a: &b *c\n", "? a\n: b\n",
		"drink: \"\\u202e\"\n", "build:\n  - 1 g a: b: c\n  - @\n  -\n", "build: [12,5 g a, 1 g b #2]\n", "steps: [{add: [1 % a]}]\n", "!a\n--- &b\n...\n%c\n",
		"components: {a: {ingredients: [1 g b]}, b: {ingredients: [1 g a]}}\n", "vary: [{of: a, from: 1/0 g, to: 1.2.3 ml}]\n", "at: −1/3 °C ± 1/9 °C sd\n",
		"drink: x\nserves:1\nbuild:\n  -36\u00a0g\u200b a\n  - espresso: 1,000 g\n  - ½ c:lemon\n  - 2-3 leaves a\n  - 36±2 G a\n  - 1-1/2 Tbsp. of a\n",
		"build: {a: 36g, b: 12,5 cl}\nmeasured: {pH:3, Brix: 11.5°, tds: 1-2 %}\nat: 140F ± 9\ngas: N2O, 2 x\nper: 1 g, b: 2\n",
		"foods:\n  - name: A b\n    per 100ml: {kcal: 1}\ncomponents: {p: {ingredients: [1 g a], steps: [{step: brew}, {reduce: by half}, {steep: 1 g a, time: 12-14 hrs in it}, brew:{out: 1 g}]}}\n",
		"drink: a\n  b\nbuild:\n- 1 g a\n  - 2 g b\n", "use: [a, b]\nfoods:\n  a:\n    values: {A: < 1 g, B: trace}\n",
	} {
		f.Add([]byte(seed))
	}
	pantry := []byte("foods: {p: {name: p, per: 1 g, fill: a:b}}\ncomponents: {q: {ingredients: [1 g own:p]}}\n")
	f.Fuzz(func(t *testing.T, text []byte) {
		start := time.Now()
		d, faults := drink.Parse("fuzz", text, func(path string) ([]byte, error) {
			if len(path) > 3 {
				return nil, errors.New("no such file")
			}
			return pantry, nil
		})
		if took := time.Since(start); took > 8*time.Second {
			t.Fatalf("%v for %d bytes", took, len(text))
		}
		if d == nil || faults == nil {
			t.Fatal("nothing came back")
		}
		if err := faults.Err(fail.Wrong); err != nil {
			var e *fail.Error
			if !errors.As(err, &e) {
				t.Fatal(err)
			}
			for _, fault := range e.Faults {
				checkFault(t, text, fault)
			}
			return
		}
		checkLegal(t, d)
	})
}

func checkFault(t *testing.T, text []byte, f fail.Fault) {
	t.Helper()
	if f.What == "" || !utf8.ValidString(f.What+f.Do) || len(f.String()) > 2000 {
		t.Fatalf("a fault says %q", f)
	}
	if f.File != "fuzz" {
		return
	}
	lines := strings.Split(strings.ReplaceAll(strings.TrimPrefix(string(text), "\ufeff"), "\r\n", "\n"), "\n")
	if f.Line < 1 || f.Line > len(lines) || f.Col < 1 || f.Col > utf8.RuneCountInString(lines[f.Line-1])+1 {
		t.Fatalf("outside the file: %s", f)
	}
}

func checkLegal(t *testing.T, d *drink.Drink) {
	t.Helper()
	legal := func(ok bool, what string, value any) {
		if !ok {
			t.Fatalf("%s: %v", what, value)
		}
	}
	amount := func(a unit.Amount, least float64) {
		legal(a.Number >= least && a.Base() <= 1e7 && a.Half >= 0 && !math.IsInf(a.Half, 0) && a.Measure.Name != "", "amount", a)
	}
	paths := map[string]bool{}
	lines := func(list []drink.Line) {
		for _, l := range list {
			legal(l.Food != "" && utf8.RuneCountInString(l.Food) <= 200 && l.Path != "" && !paths[l.Path], "line", l)
			paths[l.Path] = true
			if l.Portion == "" {
				amount(l.Amount, math.SmallestNonzeroFloat64)
			} else {
				legal(l.Count > 0 && l.Count <= 10_000, "count", l)
			}
		}
	}
	legal(d.Name != "" && utf8.ValidString(d.Name), "name", d.Name)
	legal(d.Serves >= 1 && d.Serves <= 10_000, "serves", d.Serves)
	legal(len(d.Build) > 0, "build", d.Build)
	legal(d.At == nil || d.At.Number >= -40 && d.At.Number <= 130, "at", d.At)
	names := map[string]bool{}
	for _, c := range d.Components {
		legal(c.Name != "" && !names[c.Name] && !strings.Contains(c.Name, ":") && len(c.Ingredients) > 0, "component", c)
		names[c.Name] = true
		lines(c.Ingredients)
		for _, s := range c.Steps {
			legal(s.Kind() != "" && s.StepPath() != "", "step", s)
			if add, ok := s.(*drink.Add); ok {
				lines(add.Ingredients)
			}
		}
	}
	lines(d.Build)
	lines(d.Garnish)
	for _, v := range d.Vary {
		amount(v.From, 0)
		amount(v.To, 0)
		legal(v.From.Base() < v.To.Base(), "vary", v)
	}
	for i := range d.Components {
		walk(t, d, &d.Components[i], 0)
	}
}

// walk goes down through components; it does not come back from a circle.
func walk(t *testing.T, d *drink.Drink, c *drink.Component, depth int) {
	t.Helper()
	if depth > len(d.Components) {
		t.Fatalf("a circle through %q", c.Name)
	}
	for _, l := range c.Ingredients {
		if next, ok := d.Component(l.Food); ok && depth < 12 {
			walk(t, d, next, depth+1)
		}
	}
}

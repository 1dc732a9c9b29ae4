package rewrite_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/rewrite"
)

const penned = `# 30 g cordial is too much
drink: "Penned # 2"
serves: 1
components:
  cordial:   # the sharp one
    ingredients:
      - 60 g ± 2 g core:lemon-juice   # squeezed
      - {food: "core:sugar-white", amount: 60 g, note: "60 g, fine"}
      - 2 leaves core:spearmint
      - food: core:salt
        amount: 1 g   # flakes
        note: "a pinch: 1 g"
    steps:
      - strain: {collect: 100 g, through: cloth}
      - reduce:
          to: "90 g"
    measured: {mass: 88 g ± 1 g, brix: 41.0 ± 0.2}   # by the window

  'odd [name], # "x"':
    ingredients: [20 g core:honey, "4 g core:cocoa-powder"]
    measured:
      brix: 60   # cold
      # nothing else

build:
- 30 g cordial
- 5 g 'odd [name], # "x"'
- 100 g core:water
claims:
  - say: "Sharp: and how"
    check: serving(SUGAR) < 30 g

# the end
`

func text(s string) rewrite.Text { return rewrite.Text{Name: "penned.yaml", Bytes: []byte(s)} }

func pennedWith(was, now string) string { return strings.Replace(pennedOK, was, now, 1) }

// pennedOK is penned with the odd name as YAML wants it.
var pennedOK = strings.Replace(penned, `- 5 g 'odd [name], # "x"'`, `- '5 g odd [name], # "x"'`, 1)

// Each change touches what it says and nothing else; comments, quotes and layout stay.
func TestAChangeTouchesNothingElse(t *testing.T) {
	_, faults := drink.Parse("x", []byte(pennedOK), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	const odd = `odd [name], # "x"`
	for name, x := range map[string]struct {
		do        func(rewrite.Text) ([]byte, error)
		was, want string
	}{
		"amount":          {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:lemon-juice", "55 g") }, "- 60 g ± 2 g core", "- 55 g ± 2 g core"},
		"its own range":   {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:lemon-juice", "55 g ± 1 g") }, "- 60 g ± 2 g core", "- 55 g ± 1 g core"},
		"another unit":    {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:lemon-juice", "55 ml") }, "- 60 g ± 2 g core", "- 55 ml core"},
		"long form":       {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:sugar-white", "61.5 g") }, "amount: 60 g,", "amount: 61.5 g,"},
		"block form":      {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:salt", "2 g") }, "amount: 1 g ", "amount: 2 g "},
		"count":           {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:spearmint", "3") }, "- 2 leaves", "- 3 leaves"},
		"step":            {func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/reduce/to", "85 g") }, `to: "90 g"`, `to: "85 g"`},
		"add":             {func(x rewrite.Text) ([]byte, error) { return x.Add("build", "9 g core:honey") }, "- 100 g core:water\n", "- 100 g core:water\n- 9 g core:honey\n"},
		"add below block": {func(x rewrite.Text) ([]byte, error) { return x.Add("cordial", "9 g Rum: dark # 3") }, "a pinch: 1 g\"\n", "a pinch: 1 g\"\n      - '9 g Rum: dark # 3'\n"},
		"add in brackets": {func(x rewrite.Text) ([]byte, error) { return x.Add(odd, "9 g core:water") }, `"4 g core:cocoa-powder"]`, `"4 g core:cocoa-powder", 9 g core:water]`},
		"remove":          {func(x rewrite.Text) ([]byte, error) { return x.Remove("build/core:water") }, "- 100 g core:water\n", ""},
		"remove a block":  {func(x rewrite.Text) ([]byte, error) { return x.Remove("cordial/core:salt") }, "      - food: core:salt\n        amount: 1 g   # flakes\n        note: \"a pinch: 1 g\"\n", ""},
		"remove first":    {func(x rewrite.Text) ([]byte, error) { return x.Remove(odd + "/core:honey") }, `[20 g core:honey, "4 g`, `["4 g`},
		"remove last":     {func(x rewrite.Text) ([]byte, error) { return x.Remove(odd + "/core:cocoa-powder") }, `20 g core:honey, "4 g core:cocoa-powder"]`, `20 g core:honey]`},
		"claim":           {func(x rewrite.Text) ([]byte, error) { return x.Claim(`It's 'sour', so: #1`, "ph() < 4") }, "check: serving(SUGAR) < 30 g\n", "check: serving(SUGAR) < 30 g\n  - say: 'It''s ''sour'', so: #1'\n    check: ph() < 4\n"},
		"reading changed": {func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "brix", "39.5") }, "brix: 41.0 ± 0.2}", "brix: 39.5}"},
		"reading added":   {func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "ph", "2.6") }, "± 0.2}", "± 0.2, ph: 2.6}"},
		"in a block":      {func(x rewrite.Text) ([]byte, error) { return x.Measured(odd, "brix", "61") }, "brix: 60   #", "brix: 61   #"},
		"below a block":   {func(x rewrite.Text) ([]byte, error) { return x.Measured(odd, "mass", "23 g") }, "brix: 60   # cold\n", "brix: 60   # cold\n      mass: 23 g\n"},
		"of the drink":    {func(x rewrite.Text) ([]byte, error) { return x.Measured("", "ph", "3.4") }, "- 100 g core:water\n", "- 100 g core:water\nmeasured: {ph: 3.4}\n"},
	} {
		for _, eol := range []string{"\n", "\r\n"} {
			ends := func(s string) string { return strings.ReplaceAll(s, "\n", eol) }
			require.Equal(t, 1, strings.Count(pennedOK, x.was), name)
			got, err := x.do(text(ends(pennedOK)))
			if assert.NoError(t, err, name) {
				assert.Equal(t, ends(pennedWith(x.was, x.want)), string(got), name)
			}
		}
	}
}

// A file without a line end at its end, and one in which nothing was read or claimed, take changes.
func TestFirstClaimsAndReadings(t *testing.T) {
	const bare = "drink: x\nserves: 1\ncomponents:\n  a:\n    ingredients: [2 g core:salt]\n\n  # b\n  b:\n    ingredients:\n    - 2 g core:salt\nbuild:\n  - 1 g a\n  - 1 g b"
	got, err := text(bare).Claim("", "ph() < 7")
	require.NoError(t, err)
	assert.Equal(t, bare+"\nclaims:\n  - say: ph() < 7\n    check: ph() < 7\n", string(got))
	got, err = text(bare).Measured("a", "mass", "2 g")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(bare, "salt]\n", "salt]\n    measured: {mass: 2 g}\n", 1), string(got))
	got, err = text(bare).Measured("b", "mass", "2 g")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(bare, "salt\nbuild", "salt\n    measured: {mass: 2 g}\nbuild", 1), string(got))
}

// What would change anything else is refused, whatever it is called.
func TestChangesThatReachFurtherAreRefused(t *testing.T) {
	for name, do := range map[string]func(rewrite.Text) ([]byte, error){
		"two rows":       func(x rewrite.Text) ([]byte, error) { return x.Add("build", "9 g core:honey\n- 3 g core:salt") },
		"no amount":      func(x rewrite.Text) ([]byte, error) { return x.Add("build", "core:honey") },
		"nowhere":        func(x rewrite.Text) ([]byte, error) { return x.Add("syrup", "9 g core:honey") },
		"no such line":   func(x rewrite.Text) ([]byte, error) { return x.Set("build/core:honey", "9 g") },
		"food behind":    func(x rewrite.Text) ([]byte, error) { return x.Set("build/core:water", "9 g core:honey") },
		"nothing":        func(x rewrite.Text) ([]byte, error) { return x.Set("build/core:water", "0 g") },
		"less than none": func(x rewrite.Text) ([]byte, error) { return x.Set("build/core:water", "-3 g") },
		"no number":      func(x rewrite.Text) ([]byte, error) { return x.Set("build/core:water", "some") },
		"no count":       func(x rewrite.Text) ([]byte, error) { return x.Set("cordial/core:spearmint", "3 g") },
		"only line": func(x rewrite.Text) ([]byte, error) {
			return rewrite.Text{Name: "x", Bytes: []byte("drink: x\nserves: 1\nbuild: [2 g core:salt]\n")}.Remove("build/core:salt")
		},
		"no instrument":    func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "note", "x") },
		"no pH":            func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "ph", "77") },
		"a pair more":      func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "ph", "3, mass: 2 g") },
		"a brace":          func(x rewrite.Text) ([]byte, error) { return x.Measured("cordial", "ph", "3} # ") },
		"claim in two":     func(x rewrite.Text) ([]byte, error) { return x.Claim("a\nserves: 9", "ph() < 7") },
		"claim of nothing": func(x rewrite.Text) ([]byte, error) { return x.Claim("a", "") },
	} {
		got, err := do(text(pennedOK))
		assert.Error(t, err, name)
		assert.Nil(t, got, name)
		if err != nil {
			var told *fail.Error
			assert.ErrorAs(t, err, &told, name)
		}
	}
}

// Every amount of the demos can be written, and the drink is then the same but for it: that is checked
// within, and here that one row alone differs.
func TestEveryAmountOfTheDemosCanBeWritten(t *testing.T) {
	names, err := data.FS.ReadDir("demo")
	require.NoError(t, err)
	n := 0
	for _, entry := range names {
		demo, err := data.FS.ReadFile("demo/" + entry.Name())
		require.NoError(t, err)
		d, _ := drink.Parse(entry.Name(), demo, nil)
		for _, l := range append(d.Poured(), d.Garnish...) {
			to := l.Amount
			to.Number *= 1.5
			to.Half, to.Decimals = 0, 1
			got, err := rewrite.Text{Name: entry.Name(), Bytes: demo}.Set(l.Path, to.String())
			require.NoError(t, err, "%s, %s", entry.Name(), l.Path)
			was, now := strings.Split(string(demo), "\n"), strings.Split(string(got), "\n")
			require.Len(t, now, len(was))
			for i := range was {
				assert.Equal(t, i == l.Place.Line-1, was[i] != now[i], "%s, %s, row %d", entry.Name(), l.Path, i+1)
			}
			n++
		}
	}
	assert.Greater(t, n, 20)
}

// A file with a fault elsewhere can be worked at; what stands in a shelf cannot be written.
func TestFaultsElsewhereAndShelves(t *testing.T) {
	broken := strings.Replace(pennedOK, "strain: {collect: 100 g, through: cloth}", "strane: {collect: 100 g}", 1)
	got, err := text(broken).Set("build/core:water", "90 g")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(broken, "100 g core:water", "90 g core:water", 1), string(got))
	shelf := rewrite.Text{Name: "x.yaml", Bytes: []byte("use: [shelf.yaml]\ndrink: x\nserves: 1\nbuild: [2 g syrup]\n"), Open: func(string) ([]byte, error) {
		return []byte("components:\n  syrup:\n    ingredients:\n      - 2 g core:salt\n      - 3 g core:honey\n"), nil
	}}
	for _, do := range []func() ([]byte, error){
		func() ([]byte, error) { return shelf.Set("syrup/core:salt", "3 g") },
		func() ([]byte, error) { return shelf.Add("syrup", "3 g core:water") },
		func() ([]byte, error) { return shelf.Remove("syrup/core:salt") },
		func() ([]byte, error) { return shelf.Measured("syrup", "brix", "3") },
	} {
		_, err := do()
		assert.Error(t, err)
	}
}

// Whatever is asked of whatever file, it is refused or made so that all else stays.
func FuzzChanges(f *testing.F) {
	f.Add(pennedOK, "cordial/core:lemon-juice", "55 g", "9 g Rum: dark # 3")
	f.Add("drink: x\nserves: 1\nbuild: [2 g core:salt, {food: 'a, b', amount: 3 g}]\n", "build/a, b", "1 tsp", "2 g '")
	f.Fuzz(func(t *testing.T, file, path, amount, line string) {
		x := rewrite.Text{Name: "f", Bytes: []byte(file)}
		for i, do := range []func() ([]byte, error){
			func() ([]byte, error) { return x.Remove(path) },
			func() ([]byte, error) { return x.Set(path, amount) },
			func() ([]byte, error) { return x.Add(path, line) },
			func() ([]byte, error) { return x.Add("build", line) },
			func() ([]byte, error) { return x.Claim(line, amount) },
			func() ([]byte, error) { return x.Measured(path, "brix", amount) },
			func() ([]byte, error) { return x.Measured("", "ph", amount) },
		} {
			got, err := do()
			if err != nil {
				assert.Nil(t, got)
				continue
			}
			_, before := drink.Parse("f", []byte(file), nil)
			_, after := drink.Parse("f", got, nil)
			assert.LessOrEqual(t, after.Len(), before.Len())
			for _, row := range strings.Split(file, "\n") {
				if i > 0 && strings.HasPrefix(strings.TrimSpace(row), "#") { // a line goes with the comments in it
					assert.Contains(t, string(got), strings.TrimRight(row, "\r"), "a comment is lost")
				}
			}
		}
	})
}

// Of two drinks that differ in more than amounts, neither is touched.
func TestWhatDiffersInMoreIsLeftAsItIs(t *testing.T) {
	parse := func(text string) *drink.Drink {
		d, faults := drink.Parse("x.yaml", []byte(text), nil)
		require.NoError(t, faults.Err(fail.Wrong))
		return d
	}
	was := parse("drink: x\nserves: 1\nbuild: [1 g core:honey, 2 g core:salt, 3 g core:sugar-white, 4 g core:cream, 5 g core:milk-whole]\n")
	const text = "drink: x\nserves: 1\nbuild: [10 g core:honey, 20 g core:salt, 30 g core:sugar-white, 40 g core:cream, 5 ml core:milk-whole]\n"
	now := parse(text)
	for range 20 { // amounts are gone through in any order
		_, alike := rewrite.Differ(was, now)
		assert.False(t, alike)
		assert.Equal(t, parse(text).Build, now.Build)
	}
}

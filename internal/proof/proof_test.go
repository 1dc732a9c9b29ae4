package proof_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/proof"
	"sipsum/internal/source"
)

func number(x float64) *float64 { return &x }

// berry is an invented row with everything that a row can have.
func berry() *food.Food {
	return &food.Food{
		ID: food.ID{Table: "house", Code: "b"}, Names: []food.Name{{Language: "en", Text: "Berry <b>"}, {Language: "ja", Text: "いちご"}},
		Group: "fruit", PublisherGroup: "Fruits", Edible: 0.9, Note: "frozen",
		Density: food.Density{GramsPerMl: 1.04, SD: food.None, Source: "d1"},
		Values: []food.Value{
			{Constituent: "CITAC", Amount: 1100.5, SD: 80, N: 4, Low: 900, High: 1300, Limit: food.None, State: estimate.Measured, Source: "w1 w2", Ref: "p. 4"},
			{Constituent: "MALAC", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 30, State: estimate.Below, Source: "w1"},
			{Constituent: "WATER", Amount: 0, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Calculated},
			{Constituent: "house:7", Amount: -3, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured},
		},
		Portions: []food.Portion{{Name: "cup", Grams: 140, SD: food.None}},
		Marks:    []food.Mark{{Kind: "allergen", Value: "", Share: food.None, Source: "w1"}},
	}
}

func house(licence string) proof.Used {
	return proof.Used{
		Rows:   map[string]*food.Food{"house:B": berry(), "Berry": berry(), "house:b": berry()},
		Tables: []source.Table{{ID: "other", Licence: "none"}, {ID: "house", Licence: licence, Hash: "00"}},
		Works: func(table, id string) (source.Work, bool) {
			return source.Work{ID: id, Citation: table + " " + id}, id != "w2"
		},
	}
}

func packed(licence string) *proof.Pack {
	in := proof.Inputs{Drink: "x", Files: []proof.File{{Name: "x.yaml", Text: "drink: x\n"}}, Seed: math.MaxUint64, Draws: 100}
	in.Gather(house(licence))
	return &proof.Pack{Schema: proof.Schema, Program: "sipsum 9", Short: in.Short("sipsum 9"), Inputs: in}
}

// A food comes out of a pack as it went in: what nobody stated is no zero there, a zero stays one.
func TestARowComesBackAsItWas(t *testing.T) {
	o, err := proof.Read(packed("free to copy").Encode())
	require.NoError(t, err)
	require.Empty(t, o.Broken)
	assert.Equal(t, uint64(math.MaxUint64), o.Seed)
	lib := o.Library(nil)
	for _, text := range []string{"house:B", "house:b"} {
		id, _ := food.ParseID(text)
		f, err := lib.Food(t.Context(), id)
		require.NoError(t, err)
		want := berry()
		for i := range f.Values {
			for _, pair := range [][2]float64{
				{want.Values[i].Amount, f.Values[i].Amount}, {want.Values[i].SD, f.Values[i].SD}, {want.Values[i].Low, f.Values[i].Low},
				{want.Values[i].High, f.Values[i].High}, {want.Values[i].Limit, f.Values[i].Limit},
			} {
				assert.Equal(t, math.Float64bits(pair[0]), math.Float64bits(pair[1]), "%s", f.Values[i].Constituent)
			}
			assert.Equal(t, want.Values[i].State, f.Values[i].State)
			assert.Equal(t, [3]any{want.Values[i].N, want.Values[i].Source, want.Values[i].Ref}, [3]any{f.Values[i].N, f.Values[i].Source, f.Values[i].Ref})
		}
		assert.Equal(t, want.Names, f.Names)
		assert.Equal(t, []any{want.ID, want.Group, want.PublisherGroup, want.Edible, want.Note, want.Density.GramsPerMl, want.Density.Source},
			[]any{f.ID, f.Group, f.PublisherGroup, f.Edible, f.Note, f.Density.GramsPerMl, f.Density.Source})
		assert.False(t, food.Stated(f.Density.SD))
		assert.Equal(t, want.Portions[0].Name, f.Portions[0].Name)
		assert.Equal(t, want.Marks[0].Kind, f.Marks[0].Kind)
	}
	id, ok, err := lib.Named(t.Context(), "Berry")
	assert.Equal(t, []any{food.ID{Table: "house", Code: "b"}, true, nil}, []any{id, ok, err})
	_, ok, _ = lib.Named(t.Context(), "Cherry")
	assert.False(t, ok)
	_, err = lib.Food(t.Context(), food.ID{Table: "house", Code: "c"})
	assert.ErrorContains(t, err, "the pack holds no row house:c")
	var works []string
	for _, w := range o.Works {
		works = append(works, w.ID)
	}
	assert.Equal(t, []string{"d1", "w1"}, works, "each once, what is not known left out")
	assert.Len(t, o.Tables, 1, "only those of the rows")
}

// The digest of a pack does not hang on the order in which things were looked up, nor on where a file lies.
func TestTheShortDigestIsOfWhatFiguresHangOn(t *testing.T) {
	first := packed("free to copy")
	for range 20 { // maps have another order each time
		again := packed("free to copy")
		assert.Equal(t, first.Encode(), again.Encode())
	}
	assert.Regexp(t, `^[0-9a-f]{12}$`, first.Short)
	for name, alter := range map[string]func(in *proof.Inputs){
		"text": func(in *proof.Inputs) { in.Files[0].Text += "#" }, "seed": func(in *proof.Inputs) { in.Seed-- },
		"draws": func(in *proof.Inputs) { in.Draws++ }, "row": func(in *proof.Inputs) { in.Rows[0].Digest = "00" },
		"shelf": func(in *proof.Inputs) { in.Files = append(in.Files, proof.File{}) },
	} {
		p := packed("free to copy")
		alter(&p.Inputs)
		assert.NotEqual(t, first.Short, p.Inputs.Short("sipsum 9"), name)
	}
	p := packed("free to copy")
	p.Files[0].Name, p.Rules, p.Drink = "elsewhere.yaml", []string{"us"}, "y"
	assert.Equal(t, first.Short, p.Inputs.Short("sipsum 9"))
	assert.NotEqual(t, first.Short, p.Inputs.Short("sipsum 10"))
	assert.Equal(t, first.Short, packed("").Inputs.Short("sipsum 9"), "the licence keeps a row out of the pack, not out of the digest")
}

// Whoever has no sipsum can take the seal with any tool: SHA-256 of the file with the seal's digits as zeros.
func TestTheSealIsThatOfAnyTool(t *testing.T) {
	text := string(packed("free to copy").Encode())
	at := strings.LastIndex(text, `"sha256": "`) + len(`"sha256": "`)
	sum := sha256.Sum256([]byte(text[:at] + strings.Repeat("0", 64) + text[at+64:]))
	assert.Equal(t, hex.EncodeToString(sum[:]), text[at:at+64])
	assert.True(t, json.Valid([]byte(text)))
	assert.NotContains(t, text, "<", "it may stand in a page")
	// FIPS 180-4, example of one block: SHA-256 of "abc".
	assert.Equal(t, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", proof.TextDigest("abc"))
}

func TestARowThatMayNotBeHandedOnStaysOut(t *testing.T) {
	for licence, why := range map[string]string{
		"(c) the publisher, all rights reserved": "no reuse granted", "": "nobody says under which licence the table is",
		"cite only; the publisher's permission is needed to pass figures on": "the publisher has to be asked", "CC BY 4.0": "", "public domain": "",
	} {
		p := packed(licence)
		assert.Equal(t, why, p.Rows[0].Withheld, licence)
		if why == "" {
			assert.Empty(t, p.Missing())
			continue
		}
		assert.NotContains(t, string(p.Encode()), "1100.5", licence)
		assert.Equal(t, []food.ID{{Table: "house", Code: "b"}}, p.Missing())
		f, err := p.Library([]*food.Food{berry()}).Food(t.Context(), food.ID{Table: "house", Code: "B"})
		require.NoError(t, err)
		assert.Equal(t, 1100.5, f.Values[0].Amount)
		assert.True(t, p.Holds(proof.RowOf(berry(), "")))
		other := berry()
		other.Values[0].Amount++
		assert.False(t, p.Holds(proof.RowOf(other, "")))
	}
}

func TestRowsBesideTheTablesHere(t *testing.T) {
	p := packed("free to copy")
	told := func(find func(food.ID) (*food.Food, error)) (string, string) {
		differ, absent, err := p.Differ(find)
		require.NoError(t, err)
		return strings.Join(differ, "\n"), strings.Join(absent, "\n")
	}
	as := func(alter func(*food.Food)) func(food.ID) (*food.Food, error) {
		return func(food.ID) (*food.Food, error) { f := berry(); alter(f); return f, nil }
	}
	differ, absent := told(as(func(*food.Food) {}))
	assert.Empty(t, differ+absent)
	differ, _ = told(as(func(f *food.Food) { f.Values[0].Amount = 1000 }))
	assert.Equal(t, "house:b: CITAC is 1100.5 ± 80 mg (900 to 1300), n 4, measured in the pack, and here 1000 ± 80 mg (900 to 1300), n 4, measured", differ)
	differ, _ = told(as(func(f *food.Food) { f.Values = f.Values[1:] }))
	assert.Contains(t, differ, "and here there is none")
	differ, _ = told(as(func(f *food.Food) { f.Values = append(f.Values, food.Value{Constituent: "zz:1", Amount: 1}) }))
	assert.Contains(t, differ, "in the pack there is none")
	differ, _ = told(as(func(f *food.Food) { f.Portions[0].Grams = 150 }))
	assert.Contains(t, differ, "its names, portions, density or marks are other ones")
	_, absent = told(func(food.ID) (*food.Food, error) { return nil, fail.New(fail.NeedsTable, "none", "") })
	assert.Equal(t, "house:b: the table house is not loaded here", absent)
	differ, _ = told(func(food.ID) (*food.Food, error) { return nil, fail.New(fail.Wrong, "none", "") })
	assert.Equal(t, "house:b: there is no such food here", differ)
}

func TestWhatNoProgramWroteIsRefused(t *testing.T) {
	good := string(packed("free to copy").Encode())
	for name, c := range map[string]struct{ old, new, says string }{
		"another form":      {proof.Schema, "sipsum.proof/2", "and this program reads sipsum.proof/1"},
		"an unknown member": {`"drink": "x"`, `"drink": "x", "run": "rm"`, "unknown field"},
		"an unknown tag":    {`"of": "CITAC"`, `"of": "NOPE"`, `there is no constituent "NOPE"`},
		"an unknown state":  {`"state": "measured"`, `"state": "guessed"`, "guessed"},
		"stated twice":      {`"of": "CITAC"`, `"of": "WATER"`, "WATER stands there twice"},
		"less than nothing": {`"amount": 1100.5`, `"amount": -1100.5`, "CITAC is less than nothing"},
		"too large":         {`"amount": 1100.5`, `"amount": 1e999`, "cannot unmarshal"},
		"no density":        {`"g_per_ml": 1.04`, `"g_per_ml": 0`, "it has no density"},
		"no share":          {`"edible": 0.9`, `"edible": 1.9`, "its edible share is none"},
		"no portion":        {`"g": 140`, `"g": 0`, "a portion of it weighs nothing"},
		"no row":            {`"food": "house:b"`, `"food": "house"`, "is no row"},
		"nothing said":      {`"says": {`, `"withheld": "", "said": {`, "unknown field"},
		"more behind it":    {"}\n", "}\n{}", "there is more behind it"},
		"no drink":          {`"files": [`, `"files": [], "names": [`, ""},
	} {
		text := good
		if name == "more behind it" {
			text = strings.TrimSuffix(text, c.old) + c.new
		} else {
			text = strings.Replace(text, c.old, c.new, 1)
		}
		require.NotEqual(t, good, text, name)
		_, err := proof.Read([]byte(text))
		require.Error(t, err, name)
		assert.ErrorContains(t, err, c.says, name)
		assert.Equal(t, fail.Failed, fail.ExitCode(err), name)
		assert.ErrorContains(t, err, "its seal does not fit", name)
	}
	_, err := proof.Read(bytes.Repeat([]byte{' '}, proof.MostBytes()+1))
	assert.ErrorContains(t, err, "which no proof pack has")
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	_, err = proof.Read([]byte(strings.Repeat("[", 1<<20)))
	assert.Error(t, err)
}

func TestAPackThatContradictsItselfSaysSo(t *testing.T) {
	for says, alter := range map[string]func(p *proof.Pack){
		"the row house:b is not the one of its digest": func(p *proof.Pack) { p.Rows[0].Says.Note = "fresh" },
		"data/units.csv is not the one of its digest":  func(p *proof.Pack) { p.Constants = []proof.Constants{{File: "data/units.csv", Text: "x"}} },
		"is not that of its short digest":              func(p *proof.Pack) { p.Seed = 3 },
	} {
		p := packed("free to copy")
		alter(p)
		o, err := proof.Read(p.Encode())
		require.NoError(t, err)
		assert.Contains(t, strings.Join(o.Broken, "\n"), says)
	}
	spaced := bytes.Replace(packed("free to copy").Encode(), []byte(`"drink": "x"`), []byte(`"drink":  "x"`), 1)
	o, err := proof.Read(spaced)
	require.NoError(t, err)
	assert.NotEmpty(t, o.Broken)
}

func TestConstantsAreNamedByFileAndLine(t *testing.T) {
	ours := proof.ProgramConstants()
	assert.Empty(t, proof.ConstantsDiffer(ours, ours))
	i := slices.IndexFunc(ours, func(c proof.Constants) bool { return c.File == "data/units.csv" })
	require.GreaterOrEqual(t, i, 0)
	lines := strings.Split(ours[i].Text, "\n")
	lines[2] = "other"
	theirs := slices.Clone(ours)
	theirs[i].Text = strings.Join(lines, "\n")
	theirs[i].Digest = proof.TextDigest(theirs[i].Text)
	differ := proof.ConstantsDiffer(theirs, ours)
	require.Len(t, differ, 1)
	assert.True(t, strings.HasPrefix(differ[0], `data/units.csv differs from the pack's: line 3 of the pack is "other", here it is "`), differ[0])
	assert.Equal(t, []string{ours[0].File + " is not in the pack"}, proof.ConstantsDiffer(ours[1:], ours))
	assert.Equal(t, []string{"data/new.csv is in the pack, and this program has no such table"}, proof.ConstantsDiffer(append(slices.Clone(ours), proof.Constants{File: "data/new.csv"}), ours))
	core := slices.IndexFunc(ours, func(c proof.Constants) bool { return c.File == "data/core/values.csv" })
	require.GreaterOrEqual(t, core, 0)
	assert.Empty(t, ours[core].Text, "its rows stand in the pack by themselves")
	theirs = slices.Clone(ours)
	theirs[core].Digest = "00"
	assert.Equal(t, []string{"data/core/values.csv differs from the pack's: its digest is another"}, proof.ConstantsDiffer(theirs, ours))
}

// What agrees to a thousand-millionth is the same; a figure that is not there is not zero.
func TestWhatMoved(t *testing.T) {
	of := func(mean *float64, printed string) []proof.Figure {
		return []proof.Figure{{ID: "a", Of: "acid", Printed: printed, Stored: proof.Stored{Mean: mean}}}
	}
	assert.Empty(t, proof.Compare(of(number(1), "1"), of(number(1+9e-10), "1"), false))
	assert.Empty(t, proof.Compare(of(number(0), "0"), of(number(0), "0"), false))
	for what, c := range map[string][2][]proof.Figure{
		"mean":    {of(number(1), "1"), of(number(1+2e-9), "1")},
		"printed": {of(number(1), "1"), of(number(1), "1.0")},
		"missing": {of(number(1), "1"), nil},
		"new":     {nil, of(number(1), "1")},
	} {
		moved := proof.Compare(c[0], c[1], false)
		require.Len(t, moved, 1, what)
		assert.Equal(t, what, moved[0].What)
		assert.Len(t, proof.Compare(c[0], c[1], true), map[string]int{"printed": 1, "missing": 1}[what], "%s, as printed", what)
	}
	assert.Equal(t, "none", proof.Compare(of(nil, "1"), of(number(0), "1"), false)[0].Pack)
	part := func(mean float64) []proof.Figure {
		return []proof.Figure{{ID: "a", Parts: []proof.Part{{Food: "core:x", Mean: &mean}}}}
	}
	assert.Empty(t, proof.Compare(part(1), part(1+1e-12), false))
	assert.Equal(t, "brought_by", proof.Compare(part(1), part(2), false)[0].What)
	two := func(a, b float64, pa, pb string) []proof.Figure {
		return append(of(&a, pa), proof.Figure{ID: "b", Printed: pb, Stored: proof.Stored{Mean: &b}})
	}
	moved := proof.Compare(two(1, 1, "1", "1"), two(1.1, 2, "1.1", "2"), false)
	assert.Equal(t, "b", moved[0].ID, "what moved most stands first")
}

// Nothing that somebody hands in stops the program, or is taken for a pack that it is not: what reads as whole is
// written again byte for byte.
func FuzzRead(f *testing.F) {
	good := packed("free to copy").Encode()
	f.Add(good)
	f.Add(packed("").Encode())
	f.Add(proof.SealPage([]byte("<p>\n" + proof.BlockBegins + string(good) + proof.BlockEnds + "\n")))
	f.Add([]byte(proof.BlockBegins))
	f.Add([]byte(`{"schema":"sipsum.proof/1","rows":[{"food":"a:b","says":{"values":[{"of":"CITAC","state":"trace"}]}}]}`))
	f.Fuzz(func(t *testing.T, file []byte) {
		o, err := proof.Read(file)
		if err != nil {
			return
		}
		if len(o.Broken) == 0 && !bytes.Equal(o.Encode(), o.Text) {
			t.Fatal("taken as whole, and written otherwise")
		}
		lib := o.Library(nil)
		for _, r := range o.Rows {
			if id, _ := food.ParseID(r.Food); r.Says != nil {
				if _, err := lib.Food(t.Context(), id); err != nil && len(o.Names) == 0 {
					t.Fatal(err)
				}
			}
		}
	})
}

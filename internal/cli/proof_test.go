package cli_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
	"sipsum/internal/proof"
)

// verifying is a folder with a proof pack, where nothing else is.
type verifying struct {
	*testing.T
	folder string
	pack   []byte
}

func proven(t *testing.T, name string, args ...string) verifying {
	t.Helper()
	v := verifying{T: t, folder: t.TempDir()}
	t.Setenv("HOME", filepath.Join(v.folder, "home"))
	t.Setenv("XDG_DATA_HOME", "")
	t.Setenv("SIPSUM_DB", "")
	file := filepath.Join(v.folder, name)
	said, code := v.run(append([]string{"prove", "demo", "-o", file, "--draws", "100"}, args...)...)
	require.Zero(t, code, said)
	require.NoError(t, os.RemoveAll(filepath.Join(v.folder, "home")))
	pack, err := os.ReadFile(file)
	require.NoError(t, err)
	v.pack = pack
	return v
}

func (v verifying) run(args ...string) (said string, code int) {
	var out bytes.Buffer
	code = cli.Main(args, cli.Streams{In: strings.NewReader(""), Out: &out, Err: &out, Env: os.Getenv})
	return out.String(), code
}

// of checks a file in the folder, where no database is and none comes to be.
func (v verifying) of(pack []byte) (said string, code int) {
	v.Helper()
	file := filepath.Join(v.folder, "checked")
	require.NoError(v, os.WriteFile(file, pack, 0o600))
	said, code = v.run("verify", file)
	assert.NoDirExists(v, filepath.Join(v.folder, "home"))
	return strings.Join(strings.Fields(said), " "), code
}

// altered is the pack altered by somebody who seals it anew, with every digest that the alteration breaks.
func (v verifying) altered(alter func(p *proof.Pack)) []byte {
	v.Helper()
	o, err := proof.Read(v.pack)
	require.NoError(v, err)
	require.Empty(v, o.Broken)
	alter(o.Pack)
	for i := range o.Rows {
		o.Rows[i].Digest = o.Rows[i].Says.Digest()
	}
	o.Short = o.Inputs.Short(o.Program)
	return o.Encode()
}

func amountOf(t *testing.T, p *proof.Pack, food, tag string) *float64 {
	t.Helper()
	for _, r := range p.Rows {
		if r.Food == food {
			v, ok := r.Says.Find(tag)
			require.True(t, ok)
			return v.Amount
		}
	}
	require.Fail(t, "no row "+food)
	return nil
}

func TestWhoAltersAPackIsFoundByWhatMoves(t *testing.T) {
	v := proven(t, "pack.json")
	said, code := v.of(v.altered(func(*proof.Pack) {}))
	assert.Zero(t, code, said)
	assert.Contains(t, said, "same: ")

	for name, c := range map[string]struct {
		alter func(p *proof.Pack)
		says  []string
	}{
		"a row": {func(p *proof.Pack) { *amountOf(t, p, "core:passion-fruit-juice-purple", "CITAC") *= 1.1 }, []string{
			"not the same: ", "CITAC (citric acid): the pack says ",
		}},
		"a row, by less than is printed": {func(p *proof.Pack) { *amountOf(t, p, "core:spearmint", "K") *= 1 + 1e-6 }, []string{
			"not the same: ", "serving.K (potassium), mean: the pack says ",
		}},
		"a spread": {func(p *proof.Pack) {
			for _, r := range p.Rows {
				for i := range r.Says.Values {
					if x := &r.Says.Values[i]; r.Food == "core:passion-fruit-juice-purple" && x.Of == "K" {
						sd := *x.Amount / 2
						x.SD = &sd
					}
				}
			}
		}, []string{"not the same: ", "a row is not the program's own: core:passion-fruit-juice-purple"}},
		"an amount": {func(p *proof.Pack) {
			p.Files[0].Text = strings.Replace(p.Files[0].Text, "90 g core:sugar-white", "95 g core:sugar-white", 1)
		}, []string{"not the same: ", "serving.SUCS (sucrose): the pack says "}},
		"the seed":  {func(p *proof.Pack) { p.Seed = 2 }, []string{"not the same: ", "seed 2"}},
		"the draws": {func(p *proof.Pack) { p.Draws = 101 }, []string{"not the same: "}},
		"a constant": {func(p *proof.Pack) {
			for i := range p.Constants {
				if c := &p.Constants[i]; c.File == "data/acid_steps.csv" {
					c.Text = strings.Replace(c.Text, "3.", "4.", 1)
					c.Digest = proof.TextDigest(c.Text)
				}
			}
		}, []string{"not as it was written", "data/acid_steps.csv differs from the pack's: line "}},
		"a constant taken out": {func(p *proof.Pack) { p.Constants = p.Constants[1:] }, []string{"is not in the pack"}},
		"a figure": {func(p *proof.Pack) { *p.Figures[0].Mean *= 1 + 1e-8 }, []string{
			"not the same: 1 of ", "size.mass (mass), mean: the pack says ",
		}},
		"a figure as printed": {func(p *proof.Pack) { p.Figures[0].Printed = "1 g" }, []string{"size.mass (mass): the pack says 1 g; 1"}},
		"a figure taken out":  {func(p *proof.Pack) { p.Figures = p.Figures[1:] }, []string{"size.mass (mass): not in the pack; "}},
		"who brings it": {func(p *proof.Pack) {
			for i := range p.Figures {
				if f := &p.Figures[i]; f.ID == "serving.CAFFN" {
					f.Parts[0].Food = "core:water-pure"
				}
			}
		}, []string{"serving.CAFFN (caffeine), brought_by: the pack says core:water-pure"}},
		"the name":        {func(p *proof.Pack) { p.Drink = "Another" }, []string{"calls the drink or its claims otherwise"}},
		"a row less":      {func(p *proof.Pack) { p.Rows = p.Rows[1:] }, []string{"nothing can be calculated from it: ", "the pack holds no row core:citric-acid"}},
		"the drink":       {func(p *proof.Pack) { p.Files[0].Text = "drink: [" }, []string{"nothing can be calculated from it: "}},
		"an absurd row":   {func(p *proof.Pack) { *amountOf(t, p, "core:spearmint", "K") = 1e9 }, []string{"nothing can be calculated from it: ", "that cannot be"}},
		"endless draws":   {func(p *proof.Pack) { p.Draws = 1e9 }, []string{"nobody draws so often"}},
		"a source":        {func(p *proof.Pack) { p.Works[0].Citation = "Nature, as they say" }, []string{"not as it was written", "is not the one that the table names"}},
		"an address":      {func(p *proof.Pack) { p.Works[0].URL = "javascript:alert(1)" }, []string{"is not the one that the table names"}},
		"a publisher":     {func(p *proof.Pack) { p.Tables[0].Publisher = "the ministry" }, []string{"what is said of the table core"}},
		"another release": {func(p *proof.Pack) { p.Tables[0].Hash = strings.Repeat("0", 64) }, []string{"the table core of the pack is not the one of the program"}},
		"another's unit":  {func(p *proof.Pack) { p.Rows[0].Says.Values[0].Unit = "kg" }, []string{"states a unit that is not that of its figures"}},
	} {
		t.Run(name, func(t *testing.T) {
			said, code := v.of(v.altered(c.alter))
			assert.Equal(t, 1, code, said)
			for _, text := range c.says {
				assert.Contains(t, said, text)
			}
			assert.NotContains(t, said, "draws same: ")
		})
	}
}

// One byte anywhere is enough, in the pack or in the page around it, and in its seals.
func TestAByteAlteredIsFound(t *testing.T) {
	for _, name := range []string{"pack.json", "page.html"} {
		v := proven(t, name)
		said, code := v.of(v.pack)
		require.Zero(t, code, said)
		const places = 24
		for i := range places {
			pack := bytes.Clone(v.pack)
			at := (len(pack) - 1) * i / (places - 1)
			pack[at] ^= 1
			said, code := v.of(pack)
			assert.Equal(t, 1, code, "%s, byte %d: %s", name, at, said)
			assert.Regexp(t, `not as it was written|cannot be read as a proof pack`, said, "%s, byte %d", name, at)
		}
		for _, pack := range [][]byte{v.pack[:len(v.pack)-1], append(bytes.Clone(v.pack), '\n'), bytes.Replace(v.pack, []byte("\n"), []byte("\r\n"), 1)} {
			_, code := v.of(pack)
			assert.Equal(t, 1, code)
		}
	}
}

// A page whose words were altered and that was sealed anew is not the page of its pack.
func TestAPageIsThatOfItsPack(t *testing.T) {
	v := proven(t, "page.html")
	end := bytes.LastIndex(v.pack, []byte("<!-- sha256 "))
	altered := bytes.Replace(v.pack[:end], []byte("Garden Tide</bdi>"), []byte("Garden Tied</bdi>"), 1)
	require.NotEqual(t, v.pack[:end], altered)
	said, code := v.of(proof.SealPage(altered))
	assert.Equal(t, 1, code)
	assert.Contains(t, said, "the page around the pack is not the one that this program writes of it")
	assert.NotContains(t, said, "moved")
}

// Of another program's version only what is printed is compared, and that is said.
func TestAnotherVersionIsSaid(t *testing.T) {
	v := proven(t, "pack.json")
	older := func(alter func(p *proof.Pack)) []byte {
		return v.altered(func(p *proof.Pack) {
			p.Program = "sipsum 0.0.9"
			p.Constants = p.Constants[1:]
			*p.Figures[0].Mean *= 1 + 1e-6
			alter(p)
		})
	}
	said, code := v.of(older(func(*proof.Pack) {}))
	assert.Zero(t, code, said)
	assert.Contains(t, said, "same as printed: ")
	assert.Contains(t, said, "the pack is of sipsum 0.0.9 and this is sipsum "+cli.Version+": only what is printed is compared")
	said, code = v.of(older(func(p *proof.Pack) { p.Figures[0].Printed = "1 g" }))
	assert.Equal(t, 1, code, said)
	assert.Contains(t, said, "size.mass (mass): the pack says 1 g")
}

// The digest of a pack is that of every card and sheet of the drink, in every form, and hangs on nothing
// but the drink, its rows, seed, draws and version.
func TestEveryCardBearsTheDigestOfThePack(t *testing.T) {
	v := proven(t, "pack.json")
	o, err := proof.Read(v.pack)
	require.NoError(t, err)
	digest := regexp.MustCompile(`(?i)proof"?:?[  ]"?([0-9a-f]{12})`)
	of := func(args ...string) string {
		said, _ := v.run(append(args, "--draws", "100")...)
		found := digest.FindStringSubmatch(said)
		require.NotNil(t, found, "%v: %s", args, said)
		return found[1]
	}
	for _, page := range []string{"card", "sheet"} {
		for _, form := range []string{"text", "json", "html", "svg", "md"} {
			assert.Equal(t, o.Short, of(page, "demo", "--format", form), "%s %s", page, form)
		}
	}
	assert.Equal(t, o.Short, of("card", "demo", "--guest"))
	assert.Equal(t, o.Short, of("card", "demo", "--rules", "us"))
	assert.NotEqual(t, o.Short, of("card", "demo", "--seed", "2"))
	assert.NotEqual(t, o.Short, of("card", "demo:harbour-veil"))
	for i, name := range []string{"one.drink.yaml", "another.yaml"} {
		file := filepath.Join(v.folder, fmt.Sprint(i), name)
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o700))
		require.NoError(t, os.WriteFile(file, []byte(o.Files[0].Text), 0o600))
		assert.Equal(t, o.Short, of("card", file), "wherever the file lies")
	}
}

package cli_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/cli"
)

// pours are drinks of every kind of work: milk, spirit, gas, ice, heat, a dose that is searched for, a foam.
var pours = []string{
	"build: [%d g core:espresso, 120 g core:milk-whole]",
	"build: [%d g core:rum-40, 20 g core:lime-juice, 15 g core:sugar-white]\nfinish: [chill: {melt: 30 g}]",
	"components:\n  pop:\n    ingredients: [%d g core:lemon-juice, 300 g core:water-pure]\n    steps:\n      - carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 3.0 g/l ± 0.5 g/l}\nbuild: [100 g pop]",
	"components:\n  syrup:\n    ingredients: [%d g core:raspberry, 100 g core:sugar-white, 200 g core:water-pure]\n    steps:\n      - heat: {at: 80 °C, for: 10 min}\n      - strain: {collect: 80 g, through: cloth}\nbuild: [20 g syrup, 100 g core:water-pure]",
	"components:\n  sour:\n    ingredients: [%d g core:apple-juice]\n    steps:\n      - adjust: {ph: 3.0, with: core:citric-acid}\nbuild: [20 g sour, 30 g core:espresso]",
}

// fill writes n drinks into a folder, no two alike, some of them in folders of their own: the demos among them.
func fill(t testing.TB, dir string, n int) {
	t.Helper()
	demos, err := data.FS.ReadDir("demo")
	require.NoError(t, err)
	for i := range n {
		text := fmt.Sprintf("drink: \"Pour %d\"\nserves: 1\n"+pours[i%len(pours)]+"\n", i, 20+i%50)
		if i%10 == 9 {
			demo, err := data.FS.ReadFile("demo/" + demos[i/10%len(demos)].Name())
			require.NoError(t, err)
			text = string(demo)
		}
		path := filepath.Join(dir, fmt.Sprintf("%c", 'a'+i%4), fmt.Sprintf("%05d.drink.yaml", i))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	}
}

// stream assays what the arguments name, within this process.
func stream(t *testing.T, db string, jobs int, args ...string) (out string, code int) {
	t.Helper()
	var o, e bytes.Buffer
	args = append([]string{"assay", "--db", db, "--format", "jsonl", "--draws", "30", "--jobs", strconv.Itoa(jobs)}, args...)
	code = cli.Main(args, cli.Streams{In: strings.NewReader(""), Out: &o, Err: &e, Env: func(string) string { return "" }})
	assert.Empty(t, e.String())
	return o.String(), code
}

// Fifty drinks, eight at once, are each what they are alone: the race detector sees that none disturbs another. A line is
// the document of assay --format json, with the file.
func TestManyDrinksAtOnce(t *testing.T) {
	dir := t.TempDir()
	fill(t, filepath.Join(dir, "bar"), 50)
	db := filepath.Join(dir, "x.db")
	t.Chdir(dir)
	alone, code := stream(t, db, 1, "bar")
	require.Zero(t, code)
	atOnce, _ := stream(t, db, 8, "bar")
	require.True(t, alone == atOnce, "eight at once give other bytes")
	lines := strings.SplitAfter(alone, "\n")
	require.Len(t, lines, 51)
	file := regexp.MustCompile(`"file":"([^"]*)",`)
	var files []string
	for _, line := range lines[:50] {
		files = append(files, file.FindStringSubmatch(line)[1])
	}
	assert.True(t, slices.IsSorted(files), "in the order of the walk")
	for _, i := range []int{0, 17, 49} {
		document, code := run("", "assay", files[i], "--db", db, "--format", "json", "--draws", "30")
		require.Zero(t, code, document)
		var compact bytes.Buffer
		require.NoError(t, json.Compact(&compact, []byte(document)))
		assert.True(t, compact.String()+"\n" == strings.Replace(lines[i], `"file":"`+files[i]+`",`, "", 1), "%s is another document among many", files[i])
	}
}

// What work on many machines rests on: the same seed gives the same bytes, wherever, and the parts of a whole, put one
// behind the other, are the whole. Each part is a process with a home of its own.
func TestPartsOfManyAreTheWhole(t *testing.T) {
	dir := t.TempDir()
	fill(t, filepath.Join(dir, "bar"), 24)
	files, err := filepath.Glob(filepath.Join(dir, "bar", "*", "*"))
	require.NoError(t, err)
	require.Len(t, files, 24)
	part := func(seed string, jobs int, args ...string) string {
		cmd := command(t, t.TempDir(), append([]string{"assay", "--format", "jsonl", "--draws", "40", "--seed", seed, "--jobs", strconv.Itoa(jobs)}, args...)...)
		cmd.Dir = dir
		cmd.Env = append(cmd.Env, "GOMAXPROCS="+strconv.Itoa(jobs))
		out, err := cmd.Output()
		assert.NoError(t, err)
		return string(out)
	}
	for i := range files {
		files[i], err = filepath.Rel(dir, files[i])
		require.NoError(t, err)
	}
	whole := part("7", 3, "bar")
	require.Equal(t, 24, strings.Count(whole, "\n"))
	assert.False(t, whole == part("8", 3, "bar"), "another seed gives other figures")
	for _, n := range []int{2, 4, 8} {
		parts := make([]string, n)
		var all sync.WaitGroup
		for i := range n {
			all.Go(func() { parts[i] = part("7", 1+i%4, files[24*i/n:24*(i+1)/n]...) })
		}
		all.Wait()
		assert.True(t, whole == strings.Join(parts, ""), "%d parts are not the whole", n)
	}
	folders := ""
	for _, folder := range []string{"bar/a", "bar/b", "bar/c", "bar/d"} {
		folders += part("7", 2, folder)
	}
	assert.True(t, whole == folders, "its folders are not the whole")
}

// A name may be anything that a file system takes; each line is JSON nevertheless, and each word for people one line.
func TestNamesOfManyDrinks(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	const right, wrong = "drink: x\nserves: 1\nbuild: [30 g core:espresso]\n", "drink: x\nserves: 0\nbuild: [30 g core:espresso]\n"
	require.NoError(t, os.Mkdir("odd", 0o755))
	names := []string{"a\nb", "c\"\\\t\x1b[2J", "d\xff\xfe", "e\u2028\u202ef", "f{}"}
	for _, name := range names {
		for ending, text := range map[string]string{" right": right, " wrong": wrong} {
			if os.WriteFile(filepath.Join("odd", name+ending+".drink.yaml"), []byte(text), 0o600) != nil {
				t.Skip("this file system does not take every name")
			}
		}
	}
	huge, err := os.Create("odd/huge.drink.yaml")
	require.NoError(t, err)
	require.NoError(t, huge.Truncate(100<<20))
	require.NoError(t, huge.Close())
	var out, said bytes.Buffer
	code := cli.Main([]string{"assay", "odd", "--db", ":memory:", "--format", "jsonl", "--draws", "20"}, cli.Streams{In: strings.NewReader(""), Out: &out, Err: &said, Env: func(string) string { return "" }})
	assert.Equal(t, 5, code)
	lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	require.Len(t, lines, 2*len(names)+1)
	var files []string
	for _, line := range lines {
		var document struct {
			Schema, File string
			Exit         int
		}
		require.NoError(t, json.Unmarshal([]byte(line), &document))
		files = append(files, document.File)
		if strings.HasSuffix(document.File, "right.drink.yaml") {
			assert.Equal(t, "sipsum.assay/1", document.Schema, document.File)
		} else {
			assert.Equal(t, "sipsum.error/1", document.Schema, document.File)
			assert.Equal(t, 2, document.Exit)
		}
	}
	assert.Contains(t, files, "odd/a\nb right.drink.yaml")
	assert.Contains(t, files, "odd/d\ufffd\ufffd wrong.drink.yaml")
	assert.Contains(t, files, "odd/e\u2028\u202ef right.drink.yaml")
	assert.Equal(t, len(names)+2, strings.Count(said.String(), "\n"), "a line for each fault, and one at the end:\n%s", said.String())
	assert.NotContains(t, said.String(), "\x1b")
	assert.Contains(t, said.String(), "huge.drink.yaml:1:1: the file has more than", "the file of 100 MB is refused by its size")
}

// Drinks in a second, with as many at once as there are cores; b.N of them, of all kinds.
func BenchmarkManyDrinks(b *testing.B) {
	for _, jobs := range []int{1, 2} {
		b.Run(fmt.Sprintf("%d at once", jobs), func(b *testing.B) {
			dir := b.TempDir()
			fill(b, filepath.Join(dir, "bar"), 60)
			for b.Loop() {
				code := cli.Main([]string{"assay", filepath.Join(dir, "bar"), "--db", filepath.Join(dir, "x.db"), "--format", "jsonl", "--jobs", strconv.Itoa(jobs)},
					cli.Streams{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard, Env: func(string) string { return "" }})
				require.Zero(b, code)
			}
			b.ReportMetric(60*float64(b.N)/b.Elapsed().Seconds(), "drinks/s")
		})
	}
}

package cli_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
)

// example is a command line of the README and what stands below it.
type example struct {
	line    int
	args    []string
	printed []string
}

// A line of the README that is a command: indented, with a prompt where its output is
// shown, and perhaps with a comment.
var (
	commandLine = regexp.MustCompile(`^    (\$ )?(?:go run \./cmd/)?sipsum( .*?)?(?:\s+# .*)?$`)
	word        = regexp.MustCompile(`"[^"]*"|\S+`)
	inline      = regexp.MustCompile("`sipsum ([^`]+)`")
)

func readme(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	return strings.Split(string(text), "\n")
}

// examples reads the command lines of the README.
func examples(t *testing.T) (list []example) {
	open := false // what follows is output
	for i, line := range readme(t) {
		found := commandLine.FindStringSubmatch(line)
		switch {
		case found != nil:
			list = append(list, example{line: i + 1, args: wordsOf(found[2])})
			open = found[1] != ""
		case strings.HasPrefix(line, "    ") && open:
			list[len(list)-1].printed = append(list[len(list)-1].printed, strings.TrimPrefix(line, "    "))
		case line != "":
			open = false
		}
	}
	return list
}

func wordsOf(line string) []string {
	words := word.FindAllString(line, -1)
	for i, w := range words {
		words[i] = strings.Trim(w, `"`)
	}
	return words
}

// stranger is where a reader of the README stands: a folder with the files that it speaks
// of, a home without a database, and the whole release of SR28 among the downloads if it
// is at hand.
func stranger(t *testing.T) (home string, hasTables bool) {
	t.Helper()
	home = t.TempDir()
	drink, err := os.ReadFile("testdata/readme/syrup.drink.yaml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(home, "syrup.drink.yaml"), drink, 0o600))
	release := filepath.Join(os.Getenv("SIPSUM_SHARED"), "tables", "sr28")
	if _, err := os.Stat(release); err == nil && filepath.IsAbs(release) {
		require.NoError(t, os.Mkdir(filepath.Join(home, "Downloads"), 0o700))
		require.NoError(t, os.Symlink(release, filepath.Join(home, "Downloads", "sr28")))
		hasTables = true
	}
	t.Setenv("HOME", home)
	t.Setenv("XDG_DATA_HOME", "")
	t.Setenv("SIPSUM_DB", "")
	t.Setenv("COLUMNS", "") // a page of the README is as wide as in a pipe
	t.Chdir(home)
	return home, hasTables
}

// run gives what a command prints, and its exit code.
func run(home string, args ...string) (string, int) {
	args = slices.Clone(args)
	for i, a := range args {
		if rest, below := strings.CutPrefix(a, "~/"); below { // as a shell does
			args[i] = filepath.Join(home, rest)
		}
	}
	var out bytes.Buffer
	code := cli.Main(args, cli.Streams{In: strings.NewReader(""), Out: &out, Err: &out, Env: os.Getenv})
	return out.String(), code
}

// served tries a command that goes on until it is interrupted: it prints an address, at which there is a page.
func served(t *testing.T, args []string) {
	t.Helper()
	out, said := io.Pipe()
	ended := make(chan int, 1)
	go func() {
		ended <- cli.Main(args, cli.Streams{In: strings.NewReader(""), Out: said, Err: said, Env: os.Getenv})
		said.Close()
	}()
	address, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err, address)
	answer, err := http.Get(strings.TrimSpace(address))
	require.NoError(t, err)
	answer.Body.Close()
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	self, err := os.FindProcess(os.Getpid())
	require.NoError(t, err)
	require.NoError(t, self.Signal(os.Interrupt)) // the command waits for it, for it has printed
	assert.Equal(t, 0, <-ended)
}

// Every command of the README does what the README says, and prints what it shows: line
// for line from its beginning to its end, but for what … leaves out. Update the README, not
// this test.
func TestReadmeExamples(t *testing.T) {
	list := examples(t)
	require.Greater(t, len(list), 10)
	home, tables := stranger(t)
	loaded := false
	for _, e := range list {
		loads := slices.Contains(e.args, "load")
		if (loads || slices.Contains(e.args, "--tables")) && !tables {
			t.Logf("README.md:%d: skipped, it wants the tables in SIPSUM_SHARED", e.line)
			continue
		}
		loaded = loaded || loads
		if e.args[0] == "serve" {
			served(t, e.args)
			continue
		}
		out, code := run(home, e.args...)
		assert.NotEmpty(t, strings.TrimSpace(out), "README.md:%d: prints nothing", e.line)
		if faulty := slices.Contains(e.args, "syrup.drink.yaml"); faulty {
			assert.Equal(t, 2, code, "README.md:%d", e.line)
		} else {
			assert.Contains(t, []int{0, 3}, code, "README.md:%d: %s", e.line, out)
		}
		if e.printed != nil {
			shows(t, e, out)
		}
	}
	assert.Equal(t, tables, loaded)
}

// shows compares what the README shows with what was printed.
func shows(t *testing.T, e example, out string) {
	t.Helper()
	printed := strings.Split(strings.TrimRight(out, "\n"), "\n")
	for i := range printed {
		printed[i] = strings.TrimRight(printed[i], " ")
	}
	at, skipped := 0, false
	for i, line := range e.printed {
		line = strings.TrimRight(line, " ")
		if line == "…" {
			skipped = true
			continue
		}
		for skipped && at < len(printed) && !alike(line, printed[at]) {
			at++
		}
		if at >= len(printed) || !alike(line, printed[at]) {
			next := "the end"
			if !skipped && at < len(printed) {
				next = printed[at]
			}
			t.Errorf("README.md:%d: `sipsum %s` does not print there\n%s\nbut\n%s", e.line+1+i, strings.Join(e.args, " "), line, next)
			return
		}
		at, skipped = at+1, false
	}
	assert.True(t, skipped || at == len(printed), "README.md:%d: `sipsum %s` prints more: end with …, or show\n%s", e.line, strings.Join(e.args, " "), strings.Join(printed[min(at, len(printed)):], "\n"))
}

// alike compares two lines; … within the first stands for any words.
func alike(shown, printed string) bool {
	begin, end, cut := strings.Cut(shown, "…")
	if !cut || strings.Contains(printed, "…") {
		return shown == printed
	}
	return strings.HasPrefix(printed, begin) && strings.HasSuffix(printed, end)
}

// The commands within sentences run too.
func TestReadmeSpeaksOfCommandsThatRun(t *testing.T) {
	found := inline.FindAllStringSubmatch(strings.Join(readme(t), "\n"), -1)
	home, _ := stranger(t)
	require.NotEmpty(t, found)
	for _, f := range found {
		if args := wordsOf(f[1]); args[0] == "serve" {
			served(t, args)
			continue
		}
		out, code := run(home, wordsOf(f[1])...)
		assert.Contains(t, []int{0, 3}, code, "sipsum %s: %s", f[1], out)
	}
}

// Every drink file of the README is one; what is shown of a component alone is put into a
// component of milk. A file that names itself in its first line is there for those below it.
func TestReadmeDrinkFiles(t *testing.T) {
	blocks := regexp.MustCompile("(?s)```yaml\n(.*?)```").FindAllStringSubmatch(strings.Join(readme(t), "\n"), -1)
	home, _ := stranger(t)
	require.GreaterOrEqual(t, len(blocks), 4)
	for i, b := range blocks {
		text := b[1]
		if named := regexp.MustCompile(`^# (\S+\.shelf\.yaml)\n`).FindStringSubmatch(text); named != nil {
			require.NoError(t, os.WriteFile(filepath.Join(home, named[1]), []byte(text), 0o600))
			continue
		}
		if strings.HasPrefix(text, " ") {
			text = "drink: Read\nserves: 1\ncomponents:\n  milk:\n    ingredients: [200 g core:milk-whole]\n" + text + "build: [60 g milk]\n"
		}
		name := filepath.Join(home, "readme.drink.yaml")
		require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
		out, code := run(home, "sheet", name)
		assert.Contains(t, []int{0, 3}, code, "block %d of the README: %s", i+1, out)
	}
}

// below gives the rows of the README's table with this head, and where they stand.
func below(t *testing.T, lines []string, head string) (from, to int) {
	t.Helper()
	from = slices.Index(lines, head) + 2
	require.Greater(t, from, 1, "the README has no table %s", head)
	for to = from; strings.HasPrefix(lines[to], "|"); to++ {
	}
	return from, to
}

// isTable holds a table of the README to what the program knows; -update writes it.
func isTable(t *testing.T, head string, want []string) {
	t.Helper()
	lines := readme(t)
	from, to := below(t, lines, head)
	if *update {
		lines = slices.Replace(lines, from, to, want...)
		require.NoError(t, os.WriteFile("../../README.md", []byte(strings.Join(lines, "\n")), 0o644))
		return
	}
	assert.Equal(t, want, lines[from:to], "the table below %s; -update writes it", head)
}

// The README's table of steps is that of sipsum new --steps.
func TestReadmeShowsEveryStep(t *testing.T) {
	doc, _, code := begin(t, "--steps", "--format", "json")
	require.Equal(t, 0, code)
	var steps struct {
		Groups []struct {
			Steps []struct {
				Does, Example string
				Also          []string
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(doc), &steps))
	cell := strings.NewReplacer("|", `\|`)
	var rows []string
	for _, g := range steps.Groups {
		for _, s := range g.Steps {
			rows = append(rows, "| "+cell.Replace(s.Does)+" | `"+cell.Replace(s.Example)+"` | "+strings.Join(s.Also, ", ")+" |")
		}
	}
	isTable(t, "| what it does | a line to paste | also written |", rows)
}

// So are its exit codes those of the program.
func TestReadmeShowsEveryExitCode(t *testing.T) {
	var rows []string
	for _, m := range fail.Meanings() {
		rows = append(rows, fmt.Sprintf("| %d | %s |", m.Code, m.Meaning))
	}
	isTable(t, "| exit code | it says |", rows)
}

// Every reading and every measure that a file may have stands in the README.
func TestReadmeShowsEveryReadingAndMeasure(t *testing.T) {
	var schema struct {
		Defs struct {
			Measured struct{ Properties map[string]any }
		} `json:"$defs"`
	}
	require.NoError(t, json.Unmarshal(drink.Schema(), &schema))
	require.NotEmpty(t, schema.Defs.Measured.Properties)
	lines := readme(t)
	from, to := below(t, lines, "| reading | written |")
	readings := strings.Join(lines[from:to], "\n")
	for key := range schema.Defs.Measured.Properties {
		assert.Contains(t, readings, "`"+key+":", "no reading of the README")
	}
	from, to = below(t, lines, "| you write | it means |")
	measures := strings.Join(lines[from:to], "\n")
	for _, row := range embedded.Rows("units.csv") {
		assert.Regexp(t, "`([0-9]+ )?"+row.Text("unit")+"[` ]", measures)
	}
}

// A newcomer reads it in one sitting: our own bound.
func TestReadmeIsShort(t *testing.T) {
	const mostLines = 370
	assert.LessOrEqual(t, len(readme(t)), mostLines+1)
}

// What the README writes of a line or a reading is read so: each form stands in a drink.
func TestReadmeFormsAreRead(t *testing.T) {
	lines := readme(t)
	code := regexp.MustCompile("`([^`…]+)`")
	cells := func(head string, column int) (forms []string) {
		from, to := below(t, lines, head)
		for _, row := range lines[from:to] {
			for _, m := range code.FindAllStringSubmatch(strings.Split(row, "|")[column], -1) {
				forms = append(forms, m[1])
			}
		}
		return forms
	}
	const head = "drink: Forms\nserves: 1\n"
	pot := head + "components:\n  pot:\n    ingredients:\n      - 100 g core:sugar-white\n"
	for _, form := range cells("| you write | it means |", 1) {
		switch {
		case strings.Contains(form, "core:"):
		case form[0] >= 'a' && form[0] <= 'z':
			form = "1 " + form + " core:milk-whole"
		default:
			form += " core:milk-whole"
		}
		pot += "      - " + form + "\n"
	}
	for _, form := range cells("| reading | written |", 2) {
		if strings.HasPrefix(form, "titration") {
			break // a titration and its sample are one reading, shown below the table
		}
		_, faults := drink.Parse("readme", []byte(head+"build: [10 g core:milk-whole]\nfinish: [measured: {"+form+"}]\n"), nil)
		assert.NoError(t, faults.Err(fail.Wrong), form)
	}
	home, _ := stranger(t)
	require.NoError(t, os.WriteFile("forms.drink.yaml", []byte(pot+"build: [10 g pot]\n"), 0o600))
	out, status := run(home, "assay", "forms.drink.yaml")
	assert.Equal(t, 0, status, out)
}

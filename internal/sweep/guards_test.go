package sweep_test

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// guardsEnv set to "all" takes every guard out in turn; else those that it names a part of.
const guardsEnv = "SIPSUM_GUARDS"

// guard is a statement of the program without which a figure becomes absurd. The line
// above it says so by its name.
type guard struct {
	name  string
	law   string // that breaks without it
	drink string // that shows so
}

// impossibleIsRefused is the law of drinks that cannot be made as written.
const impossibleIsRefused = "the impossible is refused"

func built(lines string) string { return "drink: \"Proof\"\nserves: 1\nbuild: [" + lines + "]\n" }

func stepped(ingredients, step string) string {
	return fmt.Sprintf("drink: \"Proof\"\nserves: 1\ncomponents:\n  pot:\n    ingredients: [%s]\n    steps:\n      - %s\nbuild: [20 g pot]\n", ingredients, step)
}

func owned(values string) string {
	return "drink: \"Proof\"\nserves: 1\nfoods:\n  own:\n    name: \"House\"\n    per: 100 g\n    values: {" + values + "}\n    source: \"invented\"\nbuild: [10 g own:own, 90 g core:water-pure]\n"
}

// guards are all guards of the program. One that is not here, or is here and gone,
// fails TestGuardsAreListed.
var guards = []guard{
	{"100 g are 100 g", "weighs what was poured", built("100 g ± 0.1 g core:apple-juice")},
	{"what is carried is no water", "riders are no water", owned("ASPM: 60 g, FAT: 0 g, PROCNT: 0 g, CHOCDF: 1 g")},
	{"unknown is not water", fewFigures.name, fewIn("syrup", "SUGAR: 5 g", 50)},
	{"open water is not read", fewFigures.name, fewIn("syrup", "SUGAR: 5 g", 50)},
	{"open alcohol is not read", unstatedAlcohol.name, fewIn("spirit", "WATER: 62 g, SUGAR: 2 g", 98)},
	{"nothing in 100 ml of nobody knows what", fewFigures.name, fewIn("syrup", "SUGAR: 5 g", 50)},
	{"open water is not dissolved", fewFigures.name, fewIn("syrup", "SUGAR: 5 g", 2)},
	{"what may be water is no solids", fewFigures.name, fewIn("syrup", "SUGAR: 5 g", 50)},
	{"a normal is cut", "interval holds mean", built("10 g ± 9 g sd core:apple-juice, 30 g core:water-pure")},
	{"an interval reaches its mean", "interval holds mean", stepped("1000 g core:water-pure, 5 g core:lime-juice", "measured: {ta: 0 %}")},
	{"a ratio needs acid", "a ratio needs acid", built("100 g core:water-tap")},
	{"an open pH", "an open pH is withheld", built("100 g core:fennel-juice")},
	{"no NaN in a document", foodIsServed.name, built("100 g core:espresso")},
	{"no acidity below zero", "acidity of its acids", built("100 g core:water-mineral-high")},
	{"no more melts than there is", "a glass only waits", built("100 g core:apple-juice") + "stands: {ice: 3 g ± 0 g, melts: 2.01 g/min ± 0 g/min}\n"},
	{"nothing freezes onto the ice", "a glass only waits", built("10 g core:apple-juice") + "at: 5 °C\nstands: {ice: 100 g, room: 0 °C}\n"},
	{"a share is at most all", "interval holds mean", stepped("50 g core:sugar-white, 50 g core:water-pure", "invert: {share: 97 % ± 6 %}")},
	{"a ferment takes no alcohol away", impossibleIsRefused, stepped("100 g core:wine-white", "ferment: {after: {ALC: 0.5 g}, because: \"invented\"}")},
	{"a sample can be titrated", impossibleIsRefused, stepped("100 g core:lemon-juice", "measured: {titration: [[0 ml, 2.4], [0.0035 ml, 3.5], [0.0085 ml, 8.2]], base: 1 mol/l, sample: 0.01 g}")},
	{"no titration beyond the sourest", impossibleIsRefused, stepped("100 g core:lemon-juice", "measured: {titration: [[0 ml, 2.6], [5 ml, 3.5], [1000 ml, 9]], base: 20 mol/l, sample: 10 g}")},
	{"riders share the room", impossibleIsRefused, owned("CAFFN: 70 g, K: 38 g")},
	{"sodium is of a salt", impossibleIsRefused, owned("NA: 60 g")},
	{"gas is charged before it is left", impossibleIsRefused, stepped("100 g core:water-pure", "carbonate: {bottle: 500 ml, charge: 0.1 g, at: 4 °C, left: 5 g/l}")},
	{"no bottle stands that", impossibleIsRefused, stepped("100 g core:water-pure", "carbonate: {bottle: 500 ml, charge: 800 g, at: 4 °C}")},
	{"no glass holds that gas", impossibleIsRefused, stepped("100 g core:water-pure", "carbonate: {left: 50 g/l}")},
	{"no ice takes up gas", impossibleIsRefused, stepped("100 g core:water-pure", "foam: {charge: 2 g, gas: CO2, bottle: 0.5 l, at: -20 °C}")},
	{"no ice is carbonated", impossibleIsRefused, stepped("100 g core:water-pure", "carbonate: {bottle: 500 ml, charge: 2 g, at: -20 °C}")},
	{"there is liquid in a foam", impossibleIsRefused, stepped("100 g core:sugar-white", "foam: {overrun: 80 %}")},
	{"no siphon is so small in a draw", "a foam is its liquid and gas", stepped("700 g core:water-pure", "foam: {charge: 8 g, gas: N2, bottle: 1.4 l ± 0.7 l, at: 4 °C, overrun: 20 %}")},
	{"a wash has a fat", impossibleIsRefused, stepped("100 g core:lemon-juice", "wash: {fat: [10 g core:sugar-white]}")},
	{"the drink fits the bottle", impossibleIsRefused, stepped("100 g core:water-pure", "carbonate: {bottle: 50 ml, charge: 1 g, at: 4 °C}")},
	{"no more than dissolves", impossibleIsRefused, stepped("18 g core:coffee-roasted-arabica, 300 g core:water-brew", "brew: {out: 250 g, yield: 49 %}")},
	{"no colder than the freezer", impossibleIsRefused, stepped("100 g core:wine-white", "concentrate: {by: freezing, to: 20 g}")},
	{"no impossible pH", "pH possible", built("50 g core:quinine-hydrochloride, 50 g core:water-pure")},
	{"no more than passes", impossibleIsRefused, stepped("100 g core:apple-juice", "strain: {collect: 200 g, through: cloth}")},
	{"no more than the whey", impossibleIsRefused, stepped("100 g core:milk-whole, 5 g core:lemon-juice", "curdle: {collect: 200 g, by: acid}")},
	{"no water reads nothing away", impossibleIsRefused, stepped("50 g core:sugar-white, 50 g core:water-pure", "dilute: {brix: 0}")},
	{"not below the dry matter", impossibleIsRefused, stepped("50 g core:sugar-white, 50 g core:water-pure", "reduce: {to: 30 g}")},
	{"protein buffers", "protein needs a titration", built("90 g core:milk-whole, 10 g core:sugar-white")},
	{"unknown is not zero", "unknown is not zero", built("100 g core:espresso")},
	{"an open liquid holds little gas", "an open liquid holds little gas", built("100 g core:water-tap")},
	{"what nobody knows of others may be theirs", "the ladder holds", built("30 g core:passion-fruit-juice-purple, 60 g core:whey-acid, 40 g core:espresso")},
	{"a name states its strength", "a stated strength is held", built("40 g core:rum-40, 60 g core:water-pure")},
	{"ice does not warm", impossibleIsRefused, stepped("100 g core:apple-juice", "chill: {from: 4 °C, to: 70 °C}")},
	{"what is spoken holds the figure", "what is spoken is borne", built("40 g core:espresso, 10 g core:lemon-juice")},
	{"only plain words are spoken", "what is spoken is borne", strings.Replace(stepped("20 g core:lemon-juice, 5 g core:sugar-white", "cool: {to: 4 °C}"), "pot", "fat-free cordial", 2)},
	{"not colder than it freezes", impossibleIsRefused, stepped("100 g core:apple-juice", "chill: {from: 20 °C, to: -8 °C}")},
	{"no more than is clear", impossibleIsRefused, stepped("100 g core:apple-juice", "clarify: {by: centrifuge, collect: 150 g}")},
	{"no ferment raises what it reads", impossibleIsRefused, stepped("100 g core:apple-juice", "ferment: {after: {brix: 40}}")},
	{"water only adds", impossibleIsRefused, stepped("100 g core:apple-juice", "dilute: {to: 50 g}")},
}

// brokenBy asks one law of a drink and tells how it is broken, or "".
func brokenBy(k *kitchen, name, text string) string {
	s, refused := k.serve("proof", text)
	switch {
	case name == impossibleIsRefused && refused == nil:
		return "it is made all the same"
	case name == impossibleIsRefused:
		return refused.proper()
	case refused != nil:
		return refused.err.Error()
	case name == foodIsServed.name:
		return ""
	}
	i := slices.IndexFunc(allLaws(), func(l law) bool { return l.name == name })
	if i < 0 {
		return "there is no law " + name
	}
	how := ""
	allLaws()[i].broken(s, func(_ float64, format string, args ...any) { how = fmt.Sprintf(format, args...) })
	return how
}

func allLaws() []law { return slices.Concat(laws, printedLaws, []law{fewFigures, unstatedAlcohol}) }

// With its guard each proof keeps its law.
func TestGuard(t *testing.T) {
	k := newKitchen(t)
	for _, g := range guards {
		t.Run(g.name, func(t *testing.T) {
			if how := brokenBy(k, g.law, g.drink); how != "" {
				t.Errorf("%s: %s\n%s", g.law, how, indented(g.drink))
			}
		})
	}
}

// marker is a line of the program that announces a guard.
type marker struct {
	name, file string
	line       int
}

var marks = regexp.MustCompile(`^\s*// guard: (.+?)\s*$`)

// markers finds them in everything that is no test.
func markers(t *testing.T) []marker {
	t.Helper()
	var all []marker
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(path, filepath.Join("sweep", "doc.go")) {
			return err
		}
		raw, err := os.ReadFile(path)
		for i, line := range strings.Split(string(raw), "\n") {
			if m := marks.FindStringSubmatch(line); m != nil {
				all = append(all, marker{m[1], path, i + 1})
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A guard in the program is in the list, and a guard in the list is in the program.
func TestGuardsAreListed(t *testing.T) {
	found := map[string]int{}
	for _, m := range markers(t) {
		found[m.name]++
		if !slices.ContainsFunc(guards, func(g guard) bool { return g.name == m.name }) {
			t.Errorf("%s:%d: the guard %q is not in the list of guards_test.go: add the law that breaks without it, and a drink", m.file, m.line, m.name)
		}
	}
	for _, g := range guards {
		if found[g.name] != 1 {
			t.Errorf("the guard %q stands %d times in the program", g.name, found[g.name])
		}
	}
}

// Taken out, each guard leaves its law broken. The program without it is an overlay of
// the build, so no file changes.
func TestEveryGuardIsNeeded(t *testing.T) {
	asked := os.Getenv(guardsEnv)
	if asked == "" {
		t.Skip("set " + guardsEnv + "=all to take every guard out in turn")
	}
	for _, m := range markers(t) {
		if asked != "all" && !strings.Contains(m.name, asked) {
			continue
		}
		without, err := takenOut(m)
		if err != nil {
			t.Errorf("%s:%d: %v", m.file, m.line, err)
			continue
		}
		out, failed := testWith(t, m, without)
		switch needle := "--- FAIL: TestGuard/" + strings.ReplaceAll(m.name, " ", "_"); {
		case failed && strings.Contains(out, needle):
			t.Logf("%s: its law breaks without it", m.name)
		case failed:
			t.Errorf("%s:%d: the program without the guard %q does not run:\n%s", m.file, m.line, m.name, out)
		default:
			t.Errorf("%s:%d: nothing breaks without the guard %q: take it out, or find the drink that needs it", m.file, m.line, m.name)
		}
	}
}

// testWith runs a guard's proof with one file of the program replaced.
func testWith(t *testing.T, m marker, text string) (out string, failed bool) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "without.go")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	path, err := filepath.Abs(m.file)
	if err != nil {
		t.Fatal(err)
	}
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{path: file}})
	if err != nil {
		t.Fatal(err)
	}
	list := filepath.Join(t.TempDir(), "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		t.Fatal(err)
	}
	pattern := "^TestGuard$/^" + regexp.QuoteMeta(strings.ReplaceAll(m.name, " ", "_")) + "$"
	cmd := exec.CommandContext(t.Context(), "go", "test", "-vet=off", "-overlay", list, "-run", pattern, ".")
	raw, err := cmd.CombinedOutput()
	return string(raw), err != nil
}

// takenOut gives the file of a guard without it. Below the marker stands either an if,
// whose condition becomes false; a case, likewise; a key of a literal, likewise; a line
// with max or min, each of which becomes its first argument; or a statement that does
// nothing any more.
func takenOut(m marker) (string, error) {
	raw, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, m.file, raw, parser.ParseComments)
	if err != nil {
		return "", err
	}
	here := func(n ast.Node) bool { return set.Position(n.Pos()).Line == m.line+1 }
	at := func(p token.Pos) int { return set.Position(p).Offset }
	var edits []edit
	never := func(n ast.Node) {
		edits = append(edits, edit{at(n.Pos()), at(n.Pos()), "false && ("}, edit{at(n.End()), at(n.End()), ")"})
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil || len(edits) > 0 && !isClamp(n) || !here(n) {
			return true
		}
		switch n := n.(type) {
		case *ast.IfStmt:
			never(n.Cond)
		case *ast.CaseClause:
			for _, condition := range n.List {
				never(condition)
			}
		case *ast.KeyValueExpr:
			never(n.Value)
		case *ast.CallExpr:
			if isClamp(n) {
				first := n.Args[0]
				edits = append(edits, edit{at(n.Pos()), at(first.Pos()), ""}, edit{at(first.End()), at(n.End()), ""})
			}
		}
		return true
	})
	if len(edits) == 0 {
		ast.Inspect(file, func(n ast.Node) bool {
			if statement, ok := n.(ast.Stmt); ok && len(edits) == 0 && here(n) {
				edits = append(edits, edit{at(statement.Pos()), at(statement.Pos()), "if false { "}, edit{at(statement.End()), at(statement.End()), " }"})
			}
			return true
		})
	}
	if len(edits) == 0 {
		return "", fmt.Errorf("below the marker of %q stands nothing that can be taken out", m.name)
	}
	return apply(string(raw), edits), nil
}

// isClamp reports a call of max or min.
func isClamp(n ast.Node) bool {
	call, ok := n.(*ast.CallExpr)
	if !ok {
		return false
	}
	name, ok := call.Fun.(*ast.Ident)
	return ok && (name.Name == "max" || name.Name == "min")
}

// edit replaces the bytes of a text from a place to another.
type edit struct {
	from, to int
	text     string
}

func apply(text string, edits []edit) string {
	slices.SortStableFunc(edits, func(a, b edit) int { return b.from - a.from })
	for _, e := range edits {
		text = text[:e.from] + e.text + text[e.to:]
	}
	return text
}

package internal_test

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The measures of the house, by which a stranger still finds the room that a line belongs
// to (our own bounds). Tests do not count.
const (
	mostMethods = 30 // of a type
	mostFields  = 20 // of a struct
)

// sizes lists the rooms whose size is held: the most lines, and the most files (0: as many
// as it wants). A room cut from the assay is 1,800 lines and 18 files.
var sizes = []struct {
	room         string
	lines, files int
}{
	{"internal/acidity", 1830, 18}, // what a food lacks of its published pH can wait there until somebody asks
	{"internal/amount", 1800, 18},
	{"internal/assay", 2000, 20},   // a walk that only asks what was read of its instruments has its file; the bubbles that are poured with a foam are carried there, and what titrations tell
	{"internal/burette", 2050, 18}, // what a curve would tell that nobody has read yet is worked out there, on the same model
	{"internal/chemistry", 1800, 18},
	{"internal/composition", 1800, 18},
	{"internal/curdling", 1800, 18},
	{"internal/foaming", 1800, 18},
	{"internal/drivers", 1800, 18},
	{"internal/invent", 2250, 18}, // the search as arithmetic, the drink that is calculated and the text that is written have their files
	{"internal/liquid", 1800, 18},
	{"internal/minutes", 900, 10},
	{"internal/note", 1800, 18},
	{"internal/meter", 1200, 12},
	{"internal/reading", 2480, 18}, // how the next lot differs and what an instrument of the shelf showed has its file; why a reading is kept apart is said there, what waits for a decision, and which reading told what nobody stated; a reading that contradicts its recipe is doubted there, and has its own worlds
	{"internal/recipe", 2150, 19},  // what a name may mean is told there, the drink's own names first, and what to write for a plain word
	{"internal/titration", 1800, 18},
	{"internal/rewrite", 900, 9},
	{"internal/bench", 1200, 12},
	{"internal/dosing", 1800, 18},
	{"internal/drink", 6850, 0},       // the shelf of meters, the bench log and house rules are read there as a drink is; a stranger's hand has its lines here: what a step, a key or a unit is called by others, and for each slip the line as it should be; the facts of a coffee, the words of constituents, a dose to be calculated, how a food is sold, a foam, how long a step takes and how a glass stands
	{"internal/prep", 5180, 0},        // a file a step: ice, koji, clear liquids, vacuum, a ferment that was read, a dose, what heat splits, a caramel that was weighed, a foam and what gas stays in it have theirs
	{"internal/report/text", 5200, 0}, // a speech and a fit have their pages, house rules, what not to say and what to change have a line on the brief, what nobody measured has a mark on five pages, a ranking says what it leaves out, and the brief folds into any width by the page's own rules of writing a figure
}

// still lists what is above a measure today, with how much it has: what grows fails, and
// what fits comes off the list.
var still = map[string]int{}

// size is what stands in a package without its tests.
type size struct {
	lines, files    int
	methods, fields map[string]int // by type
}

// measure reads a package of the house.
func measure(t *testing.T, room string) size {
	t.Helper()
	s := size{methods: map[string]int{}, fields: map[string]int{}}
	names, err := filepath.Glob(filepath.Join("..", filepath.FromSlash(room), "*.go"))
	require.NoError(t, err)
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		s.files++
		s.lines += bytes.Count(text, []byte("\n"))
		file, err := parser.ParseFile(token.NewFileSet(), name, text, parser.SkipObjectResolution)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				if n.Recv != nil {
					s.methods[receiver(n.Recv.List[0].Type)]++
				}
			case *ast.TypeSpec:
				if of, ok := n.Type.(*ast.StructType); ok {
					s.fields[n.Name.Name] = fieldsOf(of)
				}
			}
			return true
		})
	}
	return s
}

// receiver names the type of a method.
func receiver(of ast.Expr) string {
	switch of := of.(type) {
	case *ast.StarExpr:
		return receiver(of.X)
	case *ast.IndexExpr:
		return receiver(of.X)
	case *ast.Ident:
		return of.Name
	}
	return ""
}

// fieldsOf counts the fields of a struct, those of structs within it too.
func fieldsOf(of *ast.StructType) int {
	n := 0
	for _, f := range of.Fields.List {
		n += max(len(f.Names), 1)
		if inner, ok := f.Type.(*ast.StructType); ok {
			n += fieldsOf(inner)
		}
	}
	return n
}

// within holds a number to its measure, or to what the list of today's offenders says.
func within(t *testing.T, what string, n, most int) {
	t.Helper()
	today, listed := still[what]
	switch {
	case n <= most:
		assert.False(t, listed, "%s: %d, %d are allowed: take it off the list", what, n, most)
	case !listed:
		assert.Fail(t, "too large", "%s: %d, %d are allowed: find what is a thing of its own in it", what, n, most)
	default:
		assert.LessOrEqual(t, n, today, "%s: %d are allowed and it had %d: it may not grow", what, most, today)
	}
}

func TestRoomsTypesAndStructsAreSmall(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range packages(t) {
		room, inside := strings.CutPrefix(p.ImportPath, "internal/")
		if !inside {
			continue
		}
		s := measure(t, p.ImportPath)
		for name, n := range s.methods {
			seen[room+"."+name+" methods"] = true
			within(t, room+"."+name+" methods", n, mostMethods)
		}
		for name, n := range s.fields {
			seen[room+"."+name+" fields"] = true
			within(t, room+"."+name+" fields", n, mostFields)
		}
	}
	for _, r := range sizes {
		s := measure(t, r.room)
		require.Positive(t, s.files, "%s: no such room", r.room)
		within(t, r.room+" lines", s.lines, r.lines)
		if r.files > 0 {
			within(t, r.room+" files", s.files, r.files)
		}
	}
	for what := range still {
		if kind := what[strings.LastIndex(what, " ")+1:]; kind == "methods" || kind == "fields" {
			assert.True(t, seen[what], "%s: there is none any more: take it off the list", what)
		}
	}
}

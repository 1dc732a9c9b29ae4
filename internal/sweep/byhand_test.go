package sweep_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sipsum/data"
)

// Each figure of a demo's first page is checked by plain arithmetic: the rows of
// testdata/byhand.csv write it out by part, from the values of data/core/values.csv,
// the amounts of the drink file and the shares of its steps. Nothing of the program
// calculates here: the arithmetic is Go's own constants.
//
// A row "let" names a quantity for the rows below it; a figure is a quantity too, its
// blanks as "_". What a table knows as a trace or below a limit counts as half the
// limit (package estimate).

// byHand is what the rows of a demo come to: figure → part → amount.
type byHand struct {
	unit  map[string]string
	parts map[string]map[string]float64
}

func (h byHand) total(figure string) (sum float64) {
	for _, x := range h.parts[figure] {
		sum += x
	}
	return sum
}

// numbers writes what the rows may name as constants: every value of the core table as
// food_CONSTITUENT, what a filter lets pass as phases_PHASE_GROUP_THROUGH and what of milk
// is in the whey as partition_CONSTITUENT_BY; "any" stands for "*".
func numbers() string {
	var out strings.Builder
	write := func(x string, parts ...string) {
		number, _, _ := strings.Cut(x, "/")
		if _, err := strconv.ParseFloat(number, 64); err == nil { // else a rule by name, or nothing
			fmt.Fprintf(&out, "const %s = %s*1.0\n", identifier(strings.ReplaceAll(strings.Join(parts, "_"), "*", "any")), x)
		}
	}
	for _, row := range rowsOf("phases.csv") {
		write(row["share"], "phases", row["phase"], row["group"], row["through"])
	}
	for _, row := range rowsOf("partition.csv") {
		write(row["share"], "partition", row["constituent"], row["by"])
	}
	for _, row := range rowsOf("core/values.csv") {
		amount := row["amount"]
		if amount == "" && (row["state"] == "trace" || row["state"] == "below") {
			amount = row["high"] + "/2.0"
		}
		write(amount, row["code"], row["constituent"])
	}
	return out.String()
}

func identifier(name string) string {
	return strings.Map(func(r rune) rune {
		if r == '_' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			return r
		}
		return '_'
	}, name)
}

// calculate works the rows of a demo out.
func calculate(t *testing.T, demo string) byHand {
	t.Helper()
	var source strings.Builder
	source.WriteString("package byhand\n" + numbers())
	rows := slices.DeleteFunc(readCSV("testdata/byhand.csv"), func(r map[string]string) bool { return r["demo"] != demo })
	names, sums := make([]string, len(rows)), map[string][]string{}
	for i, r := range rows {
		if r["source"] == "" {
			t.Errorf("%s, %s: no source", demo, r["figure"])
		}
		names[i] = r["part"]
		if r["figure"] != "let" {
			names[i] = fmt.Sprintf("row%d", i)
			sums[r["figure"]] = append(sums[r["figure"]], names[i])
		}
		fmt.Fprintf(&source, "const %s = %s\n", names[i], r["arithmetic"])
	}
	for figure, parts := range sums {
		if regexp.MustCompile(`^[a-z ]+$`).MatchString(figure) {
			fmt.Fprintf(&source, "const %s = %s\n", identifier(figure), strings.Join(parts, "+"))
		}
	}
	scope := constants(t, source.String())
	h := byHand{map[string]string{}, map[string]map[string]float64{}}
	for i, r := range rows {
		if r["figure"] == "let" {
			continue
		}
		if h.parts[r["figure"]] == nil {
			h.parts[r["figure"]] = map[string]float64{}
		}
		h.unit[r["figure"]] = r["unit"]
		x, _ := constant.Float64Val(scope.Lookup(names[i]).(*types.Const).Val())
		h.parts[r["figure"]][r["part"]] += x
	}
	return h
}

func constants(t *testing.T, source string) *types.Scope {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "byhand.go", source, 0)
	if err != nil {
		t.Fatal(err)
	}
	config := types.Config{Importer: importer.Default()}
	checked, err := config.Check("byhand", set, []*ast.File{file}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return checked.Scope()
}

// toleranceByHand is what closing a food's mass to 100 g moves, and rests of fat and acids
// that the rows leave out; the last digit printed comes on top.
const toleranceByHand = 0.02

var (
	figureLine = regexp.MustCompile(`^(?:  |[a-z] )([a-z][a-z, ]*?|density at 20 °C)(?: \[[\d,–]+\])?[ ·]+(?:≥ )?([\d.]+) (g|mg|µg|kJ|kcal|°Bx|g/ml)(?:\s|$)`)
	sourceLine = regexp.MustCompile(`^    sources \[`)
	servingOf  = regexp.MustCompile(`(?:One of \d+ servings|One serving): ([\d.]+) g \([^)]*\), ([\d.]+) ml`)
	wordsShare = regexp.MustCompile(`(> )?(\d+) % `)
	ofAlone    = regexp.MustCompile(`alone: .*`) // what the brief says of the coffee
	inSummary  = regexp.MustCompile(`([\d.]+) (kJ|g|mg) (energy|sugars|organic acids|caffeine)`)
	brought    = regexp.MustCompile(`([A-Z][a-z ]+?) brings|(\d+) % \(\d+–\d+\) of the (?:known )?(energy|sugars|organic acids|caffeine)`)
)

// printedFigure is a figure of a sheet as it is printed, and the words on what brings it.
type printedFigure struct {
	name, number, unit, brings string
}

// firstPage reads the figures of a sheet up to its cards, of the serving only: what follows
// the name of a house-made part is of that part. pH and acidity are no arithmetic; published
// ones are tests of internal/assay.
func firstPage(s *subject) (list []printedFigure) {
	_, page, _ := strings.Cut(s.pages["sheet"], " sheet\n") // after the brief
	if m := servingOf.FindStringSubmatch(page); m != nil {
		list = append(list, printedFigure{"serving", m[1], "g", ""}, printedFigure{"volume", m[2], "ml", ""})
	}
	page, _, _ = strings.Cut(page, "\nNutrition declaration")
	summary, page, _ := strings.Cut(page, "\nEvidence ")
	summary = ofAlone.ReplaceAllString(summary, "")
	summary = strings.Join(strings.Fields(summary), " ")
	for _, m := range inSummary.FindAllStringSubmatch(summary, -1) {
		list = append(list, printedFigure{m[3], m[1], m[2], ""})
	}
	who := ""
	for _, m := range brought.FindAllStringSubmatch(summary, -1) {
		if m[1] != "" {
			who = strings.ToLower(m[1][:1]) + m[1][1:]
			continue
		}
		for i, f := range list {
			if f.name == m[3] {
				list[i].brings += " " + who + " " + m[2] + " % "
			}
		}
	}
	evidence, solution, _ := strings.Cut(page, "\nAs a solution")
	for _, c := range s.assay.Components {
		solution, _, _ = strings.Cut(solution, "\n  "+c.Name+"\n")
	}
	for line := range strings.SplitSeq(evidence+solution, "\n") {
		switch m := figureLine.FindStringSubmatch(line); {
		case m != nil && m[1] != "mmol in":
			list = append(list, printedFigure{name: strings.TrimSpace(m[1]), number: m[2], unit: m[3]})
		case strings.HasPrefix(line, "    ") && len(list) > 0 && !sourceLine.MatchString(line):
			list[len(list)-1].brings += " " + strings.TrimSpace(line)
		}
	}
	return list
}

// digit gives half a unit of the last digit of a printed number.
func digit(number string) float64 {
	_, decimals, _ := strings.Cut(number, ".")
	if decimals == "" && strings.HasSuffix(number, "0") {
		return 5 // 480 mg is printed to ten
	}
	return 0.5 * math.Pow10(-len(decimals))
}

func TestDemosByHand(t *testing.T) {
	k := newKitchen(t)
	for _, demo := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		t.Run(demo, func(t *testing.T) {
			raw, err := data.FS.ReadFile("demo/" + demo + ".yaml")
			if err != nil {
				t.Fatal(err)
			}
			s, refused := k.serve(demo, string(raw))
			if refused != nil {
				t.Fatal(refused.err)
			}
			h := calculate(t, demo)
			list := firstPage(s)
			const fewest = 30 // figures of a demo's first page
			if len(list) < fewest {
				t.Errorf("%d figures were read off the page", len(list))
			}
			shares := 0
			for _, p := range list {
				if h.parts[p.name] == nil {
					t.Errorf("%s %s %s stands on the page and not in byhand.csv", p.name, p.number, p.unit)
					continue
				}
				got, _ := strconv.ParseFloat(p.number, 64)
				want := h.total(p.name)
				if p.unit != h.unit[p.name] || math.Abs(got-want) > toleranceByHand*want+digit(p.number) {
					t.Errorf("%s is printed as %s %s, by hand it is %.4g %s", p.name, p.number, p.unit, want, h.unit[p.name])
				}
				shares += h.shares(t, p)
			}
			t.Logf("%d figures and %d shares of the first page", len(list), shares)
		})
	}
}

// shares checks the words on what brings a figure, "passion syrup 69 % (68–71) and …", and
// tells how many it found.
func (h byHand) shares(t *testing.T, p printedFigure) (n int) {
	t.Helper()
	for part, x := range h.parts[p.name] {
		_, after, found := strings.Cut(p.brings, part+" ")
		if part == "" || !found {
			continue
		}
		m := wordsShare.FindStringSubmatchIndex(after)
		if m == nil || m[0] != 0 {
			continue // "not known in …"
		}
		n++
		got, _ := strconv.ParseFloat(after[m[4]:m[5]], 64)
		want := 100 * x / h.total(p.name)
		if math.Abs(got-want) > 1.5 {
			t.Errorf("%s brings %.0f %% of the %s, by hand %.1f %%", part, got, p.name, want)
		}
	}
	return n
}

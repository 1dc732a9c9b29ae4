package cli

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"sipsum/data"
	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/store"
)

// demoPrefix names the drinks that sipsum brings along: demo, demo:NAME.
const demoPrefix = "demo"

// demoEnding is how demo files end.
const demoEnding = ".yaml"

// mostText is one byte more than a drink file may hold, so that the parser can
// tell that there was too much.
var mostText = int64(drink.MostBytes()) + 1

// asked is what a command wants to know of a drink.
type asked struct {
	rules []string       // label rules; none: the drink's own
	why   constituent.ID // what drives this figure
	next  bool           // which reading to take next
	kits  bool           // what titrations would tell
	whole bool           // every figure of every component: for a document

	nextLot  bool // of the next lot of what was logged, not of the one that was read
	degassed bool // the pH when the gas has left

	figures []constituent.ID // of a comparison, with the draws of its size; their streams
	streams amount.Streams

	claims   bool         // the verdicts on its claims, with the nearest world of each
	change   bool         // what to change, and the verdicts alone
	verdicts bool         // the verdicts alone
	said     *drink.Claim // in the place of the file's own claims

	house     bool   // the answers to house rules
	houseFile string // where they are; empty: beside the drink file, if there are any
}

// sheet calculates a drink and gathers all that can be printed of it.
func (a *app) sheet(ctx context.Context, arg string, ask asked) (*sheet.Sheet, error) {
	by := drinks{a}
	var files written
	d, faults, err := by.readInto(&files, arg)
	if err != nil {
		return nil, err
	}
	if ask.nextLot && d.ForNextLot() == 0 {
		return nil, fail.New(fail.Wrong, "the log has no reading of two lots or more of this drink", "write them down: sipsum log "+arg+" --pot … --brix … --lot …")
	}
	if ask.said != nil {
		d.Claims = []drink.Claim{*ask.said}
	}
	rules, err := by.houseRules(arg, ask, faults)
	if err != nil {
		return nil, err
	}
	found, err := by.lookUp(ctx, d, faults)
	if err != nil {
		return nil, err
	}
	s, err := by.calculate(ctx, found, ask, rules)
	if err != nil {
		return nil, err
	}
	s.Proof = by.short(files, found)
	return s, nil
}

// drinks is what the commands about drinks share: reading one, finding its foods, calculating
// it, each by itself, so that a menu can tell the faults of all before it calculates any.
type drinks struct{ *app }

// read reads a drink file, with all that is wrong by its grammar. A drink beyond the limits
// is not looked at further.
func (a drinks) read(arg string) (*drink.Drink, *fail.List, error) {
	return a.readInto(&written{}, arg)
}

// readInto reads a drink file and keeps the texts that were read.
func (a drinks) readInto(files *written, arg string) (*drink.Drink, *fail.List, error) {
	name, text, open, err := a.drinkText(arg)
	if err != nil {
		return nil, nil, err
	}
	open = files.keeping(name, text, open)
	d, faults := drink.ParseBeside(name, text, open, besideFile(arg, open))
	if d.TooLarge {
		return nil, nil, faults.Err(fail.Wrong)
	}
	return d, faults, d.Fits(a.options.draws)
}

// besideFile is how to read what lies beside a drink unasked: what comes from the standard input lies nowhere, and
// beside a demo lies nothing.
func besideFile(arg string, open func(string) ([]byte, error)) func(string) ([]byte, error) {
	if arg == "-" {
		return nil
	}
	return open
}

// lookUp finds the foods of a drink that was read; all that is wrong with it is told at once.
func (a drinks) lookUp(ctx context.Context, d *drink.Drink, faults *fail.List) (*recipe.Recipe, error) {
	sheet.Check(d, faults)
	lib, err := a.library(ctx)
	if err != nil {
		return nil, err
	}
	return recipe.Find(ctx, d, faults, lib)
}

// found reads a drink and finds its foods.
func (a drinks) found(ctx context.Context, arg string) (*recipe.Recipe, error) {
	d, faults, err := a.read(arg)
	if err != nil {
		return nil, err
	}
	return a.lookUp(ctx, d, faults)
}

// library is the database with the tables that the user chose.
func (a drinks) library(ctx context.Context) (library, error) {
	db, err := a.store(ctx)
	return library{db: db, tables: a.options.tables}, err
}

// calculate makes the sheet of a drink whose foods are found in the tables here; house are the rules that it is held
// to, nil if there are none.
func (a drinks) calculate(ctx context.Context, found *recipe.Recipe, ask asked, house *drink.HouseRules) (*sheet.Sheet, error) {
	lib, err := a.library(ctx)
	if err != nil {
		return nil, err
	}
	tables, err := loadedTables(ctx, lib.db)
	if err != nil {
		return nil, err
	}
	return a.calculateBy(ctx, found, ask, house, reference{lib, tables, lib.works(ctx), shelf{lib, ctx}})
}

// reference is what foods are looked up in: the tables here, or a proof pack.
type reference struct {
	foods  recipe.Foods
	tables []source.Table
	works  evidence.Works
	shelf  claims.Shelf // nil: no food is ranked
}

// calculateBy makes the sheet of a drink whose foods are found in a reference.
func (a drinks) calculateBy(ctx context.Context, found *recipe.Recipe, ask asked, house *drink.HouseRules, from reference) (*sheet.Sheet, error) {
	ens := estimate.Ensemble{Seed: a.options.seed, N: a.options.draws + 1}
	claimed := ask.claims && len(found.Drink.Claims) > 0
	judged := claimed || house != nil
	if ask.why != "" || judged {
		ens.Journal = &estimate.Journal{}
	}
	verdicts := (ask.change || ask.verdicts) && len(found.Drink.Claims) > 0
	plan := assay.Prepare(found, ens)
	plan.Follow(ask.streams)
	result, err := plan.Run(ctx, nil, assay.Want{
		Figures: slices.Concat(evidence.Constituents(found.Drink), claims.Constituents(found.Drink), ask.figures), Whole: ask.whole, Intervals: true, Chemistry: true,
		Why: ask.why, Next: ask.next || judged, Kits: ask.kits, Draws: judged || verdicts || len(ask.figures) > 0, Degassed: ask.degassed,
	})
	if err != nil {
		return nil, err
	}
	s, err := sheet.Build(program, result, from.tables, from.works, ask.rules)
	if err == nil && house != nil {
		err = sheet.JudgeHouse(ctx, s, house, from.works, from.shelf)
	}
	if err == nil && (claimed || ask.change || ask.verdicts) {
		var again claims.Again // a brief tells of no nearest world
		if claimed {
			again = a.again(from.foods)
		}
		err = sheet.Judge(ctx, s, from.works, again, from.shelf)
	}
	if err == nil && ask.change {
		central := assay.Prepare(found, estimate.Ensemble{Seed: a.options.seed, N: 1})
		if ens.Journal != nil { // which is of one run
			plan = assay.Prepare(found, estimate.Ensemble{Seed: ens.Seed, N: ens.N})
		}
		err = sheet.Propose(ctx, s, sheet.Again{Central: central, Drawn: plan})
	}
	return s, err
}

// again calculates drinks at central values.
func (a drinks) again(foods recipe.Foods) claims.Again {
	return func(ctx context.Context, d *drink.Drink, chemistry bool) (*assay.Assay, error) {
		found, err := recipe.Find(ctx, d, &fail.List{}, foods)
		if err != nil {
			return nil, err
		}
		ens := estimate.Ensemble{Seed: a.options.seed, N: 1}
		return assay.Prepare(found, ens).Run(ctx, nil, assay.Want{Chemistry: chemistry, Draws: true})
	}
}

func loadedTables(ctx context.Context, db *store.DB) ([]source.Table, error) {
	infos, err := db.Tables(ctx)
	if err != nil {
		return nil, err
	}
	tables := make([]source.Table, len(infos))
	for i, info := range infos {
		tables[i] = info.Table
	}
	return tables, nil
}

// drinkText reads the file that an argument names, and gives a way to read the
// pantries beside it.
func (a *app) drinkText(arg string) (name string, text []byte, open func(string) ([]byte, error), err error) {
	if demo, ok := demoName(arg); ok {
		text, err = data.FS.ReadFile("demo/" + demo + demoEnding)
		if err != nil {
			return "", nil, nil, fail.New(fail.Wrong, "no demo is called \""+demo+"\"", "there are: "+strings.Join(demos(), ", "))
		}
		return demoPrefix + ":" + demo, text, nil, nil
	}
	if arg, err = drinkNamed(arg); err != nil {
		return "", nil, nil, err
	}
	text, err = a.readAll(arg, mostText, "check the name, or start one with: sipsum new NAME")
	beside := filepath.Dir(arg)
	open = func(path string) ([]byte, error) {
		if !filepath.IsAbs(path) {
			path = filepath.Join(beside, path)
		}
		return a.readAll(path, mostText, "give the path as seen from the drink file")
	}
	if arg == "-" {
		arg = "standard input"
	}
	return arg, text, open, err
}

// drinkEndings are how drink files end, in the order in which they are looked for.
var drinkEndings = []string{".drink.yaml", ".yaml", ".drink.yml", ".yml"}

// drinkNamed gives the file that an argument names, with or without its ending.
func drinkNamed(arg string) (string, error) {
	if _, err := os.Lstat(arg); err == nil || arg == "-" {
		return arg, nil
	}
	var found []string
	for _, ending := range drinkEndings {
		if info, err := os.Stat(arg + ending); err == nil && info.Mode().IsRegular() {
			found = append(found, arg+ending)
		}
	}
	switch len(found) {
	case 0:
		return arg, nil // the error of reading it says what is wrong
	case 1:
		return found[0], nil
	}
	return "", fail.New(fail.Wrong, "more than one file may be meant by "+arg, "write which: "+fail.Or(found))
}

// demoName tells whether an argument names a demo. A file of that name wins.
func demoName(arg string) (string, bool) {
	if _, err := os.Stat(arg); err == nil {
		return "", false
	}
	name, found := strings.CutPrefix(arg, demoPrefix+":")
	switch {
	case arg == demoPrefix:
		return demos()[0], true
	case found:
		return name, true
	}
	return "", false
}

// demos lists the demo drinks; the first is the one that "demo" alone means.
func demos() []string {
	entries, err := data.FS.ReadDir("demo")
	if err != nil {
		panic("cli: " + err.Error())
	}
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), demoEnding))
	}
	slices.Sort(names)
	return names
}

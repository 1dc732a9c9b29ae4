package cli

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"strings"

	"sipsum/data"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/houserules"
	"sipsum/internal/recipe"
	"sipsum/internal/report/html"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

// kitchen calculates drinks for pages, as the commands do.
type kitchen struct {
	drinks
	folder *workshop.Folder
	live   *live
}

// newKitchen opens the database once, for all that is calculated: what is asked later only reads of the app.
func newKitchen(ctx context.Context, a *app, folder *workshop.Folder) (kitchen, error) {
	_, err := a.store(ctx)
	return kitchen{drinks{a}, folder, newLive(a.db)}, err
}

// with are the drinks that are calculated with a number of draws.
func (k kitchen) with(draws int) drinks {
	app := *k.app
	app.options.draws = draws
	return drinks{&app}
}

// found reads a drink as it was typed and finds its foods; a claim takes the place of its own.
func (k kitchen) found(ctx context.Context, by drinks, file web.File, claim *drink.Claim) (*recipe.Recipe, error) {
	found, _, err := k.ruled(ctx, by, &written{}, file, claim, false)
	return found, err
}

// ruled is found, with the rules of the house if they are asked for and there are any; the texts that were read
// are kept.
func (k kitchen) ruled(ctx context.Context, by drinks, files *written, file web.File, claim *drink.Claim, house bool) (*recipe.Recipe, *drink.HouseRules, error) {
	open := files.keeping(file.Name, file.Text, k.folder.Beside)
	d, faults := drink.ParseBeside(file.Name, file.Text, open, open)
	if d.TooLarge {
		return nil, nil, faults.Err(fail.Wrong)
	}
	if err := d.Fits(by.options.draws); err != nil {
		return nil, nil, err
	}
	if claim != nil {
		d.Claims = []drink.Claim{*claim}
	}
	var rules *drink.HouseRules
	if house {
		var err error
		if rules, err = k.houseRules(faults); err != nil {
			return nil, nil, err
		}
	}
	found, err := by.lookUp(ctx, d, faults)
	return found, rules, err
}

// houseRules reads the rules that lie in the folder; nil: there are none.
func (k kitchen) houseRules(faults *fail.List) (*drink.HouseRules, error) {
	text, err := k.folder.Beside(houseRulesFile)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	h, wrong := drink.ParseHouseRules(houseRulesFile, text)
	houserules.Check(h, wrong)
	faults.Take(wrong)
	return h, nil
}

func (k kitchen) Sheet(ctx context.Context, file web.File, ask web.Ask) (*sheet.Sheet, error) {
	by := k.with(ask.Draws)
	if ask.Live() {
		return k.sketch(ctx, by, file, ask)
	}
	var files written
	found, house, err := k.ruled(ctx, by, &files, file, nil, ask.House)
	if err != nil {
		return nil, err
	}
	s, err := by.calculate(ctx, found, asked{rules: ask.Rules, claims: ask.Claims, next: ask.Next, change: ask.Change, whole: ask.Whole}, house)
	if err != nil {
		return nil, err
	}
	s.Proof = by.short(files, found)
	return s, nil
}

// Compare sets a drink against another, in the same draws.
func (k kitchen) Compare(ctx context.Context, a, b web.File, draws int) (*sheet.Compared, error) {
	by := k.with(draws)
	var list []*recipe.Recipe
	var faults fail.List
	for _, file := range []web.File{a, b} {
		found, err := k.found(ctx, by, file, nil)
		if err = note(&faults, fail.Place{}, err); err != nil { // it names its file
			return nil, err
		}
		list = append(list, found)
	}
	if err := faults.Err(fail.Wrong); err != nil {
		return nil, err
	}
	return by.contrast(ctx, []string{a.Name, b.Name}, list, nil)
}

// Parcel is the sheet of a drink as one file.
func (k kitchen) Parcel(ctx context.Context, file web.File) (web.Parcel, error) {
	s, err := k.Sheet(ctx, file, web.Ask{Draws: usualDraws, Claims: true, Next: true, Change: true, House: true})
	if err != nil {
		return web.Parcel{}, err
	}
	var out bytes.Buffer
	err = htmlreport.Sheet(&out, sheet.PaperOf(s), sheetPaper)
	return web.Parcel{Name: fileName(s.Assay.Drink.Name) + ".html", Type: "text/html; charset=utf-8", Body: out.Bytes()}, err
}

// Proof is the proof pack of a drink, as a page.
func (k kitchen) Proof(ctx context.Context, file web.File) (web.Parcel, error) {
	by := k.with(usualDraws)
	var files written
	found, _, err := k.ruled(ctx, by, &files, file, nil, false)
	if err != nil {
		return web.Parcel{}, err
	}
	p, err := by.pack(ctx, files, found, nil)
	if err != nil {
		return web.Parcel{}, err
	}
	var out bytes.Buffer
	err = htmlreport.Proof(&out, p)
	return web.Parcel{Name: fileName(found.Drink.Name) + "-proof.html", Type: "text/html; charset=utf-8", Body: out.Bytes()}, err
}

// Demos lists the drinks that sipsum brings along.
func (k kitchen) Demos() []web.Demo {
	var list []web.Demo
	for _, name := range demos() {
		text, err := data.FS.ReadFile("demo/" + name + demoEnding)
		if err != nil {
			panic("cli: " + err.Error()) // it was listed
		}
		list = append(list, web.Demo{From: name, Title: workshop.Title(text)})
	}
	return list
}

// Start gives a new drink its file name and its text, as the command new does.
func (k kitchen) Start(_ context.Context, name, from string, text []byte) (web.File, error) {
	name = strings.TrimSpace(name)
	file := fileName(name)
	if file == "" {
		return web.File{}, fail.New(fail.Wrong, "that name gives no file name", "use letters or digits")
	}
	file += drinkEnding
	switch {
	case from != "":
		demo, err := data.FS.ReadFile("demo/" + from + demoEnding)
		if err != nil {
			return web.File{}, fail.New(fail.Wrong, "no demo is called so", "there are: "+strings.Join(demos(), ", "))
		}
		text = demo
	case len(text) == 0:
		text = []byte(start)
	}
	named, err := renamed(file, string(text), name)
	return web.File{Name: file, Text: []byte(named)}, err
}

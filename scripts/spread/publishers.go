package main

import (
	"context"
	"math"
	"path/filepath"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/sr"
	"sipsum/internal/tables/table"
)

// publisher is a table whose figures are compared with those of others.
type publisher struct {
	format, folder string
	inCore         string // its ids in data/core/sources.csv: core figures that come from it are not compared with it
	marks          bool   // it tells its own analyses from what it calculated or took from elsewhere
	analysed       bool   // its carbohydrate is what was analysed, no difference

	// doubted are figures that no comparison may rest on, and why.
	doubted constituent.ID
	why     string

	// keptBack: nothing is derived from it, so that it can tell whether the rest holds.
	keptBack bool
}

// publishers are the tables at hand, but for SR28, of which the core table is made, and
// what is made of SR28 (FNDDS, FoodData Central). India's is kept back: it is the one
// table whose figures were all analysed for it, in one laboratory, of lots of its own
// country, single sugars and acids among them, so it has borrowed from nobody and shows
// what a food is where none of the others went to market.
var publishers = []publisher{
	{format: "ciqual", folder: "ciqual2020", inCore: "ciqual2020"},
	{format: "swiss", folder: "swiss53", inCore: "swiss53"},
	{format: "stfcj", folder: "japan2020", inCore: "stfcj2020", marks: true, keptBack: true},
	{format: "afcd", folder: "afcd2", inCore: "afcd2022 afcd2025"},
	{format: "ifct", folder: "ifct2017", inCore: "ifct2017", analysed: true, doubted: constituent.OrganicAcids,
		why: "a strawberry with 0.1 mg of citric acid is no ripeness: a quarter of its acids are less than a tenth of what all others print"},
}

// shelf is a table that was read.
type shelf struct {
	publisher
	foods map[string]*food.Food      // by code
	last  map[constituent.ID]float64 // one in the last digit that it prints, where it says so

	strange map[constituent.ID]bool // columns that are of another quantity than their name says
}

// read reads a table; nil if this edition of the program has no reader for it.
func (p publisher) read(ctx context.Context, folder string) (*shelf, error) {
	format, ok := tables.Find(p.format)
	if !ok {
		return nil, nil
	}
	return open(ctx, p, format, filepath.Join(folder, p.folder))
}

func open(ctx context.Context, p publisher, format table.Format, path string) (*shelf, error) {
	release, err := format.Open(ctx, path, "")
	if err != nil {
		return nil, err
	}
	s := &shelf{publisher: p, foods: map[string]*food.Food{}, last: lastPlaces(release), strange: map[constituent.ID]bool{}}
	for f, err := range release.Foods {
		if err != nil {
			return nil, err
		}
		s.foods[f.ID.Code] = f
	}
	return s, nil
}

// lastPlaces gives what one in the last digit of each column is, in the unit of the
// vocabulary.
func lastPlaces(release *table.Release) map[constituent.ID]float64 {
	grams := map[string]float64{"g": 1, "mg": 1e-3, "µg": 1e-6}
	last := map[constituent.ID]float64{}
	for _, c := range release.Columns {
		of, ok := constituent.Find(string(c.ID))
		if !ok || c.Decimals < 0 || of.PerGram == 0 {
			continue
		}
		in := grams[c.Unit]
		if in == 0 {
			in = 1 / of.PerGram
		}
		last[c.ID] = math.Pow10(-c.Decimals) * in * of.PerGram
	}
	return last
}

// coreShelf reads the core table, which prints as SR28 does.
func coreShelf(ctx context.Context, folder string) (*shelf, error) {
	s, err := open(ctx, publisher{format: core.Format.Name}, core.Format, "")
	if err != nil {
		return nil, err
	}
	agency, err := sr.Format.Open(ctx, filepath.Join(folder, "sr28"), "")
	if err != nil {
		return nil, err
	}
	s.last = lastPlaces(agency)
	return s, nil
}

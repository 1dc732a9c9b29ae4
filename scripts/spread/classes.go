package main

import (
	"slices"

	"sipsum/internal/constituent"
)

// class is a pool of evidence that its members fall back to when they have
// little of their own.
type class struct {
	name    string
	members []constituent.ID
	pool    []constituent.ID // nil: the members
}

var classes = []class{
	{name: "carbohydrate", members: ids("CHOCDF", "CHOAVL"), pool: ids("SUGAR", "STARCH")},
	{name: "sugars", members: ids("SUGAR", "GLUS", "FRUS", "GALS", "SUCS", "LACS", "MALS")},
	{name: "minerals", members: ids("NA", "K", "CA", "MG", "P", "CLD", "FE", "ZN", "CU", "MN", "SE", "ID", "FD", "phosphate", "sulphate")},
	{name: "vitamins", members: ids("VITC", "THIA", "RIBF", "NIA", "PANTAC", "VITB6A", "FOL", "FOLAC", "FOLFD", "FOLDFE", "VITB12", "BIOT", "CHOLN", "VITA_RAE", "RETOL", "CARTA", "CARTB", "CRYPXB", "LYCPN", "LUT+ZEA", "VITD", "ERGCAL", "CHOCAL", "TOCPHA", "VITK1")},
}

// single are the constituents that stand for themselves.
var single = ids("WATER", "PROCNT", "FAT", "FASAT", "FAMS", "FAPU", "STARCH", "FIBTG", "ALC", "ASH", "FATRN", "CHOLE", "PHYSTR")

// between says how far the samples of one source lie from those of another, in
// medians of r; doc.go says why. Constituents that stand in none of these take
// betweenOthers.
var between = []struct {
	medians float64
	members []constituent.ID
}{
	{1.5, ids("WATER", "PROCNT", "FAT", "FASAT", "FAMS", "FAPU", "FATRN", "CHOCDF", "CHOAVL", "STARCH", "FIBTG")},
	{0.2, ids("SUGAR", "GLUS", "FRUS", "GALS", "SUCS", "LACS", "MALS")},
}

const betweenOthers = 0.75

func betweenOf(id string) float64 {
	for _, b := range between {
		if slices.Contains(b.members, constituent.ID(id)) {
			return b.medians
		}
	}
	return betweenOthers
}

// families are groups of foods so alike that they may share evidence.
var families = [][]string{
	{"fruit", "citrus fruit"},
	{"fruit juice", "citrus juice", "vegetable juice"},
	{"milk", "cream", "cultured milk", "whey"},
	{"coffee drink", "tea drink"},
	{"sugar", "syrup"},
	{"spice", "herb"},
	{"nut", "seed"},
	{"soft drink", "wine", "beer", "spirit"},
}

// refined is the group whose purity is a matter of standards (Codex CXS 212-1999,
// Standard for sugars), the same everywhere: nothing lies between its sources.
const refined = "sugar"

// dry are the groups whose foods hold little water. The spread of water in them
// has nothing to do with that in juices, so they never fall back to it.
var dry = []string{"coffee bean", "tea leaf", "cocoa", "sugar", "salt", "gum", "spice", "nut", "seed", "cereal", "legume", "acid"}

// creamy are the groups whose fat is set by skimming. What little a skimmed milk
// keeps varies as the skimming does, so it is no evidence for the others.
var creamy = []string{"milk", "cream", "cultured milk", "whey"}

// leanMost is the most fat, g per 100 g, of a food that counts as skimmed.
const leanMost = 1

// dryMost is the most water, g per 100 g, of a food that counts as dry.
const dryMost = 20

func ids(names ...constituent.ID) []constituent.ID { return names }

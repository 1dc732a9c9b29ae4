package main

import "sipsum/internal/constituent"

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

// placed are the constituents whose default is widened, since other countries'
// tables differ more from SR28 than its own lots do (data/crosscheck_test.go).
var placed = ids("WATER", "PROCNT", "FAT", "CHOCDF", "CHOAVL", "FIBTG", "SUGAR", "GLUS", "FRUS", "GALS", "SUCS", "LACS", "MALS", "STARCH")

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

// dry are the groups whose foods hold little water. The spread of water in them
// has nothing to do with that in juices, so they never fall back to it.
var dry = []string{"coffee bean", "tea leaf", "cocoa", "sugar", "salt", "gum", "spice", "nut", "seed", "cereal", "legume", "acid"}

// dryMost is the most water, g per 100 g, of a food that counts as dry.
const dryMost = 20

func ids(names ...constituent.ID) []constituent.ID { return names }

package main

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// kind is a pool of evidence that its members fall back to when they have little of
// their own.
type kind struct {
	name string
	// level is the share of comparisons that the intervals shall hold: more or less than 90 %,
	// so that a table that nobody has read is held as doc.go says.
	level   float64
	members []constituent.ID
}

var kinds = []kind{
	{"water", 0.90, ids("WATER")},
	{"proximates", 0.82, ids("PROCNT", "FAT", "FASAT", "FAMS", "FAPU", "FIBTG", "ALC", "ASH", "STARCH", "CHOCDF")},
	{"sugars", 0.92, ids("SUGAR", "GLUS", "FRUS", "SUCS", "LACS")},
	{"all acids", 0.90, ids("OA")},
	{"acids", 0.93, ids("CITAC", "MALAC", "TARAC", "QUINAC", "LACAC", "ACEAC", "OXALAC", "SUCAC", "FUMAC", "SHIKAC")},
	{"minerals", 0.84, ids("NA", "K", "CA", "MG", "P")},
	{"trace elements", 0.88, ids("FE", "ZN", "CU", "MN", "SE", "ID")},
	{"vitamins", 0.95, ids("VITC", "THIA", "RIBF", "NIA", "PANTAC", "VITB6A", "FOL", "VITB12", "BIOT", "RETOL", "CARTA", "CARTB", "CRYPXB", "LYCPN", "LUT+ZEA", "VITD", "TOCPHA", "VITK1")},
	{"others", 0.90, ids("CHOLE", "PHYSTR")},
}

// kindOf is the pool of evidence that a constituent belongs to.
func kindOf(id string) kind {
	for _, k := range kinds {
		if slices.Contains(k.members, constituent.ID(id)) {
			return k
		}
	}
	return kind{}
}

func levelOf(name string) float64 {
	for _, k := range kinds {
		if k.name == name {
			return k.level
		}
	}
	return 0
}

// compared lists the constituents of which tables are compared.
func compared() []constituent.ID {
	var all []constituent.ID
	for _, k := range kinds {
		all = append(all, k.members...)
	}
	return all
}

// classOf gives the class of foods of a group (data/anywhere_classes.csv).
func classOf() map[string]string {
	class := map[string]string{}
	for _, row := range embedded.Rows("anywhere_classes.csv") {
		class[row.Text("group")] = row.Text("class")
	}
	return class
}

// classesOfFoods lists the classes, by name.
func classesOfFoods() []string {
	var names []string
	for _, class := range classOf() {
		if !slices.Contains(names, class) {
			names = append(names, class)
		}
	}
	slices.Sort(names)
	return names
}

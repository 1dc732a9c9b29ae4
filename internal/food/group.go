package food

import "sync"

// Group is a food group of data/groups.csv.
type Group struct {
	Name   string
	Liquid bool
}

// Groups lists the closed list of food groups in the order of the file.
var Groups = sync.OnceValue(func() []Group {
	var list []Group
	for _, row := range readRows("groups.csv") {
		list = append(list, Group{Name: row[0], Liquid: row[1] == "liquid"})
	}
	return list
})

package food

import (
	"sync"

	"sipsum/internal/embedded"
)

// Group is a food group of data/groups.csv.
type Group struct {
	Name   string
	Liquid bool
}

// Groups lists the closed list of food groups in the order of the file.
var Groups = sync.OnceValue(func() []Group {
	var list []Group
	for _, row := range embedded.Rows("groups.csv") {
		list = append(list, Group{Name: row.Text("group"), Liquid: row.Text("state") == "liquid"})
	}
	return list
})

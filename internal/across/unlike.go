package across

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Unlike is what tables do not mean alike by one figure.
type Unlike struct {
	Constituent *constituent.Constituent
	Table       string // of which it is told; empty: of all
	Converted   bool   // it was brought to one meaning; else a difference may be nothing but that
	Says        string
	Source      string
}

// unlike lists what of the figures is not defined alike (data/unlike_definitions.csv), as far as the tables
// that are asked tell them.
func (a *Across) unlike() []Unlike {
	var list []Unlike
	for _, row := range embedded.Rows("unlike_definitions.csv") {
		u := Unlike{constituent.Must(constituent.ID(row.Text("constituent"))), row.Text("table"), row.Text("how") == "converted", row.Text("says"), row.Text("source")}
		if u.Table == everyTable {
			u.Table = ""
		}
		if a.tells(u) {
			list = append(list, u)
		}
	}
	return list
}

const everyTable = "*"

// tells reports whether a table of which something is said tells the figure of which it is said.
func (a *Across) tells(u Unlike) bool {
	return slices.ContainsFunc(a.Figures, func(f Figure) bool {
		if f.Constituent.ID != u.Constituent.ID {
			return false
		}
		for i, v := range f.Voices {
			if (v.Standing == Told || v.Standing == Partly) && (u.Table == "" || u.Table == a.Tables[i].Format) {
				return true
			}
		}
		return false
	})
}

// Marked reports whether tables that tell a figure may differ by nothing but what they mean by it.
func (a *Across) Marked(f Figure) bool {
	return slices.ContainsFunc(a.Unlike, func(u Unlike) bool { return u.Constituent.ID == f.Constituent.ID && !u.Converted })
}

package tables

import (
	"sipsum/internal/tables/afcd"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/cnf"
	"sipsum/internal/tables/cofid"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/fdc"
	"sipsum/internal/tables/fndds"
	"sipsum/internal/tables/generic"
	"sipsum/internal/tables/ifct"
	"sipsum/internal/tables/sr"
	"sipsum/internal/tables/stfcj"
	"sipsum/internal/tables/swiss"
	"sipsum/internal/tables/table"
)

// Formats lists the formats in the order in which they are shown and sniffed.
func Formats() []table.Format {
	return []table.Format{core.Format, sr.Format, ifct.Format, ciqual.Format, swiss.Format, cnf.Format, cofid.Format, fdc.Format, fndds.Format, stfcj.Format, afcd.Format, generic.Format}
}

// Find gives a format by its name.
func Find(name string) (table.Format, bool) {
	for _, f := range Formats() {
		if f.Name == name {
			return f, true
		}
	}
	return table.Format{}, false
}

// Sniff gives the first format that path looks like.
func Sniff(path string) (table.Format, bool) {
	for _, f := range Formats() {
		if f.Sniff(path) {
			return f, true
		}
	}
	return table.Format{}, false
}

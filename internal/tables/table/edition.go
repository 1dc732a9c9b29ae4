package table

import (
	"fmt"

	"sipsum/internal/embedded"
)

// Edition is a release that sipsum knows by the size of its files: most
// publishers print the edition nowhere in them.
type Edition struct {
	Name string
	Year string // of publication; empty if the edition is not recognised
}

// EditionOf recognises a release by its counts of foods and columns, with
// data/maps/<format>_editions.csv.
func EditionOf(format string, foods, columns int) Edition {
	for _, row := range embedded.Rows("maps/" + format + "_editions.csv") {
		if row.Whole("foods") == foods && row.Whole("columns") == columns {
			return Edition{Name: row.Text("edition"), Year: row.Text("year")}
		}
	}
	return Edition{Name: fmt.Sprintf("not recognised (%d foods)", foods)}
}

package table

import (
	"fmt"
	"strings"

	"sipsum/internal/embedded"
)

// Edition is a release that sipsum knows by the size of its files: most
// publishers print the edition nowhere in them.
type Edition struct {
	Name   string
	Year   string // of publication; empty if it is not known
	Foods  int
	Values int // 0 if nobody has counted them
}

// unnamed begins the name of an edition that the files do not tell.
const unnamed = "not "

// EditionOf recognises a release by its counts of foods and columns, with
// data/editions.csv.
func EditionOf(format string, foods, columns int) Edition {
	for _, row := range embedded.Rows("editions.csv") {
		if row.Text("format") == format && row.Whole("foods") == foods && row.Text("columns") != "" && row.Whole("columns") == columns {
			return editionIn(row)
		}
	}
	return Edition{Name: fmt.Sprintf(unnamed+"recognised (%d foods)", foods)}
}

// Editions lists the editions of a format that sipsum knows.
func Editions(format string) []Edition {
	var all []Edition
	for _, row := range embedded.Rows("editions.csv") {
		if row.Text("format") == format {
			all = append(all, editionIn(row))
		}
	}
	return all
}

func editionIn(row embedded.Row) Edition {
	values, _ := row.Optional("values") // not counted: 0
	return Edition{Name: row.Text("edition"), Year: row.Text("year"), Foods: row.Whole("foods"), Values: int(values)}
}

// WholeOf gives the edition of which a release must have all foods and values: the
// one that it says it is, or, if its files do not tell, the largest known of its
// format, which it may be a part of. A release of an edition that sipsum does not
// know is not known to be whole.
func WholeOf(format, edition string) (whole Edition, known bool) {
	for _, e := range Editions(format) {
		if e.Name == edition {
			return e, true
		}
		if strings.HasPrefix(edition, unnamed) && e.Foods > whole.Foods {
			whole, known = e, true
		}
	}
	return whole, known
}

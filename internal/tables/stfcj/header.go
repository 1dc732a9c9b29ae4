package stfcj

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"sipsum/internal/tables/table"
)

// maxHeader is the row by which the header of a sheet must have ended.
const maxHeader = 40

// header is what the rows above the foods say: where each column stands.
type header struct {
	columns []place // in the order of the sheet
	code    int     // positions in a row, counted from 0
	name    int
	remarks int
}

// place is a column of a sheet.
type place struct {
	id   string // component identifier
	at   int    // counted from 0
	unit string
}

// has reports whether all of some columns are there.
func (h *header) has(ids ...string) bool {
	return !slices.ContainsFunc(ids, func(id string) bool { _, ok := h.find(id); return !ok })
}

func (h *header) find(id string) (place, bool) {
	for _, p := range h.columns {
		if p.id == id {
			return p, true
		}
	}
	return place{}, false
}

// readHeader reads the rows of a sheet up to the second of the two that name
// identifiers and units; which comes first differs. It gives io.EOF for a sheet
// without them.
func readHeader(rows *table.SheetRows) (*header, error) {
	h := &header{code: -1, remarks: -1}
	var ids, units []string
	for ids == nil || units == nil {
		cells, err := rows.Next()
		if err != nil {
			return nil, err
		}
		if rows.Number() > maxHeader {
			return nil, io.EOF
		}
		for i, cell := range cells {
			switch word := plain(cell); word {
			case "成分識別子":
				ids, h.name = slices.Clone(cells), i
			case "単位":
				units = slices.Clone(cells)
			case "食品番号":
				h.code = i
			case "備考":
				h.remarks = i
			}
		}
	}
	if h.code < 1 || h.remarks < 0 {
		return nil, io.EOF
	}
	unit := ""
	for i := h.name + 1; i < h.remarks; i++ {
		if i < len(units) && plain(units[i]) != "" {
			unit = unitOf(units[i])
		}
		if i >= len(ids) || plain(ids[i]) == "" {
			continue
		}
		id := plain(ids[i])
		if _, twice := h.find(id); twice {
			return nil, rows.Wrong(i, fmt.Sprintf("column %.40q stands twice", id))
		}
		h.columns = append(h.columns, place{id: id, at: i, unit: unit})
	}
	return h, nil
}

// unitOf reads "g/100 g" or "(…… μg ……)".
func unitOf(cell string) string {
	word, _, _ := strings.Cut(plain(cell), "/")
	word = strings.Trim(word, "().…")
	return strings.Replace(word, "μ", "µ", 1) // Greek letter to micro sign
}

// plain writes full-width letters and digits as plain ones and leaves out all
// blanks.
func plain(cell string) string {
	return strings.Join(strings.Fields(norm.NFKC.String(cell)), "")
}

// text writes a name on one line, with single plain blanks.
func text(cell string) string { return strings.Join(strings.Fields(cell), " ") }

// lines does so for each line of a remark.
func lines(cell string) string {
	var kept []string
	for line := range strings.Lines(cell) {
		if line = text(line); line != "" {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept, "\n")
}

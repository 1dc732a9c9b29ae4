package fndds

import (
	"slices"

	"sipsum/internal/tables/table"
)

// sheet is the first sheet of the workbook, read by name of column.
type sheet struct{ *table.HeadedSheet }

// openSheet reads the rows up to the header; errOther if there is none.
func openSheet(book *table.Workbook) (*sheet, error) {
	found, err := book.Headed(book.Sheets()[0], func(cells []string) bool { return table.OneLine(cells[0]) == codeColumn })
	if err != nil {
		return nil, err
	}
	if found == nil {
		return nil, errOther
	}
	if !slices.Contains(found.Header, energyColumn) {
		found.Close()
		return nil, errOther
	}
	return &sheet{found}, nil
}

func (s *sheet) columns() []string { return s.Header }

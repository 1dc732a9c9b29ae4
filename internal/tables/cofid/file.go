package cofid

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// readFile reads the sheets of a workbook or a CSV file.
func (r *reader) readFile(ctx context.Context, file string) error {
	if !strings.EqualFold(path.Ext(file), ".xlsx") {
		cells, err := table.OpenCSV(r.files, r.dir, file, ',', again)
		if err != nil {
			return err
		}
		defer cells.Close()
		if info, err := fs.Stat(r.raw, file); err == nil && info.Size() == 0 {
			return fail.At(fail.Wrong, fail.Place{File: path.Join(r.dir, file)}, "the file is empty", again)
		}
		return r.take(ctx, file, strings.TrimSuffix(file, path.Ext(file)), cells)
	}
	book, err := table.OpenWorkbook(r.raw, r.dir, file, again)
	if err != nil {
		return err
	}
	for _, name := range book.Sheets() {
		cells, err := book.Rows(name)
		if err != nil {
			return err
		}
		err = r.take(ctx, file, name, cells)
		cells.Close()
		if err != nil {
			return err
		}
	}
	return nil
}

// take adds a sheet to those of the table.
func (r *reader) take(ctx context.Context, file, name string, cells table.Cells) error {
	s, err := r.readSheet(ctx, name, cells)
	if err != nil || s == nil {
		return err
	}
	if len(s.rows) == 0 {
		return fail.At(fail.Wrong, fail.Place{File: path.Join(r.dir, file)}, fmt.Sprintf("sheet %.60q has a header and no food", name), again)
	}
	r.sheets = append(r.sheets, s)
	if len(r.used) == 0 || r.used[len(r.used)-1] != file {
		r.used = append(r.used, file)
	}
	return nil
}

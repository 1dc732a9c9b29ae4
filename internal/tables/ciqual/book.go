package ciqual

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// The headings that are not constituents.
const (
	codeHeading  = "alim_code"
	nameHeading  = "alim_nom_fr"
	latinHeading = "alim_nom_sci"
)

var (
	groupHeadings     = [3]string{"alim_grp_code", "alim_ssgrp_code", "alim_ssssgrp_code"}
	groupNameHeadings = [3]string{"alim_grp_nom_fr", "alim_ssgrp_nom_fr", "alim_ssssgrp_nom_fr"}
)

// book is a workbook whose headings have been read.
type book struct {
	*grid
	place map[string]int // of the headings that are not constituents
	cells []int          // of the constituents
	cols  []column       // beside cells
	row   []string
}

func (r *reader) openBook() (*book, error) {
	in, err := r.files.openGrid()
	if err != nil {
		return nil, err
	}
	b := &book{grid: in, place: map[string]int{}}
	if err := b.headings(r); err != nil {
		b.Close()
		return nil, err
	}
	return b, nil
}

func (b *book) headings(r *reader) error {
	row, err := b.next()
	if err == io.EOF {
		return fail.At(fail.Wrong, fail.Place{File: r.files.dir + "/" + r.files.book}, "the file is empty", again)
	} else if err != nil {
		return err
	}
	seen := map[string]bool{}
	for i, cell := range row {
		heading := fold(cell)
		if seen[heading] {
			return b.Wrong(i, fmt.Sprintf("heading %.60q stands twice", heading))
		}
		seen[heading] = true
		if at, ok := r.columns.byHeading[heading]; ok {
			b.cells, b.cols = append(b.cells, i), append(b.cols, r.columns.all[at])
		} else if other, ok := r.columns.mapping.Find(heading); ok && other.Fate == table.Refused {
			b.place[heading] = i
		} else {
			return b.Wrong(i, fmt.Sprintf("heading %.60q is not known to sipsum", heading))
		}
	}
	for _, must := range append([]string{codeHeading, nameHeading}, groupHeadings[:]...) {
		if _, ok := b.place[must]; !ok {
			return b.Wrong(0, fmt.Sprintf("heading %q is missing", must))
		}
	}
	if len(b.cols) == 0 {
		return b.Wrong(0, "no heading is a constituent")
	}
	return nil
}

// read reads a row; io.EOF after the last.
func (b *book) read() (err error) {
	b.row, err = b.next()
	return err
}

// text gives a cell by its heading; empty if there is no such heading.
func (b *book) text(heading string) string {
	if at, ok := b.place[heading]; ok {
		return fold(b.row[at])
	}
	return ""
}

// code gives the code of the current row, "code~2" for a known second row.
func (b *book) code(r *reader, seen map[string]bool) (string, error) {
	code, ok := codeOf(b.text(codeHeading))
	if !ok {
		return "", b.Wrong(b.place[codeHeading], fmt.Sprintf("%.40q is not a code of digits", b.text(codeHeading)))
	}
	if seen[code] && r.twice[code] {
		code += "~2"
	}
	if seen[code] {
		return "", b.Wrong(b.place[codeHeading], fmt.Sprintf("food %s stands twice", code))
	}
	seen[code] = true
	return code, nil
}

// countBook counts codes, second rows not counted.
func (r *reader) countBook(ctx context.Context) (int, []column, error) {
	b, err := r.openBook()
	if err != nil {
		return 0, nil, err
	}
	defer b.Close()
	seen, n := map[string]bool{}, 0
	for ctx.Err() == nil {
		if err := b.read(); err == io.EOF {
			break
		} else if err != nil {
			return 0, nil, err
		}
		code, err := b.code(r, seen)
		if err != nil {
			return 0, nil, err
		}
		if !strings.Contains(code, "~") {
			n++
		}
	}
	if n == 0 && ctx.Err() == nil {
		return 0, nil, b.Wrong(0, "no food stands below the headings")
	}
	return n, b.cols, ctx.Err()
}

// foodsOfBook is the stream of a workbook.
func (r *reader) foodsOfBook(ctx context.Context, yield func(*food.Food, error) bool) error {
	english, err := r.englishNames()
	if err != nil {
		return err
	}
	b, err := r.openBook()
	if err != nil {
		return err
	}
	defer b.Close()
	seen := map[string]bool{}
	table.Stream(ctx, yield, func() (*food.Food, error) {
		if err := b.read(); err != nil {
			return nil, err
		}
		return r.foodOfRow(b, seen, english)
	})
	return nil
}

func (r *reader) foodOfRow(b *book, seen map[string]bool, english map[string][2]string) (*food.Food, error) {
	code, err := b.code(r, seen)
	if err != nil {
		return nil, err
	}
	a := about{code: code, french: b.text(nameHeading), latin: b.text(latinHeading)}
	if a.french == "" {
		return nil, b.Wrong(b.place[nameHeading], "the food has no name")
	}
	for i := range groupHeadings {
		a.groups[i], a.groupNames[i] = b.text(groupHeadings[i]), b.text(groupNameHeadings[i])
	}
	base, again, _ := strings.Cut(code, "~")
	if names := english[base]; names[0] == a.french { // else the files are of two editions
		a.english = names[1]
	}
	f := r.food(a)
	if again != "" {
		f.Note = "the publisher's table has code " + base + " twice; this is the row that comes second"
	}
	f.Values = make([]food.Value, 0, len(b.cols))
	for i, c := range b.cols {
		v, there, wrong := c.value(r.tableID, fold(b.row[b.cells[i]]))
		if wrong != "" {
			return nil, b.Wrong(b.cells[i], wrong)
		}
		if there {
			f.Values = append(f.Values, v)
		}
	}
	f.Values = slices.Clip(f.Values)
	takePolyolsOff(f.Values, r.available, r.polyol)
	return f, nil
}

package web

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/bench"
	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/workshop"
)

func (s *Server) benchRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /drink/{name}", s.openBench)
	mux.HandleFunc("POST /drink/{name}", s.edit)
	mux.HandleFunc("POST /drink/{name}/edit", s.edit)
	mux.HandleFunc("GET /drink/{name}/trace", s.trace)
	mux.HandleFunc("POST /drink/{name}/trace", s.trace)
}

// benchPage is the page on which a drink is built.
type benchPage struct {
	Head   head
	Drink  string
	Text   string
	Base   string // the mark of the file that the page began from
	Unsaid bool   // the text is not the file's
	Pots   []bench.Pot
	*sheet.Front
	NotYet []claims.Said // claims that nobody can say as it is
	Was    bench.Figures // of the file; nil where the text is the file's
	Faults []faulty
	Told   []fail.Fault // why a change was not made
	Rows   int          // of the text
}

// faulty is a fault under the row in which it is.
type faulty struct {
	fail.Fault
	Number             int // of the row; 0: in no row of this file
	Before, At, Behind string
}

// Draws and WholeDraws are how many the page is from, and what is spoken and printed.
func (*benchPage) Draws() int      { return liveDraws }
func (*benchPage) WholeDraws() int { return wholeDraws }

// Live reports whether there are figures.
func (p *benchPage) Live() bool { return p.Front != nil }

// benchAssets are the style and the modules of the bench, the panels' with them: they open beside it.
var benchStyles, benchModules = []string{"bench.css", "panels.css"}, []string{"bench.js", "piece.js", "panels.js"}

// present keeps the assets that there are.
func present(names []string) []string {
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool {
		f, err := assetFiles.Open("assets/" + name)
		if err == nil {
			err = f.Close()
		}
		return err != nil
	})
}

func (s *Server) openBench(w http.ResponseWriter, r *http.Request) {
	file, ok := s.opened(w, r)
	if !ok {
		return
	}
	page, err := s.benchOf(r.Context(), file, file.Text, workshop.Fingerprint(file.Text))
	if err != nil {
		fails(w, err)
		return
	}
	show(w, http.StatusOK, "bench", page)
}

// benchOf makes the page of a text that stands for a file, as it is saved now; base is the mark of what the page began from.
func (s *Server) benchOf(ctx context.Context, file File, saved []byte, base string) (*benchPage, error) {
	p := &benchPage{
		Head: headOf(file, ""), Drink: file.Name, Text: string(file.Text), Base: base,
		Unsaid: string(saved) != string(file.Text), Rows: 1 + strings.Count(string(file.Text), "\n"),
	}
	p.Head.Styles, p.Head.Modules = present(benchStyles), present(benchModules)
	made, err := s.kitchen.Sheet(ctx, file, Ask{Draws: liveDraws, Claims: true, Typed: true})
	var told *fail.Error
	switch {
	case errors.As(err, &told) && told.Exit != fail.Failed:
		p.Faults = faultsIn(file, told.Faults)
		d, _ := drink.ParseBeside(file.Name, file.Text, s.folder.Beside, s.folder.Beside)
		p.Pots = bench.PotsOf(d)
		return p, nil
	case err != nil:
		return nil, err
	}
	front := sheet.FrontOf(made)
	p.Front, p.Pots = &front, bench.Pots(made)
	p.NotYet = slices.DeleteFunc(slices.Clone(made.Said), claims.Said.Holds)
	p.Head.Title = front.Title
	p.Head.Below = append(slices.Clone(front.Beside), clean.Name(file.Name))
	if p.Unsaid {
		p.Was = s.figuresOf(ctx, File{file.Name, saved})
	}
	return p, nil
}

// faultsIn finds the row of each fault, and the sign in it.
func faultsIn(file File, list []fail.Fault) []faulty {
	rows := strings.Split(strings.ReplaceAll(string(file.Text), "\r\n", "\n"), "\n")
	var out []faulty
	for _, f := range list {
		x := faulty{Fault: f}
		if f.File == file.Name && f.Line > 0 && f.Line <= len(rows) {
			row := []rune(rows[f.Line-1])
			col := min(max(f.Col-1, 0), len(row))
			x.Number, x.Before = f.Line, string(row[:col])
			x.At = string(row[col:min(col+1, len(row))])
			x.Behind = string(row[min(col+1, len(row)):])
		}
		out = append(out, x)
	}
	return out
}

// Where names where a fault is, if that is no row of the file.
func (f faulty) Where() string {
	if f.Number > 0 {
		return "line " + strconv.Itoa(f.Number)
	}
	return f.Place.String()
}

// beside is something of a page, with the page.
type beside struct {
	Page *benchPage
	Of   any
}

// barred is a bar and the axis that it stands on.
type barred struct {
	Axis sheet.Axis
	Bar  sheet.Bar
}

// lesser are the bars of what does not lead a sense.
func lesser(x sheet.SensePicture) []barred {
	var list []barred
	for _, p := range x.Pictures {
		for _, b := range p.Bars {
			if !b.Point && !b.Figure.Leads {
				list = append(list, barred{p.Axis, b})
			}
		}
	}
	return list
}

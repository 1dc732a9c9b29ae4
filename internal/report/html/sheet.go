package htmlreport

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"math"
	"strings"
	"sync"

	"sipsum/internal/report/svg"
	"sipsum/internal/sheet"
	"sipsum/internal/typeset"
)

//go:embed sheet.html
var sheetFile string

//go:embed sheet.css
var sheetStyle string

// sheetPage is read when the first sheet is printed. It draws with the pieces of svgreport, which
// escape what they are given.
var sheetPage = sync.OnceValue(func() *template.Template {
	t := newPage().Funcs(template.FuncMap{
		"kept":  typeset.Kept,
		"hue":   func(h sheet.Hue) string { return "k-" + string(h) },
		"cell":  cell,
		"head":  headOf,
		"kind":  kindOf,
		"drawn": func(x float64) bool { return !math.IsNaN(x) },
		"point": func(b *sheet.Bars) bool { return len(b.Bars) > 0 && b.Bars[0].Point },
		// A lead is a sentence's own word, but for an amount or a number.
		"colon":     func(r sheet.Role) bool { return r != sheet.Built && r != sheet.Cited },
		"bracketed": func(r sheet.Role) bool { return r == "" || r == sheet.Boxed || r == sheet.Small },

		"patterns": func() template.HTML { return template.HTML(svgreport.Patterns()) },
		"patch":    func(kind string) template.HTML { return template.HTML(svgreport.Patch(kind)) },
		"axis":     func(a sheet.Axis) template.HTML { return template.HTML(svgreport.Axis(a)) },
		"bar":      func(a sheet.Axis, b sheet.Bar) template.HTML { return template.HTML(svgreport.Bar(a, b)) },
		"scale":    func(a sheet.Axis, b sheet.Bar) template.HTML { return template.HTML(svgreport.Scale(a, b)) },
		"curve":    func(c *sheet.Curve) template.HTML { return template.HTML(svgreport.Curve(c)) },
		"smooth":   func(m *sheet.Smoothness) template.HTML { return template.HTML(svgreport.Smoothness(m)) },
		"flowpot":  func(a sheet.Axis, p sheet.FlowPot) template.HTML { return template.HTML(svgreport.FlowPot(a, p)) },
	})
	template.Must(t.Parse(pageFile)) // of which it takes the tables
	return template.Must(t.New("sheet").Parse(sheetFile))
})

// hues are the inks of the drawings: of a light page, of a dark one, and of paper.
var hues = sync.OnceValue(func() string {
	return svgreport.Hues(func(i svgreport.Inks) svgreport.Ink { return i.Light }) +
		"@media screen and (prefers-color-scheme: dark) {\n" + svgreport.Hues(func(i svgreport.Inks) svgreport.Ink { return i.Dark }) + "}\n" +
		"@media print {\n" + svgreport.Hues(func(i svgreport.Inks) svgreport.Ink { return i.Print }) + "}\n"
})

// Hues are the rules of those inks, for a page that draws with the same pieces.
func Hues() string { return hues() }

// cell writes the text of a cell so that a narrow column breaks it between figures alone.
func cell(text string) string {
	const slash, bracket = " / ", " ("
	parts := strings.Split(text, slash)
	for i, part := range parts {
		inside := strings.Split(part, bracket)
		for k := range inside {
			inside[k] = typeset.Kept(inside[k])
		}
		parts[i] = strings.Join(inside, bracket)
	}
	return strings.Join(parts, slash)
}

// headOf is the head of a cell's column, which stands before the cell where a phone has no room for
// the columns.
func headOf(g *sheet.Grid, r sheet.GridRow, cell int) string {
	return g.Head[len(g.Head)-len(r.Cells)+cell]
}

// kindOf names a picture for the template.
func kindOf(p sheet.Picture) string {
	switch p.(type) {
	case *sheet.Bars:
		return "bars"
	case *sheet.Curve:
		return "curve"
	case *sheet.Smoothness:
		return "smooth"
	}
	return "flow"
}

// Sheet prints the sheet of a drink as one page for a screen and for paper of a size: the brief,
// the card, and the rest.
func Sheet(w io.Writer, p *sheet.Paper, size string) error {
	paper, ok := papers[size]
	if !ok {
		return fmt.Errorf("no paper is called %q", size)
	}
	var out bytes.Buffer
	err := sheetPage().ExecuteTemplate(&out, "sheet", struct {
		*sheet.Paper
		Columns columns
		Style   template.CSS
	}{p, columnsOf(p), template.CSS(styleFile + sheetStyle + hues() + paper.sheetRules(p))})
	if err != nil {
		return err
	}
	_, err = w.Write(out.Bytes())
	return err
}

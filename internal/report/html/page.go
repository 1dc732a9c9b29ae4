package htmlreport

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"sync"

	"sipsum/internal/sheet"
)

//go:embed page.html
var pageFile string

//go:embed style.css
var styleFile string

// page is read when the first page is printed: no other command waits for it.
var page = sync.OnceValue(func() *template.Template { return template.Must(newPage().Parse(pageFile)) })

// newPage begins the template of a page.
func newPage() *template.Template {
	return template.New("page").Funcs(template.FuncMap{
		"head": func(*sheet.Grid, sheet.GridRow, int) string { return "" },
		"cell": func(text string) string { return text },
		"span": func(g *sheet.Grid, r sheet.GridRow) int { return len(g.Head) - len(r.Cells) },
	})
}

// Leaf prints a leaf as a page on paper of a size; Papers lists them.
func Leaf(w io.Writer, l *sheet.Leaf, size string) error {
	p, ok := papers[size]
	if !ok {
		return fmt.Errorf("no paper is called %q", size)
	}
	var out bytes.Buffer
	err := page().Execute(&out, struct {
		*sheet.Leaf
		Style template.CSS
	}{l, template.CSS(styleFile + p.rules(l))})
	if err != nil {
		return err
	}
	_, err = w.Write(out.Bytes())
	return err
}

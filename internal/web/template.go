package web

import (
	"bytes"
	"embed"
	"html/template"
	"net/http"
	"sync"

	"sipsum/internal/clean"
	"sipsum/internal/report/svg"
	"sipsum/internal/sheet"
	"sipsum/internal/typeset"
)

// pageFiles are the pages, one file each; layout.html has what all share.
//
//go:embed pages
var pageFiles embed.FS

var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{
		"plain":  clean.Prose, // of what a file or an error says
		"span":   func(g *sheet.Grid, r sheet.GridRow) int { return len(g.Head) - len(r.Cells) },
		"key":    key,
		"on":     func(p *benchPage, of any) beside { return beside{p, of} },
		"kept":   typeset.Kept,
		"barred": func(a sheet.Axis, b sheet.Bar) barred { return barred{a, b} },
		"lesser": lesser,
		// What is drawn: svgreport escapes what it is given.
		"patterns": func() template.HTML { return drawn(svgreport.Patterns()) },
		"axis":     func(a sheet.Axis) template.HTML { return drawn(svgreport.Axis(a)) },
		"bar":      func(a sheet.Axis, b sheet.Bar) template.HTML { return drawn(svgreport.Bar(a, b)) },
		"scale":    func(a sheet.Axis, b sheet.Bar) template.HTML { return drawn(svgreport.Scale(a, b)) },
		"patch":    func(h sheet.Hue) template.HTML { return drawn(svgreport.Patch("k-" + string(h))) },
		"sign":     func(kind string) template.HTML { return drawn(svgreport.Patch(kind)) },
	}).ParseFS(pageFiles, "pages/*.html"))
})

// show writes a page, or a piece of one, by the name of its template. Nothing is written of one that fails.
func show(w http.ResponseWriter, status int, name string, data any) {
	var out bytes.Buffer
	if err := pages().ExecuteTemplate(&out, name, data); err != nil {
		http.Error(w, "this page could not be written", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(out.Bytes()) // somebody who has left needs no words
}

package web

import (
	"bytes"
	"embed"
	"html/template"
	"net/http"
	"sync"

	"sipsum/internal/clean"
	"sipsum/internal/sheet"
)

// pageFiles are the pages, one file each; layout.html has what all share.
//
//go:embed pages
var pageFiles embed.FS

var pages = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{
		"plain": clean.Prose, // of what a file or an error says
		"span":  func(g *sheet.Grid, r sheet.GridRow) int { return len(g.Head) - len(r.Cells) },
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

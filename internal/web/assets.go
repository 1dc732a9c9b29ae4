package web

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"time"

	"sipsum/internal/report/html"
)

// assetFiles are the style and the scripts of the pages, served as they are.
//
//go:embed assets
var assetFiles embed.FS

func assetRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /assets/{name}", func(w http.ResponseWriter, r *http.Request) {
		name := r.PathValue("name")
		text, err := fs.ReadFile(assetFiles, path.Join("assets", name))
		if err != nil {
			http.NotFound(w, r)
			return
		}
		asset(w, r, name, text)
	})
	mux.HandleFunc("GET /hues.css", func(w http.ResponseWriter, r *http.Request) {
		asset(w, r, "hues.css", []byte(htmlreport.Hues()))
	})
}

// asset serves what is the same until the next edition of the program: a browser that has it asks by its hash.
func asset(w http.ResponseWriter, r *http.Request, name string, text []byte) {
	sum := sha256.Sum256(text)
	w.Header().Set("Cache-Control", "no-cache")
	w.Header().Set("ETag", `"`+hex.EncodeToString(sum[:])+`"`)
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(text))
}

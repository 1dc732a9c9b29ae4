package web

import (
	"embed"
	"net/http"
)

// assetFiles are the style and the scripts of the pages, served as they are.
//
//go:embed assets
var assetFiles embed.FS

func assetRoutes(mux *http.ServeMux) {
	mux.Handle("GET /assets/", http.FileServerFS(assetFiles))
}

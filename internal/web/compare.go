package web

import (
	"context"
	"net/http"

	"sipsum/internal/sheet"
)

// Comparer sets a drink, or a version of it, against another.
type Comparer interface {
	Compare(ctx context.Context, a, b File, draws int) (*sheet.Compared, error)
}

// comparedPage tells what a drink has more or less than a version of it.
type comparedPage struct {
	Head   head
	With   string // the version
	Saved  string
	Leaf   *sheet.Leaf
	Differ differing
}

// showCompared sets a drink, as typed or as it is in the folder, against a version of it, or against the
// file itself if none is named.
func (s *Server) showCompared(w http.ResponseWriter, r *http.Request) {
	now, ok := s.asTyped(w, r)
	if !ok {
		return
	}
	before, id := File{Name: now.Name + " in the folder"}, r.FormValue("with")
	var saved string
	var err error
	draws := wholeDraws
	if r.Method == http.MethodPost {
		draws = liveDraws
	}
	if id == "" {
		before.Text, err = s.folder.Read(now.Name)
	} else {
		before.Text, saved, err = s.version(now.Name, id)
		before.Name = now.Name + " of " + saved
	}
	var c *sheet.Compared
	if err == nil {
		c, err = s.kitchen.Compare(r.Context(), before, now, draws)
	}
	if err != nil {
		fails(w, err)
		return
	}
	page := comparedPage{headOf(now, "/compare"), id, saved, c.Leaf(), difference(string(before.Text), string(now.Text), [2]string{"A", "B"})}
	page.Head.Below = page.Leaf.Below
	show(w, http.StatusOK, "compare", page)
}

package web

import (
	"context"
	"strings"
	"sync"

	"sipsum/internal/bench"
	"sipsum/internal/sheet"
	"sipsum/internal/workshop"
)

// mostFigures is of how many files the figures are kept, for what has changed since: our own bound, some
// kilobytes each.
const mostFigures = 64

// figures are those of files as they are saved, by what is in them.
type figures struct {
	mu    sync.Mutex
	known map[string]bench.Figures
	order []string
}

// figuresOf gives the figures of a file as it is saved; none if it has faults.
func (s *Server) figuresOf(ctx context.Context, file File) bench.Figures {
	key := file.Name + "\n" + workshop.Fingerprint(file.Text)
	s.saved.mu.Lock()
	known, ok := s.saved.known[key]
	s.saved.mu.Unlock()
	if ok {
		return known
	}
	made, err := s.kitchen.Sheet(ctx, file, Ask{Draws: liveDraws, Typed: true})
	if ctx.Err() != nil {
		return nil // somebody else asks again
	}
	all := bench.Figures{}
	if err == nil {
		front := sheet.FrontOf(made)
		all = bench.FiguresOf(&front)
	}
	s.saved.keep(key, all)
	return all
}

// keep remembers figures; those of the file kept first go.
func (f *figures) keep(key string, all bench.Figures) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.known == nil {
		f.known = map[string]bench.Figures{}
	}
	if _, ok := f.known[key]; !ok {
		f.order = append(f.order, key)
	}
	f.known[key] = all
	if len(f.order) > mostFigures {
		delete(f.known, f.order[0])
		f.order = f.order[1:]
	}
}

// Before is what a figure of the page was, as it was printed; empty: it prints alike, or there was none.
func (p *benchPage) Before(now sheet.Written) string {
	if p.Was == nil {
		return ""
	}
	return p.Was.Was(now)
}

// Heard says which figures have changed, for who does not see it.
func (p *benchPage) Heard() string {
	if !p.Live() || p.Was == nil {
		return ""
	}
	var list []string
	for i := range p.Senses {
		for _, w := range p.Senses[i].Figures {
			if was := p.Before(w); was != "" {
				words := strings.TrimSpace(w.Lead + " " + w.Words)
				list = append(list, words+" "+was+", now "+strings.TrimSpace(w.Number+" "+w.Unit))
			}
		}
	}
	return strings.Join(list, "; ")
}

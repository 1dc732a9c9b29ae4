package bench

import (
	"sipsum/internal/figure"
	"sipsum/internal/sheet"
)

// Figures are those of a drink's first page as they are printed, by where the documents have them.
type Figures map[string]figure.Shown

// FiguresOf gathers them.
func FiguresOf(f *sheet.Front) Figures {
	all := Figures{}
	add := func(list ...sheet.Written) {
		for _, w := range list {
			all[w.Path] = w.Shown
		}
	}
	add(f.Below...)
	for i := range f.Senses {
		x := &f.Senses[i]
		add(x.Figures...)
		add(x.Further...)
		for _, b := range x.Pictures {
			for _, bar := range b.Bars {
				add(bar.Figure)
			}
		}
	}
	return all
}

// Was gives what a figure was, as it was printed; empty where it prints alike, or there was none.
func (f Figures) Was(now sheet.Written) string {
	was, ok := f[now.Path]
	if !ok || was.Number == now.Number && was.Unit == now.Unit && was.AtLeast == now.AtLeast {
		return ""
	}
	text := was.Number
	if was.AtLeast {
		text = "≥ " + text
	}
	if was.Unit != now.Unit && was.Unit != "" {
		text += " " + was.Unit
	}
	return text
}

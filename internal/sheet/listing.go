package sheet

import (
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// Row is a figure with its words.
type Row struct {
	Words  string
	Figure composition.Figure
	Depth  int // by how many of its parents that are shown above it
}

// Rows is a group of rows under a heading.
type Rows struct {
	Name string
	Rows []Row
}

// Listing is a composition by groups; what is wholly unknown and what is surely not there
// stand apart.
type Listing struct {
	Groups  []Rows
	Unknown []Row
	None    []string
}

// Composition lists a serving.
func (s *Sheet) Composition() Listing {
	var out Listing
	shown := figured(s.Assay)
	for _, g := range Groups() {
		rows := Rows{Name: g.Name}
		for _, l := range g.Lines {
			f, ok := s.Assay.PerServing.Find(l.ID)
			switch {
			case !ok || l.Words == "":
			case Hollow(f.Result):
				out.Unknown = append(out.Unknown, Row{l.Words, f, 0})
			case !None(f.Result):
				rows.Rows = append(rows.Rows, Row{l.Words, f, g.Depth(l.ID, shown)})
			case f.Constituent.Kind != constituent.Rest:
				out.None = append(out.None, l.Words)
			}
		}
		if len(rows.Rows) > 0 {
			out.Groups = append(out.Groups, rows)
		}
	}
	return out
}

// Further lists what a short page has of the composition beside its evidence.
func (s *Sheet) Further() []Row {
	told := map[constituent.ID]bool{}
	for _, c := range s.Evidence.Categories {
		for _, e := range c.Entries {
			told[e.Constituent.ID] = true
		}
	}
	var list []Row
	for _, g := range Groups() {
		for _, l := range g.Lines {
			if l.Short && !told[l.ID] && figured(s.Assay)(l.ID) {
				f, _ := s.Assay.PerServing.Find(l.ID)
				list = append(list, Row{l.Words, f, 0})
			}
		}
	}
	return list
}

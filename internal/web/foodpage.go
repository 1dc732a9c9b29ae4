package web

import (
	"math"
	"net/http"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// foodPage is the panel of one food: what its table says of it, and who says so.
type foodPage struct {
	panel
	ID, Group string
	Also      []string
	Density   string
	Groups    []foodGroup
	Notes     sheet.Footnotes
	Pots      []string
	Note      string
}

// foodGroup is a heading and the figures below it.
type foodGroup struct {
	Name string
	Rows []foodRow
}

// foodRow is a figure with what was found around it, and the numbers of its sources.
type foodRow struct {
	sample
	Depth int
	Found string // the range or the deviation between samples, and how many they were
	Cited string
}

func (s foodPanels) show(w http.ResponseWriter, r *http.Request) {
	stock, err := s.kitchen.Food(r.Context(), r.PathValue("food"))
	if err != nil {
		fails(w, err)
		return
	}
	p := &foodPage{
		panel: s.shelfOf(r, stock.Name()),
		ID:    stock.ID.String(), Group: clean.Name(stock.Group), Note: clean.Prose(stock.Note),
	}
	for _, n := range stock.Names[min(1, len(stock.Names)):] {
		p.Also = append(p.Also, clean.Name(n.Text))
	}
	if d := stock.Density; food.Stated(d.GramsPerMl) {
		p.Density = figure.Plain(d.GramsPerMl)
	}
	p.Pots = s.pots(p.Drink)
	p.tell(stock)
	p.open(w, "food", p)
}

// tell writes every value of the vocabulary, in the order of every other form, then the table's own.
func (p *foodPage) tell(stock *Stock) {
	has := func(id constituent.ID) bool { _, ok := stock.Value(id); return ok }
	for _, g := range sheet.Groups() {
		group := foodGroup{Name: g.Name}
		for _, l := range g.Lines {
			if v, ok := stock.Value(l.ID); ok {
				x := sampleOf(stock.Food, v, constituent.Must(l.ID))
				if constituent.Must(l.ID).Unit == "g" && x.Drawn() {
					x.Bar = min(x.Bar, whole) // of 100 g
				} else {
					x.Bar = math.NaN()
				}
				group.Rows = append(group.Rows, p.row(stock, v, x, g.Depth(l.ID, has)))
			}
		}
		p.add(group)
	}
	own := foodGroup{Name: "Other columns of the table"}
	for _, v := range stock.Values {
		if _, known := constituent.Find(string(v.Constituent)); known {
			continue
		}
		name, unit := string(v.Constituent), ""
		for _, c := range stock.Columns {
			if c.ID == v.Constituent {
				name, unit = c.Name, c.Unit
			}
		}
		x := written(stock.Food, v, name, unit)
		x.Bar = math.NaN()
		own.Rows = append(own.Rows, p.row(stock, v, x, 0))
	}
	p.add(own)
}

func (p *foodPage) add(g foodGroup) {
	if len(g.Rows) > 0 {
		p.Groups = append(p.Groups, g)
	}
}

func (p *foodPage) row(stock *Stock, v food.Value, x sample, depth int) foodRow {
	row := foodRow{sample: x, Depth: depth, Cited: p.cite(v, stock.Cited)}
	var found []string
	switch {
	case v.State >= estimate.Trace: // its limit is its figure
	case food.Stated(v.Low) && food.Stated(v.High):
		found = append(found, figure.Plain(v.Low)+" to "+figure.Plain(v.High))
	case food.Stated(v.SD) && v.SD > 0:
		found = append(found, "sd "+figure.PlainSpread(v.SD))
	}
	if v.N > 0 {
		found = append(found, "n "+strconv.Itoa(v.N))
	}
	row.Found = strings.Join(found, ", ")
	return row
}

// cite gives the numbers of the works behind a value; whose shares a kin lends is a source too.
func (p *foodPage) cite(v food.Value, cited func(string) (source.Work, bool)) string {
	var works []string
	if v.By == food.ByKin {
		works = append(works, sheet.KinWords(v.Ref)+".")
	}
	for id := range strings.FieldsSeq(v.Source) {
		if w, ok := cited(id); ok {
			works = append(works, sheet.Citation(w))
		}
	}
	return p.Notes.All(works)
}

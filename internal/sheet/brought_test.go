package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
)

// some is a known figure with a share of the total; NaN: no share was calculated.
func some(id constituent.ID, mean, share float64) composition.Figure {
	f := composition.Figure{Constituent: constituent.Must(id), Result: composition.Result{
		Summary: estimate.Summary{Mean: mean, Low: mean, High: mean}, Coverage: 1, WithBounds: mean, UpTo: mean, State: estimate.Calculated,
	}}
	f.Share = composition.Share{Mean: share, Low: share, High: share}
	return f
}

func partly(f composition.Figure) composition.Figure {
	f.Partial, f.WithBounds, f.Coverage = true, f.Mean*2, 0.5
	return f
}

func unknown(id constituent.ID) composition.Figure {
	return composition.Figure{Constituent: constituent.Must(id), Result: composition.Result{Unknown: true, WithBounds: math.NaN(), UpTo: math.NaN()}}
}

func component(name string, figures ...composition.Figure) assay.Component {
	return assay.Component{ID: recipe.PartID{Component: name}, Name: name, Constituents: figures}
}

func names(list []sheet.Bringer) []string {
	out := []string{}
	for _, b := range list {
		out = append(out, b.Name)
	}
	return out
}

// The parts of a constituent stand largest first; those of which nothing is known apart, and
// those that have none nowhere.
func TestBroughtTo(t *testing.T) {
	a := &assay.Assay{Components: []assay.Component{
		component("little", some("CITAC", 1, 0.1)), component("unread", unknown("CITAC")), component("much", some("CITAC", 9, 0.9)),
		component("without", some("CITAC", 0, 0)), component("of another"),
	}}
	b := sheet.BroughtTo(a, "CITAC")
	assert.Equal(t, []string{"much", "little"}, names(b.Known))
	assert.Equal(t, []string{"unread"}, names(b.Unknown))
}

// A part of less than half a per cent is counted and not listed, unless it is the largest or
// may be more than is known; a sentence names it only if it is the largest.
func TestTinyPartsAreCounted(t *testing.T) {
	b := sheet.Brought{Known: []sheet.Bringer{
		{Name: "first", Figure: some("CITAC", 5, 0.004)}, {Name: "just", Figure: some("CITAC", 4, 0.005)},
		{Name: "less", Figure: some("CITAC", 3, 0.0049)}, {Name: "open", Figure: partly(some("CITAC", 2, 0.001))},
		{Name: "no share", Figure: some("CITAC", 1, math.NaN())},
	}}
	list, more := b.Listed()
	assert.Equal(t, []string{"first", "just", "open", "no share"}, names(list))
	assert.Equal(t, 1, more)
	assert.Equal(t, []string{"first", "just"}, names(b.Named()))
}

func TestWhoLeads(t *testing.T) {
	for _, c := range []struct {
		share float64
		leads bool
	}{{0.5, true}, {0.499, false}, {1, true}, {math.NaN(), false}} {
		lead, ok := sheet.Brought{Known: []sheet.Bringer{{Name: "x", Figure: some("CITAC", 1, c.share)}}}.Lead()
		assert.Equal(t, c.leads, ok, c.share)
		assert.Equal(t, ok, lead.Name == "x", c.share)
	}
	_, ok := sheet.Brought{}.Lead()
	assert.False(t, ok)
	assert.False(t, sheet.HasShare(composition.Share{}), "of parts that were not asked for")
}

func TestAllKnown(t *testing.T) {
	one := sheet.Bringer{Figure: some("CITAC", 1, 1)}
	assert.True(t, sheet.Brought{Known: []sheet.Bringer{one}}.AllKnown())
	assert.False(t, sheet.Brought{Known: []sheet.Bringer{one}, Unknown: []sheet.Bringer{{}}}.AllKnown())
	assert.False(t, sheet.Brought{Known: []sheet.Bringer{{Figure: partly(one.Figure)}}}.AllKnown())
}

// told is a sheet of a serving of energy, acid, fat, caffeine and protein.
func told() *sheet.Sheet {
	figures := []composition.Figure{
		some(constituent.Energy, 100, 1), some("FAT", 2, 1), some("PROCNT", 3, 1), some(constituent.Caffeine, 60, 1), some("CITAC", 10, 1), unknown("MALAC"),
		some(constituent.Alcohol, 0, 0), some("FASAT", 1, 1),
	}
	a := &assay.Assay{Basis: assay.Basis{PerServing: figures}, Components: []assay.Component{
		component("coffee", some(constituent.Energy, 10, 0.1), some(constituent.Caffeine, 60, 1), some("FAT", 2, 1)),
		component("syrup", some(constituent.Energy, 90, 0.9), some("CITAC", 10, 1)),
	}}
	return &sheet.Sheet{Assay: a, Evidence: evidence.View{Categories: []evidence.Category{
		{Name: "acid", Entries: []evidence.Entry{{Figure: figures[4]}, {Figure: figures[5]}}},
		{Name: "bitter", Entries: []evidence.Entry{{Figure: figures[3]}, {Figure: figures[4]}}},
	}}}
}

// What a page tells at length is energy first, then what speaks for a category, each once, and
// fat last; unknown ones, and ones of which no part is known, are left out.
func TestContributions(t *testing.T) {
	s := told()
	got := []constituent.ID{}
	for _, c := range s.Contributions() {
		got = append(got, c.Figure.Constituent.ID)
		inCategory := c.Figure.Constituent.ID == "CITAC" || c.Figure.Constituent.ID == constituent.Caffeine
		assert.Equal(t, inCategory, c.Entry != nil, c.Figure.Constituent.ID)
		if inCategory {
			assert.Equal(t, c.Figure.Constituent, c.Entry.Constituent)
		}
	}
	assert.Equal(t, []constituent.ID{constituent.Energy, "CITAC", constituent.Caffeine, "FAT"}, got)
	s.Assay.Components = s.Assay.Components[1:]
	assert.Len(t, s.Contributions(), 2, "nobody brings the caffeine and the fat any more")
}

// A summary tells energy, sugars, acids, caffeine and alcohol, as far as the drink has them,
// and who leads, each once.
func TestSummary(t *testing.T) {
	got := told().Summary()
	require.Len(t, got.Figures, 2)
	assert.Equal(t, constituent.Energy, got.Figures[0].Constituent.ID)
	assert.Equal(t, constituent.Caffeine, got.Figures[1].Constituent.ID)
	require.Len(t, got.Leaders, 2)
	assert.Equal(t, "syrup", got.Leaders[0].Name)
	assert.InDelta(t, 0.9, got.Leaders[0].Of[0].Share.Mean, 0)
	assert.Equal(t, "coffee", got.Leaders[1].Name)

	s := told()
	s.Assay.Components[0].Constituents[0].Share.Mean, s.Assay.Components[0].Constituents[0].Mean = 0.8, 900
	both := s.Summary().Leaders
	require.Len(t, both, 1, "the coffee leads both")
	assert.Len(t, both[0].Of, 2)
	assert.Equal(t, constituent.Caffeine, both[0].Of[1].Figure.Constituent.ID)
	assert.Empty(t, (&sheet.Sheet{Assay: &assay.Assay{}}).Summary().Figures)
}

// A part says that it rests on another food's figure from a twentieth of it on.
func TestWhoseFiguresAPartRestsOn(t *testing.T) {
	of := func(path []string, food, by string, mean float64) composition.Contribution {
		return composition.Contribution{Path: path, Food: food, By: by, Mean: mean}
	}
	a := &assay.Assay{Components: []assay.Component{
		component("shot", some("K", 100, 0.8)), component("mixed", some("K", 20, 0.15)), component("plain", some("K", 10, 0.05)),
	}}
	whole := some("K", 130, 1)
	whole.Contributions = []composition.Contribution{
		of([]string{"shot"}, "core:espresso-dark", "borrowed", 100),
		of([]string{"mixed", "inner"}, "core:espresso-dark", "borrowed", 0.9), of([]string{"mixed"}, "core:orange-juice", "", 19.1),
		of([]string{"plain"}, "core:orange-juice", "", 10),
	}
	a.PerServing = composition.Composition{whole}
	by := map[string]string{}
	for _, b := range sheet.BroughtTo(a, "K").Known {
		by[b.Name] = b.By
	}
	assert.Equal(t, map[string]string{"shot": "borrowed", "mixed": "", "plain": ""}, by)
	whole.Contributions[1].Mean, whole.Contributions[2].Mean = 1.1, 18.9
	for _, b := range sheet.BroughtTo(a, "K").Known {
		if b.Name == "mixed" {
			assert.Equal(t, "borrowed", b.By)
		}
	}
}

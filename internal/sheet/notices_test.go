package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/label"
	"sipsum/internal/note"
	"sipsum/internal/reading"
	"sipsum/internal/sheet"
)

// A reading that does not agree is a notice before all others, once: a note that repeats it is
// not told again, one of a titration is.
func TestReadingsThatDisagreeAreTold(t *testing.T) {
	far := reading.Reading{Path: []string{"syrup"}, Kind: "brix", Unit: "°Bx", Read: 65, Expected: 50, Used: 60, Advice: "stir"}
	s := &sheet.Sheet{Assay: &assay.Assay{
		Readings: []reading.Reading{{Kind: "mass", Agrees: true}, far},
		Notes: []note.Note{
			{Kind: "reading disagrees", Text: far.Note()}, {Kind: "reading disagrees", Text: "milk: twice the base"}, {Kind: "step", Text: "a step"},
		},
	}}
	got := s.Read()
	assert.False(t, got.None())
	assert.Equal(t, []reading.Reading{far}, got.Disagree)
	assert.Equal(t, []string{"milk: twice the base"}, got.Notes)
	assert.Len(t, got.Agree, 1)
	assert.Equal(t, []string{"a step"}, notes(s, false))
	assert.True(t, (&sheet.Sheet{Assay: &assay.Assay{}}).Read().None())
	assert.False(t, sheet.Read{Notes: []string{"x"}}.None())
}

// A reading that misses is told of a drink, not only of a model.
func TestAReadingThatMissesIsTold(t *testing.T) {
	head := plain[:len(plain)-len("build: [50 g own:wet, 10 g own:sweet]\n")]
	assert.Len(t, built(t, head+"components:\n  syrup: {ingredients: [100 g own:wet, 100 g own:sweet], measured: {brix: 65}}\nbuild: [50 g syrup]\n").Read().Disagree, 1)
	assert.Empty(t, built(t, head+"components:\n  syrup: {ingredients: [100 g own:wet, 100 g own:sweet], measured: {brix: 50}}\nbuild: [50 g syrup]\n").Read().Disagree)
}

func TestGaps(t *testing.T) {
	s := &sheet.Sheet{Assay: &assay.Assay{Notes: []note.Note{
		{Kind: "unknown", Constituent: "CITAC", Foods: []string{"a", "b"}}, {Kind: "unknown", Constituent: "nothing", Foods: []string{"c"}},
		{Kind: "unknown", Constituent: "MALAC", Foods: []string{"a"}}, {Kind: "glass", Constituent: "CITAC", Foods: []string{"d"}, Text: "it overflows"},
	}}}
	assert.Equal(t, []sheet.Gap{
		{Food: "a", Missing: []*constituent.Constituent{constituent.Must("CITAC"), constituent.Must("MALAC")}},
		{Food: "b", Missing: []*constituent.Constituent{constituent.Must("CITAC")}},
	}, s.Gaps())
	assert.Equal(t, []string{"it overflows"}, notes(s, false))
}

// notes gives the notes of a sheet that are told, and not only counted.
func notes(s *sheet.Sheet, whole bool) []string {
	list, _ := s.Notes(whole)
	return list
}

// How published figures were made to fit together decides nothing: it is told in the assay, and
// counted elsewhere.
func TestNotesOfTablesAreCounted(t *testing.T) {
	s := &sheet.Sheet{Assay: &assay.Assay{Notes: []note.Note{
		{Kind: "over total", Text: "milk: 5.2 g counts"}, {Kind: "step", Text: "it foams"}, {Kind: "derived", Text: "salt from sodium"},
	}}}
	list, more := s.Notes(false)
	assert.Equal(t, []string{"it foams"}, list)
	assert.Equal(t, 2, more)
	list, more = s.Notes(true)
	assert.Equal(t, []string{"milk: 5.2 g counts", "it foams", "salt from sodium"}, list)
	assert.Zero(t, more)
}

func TestTableEnergy(t *testing.T) {
	s := &sheet.Sheet{Assay: &assay.Assay{TableEnergy: [2]composition.TableEnergy{
		{ID: constituent.Energy, Amount: 100, Missing: []string{"a", "b"}}, {ID: constituent.EnergyKcal, Amount: 24, Missing: []string{"b", "c"}},
	}}}
	stated, missing := s.TableEnergy()
	assert.Len(t, stated, 2)
	assert.Equal(t, []string{"a", "b", "c"}, missing)
	s.Assay.TableEnergy[0].Amount = 0
	stated, missing = s.TableEnergy()
	require.Len(t, stated, 1)
	assert.Equal(t, constituent.EnergyKcal, stated[0].ID)
	assert.Equal(t, []string{"b", "c"}, missing, "of a unit that no table prints nothing is missing")
}

func TestInside(t *testing.T) {
	alone, also := component("espresso"), component("filter")
	s := &sheet.Sheet{Assay: &assay.Assay{Against: assay.Against{Alone: &alone}, Components: []assay.Component{component("syrup")}}}
	assert.Equal(t, []*assay.Component{&alone}, s.Inside())
	s.Assay.Also = []*assay.Component{&also}
	assert.Equal(t, []*assay.Component{&alone, &also}, s.Inside(), "in the order of the file")
	s.Assay.Components = append(s.Assay.Components, alone)
	assert.Equal(t, []*assay.Component{&also}, s.Inside(), "the build pours the first")
	s.Assay.Alone, s.Assay.Also = nil, nil
	assert.Nil(t, s.Inside())
}

// A caution stands once; the rules are named where not all of them give it.
func TestCautionsStandOnce(t *testing.T) {
	dose, worded, own := caution.Caution{Code: "a", Text: "x"}, caution.Caution{Code: "a", Text: "y"}, caution.Caution{Code: "b", Text: "x"}
	s := &sheet.Sheet{Allergens: func() []sheet.Declaration {
		return []sheet.Declaration{
			{Declaration: allergen.Declaration{Rules: "eu"}, Cautions: []caution.Caution{dose, worded}},
			{Declaration: allergen.Declaration{Rules: "us"}, Cautions: []caution.Caution{own, dose}},
		}
	}}
	assert.Equal(t, []sheet.Cautioned{{dose, nil}, {worded, []string{"eu"}}, {own, []string{"us"}}}, s.Cautions())
}

func TestNotComplete(t *testing.T) {
	c := &label.Card{
		Rows:  []label.Row{{Key: "fat", Label: "Fat"}, {Key: "saturates", Label: "of which saturates"}, {Key: "salt", Label: "Salt"}},
		Notes: []label.Note{{Kind: "scope"}, {Row: "salt"}, {Row: "saturates"}},
	}
	assert.Equal(t, []string{"saturates", "Salt"}, sheet.NotComplete(c))
}

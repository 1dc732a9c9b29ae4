package sweep_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/sheet"
)

// ingredientsAddUp asks who brings each figure of a serving: the foods, what came of them through
// each pot, and the parts of the build tell one story.
func ingredientsAddUp(s *subject, broken say) {
	for _, f := range s.assay.PerServing {
		id := f.Constituent.ID
		sum, shares, some := 0.0, 0.0, false
		parts := map[string]float64{}
		for _, i := range sheet.Ingredients(s.sheet, f.Constituent) {
			ways := 0.0
			for _, t := range i.Through {
				ways += t.Mean
				part := i.Food.ID.String()
				if len(t.Path) > 0 {
					part = t.Path[0]
				}
				parts[part] += t.Mean
				inside(broken, string(id)+" of "+part, t.Bringing)
			}
			if math.Abs(ways-i.Mean) > 1e-6*math.Max(i.Mean, 1e-9) {
				broken(math.Abs(ways-i.Mean), "%s of %s: %.6g, through its pots %.6g", id, i.Food.ID, i.Mean, ways)
			}
			inside(broken, string(id)+" of "+i.Food.ID.String(), i.Bringing)
			sum += i.Mean
			if isNumber(i.Share.Mean) {
				shares, some = shares+i.Share.Mean, true
			}
		}
		if f.Unknown {
			continue
		}
		scale := math.Max(f.Mean, 1e-9)
		if math.Abs(sum-f.Mean) > 1e-6*scale {
			broken(math.Abs(sum-f.Mean)/scale, "%s: ingredients %.6g, total %.6g", id, sum, f.Mean)
		}
		if some && math.Abs(shares-1) > 1e-6 {
			broken(math.Abs(shares-1), "%s: shares of ingredients add up to %.6g", id, shares)
		}
		for _, c := range s.assay.Components {
			part := c.ID.Component
			if part == "" {
				part = c.ID.Food.String()
			}
			if whole, ok := c.Constituents.Find(id); ok && math.Abs(whole.Mean-parts[part]) > 1e-6*scale {
				broken(math.Abs(whole.Mean-parts[part])/scale, "%s of %s: %.6g, its ingredients bring %.6g", id, part, whole.Mean, parts[part])
			}
		}
	}
}

// inside asks whether shares are shares.
func inside(broken say, of string, b composition.Bringing) {
	if b.Mean < 0 {
		broken(-b.Mean, "%s: %.4g", of, b.Mean)
	}
	for _, x := range []float64{b.Share.Mean, b.Share.Low, b.Share.High, b.Worst} {
		if x < 0 || x > 1+1e-6 {
			broken(math.Abs(x), "share of %s: %v, worst %v", of, b.Share, b.Worst)
		}
	}
	if b.Worst > b.Share.Low*(1+1e-9) {
		broken(b.Worst-b.Share.Low, "share of %s: at worst %v, though low is %v", of, b.Worst, b.Share.Low)
	}
}

// whatIsSaidHolds works each sentence out again, from the rows: in every draw, with what those
// who speak do not know at nothing, and what others do not know at its most.
func whatIsSaidHolds(s *subject, broken say) {
	b := sheet.BriefOf(s.sheet)
	for _, said := range b.Say {
		if said.Rung != "" {
			continue // the law of the ladder is about it
		}
		worst, stated := math.Inf(1), said.Number
		for d := range s.assay.Serving.N {
			worst = math.Min(worst, s.inDraw(b, said, d))
		}
		if !(worst >= stated-1e-9) {
			broken(stated-worst, "%s In some draw it is %.4g.", said.Text, worst)
		}
	}
}

// inDraw gives what a sentence speaks of in one draw; of "no more than", less than nothing.
func (s *subject) inDraw(b *sheet.Brief, said sheet.Said, d int) float64 {
	pot, id := s.assay.Serving, said.Constituent.ID
	mine := func(row int) bool {
		return said.Kind == sheet.SayAgainst && s.isAlone(b, row) // the coffee is what is compared with
	}
	partMost, rest, restMost := 0.0, 0.0, 0.0
	for row := range pot.Rows {
		own := pot.Of(row, id)[d]
		most := own + s.openIn(row, said.Constituent, d)
		if mine(row) {
			partMost += most
		} else {
			rest, restMost = rest+own, restMost+most
		}
	}
	if said.Kind == sheet.SayAgainst {
		return 1 + rest/partMost
	}
	return 2*said.Number - restMost*said.Constituent.PerGram // at least Number where restMost is at most that
}

// isAlone reports whether a row belongs to what the brief sets the drink against.
func (s *subject) isAlone(b *sheet.Brief, row int) bool {
	r := s.assay.Serving.Rows[row]
	switch {
	case s.assay.Drink.CompareWith != "":
		return len(r.Path) > 0 && r.Path[0] == s.assay.Drink.CompareWith
	case slices.ContainsFunc(s.assay.Serving.Rows, func(r ledger.Row) bool { return len(r.Path) > 0 && r.Path[0] == b.Against }):
		return len(r.Path) > 0 && r.Path[0] == b.Against // a coffee inside another part is another part's
	}
	direct := func(r ledger.Row) bool { return len(r.Path) == 0 && r.Profile.Food.Facts().Coffee }
	if slices.ContainsFunc(s.assay.Serving.Rows, direct) {
		return direct(r) // so is one that is poured beside the parts
	}
	return r.Profile.Food.Facts().Coffee
}

// openIn is what a row does not know of a constituent, at its most in a draw: no part is more
// than its whole.
func (s *subject) openIn(row int, c *constituent.Constituent, d int) float64 {
	pot := s.assay.Serving
	bound := pot.Bounds(row)[c.Order]
	if bound == 0 {
		return 0
	}
	if pot.Of(row, constituent.Mass)[0] == 0 {
		return bound
	}
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		if room := pot.Of(row, up)[d] + pot.Bounds(row)[constituent.Must(up).Order] - pot.Of(row, c.ID)[d]; room < bound {
			bound = math.Max(room, 0)
		}
	}
	return bound
}

func aBriefIsAScreen(s *subject, broken say) {
	page := s.pages["brief"]
	if n := strings.Count(page, "\n"); n > int(limit("brief lines")) {
		broken(float64(n), "%d lines", n)
	}
	flat := strings.Join(strings.Fields(page), " ")
	b := sheet.BriefOf(s.sheet)
	for _, name := range slices.Concat(b.Guest.Contains, b.Guest.MayContain) {
		if !strings.Contains(flat, strings.Join(strings.Fields(name), " ")) {
			broken(1, "the brief lacks the allergen %q", name)
		}
	}
	if b.Gap != nil && !strings.Contains(page, "\nUnknown ") {
		broken(1, "the brief lacks what is unknown")
	}
	for _, text := range b.Mind {
		if !strings.Contains(strings.ToLower(flat), strings.ToLower(strings.Join(strings.Fields(text), " "))) {
			broken(1, "the brief lacks %q", text)
		}
	}
	if strong := slices.ContainsFunc(b.Senses, func(x sheet.Sense) bool { return x.Name == "alcohol" }); strong && !strings.Contains(page, "\nAlcohol ") {
		broken(1, "the brief lacks the alcohol")
	}
	if len(b.Guest.Cautions) > 0 && !strings.Contains(page, "\nCaution ") && !strings.Contains(flat, "more: sipsum allergens") {
		broken(1, "the brief drops its cautions")
	}
	if n := len(b.Read.Disagree); n > 0 && strings.Count(flat, " · used ") < n && !strings.Contains(flat, "more: sipsum assay") {
		broken(float64(n), "of %d contradictions the brief has %d, and counts none", n, strings.Count(flat, " · used "))
	}
}

// The demos and the drinks that a new user would write keep every law too.
func TestWrittenDrinks(t *testing.T) {
	k, b := newKitchen(t), newBreaches(laws, printedLaws, refusalLaws)
	var files []string
	for _, pattern := range []string{"../../data/demo/*.yaml", "../../testdata/drinks/designs/*.yaml", "../report/text/testdata/brief/*.yaml"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: no drink, %v", pattern, err)
		}
		files = append(files, found...)
	}
	sideBySide(files, func(file string) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Error(err)
			return
		}
		s, refused := k.serve(filepath.Base(file), string(text))
		if refused != nil {
			t.Errorf("%s: %v", file, refused.err)
			return
		}
		b.judge(s, laws, printedLaws)
	})
	b.report(t)
}

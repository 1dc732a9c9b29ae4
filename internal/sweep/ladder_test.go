package sweep_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/sheet"
)

// rungShares are the least and the most that a word for a part may stand for, as somebody who hears it
// would have it (data/ladder.csv says why).
var rungShares = map[ladder.Rung][2]float64{
	ladder.All: {1, 1}, ladder.NearlyAll: {0.9, 1}, ladder.Most: {0.6, 1}, ladder.Lead: {0.05, 1}, ladder.Half: {0.4, 0.6},
	ladder.Third: {1.0 / 3, 1}, ladder.Quarter: {0.25, 1}, ladder.Fifth: {0.2, 1}, ladder.Some: {0.05, 1},
}

// theLadderHolds works every sentence of the evidence out again, from the rows: in every draw, with
// what those who speak do not know at nothing and what others do not know at its most, and the other
// way round.
func theLadderHolds(s *subject, broken say) {
	page := strings.Join(strings.Fields(s.pages["evidence"]), " ")
	for _, c := range s.sheet.Evidence.Categories {
		for _, said := range c.Sentences {
			s.bears(said, broken)
			if len(said.Works) == 0 || !strings.Contains(page, said.Text+"” [") {
				broken(1, "%s Nobody is cited.", said.Text)
			}
			if brought := strings.ToLower(said.Constituent.Words()); strings.HasPrefix(strings.ToLower(said.Text), "the "+brought+" brings") {
				broken(1, "%s That says nothing.", said.Text)
			}
		}
	}
	for _, said := range sheet.BriefOf(s.sheet).Say { // the brief says what the evidence says
		if said.Rung == "" {
			continue
		}
		if !slices.ContainsFunc(s.sheet.Evidence.Categories, func(c evidence.Category) bool {
			return slices.ContainsFunc(c.Sentences, func(x ladder.Sentence) bool { return x.Text == said.Text })
		}) {
			broken(1, "%s Only the brief says so.", said.Text)
		}
	}
}

// percents are the shares that a sentence prints: a chocolate has one in its name, before them.
var percents = regexp.MustCompile(`: (?:at least )?(\d+)(?: to (\d+))? %(?: or more)?\.$`)

// bears asks whether a sentence holds.
func (s *subject) bears(said ladder.Sentence, broken say) {
	least, most := rungShares[said.Rung][0], rungShares[said.Rung][1]
	if m := percents.FindStringSubmatch(said.Text); m != nil {
		printed, _ := strconv.ParseFloat(m[1], 64)
		least = max(least, printed/100)
		if said.Rung == ladder.Half {
			if m[2] == "" {
				m[2] = m[1]
			}
			printed, _ = strconv.ParseFloat(m[2], 64)
			most = min(most, printed/100)
		}
	} else if said.Rung != ladder.All {
		broken(1, "%s It prints no share.", said.Text)
	}
	low, high, lead := math.Inf(1), math.Inf(-1), math.Inf(1)
	for d := range s.assay.Serving.N {
		l, h, more := s.shareInDraw(said, d)
		low, high, lead = math.Min(low, l), math.Max(high, h), math.Min(lead, more)
	}
	if !(low >= least-1e-9) {
		broken(least-low, "%s In some draw it is %.4g.", said.Text, low)
	}
	if most < 1 && !(high <= most+1e-9) {
		broken(high-most, "%s In some draw it is %.4g.", said.Text, high)
	}
	if said.Rung == ladder.Lead && !(lead > 0) {
		broken(-lead, "%s In some draw another brings %.4g g more.", said.Text, -lead)
	}
}

// shareInDraw gives the ends of the share of who speaks in one draw, and by how many grams it brings
// more than the most that any other of its kind may bring.
func (s *subject) shareInDraw(said ladder.Sentence, d int) (low, high, lead float64) {
	pot := s.assay.Serving
	own, open := 0.0, 0.0
	others, othersMost := 0.0, 0.0
	each := map[string]float64{}
	for row, r := range pot.Rows {
		known, unknown := pot.Of(row, said.Constituent.ID)[d], s.openIn(row, said.Constituent, d)
		mine, name := r.Profile.Food.ID == said.Food, r.Profile.Food.ID.String()
		if said.Food == (food.ID{}) {
			mine = len(r.Path) > 0 && r.Path[0] == said.Component
			if len(r.Path) > 0 {
				name = "pot " + r.Path[0]
			}
		}
		if mine {
			own, open = own+known, open+unknown
			continue
		}
		others, othersMost = others+known, othersMost+known+unknown
		each[name] += known + unknown
	}
	lead = own
	for _, most := range each {
		lead = math.Min(lead, own-most)
	}
	return own / (own + othersMost), (own + open) / (own + open + others), lead
}

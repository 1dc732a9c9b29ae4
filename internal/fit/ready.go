package fit

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Quality is what somebody wants more or less of, in a word.
type Quality string

// The qualities.
const (
	Sweet  Quality = Quality(taste.Sweet)
	Sour   Quality = Quality(taste.Sour)
	Bitter Quality = Quality(taste.Bitter)
	Salty  Quality = Quality(taste.Salty)
	Strong Quality = "strong"
)

// Qualities lists them.
func Qualities() []string {
	return []string{string(Sweet), string(Sour), string(Bitter), string(Salty), string(Strong)}
}

// Noticed reports whether it is published what a judge notices of it.
func (q Quality) Noticed() bool { return q == Sweet || q == Sour }

// Wish is a quality of which somebody wants more or less.
type Wish struct {
	Quality Quality
	More    bool
	By      float64 // as a share of what is there; 0: what a judge notices
}

func (w Wish) words() string {
	word := "less "
	if w.More {
		word = "more "
	}
	return word + string(w.Quality)
}

// Wished makes targets of a wish: the quality moves by its share, every other that the drink has
// stays within what a judge notices, and so does the size of a serving. Their figures are those of
// the drink as it is written, so that they can be kept in its file. Errors are *fail.Error.
func (b Bench) Wished(ctx context.Context, w Wish) (aims []Aim, remarks []string, err error) {
	a, err := b.Drawn.Run(ctx, nil, assay.Want{Intervals: true, Draws: true, Chemistry: true})
	if err != nil {
		return nil, nil, err
	}
	profile := taste.Of(a.Glass())
	if profile.Why != "" {
		return nil, nil, fail.New(fail.Wrong, "how "+string(w.Quality)+" it is cannot be told: "+profile.Why, "write targets of its figures: targets: [serving(SUGAR) <= 8 g]")
	}
	r := ready{a, claims.NewGlass(a, b.Declared), profile}
	by, why, err := r.share(w)
	if err != nil {
		return nil, nil, err
	}
	for _, q := range Qualities() {
		list, remark, err := r.aims(Quality(q), w, by, why)
		if err != nil {
			return nil, nil, err
		}
		aims = append(aims, list...)
		if remark != "" {
			remarks = append(remarks, remark)
		}
	}
	keep := unit.LimitOf("what is kept of a serving", "share")
	size, err := parsed(fmt.Sprintf("volume() between %s ml and %s ml", digits(keep.Low*a.Volume.Mean), digits(keep.High*a.Volume.Mean)), Ready{"the serving keeps its size" + either(keep.Low, keep.High) + ownBound, true, keep.Low, keep.High, true})
	return append(aims, size), append(remarks, r.evidence(aims)), err
}

// ready makes targets for a drink as it is written.
type ready struct {
	assay   *assay.Assay
	glass   *claims.Glass
	profile taste.Profile
}

// share is by how much a quality is to move, and why.
func (r ready) share(w Wish) (by float64, why string, err error) {
	if w.By > 0 {
		return w.By, "", nil
	}
	if d, ok := r.noticed(w.Quality); ok {
		return d.High / unit.Hundred, ", the most that a judge needs to notice it", nil
	}
	return 0, "", fail.New(fail.Wrong, "how much "+w.words()+" a judge notices is not published as far as was looked", "say by how much: --by 20%")
}

// noticed is the least difference of a quality that a judge notices, if one is published.
func (r ready) noticed(q Quality) (taste.Difference, bool) {
	switch q {
	case Sweet:
		return r.profile.Sweet.Notices, true
	case Sour:
		return r.profile.Sour.Notices, true
	}
	return taste.Difference{}, false
}

// kept is within what share a quality stays that nobody wants moved.
func (r ready) kept(q Quality) (low, high float64) {
	if d, ok := r.noticed(q); ok {
		return 1 - d.Low/unit.Hundred, 1 + d.Low/unit.Hundred
	}
	l := unit.LimitOf("what is kept of a taste", "share")
	return l.Low, l.High
}

// aims gives the targets of one quality: that it moves, if it is the one wished for, else that it
// stays. The remark says why one is left out that the drink may have.
func (r ready) aims(q Quality, w Wish, by float64, why string) ([]Aim, string, error) {
	figures, withheld := r.figures(q)
	wished := q == w.Quality
	if len(figures) == 0 {
		if wished {
			return nil, "", r.none(q, w, withheld)
		}
		if withheld != "" {
			return nil, "how " + string(q) + " it stays is not held: " + withheld, nil
		}
		return nil, "", nil
	}
	var list []Aim
	for _, f := range figures {
		is, high, err := r.told(f)
		if err != nil {
			return nil, "", err
		}
		switch open := math.IsInf(high, 0) || math.IsNaN(high) || !(is.Mean > 0); {
		case open && wished:
			return nil, "", r.none(q, w, "nobody knows all of "+f)
		case open:
			return nil, "how " + string(q) + " it stays is not held: " + f + " is not known", nil
		}
		text, ready := r.target(f, is, q, w, by, why)
		aim, err := parsed(text, ready)
		if err != nil {
			return nil, "", err
		}
		list = append(list, aim)
	}
	return list, "", nil
}

// target writes a target of a figure: shares of what is told of the drink as it is written.
func (r ready) target(figure string, is composition.Result, q Quality, w Wish, by float64, why string) (string, Ready) {
	in := is.Unit
	says := fmt.Sprintf("%s by %s %%%s", w.words(), digits(by*unit.Hundred), why)
	switch least, most := r.kept(q); {
	case q != w.Quality:
		return fmt.Sprintf("%s between %s %s and %s %s", figure, digits(least*is.Mean), in, digits(most*is.Mean), in), Ready{"stays as " + string(q) + either(least, most) + r.bound(q), true, least, most, true}
	case w.More:
		return fmt.Sprintf("%s >= %s %s", figure, digits((1+by)*is.Mean), in), Ready{says, false, 1 + by, math.Inf(1), true}
	}
	return fmt.Sprintf("%s <= %s %s", figure, digits((1-by)*is.Mean), in), Ready{says, false, 0, 1 - by, true}
}

func (r ready) none(q Quality, w Wish, withheld string) error {
	if withheld != "" {
		return fail.New(fail.Wrong, "how "+string(q)+" the drink is, is not known: "+withheld, "measure it, and write it under measured")
	}
	return fail.New(fail.Wrong, "nothing in the drink makes it "+string(q)+", so that nothing can make it "+w.words(), "add to build what is "+string(q))
}

// figures gives what a quality is measured by, as expressions; none where the drink has not got it,
// or where it is withheld.
func (r ready) figures(q Quality) (list []string, withheld string) {
	switch q {
	case Sweet:
		return r.sweet(), ""
	case Sour:
		switch s := r.profile.Sour; {
		case s.Titratable.Why != "":
			return nil, s.Titratable.Why
		case s.Hardly:
			return nil, ""
		}
		return []string{"ta()"}, ""
	case Strong:
		if r.assay.Strength.Mean > 0 {
			list = []string{"alcohol_abv()"}
		}
		return list, ""
	}
	for _, d := range r.profile.Doses {
		if Quality(d.Taste) == q && d.High > 0 && d.Place() != taste.Below && d.Amount.Mean > 0 {
			list = append(list, "per100ml("+string(d.Constituent.ID)+")")
		}
	}
	return list, ""
}

// sweet is the sucrose that makes a drink as sweet; none where nothing sweetens.
func (r ready) sweet() []string {
	if x := r.profile.Sweet; !(x.Mean > 0) && !x.Partial {
		return nil
	}
	return []string{"sweetness()"}
}

const sugars = "per100ml(" + string(constituent.Sugar) + ")"

// either says how far a figure may move that is kept.
func either(least, most float64) string {
	return ", within " + digits(unit.Hundred*math.Max(1-least, most-1)) + " % either way"
}

// bound says whose bound it is within which a quality is kept.
func (r ready) bound(q Quality) string {
	if _, ok := r.noticed(q); ok {
		return ", the least that a judge notices"
	}
	return ownBound
}

const ownBound = ", our own bound"

// evidence says where the bounds are from, of the qualities that are kept.
func (r ready) evidence(aims []Aim) string {
	var list []string
	for _, q := range Qualities() {
		kept := slices.ContainsFunc(aims, func(a Aim) bool { return a.Kept && strings.HasPrefix(a.Says, "stays as "+q+",") })
		if d, ok := r.noticed(Quality(q)); ok && kept {
			list = append(list, fmt.Sprintf("%s to %s %% of how %s it is, and that %s (%s)", digits(d.Low), digits(d.High), q, d.How, d.Source))
		}
	}
	text := "What is kept may move within its bound, and a judge may just notice the end of it"
	if len(list) > 0 {
		text += ": what is noticed is " + strings.Join(list, ", and ")
	}
	return text + ". Of what is bitter, salty or strong no difference that is noticed was found in print."
}

// told gives a figure as it is told of the drink as it is written, and the most that it can be.
func (r ready) told(expression string) (is composition.Result, high float64, err error) {
	t, err := claim.ParseTarget("least "+expression, fail.Place{})
	if err != nil {
		return is, 0, err
	}
	if is, err = figure(t.Goal, r.assay, r.glass); err != nil {
		return is, 0, err
	}
	_, most, err := t.Goal.Values(r.glass)
	is.Unit, _ = t.Goal.Unit()
	return is, most[0], err
}

// ends gives a figure with what is unknown at its least and at its most, in the unit of its target.
func (r ready) ends(expression string) (low, high float64, name string, err error) {
	t, err := claim.ParseTarget("least "+expression, fail.Place{})
	if err != nil {
		return 0, 0, "", err
	}
	a, b, err := t.Goal.Values(r.glass)
	if err != nil {
		return 0, 0, "", err
	}
	name, base := t.Goal.Unit()
	return a[0] / base, b[0] / base, name, nil
}

// parsed makes a target of a text of ours.
func parsed(text string, is Ready) (Aim, error) {
	t, err := claim.ParseTarget(text, fail.Place{})
	return Aim{Target: t, Ready: is}, err
}

// digits writes a figure with as many digits as tell it from its neighbours.
func digits(x float64) string {
	const most = 4
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', most, 64), 64)
	return strconv.FormatFloat(y, 'f', -1, 64)
}

// IsQuality reports whether a word is one.
func IsQuality(word string) bool { return slices.Contains(Qualities(), word) }

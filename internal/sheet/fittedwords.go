package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
	"sipsum/internal/fit"
	"sipsum/internal/unit"
)

// This file tells a fit in words.

// line tells a fit in a sentence: what moves, what the targets read then, and how surely.
func (f *Fitted) line() string {
	var moves []string
	for _, m := range f.Moves {
		if m.Changed() {
			moves = append(moves, m.Name+" "+m.Told())
		}
	}
	var reads []string
	for _, h := range f.Held {
		if h.Words != "" && !h.Kept && h.Text != fit.TheGlass {
			if said := figureSaid(h.Words, h.After); !slices.Contains(reads, said) {
				reads = append(reads, said)
			}
		}
	}
	if len(reads) == 0 {
		for _, b := range f.Beside {
			if !math.IsNaN(b.After.Mean) && !math.IsNaN(b.Before.Mean) && math.Abs(b.After.Mean-b.Before.Mean) > unit.Closeness && len(reads) < shortest {
				reads = append(reads, figureSaid(b.Words, b.After))
			}
		}
	}
	return f.against() + f.answered(moves, reads)
}

// answered puts what moves and what the targets read into a sentence.
func (f *Fitted) answered(moves, reads []string) string {
	text := strings.Join(moves, ", ")
	switch {
	case len(moves) == 0 && f.Met:
		text = "nothing moves, every target is met as it is written"
	case len(moves) == 0:
		text = "nothing moves"
	}
	if len(reads) > 0 {
		text += ": " + strings.Join(reads, ", ")
	}
	if !math.IsNaN(f.Sure) {
		text += "; holds in " + f.chance()
	}
	if !f.Met {
		return "Not every target is met. Nearest: " + text
	}
	if by := f.stoppedBy(); len(by) > 0 {
		text += "; stopped by " + clean.Listed(by)
	}
	return text
}

const shortest = 3 // figures of a line

// Told is an amount before and after.
func (m FittedMove) Told() string {
	if !m.Changed() {
		return m.Was() + " " + m.Written.Measure.Name
	}
	return m.Was() + " → " + m.Is() + " " + m.Written.Measure.Name
}

// Was is the amount as it is written, and Is that of the answer, in its measure.
func (m FittedMove) Was() string { return m.amount(m.Written.Number, m.Written.Decimals) }

// Is is the amount of the answer.
func (m FittedMove) Is() string { return m.amount(m.To, m.Written.Decimals) }

// amount writes a number of steps as the bar's scale shows it.
func (m FittedMove) amount(x float64, written int) string {
	return strconv.FormatFloat(x, 'f', max(m.Decimals(), min(written, 1)), 64)
}

// chance says in how many of a hundred draws all conditions hold.
func (f *Fitted) chance() string { return Chance(f.Sure, f.May) }

// Chance says in how many of a hundred draws something holds, with what is unknown at either end.
func Chance(sure, may float64) string {
	a, b := ofHundred(sure), ofHundred(may)
	if a == b {
		return fmt.Sprintf("%d of 100", a)
	}
	return fmt.Sprintf("%d to %d of 100, as the unknown will have it", a, b)
}

// ofHundred counts draws of a hundred. Only all are all, and only none are none.
func ofHundred(p float64) int {
	n := int(math.Round(p * unit.Hundred))
	switch {
	case n == unit.Hundred && p < 1:
		return n - 1
	case n == 0 && p > 0:
		return 1
	}
	return n
}

// stoppedBy names what keeps a goal from coming nearer.
func (f *Fitted) stoppedBy() []string {
	by := slices.Clone(f.StoppedBy)
	if !slices.ContainsFunc(f.Held, func(h fit.Held) bool { return h.Goal }) {
		return by
	}
	for _, m := range f.Moves {
		if m.End != "" {
			by = append(by, m.Name+" at its "+m.End)
		}
	}
	return by
}

// figureSaid names a figure with its number: "8.2 g sugars", "pH 3.80".
func figureSaid(words string, r composition.Result) string {
	switch {
	case math.IsNaN(r.Mean):
		return words + " not known"
	case r.Unit == "pH" || words == "pH":
		return fmt.Sprintf("pH %.2f", r.Mean)
	case r.Unit == brixUnit: // it names itself
		words = ""
	}
	least := ""
	if r.Partial {
		least = "≥ "
	}
	return strings.TrimSpace(strings.TrimSpace(least+three(r.Mean)+" "+r.Unit) + " " + words)
}

const brixUnit = "°Bx"

// whyMissed says which targets are in each other's way, and how near each comes with the others kept.
func whyMissed(res *fit.Result) []string {
	var list []string
	for _, h := range res.Held {
		if h.Settle != nil && !h.Met {
			list = append(list, "With the unknown at its worst "+h.Text+" is missed: nobody knows "+h.Settle.What+settles(h.Settle.Settle, h.Settle.Where))
		}
	}
	for _, h := range res.Held {
		if h.Goal && h.Settle != nil && h.After.Unknown {
			list = append(list, "The goal "+h.Text+" cannot be told: nobody knows "+h.Settle.What+settles(h.Settle.Settle, h.Settle.Where))
		}
	}
	var texts []string
	for _, h := range res.Held {
		if slices.Contains(res.Together, h.Text) && !slices.Contains(texts, h.Text) {
			texts = append(texts, h.Text)
		}
	}
	found, meet := "as far as was searched, ", "meet "
	if res.None {
		found = ""
	}
	if len(list) > 0 {
		meet = "surely meet "
	}
	switch len(texts) {
	case 0:
	case 1:
		list = append(list, clean.UpperFirst(found+"no amounts within their ranges "+meet+texts[0]))
	default:
		list = append(list, clean.UpperFirst(found+"no amounts "+meet+"together: "+clean.Listed(texts)))
	}
	for _, h := range res.Held {
		if slices.Contains(res.Together, h.Text) && h.Words != "" && !h.After.Unknown {
			if said := clean.UpperFirst(nearness(h, texts, res)); !slices.Contains(list, said) {
				list = append(list, said)
			}
		}
	}
	return append(list, missedToo(res, texts)...)
}

// missedToo says how far off those targets are that are missed and of which nothing has been said.
func missedToo(res *fit.Result, said []string) []string {
	var list []string
	for _, h := range res.Held {
		if h.Met || h.Goal || h.Settle != nil || h.Words == "" || h.After.Unknown || slices.Contains(said, h.Text) {
			continue
		}
		text := "also missed: " + h.Text + " (" + figureSaid(h.Words, h.After)
		if !math.IsNaN(h.Limit) {
			_, limit := apart(h, h.After.Mean, h.Limit)
			text += ", not " + limit
		}
		list = append(list, text+")")
	}
	return list
}

// edges tells which amounts a step of the drink keeps from going on, where something is left to reach.
func (f *Fitted) edges() []string {
	var list []string
	for _, e := range f.Edges {
		way := "Less "
		if e.More {
			way = "More "
		}
		list = append(list, way+f.Moves[e.Move].Name+" cannot be: "+e.Why)
	}
	return list
}

func settles(line, where string) string {
	if line == "" {
		return ""
	}
	return "; settle it: " + line + " (in " + where + ")"
}

// nearness says how far a target comes if all others are kept.
func nearness(h fit.Held, together []string, res *fit.Result) string {
	kept := "with all others kept, "
	var others []string
	for _, text := range together {
		if text != h.Text {
			others = append(others, text)
		}
	}
	switch {
	case len(others) > 0:
		kept = "with " + clean.Listed(others) + " kept, "
	case res.Alone:
		kept = "by itself, "
	case len(res.Held) == 1:
		kept = ""
	}
	switch {
	case math.IsNaN(h.Gives):
		return "without " + h.Text + " the others cannot all be met either"
	case math.IsNaN(h.Reaches):
		return kept + h.Text + " is missed by " + strings.TrimSpace(three(h.Gives)+" "+h.After.Unit)
	}
	way := "up to "
	switch {
	case h.Reaches > h.Limit:
		way = "down to "
	case h.Before.Mean == 0 && math.Abs(h.Reaches) < unit.Closeness && !h.After.Partial:
		return kept + "nothing that may move brings any " + h.Words
	}
	reaches, limit := apart(h, h.Reaches, h.Limit)
	return kept + h.Words + " can come " + way + reaches + ", not " + limit
}

// three writes a figure with three digits, and no exponent.
func three(x float64) string { return figure.Shortened(x, threeDigits) }

const threeDigits = figure.MostDigits

func rounded(x float64, digits int) float64 {
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	return y
}

// apart writes how near a target comes and its limit: the limit as it was asked for, the other with as many
// digits as leave it on its own side.
func apart(h fit.Held, reaches, limit float64) (a, b string) {
	const most = 6
	digits := threeDigits
	for digits < most && reaches != limit && (rounded(reaches, digits) == limit || (rounded(reaches, digits) > limit) != (reaches > limit)) {
		digits++
	}
	return numberOf(h, reaches, digits), numberOf(h, limit, most)
}

func numberOf(h fit.Held, x float64, digits int) string {
	if h.Words == "pH" {
		if y := rounded(x, digits); y != rounded(x, threeDigits) {
			return figure.Shortened(x, digits)
		}
		return fmt.Sprintf("%.2f", x)
	}
	return strings.TrimSpace(figure.Shortened(x, digits) + " " + h.After.Unit)
}

// remark adds what must be known of how the answer was found.
func (f *Fitted) remark() {
	if len(f.Moves) > 0 && f.Moves[0].Usual {
		within := unit.LimitOf("amount that nobody lets vary", "share")
		f.Remarks = append(f.Remarks, fmt.Sprintf("Nobody wrote vary: each line of the build may be %s to %s times what is written.", three(within.Low), three(within.High)))
	}
	if f.Open {
		f.Remarks = append(f.Remarks, "What nobody can decide at any amount was left out of the search, and is missed.")
	}
	if how := f.how(); how != "" {
		f.Remarks = append(f.Remarks, how)
	}
	if f.Met && f.Sure < toss && !slices.ContainsFunc(f.Held, func(h fit.Held) bool { return h.Goal }) {
		f.Remarks = append(f.Remarks, "Met is said of central values, and how often it holds of all that is uncertain: wider targets, more room under vary or a reading (assay --next) make it surer.")
	}
}

// toss is the chance below which a fit says what would make it surer.
const toss = 0.5

// how says at what the answer is the best, and whether that is proven.
func (f *Fitted) how() string {
	goal := slices.ContainsFunc(f.Held, func(h fit.Held) bool { return h.Goal })
	moves := slices.ContainsFunc(f.Moves, func(m FittedMove) bool { return m.Changed() })
	better := "every target and move less"
	if goal {
		better = "every target and bring the goal farther"
	}
	if !f.Met {
		better = "as many targets and move less"
	}
	switch {
	case !f.Met && slices.ContainsFunc(f.Held, func(h fit.Held) bool { return !h.Met && h.Settle != nil }):
		return "Whether any amounts meet every target nobody can tell, until what is unknown is settled."
	case !f.Met && !f.Open && f.None && f.Proven:
		return "No amounts on the steps of the scale meet every target. These miss fewest of them, and those by the least."
	case !f.Met && !f.Open && f.None:
		return "No amounts on the steps of the scale meet every target. These miss fewest of them as far as was searched, and those by the least."
	case !f.Met && !f.Open:
		return "These amounts miss fewest of the targets as far as was searched, and those by the least; that no amounts meet all is not proven: the figures bend with them."
	case !goal && !moves:
		return ""
	}
	how := "No other amounts on the steps of the scale meet " + better + "."
	switch {
	case f.Proven:
	case f.Result.Beside:
		how = "No amounts a step or two beside these meet " + better + "; those farther off were not all tried: the figures bend with the amounts."
	default:
		how = "No amounts that were tried meet " + better + "; of so many not all can be."
	}
	if !math.IsNaN(f.Least[0]) {
		how = "The least movement that was found would hold in " + Chance(f.Least[0], f.Least[1]) + ", since a target is only just met there. These amounts move a little more to hold more surely."
		if goal {
			how = "These amounts bring the goal as far as any that were found, and move a little more to hold more surely: the least movement would hold in " + Chance(f.Least[0], f.Least[1]) + "."
		}
	}
	if goal && len(f.StoppedBy) > 0 {
		how += " A goal goes on until a target stops it, so that it stands at its limit and many draws miss it: write it narrower for surety."
	}
	return how
}

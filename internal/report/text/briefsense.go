package textreport

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// sense prints one sense: each figure that somebody brings with those who do, the figures of the
// liquid together, and what the coffee alone has.
func (p briefly) sense(x *sheet.Sense, against string, also []string) []entry {
	label := clean.UpperFirst(x.Name)
	var all []entry
	var liquid, alone []string
	lesser := 0
	add := func(rank int, text string) { all = append(all, p.cut(label, rank, askEvidence, text)) }
	for i := range x.Figures {
		f := &x.Figures[i]
		if f.Alone != nil && f.Leads {
			alone = append(alone, p.short(f, *f.Alone))
		}
		switch {
		case len(f.By) == 0:
			liquid = append(liquid, p.figure(f))
		case f.Leads:
			rank := whoBrings
			if f.Key == "quinine" { // some guests have to leave it
				rank = firstOfAll
			}
			all = append(all, p.bringing(label, rank, f))
		default:
			rank := min(firstOfAll+lesser, ifRoom)
			if lesser++; lesser > mostLesser {
				rank = never
			}
			if x.Figures[0].Leads && len(x.Figures[0].By) > 0 { // who brings the first has been told
				rank++
			}
			all = append(all, p.bringing(label, rank, f))
		}
	}
	all = p.ofLiquid(all, label, liquid, alone, against)
	for i, name := range also {
		if has := p.further(x, i); len(has) > 0 {
			add(whoBrings, Clean(name, mostName)+" alone: "+strings.Join(has, ", "))
		}
	}
	for _, w := range x.Withheld {
		e := p.cut(label, firstOfAll, askAssay, bounded(w)+": "+Clean(w.Why, mostProse))
		all = slices.Insert(all, min(len(liquid), 1, len(all)), e) // a figure stands before what is none
	}
	switch {
	case len(all) > 0 && x.Name == "alcohol":
		all[0].rank = mayHurt
	case len(all) > 0:
		all[0].rank = firstOfAll
	case len(x.Unmeasured) == 0:
		add(firstOfAll, x.None)
	}
	if len(x.Unmeasured) > 0 {
		rank := ifRoom
		switch {
		case x.Name == "alcohol":
			rank = mayHurt
		case len(all) == 0:
			rank = firstOfAll
		}
		add(rank, "not known: "+clean.Listed(x.Unmeasured))
	}
	return all
}

// bounded says what is withheld, and what bounds it all the same.
func bounded(w sheet.Withheld) string {
	if w.Bounds == "" {
		return w.What
	}
	return w.What + " (" + strings.TrimPrefix(w.Bounds, "; ") + ")"
}

// mostLesser is how many figures have a line that do not lead: acids.
const mostLesser = 3

// ofLiquid adds the figures of the liquid and of the coffee alone: in one line where they fit.
func (p briefly) ofLiquid(all []entry, label string, liquid, alone []string, against string) []entry {
	beside := ""
	if len(alone) > 0 {
		beside = Clean(against, mostName) + " alone: " + strings.Join(alone, ", ")
	}
	text := strings.Join(liquid, " · ")
	var list []entry
	switch {
	case text != "" && beside != "" && width(text)+aside+width(beside) <= p.width-labelWidth:
		list = append(list, p.cut(label, whoBrings, askEvidence, text+strings.Repeat(glue, aside)+beside))
		beside = ""
	case text != "":
		list = append(list, p.cut(label, whoBrings, askEvidence, text))
	}
	if beside != "" {
		list = append(list, p.cut(label, whoBrings, askEvidence, beside))
	}
	if len(all) > 0 && all[0].rank == whoBrings { // a constituent leads the sense
		return append(all, list...)
	}
	return append(list, all...)
}

// further gives what one of the further coffees alone has of a sense.
func (p briefly) further(x *sheet.Sense, coffee int) (has []string) {
	for i := range x.Figures {
		if f := &x.Figures[i]; f.Leads && coffee < len(f.Further) && f.Further[coffee] != nil {
			has = append(has, p.short(f, *f.Further[coffee]))
		}
	}
	return has
}

// aside is the gap before what stands beside something.
const aside = 3

// figure writes a figure with its interval.
func (p briefly) figure(f *sheet.SenseFigure) string {
	r := f.Result
	sign := p.memory(f.FromMemory)
	switch {
	case f.Form == sheet.HardlyThere:
		return fmt.Sprintf("< %g %% %s", chemistry.HardlySour, f.Words)
	case f.Key == "ph":
		s := p.show(r)
		text := "pH" + glue + s.number + sign
		if s.interval != "" {
			text += " (" + s.interval + ")"
		}
		return text + strings.TrimPrefix(f.Words, "pH")
	}
	if unit, ok := shortUnit[r.Unit]; ok {
		r.Unit = unit
	}
	text := p.sentence(r, f.Words+sign)
	if f.Also != "" {
		text = strings.ReplaceAll(f.Also, " ", glue) + " · " + text
	}
	return text
}

// short writes a figure of the coffee alone.
func (p briefly) short(f *sheet.SenseFigure, r composition.Result) string {
	if unit, ok := shortUnit[r.Unit]; ok {
		r.Unit = unit
	}
	switch {
	case sheet.None(r):
		return "no" + glue + f.Words
	case sheet.Hollow(r):
		return f.Words + " not measured"
	case f.Key == "ph":
		return "pH" + glue + p.show(r).number
	case f.Key == "brix":
		return p.bare(r)
	}
	return p.bare(r) + " " + f.Words
}

// bringing writes a figure and who brings it: in one line if that names two at least. Of a figure
// that does not lead, the interval gives way first; one that leads takes two lines.
func (p briefly) bringing(label string, rank int, f *sheet.SenseFigure) entry {
	text, n := p.figure(f), weighty(f.By)
	if n == 0 {
		return p.wrapped(label, rank, askEvidence, text)
	}
	several := f.Leads && slices.ContainsFunc(f.By, func(i sheet.Ingredient) bool { return pots(i) != "" })
	lines, ok := p.named(f, text+": ", n, several)
	if !ok && !f.Leads {
		lines, _ = p.named(f, p.bare(f.Result)+" "+f.Words+": ", n, false)
	} else if !ok {
		if lines, ok = p.named(f, "", n, several); !ok {
			lines, _ = p.named(f, "", n, false)
		}
		lines = append(wrap(text+":", p.width-labelWidth), lines...)
	}
	return entry{label: label, lines: lines, rank: rank, ask: askEvidence}
}

// named writes as many of those who bring a figure as fit into a line with it, two at least, and
// each with its pots if there is room; if they must be there one is enough. False where that is too
// much: then the first is named, in as many lines as it takes.
func (p briefly) named(f *sheet.SenseFigure, lead string, n int, mustPots bool) (lines []string, ok bool) {
	fewest := min(n, fewestNamed)
	if mustPots {
		fewest = 1
	}
	write := func(named int, inPots bool) []string {
		return wrap(lead+p.shares(f, named, n, inPots), p.width-labelWidth)
	}
	for _, inPots := range []bool{true, mustPots} {
		for named := n; named >= fewest; named-- {
			if lines = write(named, inPots); len(lines) <= p.rows(1) {
				return lines, true
			}
		}
	}
	return write(1, false), false
}

// bare writes a figure without its interval.
func (p briefly) bare(r composition.Result) string {
	s := p.show(r)
	return strings.ReplaceAll(s.number, " ", glue) + glue + s.unit
}

// fewestNamed is how many of those who bring something are named before the rest is summed up.
const fewestNamed = 2

// weighty counts those of which something is known that prints as 1 % or more; the first is.
func weighty(list []sheet.Ingredient) int {
	n := 0
	for _, i := range list {
		if i.Mean > 0 && (n == 0 || i.Share.Mean*percentOf >= tiny) {
			n++
		}
	}
	return n
}

// only reports whether one food brings all that is known of a figure.
func only(list []sheet.Ingredient) bool { return len(list) == 1 || list[1].Mean == 0 }

// shares writes the shares of the first of a list, and of the rest.
func (p briefly) shares(f *sheet.SenseFigure, named, n int, inPots bool) string {
	if only(f.By) {
		return p.allBrought(f, inPots)
	}
	var list []string
	rest := 1.0
	for _, i := range f.By[:named] {
		rest -= i.Share.Mean
		text := Clean(i.Word, mostName) + glue + hundredths(i.Share.Mean)
		if through := pots(i); inPots && through != "" {
			text += glue + "% " + through
		}
		list = append(list, text)
	}
	if named < n && rest*percentOf >= tiny {
		list = append(list, "rest"+glue+hundredths(rest))
	}
	text := strings.Join(list, ", ")
	if strings.HasSuffix(text, ")") { // the sign stands before the pots
		return text
	}
	return text + glue + "%"
}

// allBrought says that one food brings all, or all that is known.
func (p briefly) allBrought(f *sheet.SenseFigure, inPots bool) string {
	text, only := "all", f.By[0]
	if f.Result.Partial {
		text += " that is known"
	}
	text += " from " + Clean(only.Word, mostName)
	if through := pots(only); inPots && through != "" {
		text += " " + through
	}
	return text
}

// pots names the pots through which a food came, where there are several: the share of each, in
// hundredths.
func pots(i sheet.Ingredient) string {
	if len(i.Through) < 2 {
		return ""
	}
	var list []string
	for _, t := range i.Through {
		name := "glass"
		if len(t.Path) > 0 {
			name = Clean(t.Path[0], mostName)
		}
		list = append(list, name+glue+hundredths(t.Share.Mean))
	}
	return "(" + strings.Join(list, ", ") + ")"
}

// hundredths writes a share in whole hundredths; what is there is never 0.
func hundredths(share float64) string {
	switch {
	case math.IsNaN(share):
		return "?"
	case share*percentOf < tiny:
		return "<" + glue + "1"
	case share*percentOf > percentOf-tiny && share < 1:
		return ">" + glue + "99"
	}
	return rounded(share*percentOf, 0)
}

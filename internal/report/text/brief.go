package textreport

import (
	"fmt"
	"io"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/sheet"
)

// The measures of a brief: one screen, with room kept for what may not be said and for what a
// change would do.
const (
	screenLines = 24
	keptLines   = 2
	labelWidth  = 9
)

// Ranks of what stands on the screen: what must not be missed, then each sense, what may be said
// and read, who brings it, and the rest.
const (
	mustStand = iota
	firstOfAll
	whoBrings
	nextToThat
	ifRoom
)

// entry is some lines of a brief that stand or fall together.
type entry struct {
	label string
	lines []string
	rank  int
	ask   string // the command that tells it where it does not fit
}

// Brief prints a drink on one screen.
func Brief(w io.Writer, s *sheet.Sheet, st Style) error {
	p := newPage(st)
	briefly{p}.print(s)
	return p.write(w)
}

// briefly prints the one screen of a drink.
type briefly struct{ *page }

func (p briefly) print(s *sheet.Sheet) {
	b, before := sheet.BriefOf(s), p.lines()
	p.atTop(s)
	var all []entry
	all = append(all, p.contradictions(b)...)
	for _, x := range b.Senses {
		all = append(all, p.sense(&x, b.Against)...)
	}
	all = append(all, p.say(b.Say)...)
	all = append(all, p.next(b)...)
	all = append(all, p.guest(&b.Guest)...)
	all, missing := chosen(all, screenLines-keptLines-(p.lines()-before)-len(wrap(longestFoot, p.width)))
	label := ""
	for _, e := range all {
		for _, l := range e.lines {
			if e.label == label {
				e.label = ""
			} else {
				label = e.label
			}
			p.line(p.bold(p.accent(left(e.label, labelWidth))), l)
			e.label = label
		}
	}
	p.foot(counted(missing), screenLines-keptLines-(p.lines()-before))
}

// longestFoot is as long as it gets to say what did not fit.
const longestFoot = "999 more: sipsum assay · 999 more: sipsum evidence · 999 more: sipsum allergens"

// foot says what did not fit, and how to read the rest: in a line of its own where there is room.
func (p briefly) foot(missing string, room int) {
	if width(missing)+width(shortly) <= p.width && missing != "" && room < 2 {
		missing += shortly
	}
	lines := wrap(missing, p.width)
	for _, l := range lines {
		p.line(l)
	}
	if room > len(lines) {
		p.line(fit(howToRead, p.width))
	}
}

// lines counts the lines of a page.
func (p *page) lines() int { return strings.Count(p.text.String(), "\n") }

// How a brief is read, with and without room.
const shortly = " · ( ): 90 of 100 draws"

const howToRead = "In brackets: where 90 of 100 draws lie · ≥ and %: of what is known"

// counted says how much did not fit, by the command that tells it.
func counted(missing map[string]int) string {
	var list []string
	for _, command := range []string{askAssay, askEvidence, askAllergens} {
		if n := missing[command]; n > 0 {
			list = append(list, fmt.Sprintf("%d more: sipsum %s", n, command))
		}
	}
	return strings.Join(list, " · ")
}

// The commands that tell what does not fit.
const (
	askAssay     = "assay"
	askAllergens = "allergens"
	askEvidence  = "evidence"
)

// chosen takes what fits into so many lines, by rank and then in order, and counts the rest.
func chosen(all []entry, room int) (list []entry, missing map[string]int) {
	taken := make([]bool, len(all))
	for rank := mustStand; rank <= ifRoom; rank++ {
		for i, e := range all {
			if e.rank == rank && len(e.lines) <= room {
				taken[i] = true
				room -= len(e.lines)
			}
		}
	}
	missing = map[string]int{}
	for i, e := range all {
		if taken[i] {
			list = append(list, e)
		} else {
			missing[e.ask]++
		}
	}
	return list, missing
}

// wrapped makes an entry of a text.
func (p briefly) wrapped(label string, rank int, ask, text string) entry {
	return entry{label, wrap(text, p.width-labelWidth), rank, ask}
}

// atTop prints what the drink is.
func (p briefly) atTop(s *sheet.Sheet) {
	a := s.Assay
	pieces := []string{"one serving"}
	if a.Drink.Serves > 1 {
		pieces[0] = "one of " + grouped(a.Drink.Serves)
	}
	pieces = append(pieces, p.bare(a.Mass))
	if sheet.NoLiquid(a) == "" {
		pieces = append(pieces, p.bare(a.Volume))
	}
	if at := a.Drink.At; at != nil {
		pieces = append(pieces, plain(at.Number)+" "+Clean(at.Unit, mostName))
	}
	name, size := Clean(a.Drink.Name, mostName), strings.Join(pieces, " · ")
	if width(size)+potWidth > p.width { // a narrow page has a line for each
		p.title(name, "brief")
		p.line(fit(size, p.width))
		return
	}
	p.title(name, size)
}

// contradictions are the readings that do not agree with the recipe.
func (p briefly) contradictions(b *sheet.Brief) []entry {
	var list []entry
	for _, r := range b.Read.Disagree {
		if len(r.Path) > 0 { // what was read is worth more than a long name
			r.Path = []string{fit(Clean(r.Path[len(r.Path)-1], mostName), potWidth)}
		}
		list = append(list, p.cut("Disagree", mustStand, askAssay, readingLine(r)))
	}
	for _, text := range b.Read.Notes {
		list = append(list, p.cut("Disagree", mustStand, askAssay, Clean(text, mostProse)))
	}
	return list
}

// potWidth is the room for the name of a pot in a line that says more.
const potWidth = 24

// mostOfOne is how many lines one text may take, with "…" where it is cut.
const mostOfOne = 2

// cut makes an entry of a text that may be long.
func (p briefly) cut(label string, rank int, ask, text string) entry {
	e := p.wrapped(label, rank, ask, text)
	if n := p.width - labelWidth; len(e.lines) > mostOfOne {
		e.lines = e.lines[:mostOfOne]
		e.lines[mostOfOne-1] = fit(e.lines[mostOfOne-1]+strings.Repeat(" ", n)+".", n)
	}
	return e
}

// say prints what may be said.
func (p briefly) say(list []sheet.Said) []entry {
	var all []entry
	if len(list) == 0 {
		return []entry{p.wrapped("Say", ifRoom, askEvidence, "nothing surely holds, whatever is unknown")}
	}
	for i, s := range list {
		all = append(all, p.cut("Say", rankOfSaying(i), askEvidence, "“"+Clean(s.Text, mostProse)+"”"))
	}
	return all
}

// rankOfSaying lets two sentences stand with the senses.
func rankOfSaying(i int) int {
	if i < 2 {
		return firstOfAll
	}
	return min(firstOfAll+i, ifRoom)
}

// next prints which reading to take, and what is unknown most.
func (p briefly) next(b *sheet.Brief) []entry {
	var all []entry
	if n := b.Next; n != nil {
		text := "read " + readingWords[n.Reading] + " of " + fit(potWords(n.Of), potWidth)
		switch {
		case n.Why != "":
			text += ": no recipe tells it"
		default:
			for i, x := range n.Narrows[:min(len(n.Narrows), 2)] {
				text += []string{": narrows ", ", "}[i] + sheet.WordsFor(x.Constituent) + glue + "by" + glue + wholePercent(x.By)
			}
		}
		where := "under " + fit(Clean(n.Under, mostName), potWidth) + ":" + glue + glue
		if n.Adds {
			where = "add to its measured:" + glue + glue
		}
		e := p.cut("Next", firstOfAll, askAssay, text)
		paste := where + strings.ReplaceAll(n.Line, " ", glue)
		if last := len(e.lines) - 1; width(e.lines[last])+3+width(paste) <= p.width-labelWidth {
			e.lines[last] += strings.Repeat(glue, aside) + paste
		} else {
			e.lines = append(e.lines, wrap(paste, p.width-labelWidth)...)
		}
		all = append(all, e)
	}
	if g := b.Gap; g != nil {
		text := "nobody has measured: " + sheet.WordsFor(g.Constituent) + " of the " + Clean(g.By.Word, mostName)
		if most := p.bound(g.Result, 0); most != "" {
			text += ", " + most
		}
		all = append(all, p.cut("Unknown", mustStand, askEvidence, text))
	}
	return all
}

// guest prints what a guest must know.
func (p briefly) guest(g *sheet.BriefGuest) []entry {
	rules := " (" + strings.ToUpper(g.Rules) + ")"
	text := sheet.NoPromise
	if len(g.Contains) > 0 {
		text = "Contains" + rules + ": " + strings.Join(g.Contains, " · ")
	}
	if len(g.MayContain) > 0 {
		text += ". May contain: " + strings.Join(g.MayContain, " · ")
	}
	all := []entry{p.wrapped("Guest", mustStand, askAllergens, text)}
	for _, c := range g.Check {
		all = append(all, p.cut("Guest", mustStand, askAllergens, Clean(c, mostProse)))
	}
	for _, t := range g.OnTop {
		text := "On top, not eaten: "
		if t.Eaten {
			text = "On top: "
		}
		text += cleanPart(t.PartID, t.Name)
		if len(t.Allergens) > 0 {
			text += ", with " + clean.Listed(t.Allergens)
		}
		all = append(all, p.cut("Guest", firstOfAll, askAllergens, text))
	}
	for _, c := range g.Cautions {
		rank := nextToThat
		switch {
		case c.Words == "":
			rank = never
		case c.Rank <= gravest:
			rank = mustStand
		case c.Rank == harmful:
			rank = whoBrings
		}
		all = append(all, p.cut("Guest", rank, askAllergens, Clean(c.Words, mostProse)))
	}
	return all
}

// The ranks of cautions of what may kill, and of what may poison or injure.
const (
	gravest = 1
	harmful = 2
)

// never is the rank of what is only counted.
const never = ifRoom + 1

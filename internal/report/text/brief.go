package textreport

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/sheet"
)

// The measures of a brief: one screen of the usual width. On a narrower page the same takes more
// lines: it is scrolled.
const (
	screenLines = 24
	labelWidth  = 9
)

// Ranks of what stands on the screen: what may hurt, what must not be missed, then each sense and
// what to read, who brings it and what may be said, and the rest.
const (
	mayHurt = iota
	mustStand
	firstOfAll
	whoBrings
	nextToThat
	ifRoom
)

// entry is some lines of a brief that stand or fall together.
type entry struct {
	label   string
	lines   []string
	shorter []string // the same in fewer lines; nil: there is no shorter way
	longer  []string // the same in more, if room is left; nil: there is no longer way
	rank    int
	ask     string // the command that tells it where it does not fit
	cut     bool   // something of it is told only there
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
	all = append(all, p.mind(b.Mind)...)
	for _, x := range b.Senses {
		all = append(all, p.sense(&x, b.Against, b.Also)...)
	}
	all = append(all, p.say(b.Say)...)
	all = append(all, p.dontSay(b.Dont)...)
	all = append(all, p.house(s)...)
	all = append(all, p.next(b)...)
	all = append(all, p.change(b.Change)...)
	all = append(all, p.goes(b, s.Assay.Drink)...)
	all = append(all, p.guest(&b.Guest)...)
	all, missing := chosen(all, p.screen()-(p.lines()-before)-len(wrap(longestFoot, p.width)))
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
	p.foot(counted(missing), p.screen()-(p.lines()-before))
}

// rows is in how many lines of this page stands what takes n lines of one of the usual width.
func (p briefly) rows(n int) int {
	usual, room := n*(usualWidth-labelWidth), p.width-labelWidth
	return max(n, (usual+room-1)/room)
}

// screen is how many lines the page has.
func (p briefly) screen() int { return p.rows(screenLines) }

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
	if how := wrap(howToRead, p.width); room >= len(lines)+len(how) {
		for _, l := range how {
			p.line(l)
		}
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
	for rank := mayHurt; rank <= ifRoom; rank++ {
		for i := range all {
			e := &all[i]
			if e.rank == rank && len(e.lines) > room && len(e.shorter) > 0 {
				e.lines, e.cut = e.shorter, true
			}
			if e.rank == rank && len(e.lines) <= room {
				taken[i] = true
				room -= len(e.lines)
			}
		}
	}
	for i := range all {
		if more := len(all[i].longer) - len(all[i].lines); taken[i] && more > 0 && more <= room {
			all[i].lines = all[i].longer
			room -= more
		}
	}
	missing = map[string]int{}
	for i, e := range all {
		if taken[i] {
			list = append(list, e)
		}
		if !taken[i] || e.cut {
			missing[e.ask]++
		}
	}
	return list, missing
}

// wrapped makes an entry of a text.
func (p briefly) wrapped(label string, rank int, ask, text string) entry {
	return entry{label: label, lines: wrap(text, p.width-labelWidth), rank: rank, ask: ask}
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
		list = append(list, p.cut("Disagree", mustStand, askAssay, sheet.ReadingLine(r)))
	}
	for _, text := range b.Read.Notes {
		list = append(list, p.cut("Disagree", mustStand, askAssay, Clean(text, mostProse)))
	}
	return list
}

// potWidth is the room for the name of a pot in a line that says more.
const potWidth = 24

// mostOfOne is how many lines of a page of the usual width one text may take before it is told as
// far as its whole clauses fit.
const mostOfOne = 2

// cut makes an entry of a text that may be long: of as many of its clauses as fit, never of a part
// of one.
func (p briefly) cut(label string, rank int, ask, text string) entry {
	e := p.wrapped(label, rank, ask, text)
	for most := p.rows(mostOfOne); len(e.lines) > most; {
		end := max(strings.LastIndex(text, ". "), strings.LastIndex(text, "; "))
		if end <= 0 {
			break
		}
		text = text[:end]
		e = p.wrapped(label, rank, ask, text+".")
		e.cut = true
	}
	return e
}

// mind prints what goes wrong at the bar.
func (p briefly) mind(list []string) []entry {
	var all []entry
	for _, text := range list {
		all = append(all, p.wrapped("Mind", mayHurt, askAssay, Clean(clean.UpperFirst(text), mostProse)))
	}
	return all
}

// say prints what may be said.
func (p briefly) say(list []sheet.Said) []entry {
	var all []entry
	if len(list) == 0 {
		return []entry{p.wrapped("Say", ifRoom, askEvidence, "nothing surely holds, whatever is unknown")}
	}
	for i, s := range list {
		all = append(all, p.wrapped("Say", rankOfSaying(i), askEvidence, "“"+Clean(s.Text, mostProse)+"”"))
	}
	return all
}

// dontSay prints what is tempting to say and does not hold.
func (p briefly) dontSay(d *sheet.DontSay) []entry {
	if d == nil {
		return nil
	}
	sentence := "say “" + Clean(d.Sentence, mostProse) + "”: "
	return p.inALine("Don't", sentence+Clean(d.Why, mostProse), sentence+Clean(d.Short, mostProse))
}

// goes prints what the glass does over ten minutes: before who brings what where its file speaks of it, else where
// there is room, and nobody is told that there was none.
func (p briefly) goes(b *sheet.Brief, d *drink.Drink) []entry {
	if b.Goes == "" {
		return nil
	}
	rank, ask := nextToThat, ""
	if sheet.WaitsAsStated(d) {
		rank, ask = firstOfAll, askAssay
	}
	return []entry{p.wrapped("Minutes", rank, ask, Clean(b.Goes, mostProse))}
}

// change prints the one change that mends something.
func (p briefly) change(c *sheet.Change) []entry {
	if c == nil {
		return nil
	}
	text := plain(c.From) + " → " + plain(c.To) + glue + c.Unit + " " + Clean(c.Of, mostName) + ": "
	return p.inALine("Change", text+Clean(c.What, mostProse), text+Clean(c.Short, mostProse))
}

// inALine makes an entry of the longest of some texts that takes one line of a page of the usual
// width, else of the last, if it takes no more than one text may; its longest way is taken where
// room is left.
func (p briefly) inALine(label string, texts ...string) []entry {
	long := p.wrapped(label, firstOfAll, "", texts[0])
	var e entry
	for _, text := range texts {
		if e = p.wrapped(label, firstOfAll, "", text); len(e.lines) <= p.rows(1) {
			break
		}
	}
	if len(e.lines) > p.rows(mostOfOne) {
		return nil
	}
	if n := len(long.lines); n > len(e.lines) && n <= p.rows(mostOfOne) {
		e.longer = long.lines
	}
	return []entry{e}
}

// rankOfSaying lets one sentence stand with the senses.
func rankOfSaying(i int) int { return min(firstOfAll+i, ifRoom) }

// next prints which reading to take, and what is unknown most.
func (p briefly) next(b *sheet.Brief) []entry {
	var all []entry
	if n := b.Next; n != nil {
		text := "read " + sheet.ReadingWords(n.Reading) + " of " + fit(sheet.PotWords(n.Of), potWidth)
		switch {
		case n.Why != "":
			text += ": no recipe tells it"
		default:
			for i, x := range n.Narrows[:min(len(n.Narrows), 2)] {
				text += []string{": narrows ", ", "}[i] + sheet.NarrowsBy(x)
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
		what := sheet.WordsFor(g.Constituent) + " of " + Clean(g.By.The(), mostName)
		text := "nobody has measured: " + what
		if g.In != "" {
			text = "what the steps of " + Clean(g.In, mostName) + " left of: " + what
		}
		bare := text
		if most := p.bound(g.Result, 0); most != "" {
			text += ", " + most
		}
		e := p.cut("Unknown", mustStand, askEvidence, text)
		if short := p.cut("", 0, "", bare).lines; len(short) < len(e.lines) {
			e.shorter = short
		}
		all = append(all, e)
	}
	return all
}

// guest prints what a guest must know.
func (p briefly) guest(g *sheet.BriefGuest) []entry {
	rules := " (" + strings.ToUpper(strings.Join(g.Rules, ", ")) + ")"
	text := "No allergen class" + rules + " was found in what was assessed: no promise"
	if len(g.Contains) > 0 {
		text = "Contains" + rules + ": " + strings.Join(g.Contains, " · ")
	}
	if len(g.MayContain) > 0 {
		text += ". May contain: " + strings.Join(g.MayContain, " · ")
	}
	all := []entry{p.wrapped("Guest", mayHurt, askAllergens, text)}
	for _, c := range g.Check {
		all = append(all, p.wrapped("Guest", mayHurt, askAllergens, Clean(c, mostProse)))
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
		all = append(all, p.wrapped("Guest", firstOfAll, askAllergens, text))
	}
	return append(all, p.cautions(g.Cautions)...)
}

// gravest is the rank of cautions of what may kill.
const gravest = 1

// cautionLines is how many lines of a page of the usual width the cautions for a guest take in
// whole sentences.
const cautionLines = 2

// cautions prints the cautions: each that may kill by itself, those for a guest together, in whole
// sentences where they fit, else in a few words; those for the kitchen if there is room. What
// law and label want is counted.
func (p briefly) cautions(list []sheet.BriefCaution) []entry {
	const label = "Caution"
	var all, kitchen []entry
	var long, short []string
	for _, c := range list {
		switch text := Clean(c.Words, mostProse); {
		case text == "":
			kitchen = append(kitchen, p.wrapped(label, rankInKitchen(c.Rank), askAllergens, Clean(c.Kitchen, mostProse)))
		case c.Rank <= gravest:
			all = append(all, p.wrapped(label, mayHurt, askAllergens, text))
		case c.Rank > personal:
			kitchen = append(kitchen, entry{rank: never, ask: askAllergens})
		default:
			long = append(long, text)
			if words := Clean(c.Short, mostProse); !slices.Contains(short, words) {
				short = append(short, words)
			}
		}
	}
	if len(long) > 0 {
		e := p.wrapped(label, mayHurt, askAllergens, strings.Join(slices.Compact(long), " "))
		if len(e.lines) > p.rows(cautionLines) {
			e = p.wrapped(label, mayHurt, askAllergens, clean.UpperFirst(strings.Join(short, " · ")))
			e.cut = true
		}
		all = append(all, e)
	}
	return append(all, kitchen...)
}

// rankInKitchen lets what may injure somebody in the kitchen stand where there is room; the rest is
// only counted.
func rankInKitchen(rank int) int {
	if rank <= harmful {
		return ifRoom
	}
	return never
}

// The ranks of cautions of what may poison or injure, and of what is so for some guests.
const (
	harmful  = 2
	personal = 3
)

// never is the rank of what is only counted.
const never = ifRoom + 1

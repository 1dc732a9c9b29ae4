package textreport

import (
	"fmt"
	"io"

	"sipsum/internal/proof"
)

// mostMoved is how many of what moved a page tells (our own bound): the rest is counted.
const mostMoved = 12

// Proved says what a pack that was written holds.
func Proved(w io.Writer, p *proof.Pack, st Style) error {
	page := newPage(st)
	page.paragraph(0, 0, fmt.Sprintf("proof %s · %s of %s · %s figures · %s · seed %d, %s draws",
		p.Short, rowsOf(p), manyOf(len(p.Tables), "table"), grouped(len(p.Figures)), Clean(p.Program, mostName), p.Seed, grouped(p.Draws)))
	withheldRows(page, p)
	for _, c := range p.Unproven {
		page.hanging("  – ", bulletIndent, "not in it, since it ranks a food among all of a table: "+Clean(c, mostProse))
	}
	return page.write(w)
}

func withheldRows(page *page, p *proof.Pack) {
	for i := range p.Rows {
		if r := &p.Rows[i]; r.Withheld != "" {
			page.hanging("  – ", bulletIndent, Clean(r.Food, mostName)+" is in it by its digest alone: "+Clean(r.Withheld, mostProse))
		}
	}
}

func rowsOf(p *proof.Pack) string { return manyOf(len(p.Rows), "row") }

// manyOf writes a count of things.
func manyOf(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return grouped(n) + " " + what
}

// Verdict says what a check of a pack found.
func Verdict(w io.Writer, v *proof.Verdict, st Style) error {
	p := newPage(st)
	pack := v.Pack.Pack
	p.title(Clean(pack.Drink, mostName), "proof "+Clean(pack.Short, mostName))
	p.paragraph(0, 2, fmt.Sprintf("%s · %s of %s · seed %d, %s draws", Clean(pack.Program, mostName), rowsOf(pack), manyOf(len(pack.Tables), "table"), pack.Seed, grouped(pack.Draws)))
	p.gap()
	p.paragraph(0, 0, p.bold(judgement(v)))
	if !v.SameProgram() {
		p.hanging("  – ", bulletIndent, "the pack is of "+Clean(pack.Program, mostName)+" and this is "+v.Program+": only what is printed is compared")
	}
	listed(p, "", v.Broken)
	if v.Failed != "" {
		p.hanging("  – ", bulletIndent, "nothing can be calculated from it: "+Clean(v.Failed, mostProse))
	}
	moved(p, v.Moved)
	listed(p, "", v.Constants)
	if v.Here {
		hereSaid(p, v)
	}
	withheldRows(p, pack)
	for _, c := range pack.Unproven {
		p.hanging("  – ", bulletIndent, "not checked, since it ranks a food among all of a table: "+Clean(c, mostProse))
	}
	return p.write(w)
}

// judgement is the verdict in one line.
func judgement(v *proof.Verdict) string {
	figures := grouped(len(v.Pack.Figures))
	switch {
	case v.Same() && v.SameProgram():
		return fmt.Sprintf("same: %s figures are printed the same, and %s stored numbers agree", figures, grouped(v.Stored()))
	case v.Same():
		return fmt.Sprintf("same as printed: %s figures", figures)
	case len(v.Moved) > 0:
		return fmt.Sprintf("not the same: %s of %s figures moved", grouped(len(v.Moved)), figures)
	case v.Failed != "":
		return "not the same: nothing could be calculated"
	}
	return fmt.Sprintf("not as it was written, though its %s figures follow from what is in it", figures)
}

func listed(p *page, lead string, texts []string) {
	for i, text := range texts {
		if i == mostMoved {
			p.hanging("  – ", bulletIndent, fmt.Sprintf("and %s more", grouped(len(texts)-mostMoved)))
			return
		}
		p.hanging("  – ", bulletIndent, lead+Clean(text, mostProse))
	}
}

// moved tells what moved: each with what the pack says and what follows from it.
func moved(p *page, list []proof.Moved) {
	for i, m := range list {
		if i == mostMoved {
			p.hanging("  – ", bulletIndent, fmt.Sprintf("and %s more", grouped(len(list)-mostMoved)))
			return
		}
		name := Clean(m.ID, mostName) + " (" + Clean(m.Of, mostName) + ")"
		pack, now := Clean(m.Pack, mostProse), Clean(m.Now, mostProse)
		switch m.What {
		case "missing":
			p.hanging("  – ", bulletIndent, name+": the pack says "+pack+"; it does not follow")
		case "new":
			p.hanging("  – ", bulletIndent, name+": not in the pack; "+now+" follows")
		case "printed":
			p.hanging("  – ", bulletIndent, name+": the pack says "+pack+"; "+now+" follows")
		default:
			p.hanging("  – ", bulletIndent, name+", "+m.What+": the pack says "+pack+"; "+now+" follows")
		}
	}
}

// hereSaid tells how the rows of a pack stand beside the tables of this machine.
func hereSaid(p *page, v *proof.Verdict) {
	if len(v.Differ)+len(v.Absent) == 0 {
		p.hanging("  – ", bulletIndent, "the tables here have the same "+rowsOf(v.Pack.Pack))
	}
	listed(p, "not as in the table here, ", v.Differ)
	listed(p, "not compared, ", v.Absent)
}

package contrast

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/liquid"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Notice says whether a judge notices a difference.
type Notice string

// The answers.
const (
	Untold  Notice = ""        // no share is published, or the figure is not known
	Smaller Notice = "smaller" // in no draw as much as a judge notices
	May     Notice = "may"     // at least in some
	Surely  Notice = "surely"  // in all more than the most that a judge wants
)

// Noticed is a difference of a taste beside the least that a judge notices.
type Noticed struct {
	Index               Difference // in the unit of the index
	ShareLow, ShareHigh float64    // of the first drink's; not a number where nobody knows
	Notice
	Band taste.Difference
}

// sweet is the sucrose equivalents in 100 ml.
func (p *pair) sweet() Noticed {
	var of [2]taste.SweetIndex
	var open [2]float64
	for side, a := range p.assays {
		g := a.Glass()
		if why := liquid.TooDry(g.Pot); why != "" {
			return unnoticed(why)
		}
		of[side] = taste.Sweetness(g)
		if of[side].Partial {
			open[side] = of[side].WithBounds - of[side].Mean // NaN stays NaN
		}
	}
	return notice(columnOf(of[0].Result), columnOf(of[1].Result), p.corners(open), of[0].Notices)
}

// corner is what is added to both drinks where what nobody knows is at one of its ends.
type corner struct{ a, b float64 }

// corners lists the ends of what nobody knows of the sugars. What both hold of the same unknown moves
// together, and apart by as much as one of them has more of it.
func (p *pair) corners(open [2]float64) []corner {
	if open[0] == 0 && open[1] == 0 {
		return []corner{{0, 0}}
	}
	apart := p.apart(sweetens) * math.Max(open[0], open[1]) // NaN stays NaN
	var list []corner
	for _, at := range []corner{{0, 0}, {open[0], open[1]}} {
		list = append(list, at, corner{at.a + apart, at.b}, corner{at.a, at.b + apart})
	}
	return list
}

// sweetens reports whether a constituent is one of sugars and polyols, or their total.
func sweetens(id constituent.ID) bool {
	for ; id != ""; id = constituent.Must(id).Parent {
		if id == constituent.Sugar || id == constituent.Polyols {
			return true
		}
	}
	return false
}

// sour is the titratable acidity.
func (p *pair) sour() Noticed {
	a, b := p.assays[0].Chemistry, p.assays[1].Chemistry
	if a == nil || b == nil || len(a.Acidity) == 0 || len(b.Acidity) == 0 {
		return unnoticed("no acidity was worked out")
	}
	x, y := a.Acidity[0].PerLitre, b.Acidity[0].PerLitre
	l := p.estimates(Acidity, x, y, p.acids())
	if l.Why != "" {
		return unnoticed(l.Why)
	}
	n := notice(columnOf(x.Result), columnOf(y.Result), []corner{{0, 0}}, taste.Notices(taste.Sour))
	n.Index = l.Difference
	if x.Mean > 0 {
		const all = -1 // nothing loses more
		n.ShareLow, n.ShareHigh = max(min(n.ShareLow, l.Least/x.Mean), all), max(n.ShareHigh, l.Most/x.Mean)
	}
	n.judge()
	return n
}

func unnoticed(why string) Noticed {
	none := math.NaN()
	return Noticed{Index: Difference{Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Least: none, Most: none, Why: why}, ShareLow: none, ShareHigh: none}
}

// notice sets two columns against each other at every corner.
func notice(a, b []float64, corners []corner, band taste.Difference) Noticed {
	n := Noticed{Index: differenceOf(less(b, a), 1), ShareLow: math.Inf(1), ShareHigh: math.Inf(-1), Band: band}
	for _, at := range corners {
		moved, share := less(b, a), make([]float64, min(len(a), len(b)))
		for d := range moved {
			if at.a != at.b { // NaN too
				moved[d] += at.b - at.a
			}
			if moved[d] != 0 {
				share[d] = moved[d] / (a[d] + at.a)
			}
		}
		if math.IsNaN(at.a) || math.IsNaN(at.b) {
			none := math.NaN()
			n.Index.Least, n.Index.Most, n.ShareLow, n.ShareHigh = none, none, none, none
			return n
		}
		s, r := estimate.Summarise(moved), estimate.Summarise(share)
		n.Index.Least, n.Index.Most = min(n.Index.Least, s.Low), max(n.Index.Most, s.High)
		n.ShareLow, n.ShareHigh = min(n.ShareLow, r.Low), max(n.ShareHigh, r.High)
	}
	n.judge()
	return n
}

// Heard reports whether a judge notices it, surely or perhaps.
func (n Noticed) Heard() bool { return n.Notice == May || n.Notice == Surely }

// judge tells whether the share comes to what a judge notices: surely where all of it is beyond the most
// that is published.
func (n *Noticed) judge() {
	surely := n.Band.High / unit.Hundred
	switch largest := max(math.Abs(n.ShareLow), math.Abs(n.ShareHigh)); {
	case n.Band.Low == 0, math.IsNaN(largest), math.IsInf(largest, 0):
		n.Notice = Untold
	case largest < n.Band.Low/unit.Hundred:
		n.Notice = Smaller
	case n.ShareLow >= surely, n.ShareHigh <= -surely:
		n.Notice = Surely
	default:
		n.Notice = May
	}
}

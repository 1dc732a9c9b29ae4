package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
)

// The most pictures of figures that do not lead a sense, and of those without a picture: our own
// bounds, of what a page has room for. The annex has all.
const (
	mostLesserBars = 2
	mostFurther    = 4
)

// written writes a figure of a sense.
func (p *printed) written(f *SenseFigure) Written {
	w := Written{Path: "serving." + f.Key, Leads: f.Leads, Shown: shortly(f.Result), Words: f.Words, Also: f.Also}
	switch {
	case f.Form == HardlyThere:
		w.Shown = figure.Shown{Number: fmt.Sprintf("< %g", chemistry.HardlySour), Unit: "%"}
	case f.Key == keyPH:
		w.Lead, w.Unit, w.Words = "pH", "", strings.TrimPrefix(f.Words, "pH ")
	}
	if f.FromMemory {
		w.Words = daggered(w.Words, true)
	}
	return w
}

// keyPH is the key of a pH in the documents.
const keyPH = "ph"

// short writes a figure of the coffee alone.
func (p *printed) short(f *SenseFigure, r composition.Result) string {
	switch {
	case None(r):
		return joined("no", f.Words)
	case Hollow(r):
		return f.Words + " not measured"
	}
	of := *f
	of.Result, of.Form, of.FromMemory, of.Also = r, Metered, false, ""
	w := p.written(&of)
	w.Low, w.High, w.UpTo = "", "", ""
	if f.Key == keyPH || f.Key == "brix" {
		w.Words = ""
	}
	return w.Bare()
}

// sense sets a sense on paper.
func (p *printed) sense(x *Sense) SensePicture {
	out := SensePicture{Name: clean.UpperFirst(x.Name)}
	against := clean.Name(p.brief.Against)
	var bars []Bar
	unit, lesser, more := "", 0, 0
	for i := range x.Figures {
		f := &x.Figures[i]
		if f.Leads {
			out.Figures = append(out.Figures, p.written(f))
		} else {
			lesser++
		}
		switch {
		case f.Key == keyPH && f.Form == Estimated && f.Result.Unit != "":
			out.Pictures = append(out.Pictures, p.scaleOf(f, against))
			continue
		case len(f.By) > 0 && (f.Leads || x.Name == "sour" && lesser <= mostLesserBars):
			if unit == "" {
				unit = f.Result.Unit
			}
			if factor, ok := factorTo(f.Result.Unit, unit); ok {
				bars = append(bars, p.barOf(f, factor, against))
				continue
			}
		}
		switch {
		case f.Leads:
		case len(out.Further) < mostFurther:
			out.Further = append(out.Further, p.written(f))
		default:
			more++
		}
	}
	if more > 0 {
		out.More = say(p.more, strconv.Itoa(more))
	}
	if len(bars) > 0 {
		p.against(bars)
		out.Pictures = append(out.Pictures, &Bars{say("paper.brings", out.Name), axisOf(bars, unit), bars})
	}
	out.Lines = p.besides(x, against)
	return out
}

// against keeps what the coffee alone has off an axis on which it could not be seen beside a drink
// that has far less of it.
func (p *printed) against(bars []Bar) {
	most := 0.0
	for _, b := range bars {
		most = max(most, b.High)
	}
	for i := range bars {
		if bars[i].Alone > noFurther*most {
			bars[i].Alone = math.NaN()
		}
	}
}

// besides says what the coffee alone has of a sense, what is withheld, and what nobody knows.
func (p *printed) besides(x *Sense, against string) []string {
	var lines, alone []string
	for i := range x.Figures {
		drawn := x.Figures[i].Key == keyPH || len(x.Figures[i].By) > 0 // its picture says it
		if f := &x.Figures[i]; f.Leads && f.Alone != nil && (!drawn || Hollow(*f.Alone)) {
			alone = append(alone, p.short(f, *f.Alone))
		}
	}
	if len(alone) > 0 {
		lines = append(lines, say("paper.alone", against, strings.Join(alone, " · ")))
	}
	for k, name := range p.brief.Also {
		var has []string
		for i := range x.Figures {
			if f := &x.Figures[i]; f.Leads && k < len(f.Further) && f.Further[k] != nil {
				has = append(has, p.short(f, *f.Further[k]))
			}
		}
		if len(has) > 0 {
			lines = append(lines, say("paper.alone", clean.Name(name), strings.Join(has, " · ")))
		}
	}
	for _, w := range x.Withheld {
		lines = append(lines, clean.Prose(w.What+w.Bounds+": "+w.Why))
	}
	if len(x.Unmeasured) > 0 {
		lines = append(lines, say("paper.unmeasured", clean.Listed(x.Unmeasured)))
	}
	if len(x.Figures)+len(x.Unmeasured) == 0 && x.None != "" {
		lines = append(lines, x.None)
	}
	return lines
}

package sheet

import (
	"math"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/figure"
)

// Bars are bars on one axis.
type Bars struct {
	Title string
	Axis  Axis
	Bars  []Bar
}

// Bar is a figure as a bar: who brings it, between which ends it lies, what nobody knows of it,
// and what the coffee alone has.
type Bar struct {
	Words    string // what it is
	Figure   Written
	Point    bool // a place on a scale, no amount: it does not begin at nothing
	Segments []Segment
	Mean     float64 // the end of what is known
	Low      float64 // its range; both are the mean where there is none
	High     float64
	Most     float64 // hatched from the mean to here; infinite where nothing bounds it; the mean where all is known
	Unknown  string  // of whom it is not known, in words
	Alone    float64 // NaN: there is nothing to say
	Against  string  // what the coffee alone has, in words
}

// Segment is what an ingredient brings of a bar.
type Segment struct {
	Hue    Hue
	Word   string
	Path   string // where the documents have its share
	Amount float64
	Share  string // "59 %"
}

// Name says what is drawn.
func (b *Bars) Name() string { return b.Title }

// Table is the picture in words.
func (b *Bars) Table() *Grid {
	g := &Grid{Caption: b.Title, Head: []string{"", say("paper.serving"), say("paper.between"), say("paper.from")}}
	for _, bar := range b.Bars {
		var from []string
		for _, s := range bar.Segments {
			from = append(from, joined(s.Word, s.Share))
		}
		if bar.Unknown != "" {
			from = append(from, bar.Unknown)
		}
		if bar.Against != "" {
			from = append(from, bar.Against)
		}
		w := bar.Figure
		w.Words = ""
		g.Rows = append(g.Rows, GridRow{Label: bar.Words, Cells: []GridCell{{Text: w.Bare(), Unknown: w.Unknown}, {Text: w.Range()}, {Text: strings.Join(from, " · ")}}})
	}
	return g
}

// leastSegment is the share below which what an ingredient brings is put together with others of
// its kind: our own bound, of what an eye finds in a bar.
const leastSegment = 0.03

// mostSegments is how many are told apart in a bar: our own bound.
const mostSegments = 6

// barOf makes a bar of a figure that ingredients bring, in a unit of which so many are in its own.
func (p *printed) barOf(f *SenseFigure, factor float64, against string) Bar {
	r := f.Result
	b := Bar{
		Words: f.Words, Figure: p.written(f), Mean: r.Mean * factor, Low: r.Low * factor, High: r.High * factor, Most: r.Mean * factor, Alone: math.NaN(),
	}
	p.segments(&b, f)
	if r.Partial {
		if b.Most = r.UpTo * factor; math.IsNaN(b.Most) {
			b.Most = math.Inf(1)
		}
		b.Unknown = p.unknownIn(f)
	}
	if f.Alone != nil && !Hollow(*f.Alone) {
		b.Alone, b.Against = f.Alone.Mean*factor, say("paper.alone", against, p.short(f, *f.Alone))
	}
	return b
}

// segments are what each ingredient brings; the small ones are put together.
func (p *printed) segments(b *Bar, f *SenseFigure) {
	rest, n := 0.0, 0
	for i, in := range f.By {
		share := in.Share.Mean
		if !(in.Mean > 0) {
			continue
		}
		if i > 0 && (share < leastSegment || len(b.Segments) >= mostSegments) {
			rest += share
			n++
			continue
		}
		b.Segments = append(b.Segments, Segment{
			p.of(in.Food), clean.Name(in.Word), "share." + f.Key + "." + in.Food.ID.String(), share * b.Mean, figure.Percent(share),
		})
	}
	if n > 0 {
		b.Segments = append(b.Segments, Segment{Hue: HueRest, Word: say("paper.rest"), Amount: rest * b.Mean, Share: figure.Percent(rest)})
	}
}

// mostUnknown is how many foods are named of which something is not known, and leastUnknown the part
// of what is not known that makes one worth naming: our own bounds.
const (
	mostUnknown  = 2
	leastUnknown = 0.1
)

// unknownIn names the foods of which a figure does not know all, and the most that it may be.
func (p *printed) unknownIn(f *SenseFigure) string {
	all := 0.0
	for _, in := range f.By {
		if in.Unknown && !math.IsNaN(in.Most) {
			all += in.Most
		}
	}
	var names []string
	for _, in := range f.By {
		if in.Unknown && !(in.Most < leastUnknown*all) {
			names = append(names, clean.Name(in.Word))
		}
	}
	if len(names) == 0 {
		return say("paper.unmeasured", f.Words)
	}
	if more := len(names) - mostUnknown; more > 1 {
		names = append(names[:mostUnknown], say("paper.many", strconv.Itoa(more)))
	}
	w := p.written(f)
	if w.UpTo == "" {
		return say("paper.unknown", clean.Listed(names))
	}
	return say("paper.unknown.most", clean.Listed(names), w.UpTo+" "+w.UpToUnit)
}

// inUnit is how many of a unit are in one of another: of grams and what they are divided into.
func inUnit(from, to string) (float64, bool) {
	for factor := 1.0; ; factor *= figure.Thousand {
		if from == to {
			return factor, true
		}
		smaller, ok := figure.Smaller[from]
		if !ok {
			break
		}
		from = smaller
	}
	return 0, false
}

// factorTo is inUnit whichever is the finer of two units.
func factorTo(from, to string) (float64, bool) {
	if x, ok := inUnit(from, to); ok {
		return x, true
	}
	x, ok := inUnit(to, from)
	return 1 / x, ok
}

// noFurther is how much longer than what is known an axis may be for what is not: our own bound,
// beyond it what is known could not be seen. What is hatched then runs off the axis.
const noFurther = 2

// axisOf is the axis of bars that begin at nothing.
func axisOf(bars []Bar, unit string) Axis {
	known, all := 0.0, 0.0
	for _, b := range bars {
		known = max(known, b.Mean, b.High)
		if !math.IsNaN(b.Alone) {
			known = max(known, b.Alone)
		}
	}
	for _, b := range bars {
		all = max(all, min(b.Most, noFurther*known))
	}
	return axisTo(max(known, all), unit)
}

// The ends of a scale of pH that most drinks lie between, and its step.
const (
	sourest  = 2.0
	mildest  = 7.0
	scaleBy  = 1.0
	unitOfPH = "pH"
)

// scaleOf is a pH between its ends, beside that of the coffee alone.
func (p *printed) scaleOf(f *SenseFigure, against string) *Bars {
	r := f.Result
	b := Bar{Words: f.Words, Figure: p.written(f), Point: true, Mean: r.Mean, Low: r.Low, High: r.High, Most: r.Mean, Alone: math.NaN()}
	low, high := min(sourest, r.Low), max(mildest, r.High)
	if f.Alone != nil && !Hollow(*f.Alone) {
		b.Alone, b.Against = f.Alone.Mean, say("paper.alone", against, p.short(f, *f.Alone))
		low, high = min(low, b.Alone), max(high, b.Alone)
	}
	return &Bars{Title: say("paper.scale"), Axis: axisBetween(low, high, scaleBy, unitOfPH), Bars: []Bar{b}}
}

package minutes

import (
	"fmt"
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/prep"
	"sipsum/internal/solution"
)

// warmth is what heat does to a glass.
type warmth struct {
	celsius [][]float64 // columns by time; nil: not told
	why     string      // celsius is not told
	write   string      // what the file wants for it; empty: nothing would help

	melted   [][]float64 // g, columns by time; nil: there is no ice, or nobody can tell
	unmelted string      // why nobody can tell how much melts
	unpaid   bool        // more is stated to melt than the heat allows
}

// warm follows the heat of a glass.
func (g Glass) warm(b *bench, times []float64) warmth {
	var w warmth
	w.why, w.write = g.unwarmed()
	x := standing{n: g.Pot.N}
	if s := g.Drink.Stands; s != nil && s.Ice != nil {
		if w.why != "" && s.Melts == nil {
			w.unmelted = w.why
			return w
		}
		x.ice = b.ice(s.Ice, g.Drink.Scale)
		if s.Melts != nil {
			x.melts = b.stated("melts", *s.Melts, 1)
		}
	}
	if w.why == "" {
		x.heated(b, g)
	} else if x.ice == nil {
		return w
	}
	celsius, melted := x.follow(times)
	if w.why == "" {
		w.celsius = celsius
	}
	if x.ice != nil {
		w.melted, w.unpaid = melted, x.unpaid
	}
	return w
}

// unwarmed tells why nobody can say how warm a glass gets, and what to write; empty if somebody can.
func (g Glass) unwarmed() (why, write string) {
	const dust = 0.05 // °C, half of the last digit that is printed
	at := g.Drink.At
	if at == nil {
		return "the file does not say how warm it is served", "at: 6 °C"
	}
	if freezes, ok := g.freezesAt(); ok && at.Number < freezes-dust {
		return fmt.Sprintf("it freezes from about %.1f °C on, so part of it is ice at %g °C", freezes, at.Number), ""
	}
	if most := rows()["hottest of the rates"].value; at.Number > most {
		return fmt.Sprintf("how fast a drink cools from above %g °C was not found in print", most), ""
	}
	return "", ""
}

// freezesAt gives about where the drink begins to freeze.
func (g Glass) freezesAt() (celsius float64, ok bool) {
	grams := map[constituent.ID]float64{}
	for _, leaf := range g.Pot.Columns.List {
		grams[leaf.ID] = g.Pot.Central(leaf.ID)
	}
	return solution.FreezesAt(grams)
}

// standing is a glass with its heat, in columns; what it lacks is nil.
type standing struct {
	n             int
	celsius, room []float64
	exchange      []float64 // 1/min, of the glass as it is poured
	heat, water   []float64 // J/K of the glass as it is poured, J/(g K) of water

	ice    []float64 // g
	melts  []float64 // g/min, as stated; nil: by the heat
	cools  []float64 // 1/min, towards where it rests
	rests  []float64 // °C, at which the drink as it is poured rests on ice
	thins  []float64 // g of water in it: what melts brings where it rests nearer to 0 °C
	fusion float64   // J/g
	unpaid bool      // less melts than is stated, in the central draw
}

// heated draws what the heat of a glass hangs on.
func (x *standing) heated(b *bench, g Glass) {
	x.celsius, x.room = b.hand(nil).DrawQuantity(*g.Drink.At, 1, "at"), b.room(g.Drink.Stands)
	mass := g.Pot.Mass()
	x.exchange = b.exchange(x.celsius[0], x.room[0], mass)
	x.heat, x.water = prep.Holds(g.Pot, b.factors())
	if x.ice == nil {
		return
	}
	for d := range x.exchange { // the surface is that of all that is in the glass
		x.exchange[d] *= math.Pow(1+x.ice[d]/mass[d], surface)
	}
	x.fusion = solution.HeatOfFusion() / constituent.Must(constituent.Water).Molar
	x.cools, x.rests = make([]float64, x.n), make([]float64, x.n)
	freezes, ok := g.freezesAt()
	x.thins = g.Pot.Total(constituent.Water)
	if !ok && g.Pot.Central(constituent.Alcohol) > 0 { // stronger than what was published: as cold as the coldest that was
		freezes, ok, x.thins = solution.ColdestEthanol(), true, mass
	}
	if ok && freezes < iceMelts { // a strong or sweet drink takes ice below where it melts
		x.rests = b.draw("rests below zero")
		for d := range x.rests {
			x.rests[d] *= freezes
		}
	}
	if x.melts == nil {
		x.cools = b.draw("ice cools")
	}
}

// surface is how the surface of bodies of one shape goes with their mass.
const surface = 2.0 / 3

// iceMelts is the temperature at which ice does, °C: by definition of the scale.
const iceMelts = 0.0

// step is how far a glass on ice goes at once, in minutes: a second, over which hardly anything changes.
const step = 1.0 / 60

// follow lets the glass stand, draw by draw, and gives how it is at each time.
func (x *standing) follow(times []float64) (celsius, melted [][]float64) {
	for range times {
		celsius, melted = append(celsius, make([]float64, x.n)), append(melted, make([]float64, x.n))
	}
	for d := range x.n {
		now := moment{celsius: math.NaN()}
		if x.celsius != nil {
			now.celsius = x.celsius[d]
		}
		for i, t := range times {
			if i > 0 {
				now = x.stand(d, now, t-times[i-1])
			}
			celsius[i][d], melted[i][d] = now.celsius, now.melted
		}
	}
	return celsius, melted
}

// moment is how a glass is in one draw.
type moment struct{ celsius, melted float64 }

// stand lets some minutes pass.
func (x *standing) stand(d int, now moment, minutes float64) moment {
	for x.ice != nil && minutes > 0 && now.melted < x.ice[d] {
		span := min(minutes, step)
		now = x.onIce(d, now, span)
		minutes -= span
	}
	if minutes > 0 && x.celsius != nil {
		rate := x.exchange[d] * x.heat[d] / (x.heat[d] + now.melted*x.water[d])
		now.celsius = x.room[d] + (now.celsius-x.room[d])*math.Exp(-rate*minutes)
	}
	return now
}

// onIce lets a moment pass while there is ice.
func (x *standing) onIce(d int, now moment, span float64) moment {
	if x.melts != nil && x.celsius == nil { // nobody can tell what the heat allows
		// guard: no more melts than there is
		now.melted = min(now.melted+x.melts[d]*span, x.ice[d])
		return now
	}
	rests := x.restsAt(d, now)
	if x.melts != nil {
		return x.asStated(d, now, rests, span)
	}
	holds := x.heat[d] + now.melted*x.water[d]
	brings := x.exchange[d] * x.heat[d] * (x.room[d] - now.celsius) * span
	next := rests + (now.celsius-rests)*math.Exp(-x.cools[d]*span)
	// ice warms nothing: what is colder than it rests warms by the room alone
	next = min(next, now.celsius+max(brings, 0)/holds)
	// guard: nothing freezes onto the ice
	heat := max(holds*(now.celsius-next)+brings, 0)
	return moment{next, min(now.melted+heat/(x.fusion+x.water[d]*now.celsius), x.ice[d])}
}

// restsAt gives where a drink rests on its ice as far as that has melted: what is dissolved lowers it by its share in the water.
func (x *standing) restsAt(d int, now moment) float64 {
	if x.rests[d] == iceMelts {
		return iceMelts
	}
	return x.rests[d] * x.thins[d] / (x.thins[d] + now.melted)
}

// asStated lets as much melt as was weighed, by the heat of the drink and of the room: no more than takes the drink to
// where it rests.
func (x *standing) asStated(d int, now moment, rests, span float64) moment {
	holds := x.heat[d] + now.melted*x.water[d]
	brings := x.exchange[d] * x.heat[d] * (x.room[d] - now.celsius) * span
	takes := x.fusion + x.water[d]*now.celsius // J for each gram, up to the drink's own temperature
	most := (holds*max(now.celsius-rests, 0) + brings) / takes
	asked := min(x.melts[d]*span, x.ice[d]-now.melted)
	x.unpaid = x.unpaid || d == 0 && most < asked
	// no more melts than the heat allows
	melts := min(asked, most)
	melts = max(melts, 0)
	return moment{now.celsius + (brings-melts*takes)/holds, now.melted + melts}
}

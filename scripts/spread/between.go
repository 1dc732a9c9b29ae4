package main

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// limit is where 90 % of a normal distribution end (Abramowitz and Stegun 1964, table 26.5).
const limit = 1.6449

// The evidence that a number of its own wants.
const (
	leastCompared = 6    // foods, of a constituent in a class of foods
	leastOfKind   = 12   // foods, of a kind
	leastBeyond   = 2    // foods beyond the level
	inner         = 0.75 // the share that holds where they are fewer
	halfTrusted   = 8    // foods at which what a class shows counts as much as what its kind does
)

// mostApart is the largest standard deviation, of the logarithm, that a comparison shows
// (our own bound): the upper end of such an interval lies at nearly four times its mean, and
// more moves it no further.
const mostApart = 1.2

// likeliest is the class that speaks for another of which too few foods were compared: both are
// plants as they grew, of another cultivar, soil and ripeness.
var likeliest = map[string]string{"vegetables": "fruits", "leaves and spices": "fruits"}

// evidence are comparisons; each food counts as one, in however many tables it stands.
type evidence []comparison

func (e evidence) foods() int {
	seen := map[string]bool{}
	for _, c := range e {
		seen[c.code+string(c.id)] = true
	}
	return len(seen)
}

// quantile gives the least distance within which a share of the foods' comparisons lie.
func (e evidence) quantile(share float64) float64 {
	times := map[string]float64{}
	for _, c := range e {
		times[c.code+string(c.id)]++
	}
	sorted := slices.Clone(e)
	slices.SortStableFunc(sorted, func(a, b comparison) int { return cmp.Compare(a.apart, b.apart) })
	sum, all := 0.0, float64(len(times))
	for _, c := range sorted {
		if sum += 1 / times[c.code+string(c.id)]; sum >= share*all {
			return c.apart
		}
	}
	return math.NaN()
}

// reach is how far the evidence reaches: the least standard deviation, of the logarithm, of
// a lognormal number whose middle 90 % hold the level of it. Such a number has its median
// σ²/2 below its mean, and a source lies above another as often as below.
func (e evidence) reach(level float64) float64 {
	const least, step = 0.005, 1.01
	apart, weights := e.weighed()
	sigma := least
	for ; sigma < mostApart; sigma *= step {
		up, down := limit*sigma-sigma*sigma/2, limit*sigma+sigma*sigma/2
		held := 0.0
		for i, x := range apart {
			if x <= down {
				held += weights[i] / 2
			}
			if x <= up {
				held += weights[i] / 2
			}
		}
		if held >= level {
			break
		}
	}
	return sigma
}

// weighed gives the distances, and the weight of each: of all foods one.
func (e evidence) weighed() (apart, weights []float64) {
	times := map[string]float64{}
	for _, c := range e {
		times[c.code+string(c.id)]++
	}
	for _, c := range e {
		apart = append(apart, c.apart)
		weights = append(weights, 1/times[c.code+string(c.id)]/float64(len(times)))
	}
	return apart, weights
}

// lies says how far two sources' figures of one food lie apart: the standard deviation, of
// the logarithm, of a lognormal number of which the middle 90 % reach as far.
type lies struct {
	sample  map[[2]string]evidence // by constituent and class
	all     map[string]evidence    // by constituent
	stretch float64                // from where the inner share holds to where 90 % do
	factor  map[[2]string]float64  // kind and class: how much further than the constituent in all classes
}

// learn takes what comparisons show.
func learn(all []comparison) *lies {
	l := &lies{sample: map[[2]string]evidence{}, all: map[string]evidence{}, factor: map[[2]string]float64{}}
	class := classOf()
	defer func() {
		const z = 1.1503 // Φ⁻¹((1 + inner)/2)
		t := l.tail()
		l.stretch = limit * (1 + t*limit*limit) / (z * (1 + t*z*z))
	}()
	for _, c := range all {
		key := [2]string{string(c.id), class[c.group]}
		l.sample[key] = append(l.sample[key], c)
		l.all[key[0]] = append(l.all[key[0]], c)
	}
	general := map[string]float64{}
	for id := range l.all {
		general[id] = l.general(id)
	}
	pools := map[[2]string]evidence{}
	for _, c := range all {
		key := [2]string{kindOf(string(c.id)).name, class[c.group]}
		c.apart /= general[string(c.id)]
		pools[key] = append(pools[key], c)
	}
	for key, pool := range pools {
		if pool.foods() >= leastCompared {
			l.factor[key] = pool.quantile(levelOf(key[0])) / limit
		}
	}
	return l
}

// between gives how far sources lie apart for a constituent in a class of foods, and how
// many foods say so: 0 where it rests on its kind alone. ok is false where nothing is known.
func (l *lies) between(id, class string) (sd float64, n int, ok bool) {
	kind := kindOf(id)
	f, ok := l.factor[[2]string{kind.name, class}]
	if alike, named := likeliest[class]; !ok && named {
		f, ok = l.factor[[2]string{kind.name, alike}]
	}
	if !ok {
		return 0, 0, false
	}
	prior := min(l.general(id)*f, mostApart)
	own := l.sample[[2]string{id, class}]
	if n = own.foods(); n < leastCompared {
		return prior, 0, prior > 0
	}
	reach := own.reach(kind.level)
	if float64(n)*(1-kind.level) < leastBeyond { // its end is one odd food's: the middle says more
		reach = own.reach(inner) * l.stretch
	}
	reach *= ahead(n)
	w := float64(n) / float64(n+halfTrusted)
	return min(math.Exp(w*math.Log(reach)+(1-w)*math.Log(prior)), mostApart), n, true
}

// ahead is by how much further a figure that is yet to come lies than those that were seen:
// with n foods the limit of Student's distribution for that of the normal one.
func ahead(n int) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n - 1)}.Quantile(0.95) * math.Sqrt(1+1/float64(n)) / limit
}

// general is the figure for all foods: of the constituent, else of its kind.
func (l *lies) general(id string) float64 {
	if pool := l.pool(id); pool.foods() >= leastOfKind {
		return pool.reach(kindOf(id).level)
	}
	return math.NaN()
}

// pool is all that is known of a constituent, or of its kind.
func (l *lies) pool(id string) evidence {
	if own := l.all[id]; own.foods() >= leastOfAll {
		return own
	}
	var pool evidence
	for _, member := range kindOf(id).members {
		pool = append(pool, l.all[string(member)]...)
	}
	return pool
}

// tail says how much heavier than those of a lognormal number the tails of what lies between
// tables are (estimate.Input): what makes the middle half of it as narrow, beside the middle
// 90 %, as in the middle of all constituents and classes with foods enough. Here figures count
// as printed: what rounding may explain would make the middle too narrow.
func (l *lies) tail() float64 {
	const quartile, enough = 0.6745, 20
	var ratios []float64
	for _, sample := range l.sample {
		printed := slices.Clone(sample)
		for i := range printed {
			printed[i].apart = printed[i].printed
		}
		if half := printed.quantile(0.5); printed.foods() >= enough && half > 0 {
			ratios = append(ratios, printed.quantile(0.9)/half)
		}
	}
	r := median(ratios)
	// h(limit)/h(quartile) = r, with h(z) = z·(1 + t·z²)
	t := (r*quartile - limit) / (limit*limit*limit - r*quartile*quartile*quartile)
	return math.Round(100*max(t, 0)) / 100
}

package optimise

// mostGiven is how many sets of targets are given up in turn: our own bound, all pairs of nine.
const mostGiven = 45

// fewest finds, where no point meets every target, one that misses fewest of them, and of those the
// one that misses them least. The least sum of misses would spread them over all. It gives up one
// target after the other, then each two, until the rest can be met; none of it hangs on what is written.
func (s *search) fewest(first Solution) (Solution, error) {
	missed := missedBy(first.Point)
	if points(s.grid) <= fewPoints {
		return first, nil
	}
	s.more()
	tried, sure := 0, first.Proven
	order := append(missed, others(len(first.Point.Margins), missed)...)
	for n := 1; n <= len(missed); n++ {
		if n == len(missed) && !first.Proven {
			order = missed // of as many no others were found that miss less in sum
		}
		var best *candidate
		var found Solution
		err := each(order, n, func(given []int) error {
			if tried++; tried > mostGiven || s.spent() {
				sure = false
				return nil
			}
			c, next, err := s.without(given, first)
			if err != nil || c == nil {
				sure = sure && next.Proven
				return err
			}
			if sure = sure && next.Proven; best == nil || c.better(*best) {
				best, found = c, next
				found.None = first.None
			}
			return nil
		})
		if err != nil {
			return first, err
		}
		if best != nil {
			found.Proven = sure
			return found, nil
		}
	}
	first.Proven = first.Proven && sure
	return first, nil
}

// without solves a problem with some targets given up; nil where the others cannot be met.
func (s *search) without(given []int, first Solution) (*candidate, Solution, error) {
	sub := *s
	sub.given = make(targets, len(first.Point.Margins))
	for _, k := range given {
		sub.given[k] = true
	}
	sub.from = s.on(first.At)
	found, err := sub.find()
	if err != nil || found.At == nil {
		return nil, found, err
	}
	l, err := s.lineAt(s.start(), s.far(s.start()))
	if err != nil {
		return nil, found, err
	}
	c, err := sub.candidate(s.on(found.At), s.scales(l))
	if err != nil || c.missed > 0 {
		return nil, found, err
	}
	if !found.Proven && c.given > 0 { // what misses hardly more may change much less
		sub.bears, sub.from = alike*c.given, s.on(found.At)
		calm, err := sub.find()
		if err != nil {
			return nil, found, err
		}
		next, err := sub.candidate(s.on(calm.At), s.scales(l))
		if err != nil {
			return nil, found, err
		}
		if next.missed == 0 && next.given == 0 {
			next.given, found = c.given, calm
			c = next
		}
	}
	return &c, found, nil
}

// missedBy lists the targets that a point misses.
func missedBy(pt Point) []int {
	var list []int
	for k, m := range pt.Margins {
		if !(m >= 0) {
			list = append(list, k)
		}
	}
	return list
}

func others(n int, but []int) []int {
	list := all(n)
	for _, k := range but {
		list = without(list, k)
	}
	return list
}

// each goes through the sets of so many of a list.
func each(list []int, n int, do func([]int) error) error {
	var of func(from int, has []int) error
	of = func(from int, has []int) error {
		if len(has) == n {
			return do(has)
		}
		for i := from; i < len(list); i++ {
			if err := of(i+1, append(has[:len(has):len(has)], list[i])); err != nil {
				return err
			}
		}
		return nil
	}
	return of(0, nil)
}

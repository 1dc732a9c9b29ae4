package batch

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/taste"
)

// holdHome holds a drink at home to its salt and its gas too, where there is enough of them to be tasted:
// a spoon is off by more than a scale, and nobody there has a siphon.
func (s *bands) holdHome(a *assay.Assay) reading {
	now, tastes := s.read(a), taste.Of(a.Glass())
	s.hold(now, tastes)
	for _, d := range tastes.Doses {
		if band, ok := atHome().bands[string(d.Taste)]; ok && stated(d) && d.Amount.Mean >= d.Low {
			s.list = append(s.list, Band{string(d.Taste), band.share, band.source})
		}
	}
	return s.readHome(a)
}

// readHome reads what is held at home off a run. Of what a drink holds nothing any more the figure is
// zero; of what nobody has stated there is none.
func (s *bands) readHome(a *assay.Assay) reading {
	r, tastes := s.read(a), taste.Of(a.Glass())
	for _, b := range s.list {
		if _, ok := atHome().bands[b.Name]; !ok {
			continue
		}
		i := slices.IndexFunc(tastes.Doses, func(d taste.Dose) bool { return string(d.Taste) == b.Name })
		switch {
		case i < 0:
			r[b.Name] = make([]float64, 1+len(a.Volume.Draws))
		case stated(tastes.Doses[i]):
			d := tastes.Doses[i].Amount
			r[b.Name] = append([]float64{d.Mean}, d.Draws...)
		}
	}
	return r
}

// stated reports whether somebody says how much of something there is.
func stated(d taste.Dose) bool { return d.Why == "" && !d.Amount.Unknown }

// untold takes out the bands of which nobody can say whether a drink stays within them, and names them.
func (s *bands) untold(r reading) (names []string) {
	s.list = slices.DeleteFunc(s.list, func(b Band) bool {
		_, ours := atHome().bands[b.Name]
		if unknown := ours && len(r[b.Name]) == 0; !unknown {
			return false
		}
		names = append(names, b.Name)
		return true
	})
	return names
}

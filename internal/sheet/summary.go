package sheet

import (
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// inSummary are the constituents that a summary tells, where the drink has them.
var inSummary = []constituent.ID{
	constituent.Energy, constituent.Sugar, constituent.OrganicAcids, constituent.Caffeine, constituent.Alcohol,
}

// Summary tells a serving in a few lines: what is in it, and which part leads. Without
// figures nothing is known.
type Summary struct {
	Figures []composition.Figure
	Leaders []Leader
}

// Leader is a part that brings half or more of some of the figures.
type Leader struct {
	Bringer
	Of []Led
}

// Led is a constituent and the share of it, or of what is known of it, that one part brings.
type Led struct {
	Figure composition.Figure
	Share  composition.Share
}

// Summary gives the lines of a summary, leaders in the order of what they lead first.
func (s *Sheet) Summary() Summary {
	var out Summary
	for _, id := range inSummary {
		if !figured(s.Assay)(id) {
			continue
		}
		f, _ := s.Assay.PerServing.Find(id)
		out.Figures = append(out.Figures, f)
		if lead, ok := BroughtTo(s.Assay, id).Lead(); ok {
			out.add(lead, Led{f, lead.Share})
		}
	}
	return out
}

func (s *Summary) add(lead Bringer, of Led) {
	for i := range s.Leaders {
		if s.Leaders[i].ID == lead.ID {
			s.Leaders[i].Of = append(s.Leaders[i].Of, of)
			return
		}
	}
	s.Leaders = append(s.Leaders, Leader{lead, []Led{of}})
}

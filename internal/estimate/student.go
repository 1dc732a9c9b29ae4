package estimate

import "gonum.org/v1/gonum/stat/distuv"

// Student gives by how much a normal is widened to have the 90 % interval of Student's t with so many degrees of
// freedom (JCGM 100:2008, G.3).
func Student(free float64) float64 {
	return distuv.StudentsT{Sigma: 1, Nu: free}.Quantile(HighShare) / distuv.UnitNormal.Quantile(HighShare)
}

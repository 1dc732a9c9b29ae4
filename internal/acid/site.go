package acid

import "math"

// SitesAt gives the two sites of the spectra between which a pK lies, and the share of the
// higher one with which a mixture of both is in the middle at that pK. Beyond the scale it is
// the site at its end.
func SitesAt(pk float64) (low, high Index, share float64) {
	t := table()
	last := Index(len(t.acids)) - t.site0 - 1
	at := min(max((pk-siteFirst)/SiteStep, 0), float64(last))
	below := min(Index(math.Floor(at)), last-1)
	return t.site0 + below, t.site0 + below + 1, at - float64(below)
}

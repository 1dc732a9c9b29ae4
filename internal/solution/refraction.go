package solution

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Refraction is what one per cent by mass of a constituent adds to the soluble
// solids of a liquid, in per cent, and to a refractometer's reading, in °Brix.
type Refraction struct {
	Solids, SolidsSD float64
	Brix, BrixSD     float64
	Source           string
}

var refractions = sync.OnceValue(func() map[constituent.ID]Refraction {
	all := map[constituent.ID]Refraction{}
	for _, row := range embedded.Rows("refraction.csv") {
		all[constituent.ID(row.Text("constituent"))] = Refraction{
			Solids: row.Number("solids"), SolidsSD: row.Number("solids_sd"), Brix: row.Number("brix"), BrixSD: row.Number("brix_sd"), Source: row.Text("source"),
		}
	}
	return all
})

// RefractionOf gives the refraction of a mass-additive constituent: its own row
// or that of the nearest parent, and whose row it is.
func RefractionOf(id constituent.ID) (Refraction, constituent.ID) {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if r, ok := refractions()[at]; ok {
			return r, at
		}
	}
	panic("solution: " + string(id) + " is not part of the mass")
}

// Package liquid reads a pot as a body: what it takes up, and what a refractometer, a
// densimeter and an alcoholometer read of it.
//
// # Model
//
// What a pot takes up is the sum of what its parts take up (package solution) and the
// excess of sugar and alcohol in water; its °Brix and its soluble solids are sums too, of
// data/refraction.csv, over the mass. What a gram of a constituent adds is a constant of
// nature: drawn once for a run, the same in every pot. Of what water draws from coffee and
// tea all that dries counts as dissolved, and the brewing water's own minerals do not: that
// is the strength of a brew. A refractometer sees a coffee's solids as one thing (brewed.go).
// Fibre of a class of foods that holds nothing in suspension (data/phases.csv) is dissolved
// carbohydrate: a gum, inulin (fibre.go).
//
// A food of the drink file that states its density has it (stated.go): exactly as it is
// poured, blended by volume, and fading as water leaves. A pot that is no liquid has neither
// density nor °Brix, and dry.go says why.
//
// Of mass that nobody has told apart, since a food states neither its water nor, in a wine, a beer
// or a spirit, its alcohol, only bounds of the density are known: its volume is drawn between them
// (open.go), and it has no °Brix; where its food states a density, that is its volume (dry.go,
// NoVolume).
//
// # Limits
//
// Volumes are those at 20 °C. Densities of tables are mostly household measures: good for
// pouring, and not used here. A food whose stated density is that of a foam keeps its air
// through steps. What counts as a liquid is our own bound (data/refraction.csv).
package liquid

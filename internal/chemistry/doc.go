// Package chemistry tells what a liquid is as a solution: pH, acidity, °Brix, density,
// buffer, titration curve, doses, how it keeps. It solves (equilibria.go) and then judges
// what of it may be printed (withheld.go).
//
// # Model
//
// A liquid is solved by package acid for the first 200 draws. Where foods leave their acids
// open, pH and acidity reach from those of none to those of the most (widen.go). A pH whose
// 90 % interval is wider than ±0.6, or that rests on more than 1.5 g of protein in 100 g, or
// that no drink of foods has, or of a liquid that hardly buffers, or of one whose gas nobody
// has stated, is withheld with its reason and bounds (data/acid_unmeasured.csv). Where a row
// has a published pH of its own and stands alone, protein does not matter: it has that pH.
//
// Titratable acidity is simulated at 25 °C without gas. Buffer capacity and strong ions are
// of the draws, as are the molecules that still have a protonated carboxyl group (protonated.go,
// withheld where a titration found groups and no molecules), the titration curve and the doses (buffer.go, dosing.go) of central values.
// The pH is of a closed bottle; degassed.go gives that of an open glass. House-made
// components that are kept, and syrups, get their water activity, the point at which ice
// forms and what the Food Code's table asks of them (keeping.go).
//
// # Limits
//
// A 90 % interval of 200 draws is good to a tenth of its width. Doses and curve are central
// values. The carbon dioxide in a litre is that of the foods that tell theirs, without a mark where one of a drink with gas
// does not. Nothing is called safe: what keeps is for local codes and licensed practice.
package chemistry

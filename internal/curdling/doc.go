// Package curdling tells whether a sour liquid and a milk (or a plant drink)
// stay smooth when they meet, over doses and shares, and the smallest changes
// that keep them so.
//
// # Model
//
// A Mixture has three parts: the milk part, the sour part, and the rest of the
// drink, each as solutions (package acid) draw by draw. A cell of the map holds
// the drink with its sour part times a dose and its milk part times another (told
// as its share of the mass); its ions are pooled and solved, never its pH averaged.
//
// Protein curdles below a pH that depends on the temperature of the pour
// (data/curdling_proteins.csv): published figures bound it from below and above
// at some temperatures, between which the bounds go straight and beyond which
// they stay. In a draw the curdling pH lies anywhere between its bounds with
// equal chance, the same place in every cell, so that
//
//	smooth = share of the draws with pH > low(T) + u·(high(T) − low(T))
//
// carries the spread of the ions and of the literature. Since the pH of a
// solution lies above a given pH just if acid is needed to bring it there, each
// draw costs one charge balance at the curdling pH instead of a search.
// Verdicts: smooth from 95 %, curdles up to 5 %, doubtful between.
//
// A way out is the smallest change of one thing that brings the drink to 95 %:
// less of the sour part, more milk, a cooler pour, or a buffering salt of
// data/curdling_salts.csv. Ways are ranked by how little changes: the mass added
// or taken away as a share of the drink's, a degree of the pour counting as one
// per cent of it.
//
// Judge judges a pour (judgement.go): the parts of the build that hold what curdles are its
// milk part; of the others the one that needs the most base to come to the pH of curdling is
// its sour part. The milk part must have been titrated over the whole range in which it may
// curdle, and the drink's pH be known to ± 0.5: else there is no estimate, and the reading is
// named.
//
// # Limits
//
// Onset is not curd: casein that begins to gather may only feel rough, and gathers
// slowly when cold. The published pH are of quiet, mostly dilute milks; mixing is
// never quiet, and where acid is poured it is sourer for a moment than the
// mixture. The mixture is solved at 25 °C, as a meter reads it; milk's own pH
// falls by about 0.1 for each 10 °C (6.64 at 20 °C, 6.45 at 40 °C: Fox and
// McSweeney 1998, section 5.8.4), which at a hot pour makes the estimate too
// favourable by as much. Of oat, pea and almond only the protein's lowest
// solubility or isoelectric pH is published, so their bounds are wide. Not
// modelled: calcium (hard water or a fortified drink brings soya down at a higher
// pH, and feathers cream in hot coffee: Tracy and Ruehe, Illinois Agricultural
// Experiment Station Bulletin 352), tannins, alcohol (about 40 % precipitates
// casein, less in acid: Fox and McSweeney 1998, section 4.3), stabilised drinks,
// the clear acid side below pH 3.85 where casein no longer gathers (a drink gets
// there only through the curdling pH), and the gas that a bicarbonate gives off
// (left in, so that its dose is rather too high).
package curdling

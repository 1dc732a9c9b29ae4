// Package foaming sets a pot that is foamed beside the conditions that are published of foams: of
// cream, egg white, milk, of what gels and of what holds the wall of a bubble.
//
// # Model
//
// Which kinds of foam a pot may be is told by the foods in it (data/foam_foods.csv): by group, by
// words of their names, or both. data/foams.csv has the conditions of each kind with their source: a range
// of fat, protein or an agent in 100 g, of pH, alcohol, temperature, or of the overrun that was read.
// Rows of one kind and condition are ranges beside each other. Where nothing was found the row says so.
//
// Protein is that of the foods of the kind, in 100 g of all; fat is that of all foods, and so is every other figure.
//
// A figure is within where its whole interval lies in one of the ranges, outside where it lies in none, and
// either where it may be in or out; what the foods do not tell widens it. What nobody stated or can
// calculate is not known.
//
// # Limits
//
// Stability is never predicted, nor whether a foam forms: a pot within every range may fail, and one outside
// of all may stand. The ranges are those of foods by themselves: a drink that mixes them was not tried by whoever
// published them. How long a foam is whipped, how fine a nozzle, the heat that proteins have had and the
// age of a cream are not asked. An agent counts as it is weighed, dry or not.
package foaming

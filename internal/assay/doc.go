// Package assay calculates a drink: it walks components, steps, build and finish through the
// ledger, and gives the composition of a serving with intervals, contributions, coverage and
// notes, and its chemistry.
//
// # Model
//
// Everything is a column of draws (package estimate). A component is made once and each use
// is a share of it, so that its draws stay its own (walk.go). What was made is a value
// (made.go): with the same amounts the same is made. So a Plan keeps what was drawn and
// found of the foods, and every component in which nothing has changed, and Run with other
// amounts makes again only what holds them; it gives what a fresh plan gives, bit for bit.
//
// A serving's parts are what the build pours, a component or a food, whatever it is called;
// what the evidence is set against is the part that is poured of it, or, of what is only
// used inside others, as much as they take, as it was made (alone.go). The chemistry of a
// serving is of what is liquid in it: a garnish that is eaten counts in every figure of
// composition and in none of the solution. Whether a drink with milk or a plant drink stays
// smooth is judged by package curdling, on the parts that the build pours.
//
// A foam's bubbles (foam.go) are carried as millilitres beside a pot: a component that is poured by
// volume weighs what its foam does, and a serving fills a glass with them. Steps that stir, strain or heat
// let them go, what is added beside them does not. Every other figure is of the liquid.
//
// The rooms below have one job each: recipe finds the foods, amount makes columns of what is
// written, prep does the steps (what acid drives out of a carbonate leaves between them, fizz.go), liquid, acidity and titration know a pot as a body and as a
// solution, reading conditions it, composition and chemistry read results off it, drivers
// tells what they hang on.
//
// # Limits
//
// A Plan is for one run at a time, and one with a journal for one run. Amounts are replaced,
// not lines: a drink with another food is another recipe. The steps that prep does not know
// are refused, never ignored. Bubbles count as they were read, as if none had burst: a serving fills at most what is told.
package assay

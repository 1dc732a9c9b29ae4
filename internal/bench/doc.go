// Package bench is a drink as somebody works at it: its pots with what goes into them, what is done
// and what was read, each amount with the ones beside it on the scale, and where a figure comes from.
//
// # Model
//
// Of a drink file that can be read there are pots (pots.go), whether it can be calculated or not; of one
// that was calculated each pot has its hue, what it makes and the verdict on what was read of it. A Dial
// (dial.go) is an amount that can be turned: one step of the bar's scale up or down, of what no scale weighs one of the
// last digit written, of what is counted one piece. A Trace (trace.go) goes from a figure of the serving to
// the pots that bring it, the foods in them, and the row of a table that says so. Changed (changed.go)
// sets the figures of a drink against those of another state of it.
//
// # Limits
//
// What a shelf holds has no dials: it is not the drink's to write. A trace of a figure of the solution
// (pH, titratable acidity) names the acids behind it; how they come together is a calculation and no sum.
package bench

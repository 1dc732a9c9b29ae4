// Package untold holds what no recipe tells of a pot and a reading can: how much of what nobody has
// told apart is water, and how much alcohol a pot kept of what should have boiled off, or lost of
// what was hot.
//
// # Model
//
// A share u of what is open is found by halving, in every draw, with which the pot reads what was
// read:
//
//	water = water + u·open          alcohol = alcohol ± u·gone
//
// Alcohol changes places with water in a pot that has been weighed. No more than is open becomes
// water, no more comes back than had gone, and no more goes than was hot.
//
// # Limits
//
// What may be alcohol is told by no °Brix and no density. The rest of what was open counts as dissolved solids.
package untold

// Package dosing finds how much of something brings a pot to a reading.
//
// # Model
//
// What is dosed is poured into copies of the pot, and each copy is read as the instrument
// would read it (a function of the pot: nothing is assumed of chemistry here). First the
// doses from a millionth of the largest up to the largest are looked through, eight to a
// decade, at central values: so it is seen whether the reading is reached, where it turns,
// and how often it is passed. Then the dose is found inside its bracket by regula falsi (in
// the form that halves the weight of an end that stays: Dowell and Jarratt 1971, BIT
// 11:168), draw by draw: column 0 is the dose at central values, the others say how far it
// may be off.
//
// # Limits
//
// Of a reading that turns twice between two doses that are looked at, nothing is seen. A
// draw in which no dose reaches it counts with the end that comes nearest.
package dosing

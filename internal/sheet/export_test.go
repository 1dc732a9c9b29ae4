package sheet

// MostAlcohol is the most alcohol that a serving can hold, in g.
var MostAlcohol = mostAlcohol

// Measured is how much of what decides a class a drink holds.
var Measured = measured

// Digits writes a number of a shopping list.
var Digits = digits

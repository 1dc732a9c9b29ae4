package sheet

// MostAlcohol is the most alcohol that a serving can hold, in g.
var MostAlcohol = mostAlcohol

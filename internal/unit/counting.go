package unit

// Two numbers of the trade that no source needs.
const (
	// Hundred is what tables, cards and shares count from: the grams or millilitres
	// of a table's row, and a whole in per cent.
	Hundred = 100
	// Kilo is how many grams a kilogram has, millilitres a litre, joules a kilojoule.
	Kilo = 1000
)

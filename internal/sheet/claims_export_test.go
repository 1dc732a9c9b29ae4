package sheet

// What a claim hangs on in a drink with alcohol.
var (
	MostFermented = mostFermented
	StrengthOf    = strengthOf
)

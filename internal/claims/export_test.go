package claims

// StepWords is stepWords for its test.
var StepWords = stepWords

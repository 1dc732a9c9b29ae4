// Package unit holds quantities: what a recipe writes ("36 g ± 3 g"), the
// closed list of kitchen and bar measures, and the units of constituents.
//
// # Model
//
// An Amount is a number in a unit, with the half-width of the range that hand
// or instrument allows. "a ± b" is the whole range, a rectangular distribution
// on [a − b, a + b]; its standard deviation is b/√3 (JCGM 100:2008, 4.3.7).
// "a ± b sd" states one standard deviation of a normal distribution.
//
// A Quantity is a number that no kitchen measure gives: a temperature, a share, a pH. Its
// Scale has the units and the range in which a figure can be meant.
//
// Measures and their factors are rows of data/units.csv. Bar measures carry a
// relative spread of their own: a dash is not an instrument. A word in any usual case and form
// stands for its unit (data/unit_words.csv); degrees Fahrenheit become °C exactly. What a food is
// counted by are words of data/portion_words.csv.
//
// A range "36-40 g" is "38 g ± 2 g": both are a rectangle. An error is a *fail.Error whose cause is a
// Misread, which holds the whole text as it should be: a text with two slips with both mended.
//
// # Limits
//
// Volumes become masses only with a density, which this package does not know.
// A bare "oz" is refused because it means a mass to some and a volume to
// others, and "1,000" because it is a thousand to some and one to others. A cup is that of the
// United States, with a spread that holds those of others.
package unit

// Package speech makes a barista's stage minute of what is known of a drink: plain sentences by
// sensory category, in the words of one register, no longer than can be said in time.
//
// # Model
//
// A fact is what one sentence may tell: its kind, what fills the gaps of its sentence, a range if
// it has a figure, its sources. The sentence of a kind in a register is a row of data/speech.csv;
// a kind that a register has no row for is not told in it. The judge hears figures, process and
// the likely question; the guest hears names, what must be told for safety, and no figure.
//
// A figure is told by its range with all that nobody knows at its most (range.go): the ends are
// rounded outwards, to a step of at most a quarter of the range and to no more than two digits, so
// that what is said holds wherever the figure lies within it. Where both ends are the same in two digits it is "about" that; where
// nothing bounds it, "at least".
//
// Words are counted as they are spoken (count.go): "0.48 g" is five, "zero point four eight
// grams". The time is that of the slow end of the published rates (data/speech_limits.csv). What
// does not fit is left out by its row's worth, the least first, and is told to be left out: the first
// of its kind has one, those of a higher rank a lesser (column later), of the same worth the higher rank goes first. A row without a worth, and a caution, are of safety: of those
// only cautions may be left out, the last first, and then the speech says that there is more to ask.
//
// Nothing is spoken that holds a code, a tagname, †, what is from memory, or that something is
// "free from" (plain.go): such a sentence is left out and its reason told; one of safety gets
// general words for its gaps. A claim in somebody's own words is not spoken, whatever its check says,
// if it denies that something is in the drink, speaks of health or of whom the drink suits: no
// figure decides that (withheld.go, data/speech_withheld.csv).
//
// # Limits
//
// Rates are of conversation, in English; pauses, a stage's nerves and what hands do are not in
// them. How a thousand draws bear a sentence is judged where the facts are made. The words are
// English, and a name of a food or a component is spoken as it is written.
package speech

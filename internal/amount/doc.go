// Package amount turns what is written, and what an instrument shows, into columns of draws.
//
// # Model
//
// "a ± b" is rectangular on [a − b, a + b] (JCGM 100:2008, 4.3.7), "± b sd" is normal, "± 0" is exact.
// Without ± an amount is known to half a unit of its last digit, or of the bar's scale for
// masses; a bar measure to the spread of its filling. An instrument without ± has the spread
// of data/instruments.csv. Each has the stream of its path in the drink file, so that what
// is written elsewhere changes none of its draws; where two drinks are compared, what they write
// otherwise has other streams (package contrast). A run may have amounts other than those
// written, by the same paths.
//
// Such amounts are put into the text of a drink file where those written stand (rewrite.go): at the
// place of their line, or under their key behind it. All else of the text stays.
//
// # Limits
//
// A hand is taken to err evenly within what is written: not more often towards full cups. What a text
// is rewritten to is found by its characters: who writes it reads it again and compares.
package amount

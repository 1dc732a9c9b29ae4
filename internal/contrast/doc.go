// Package contrast sets two assays against each other: what the second drink has more or less
// than the first, draw by draw, and what in the files makes it.
//
// # Model
//
// Both drinks are calculated in one ensemble. An uncertain input has a stream of its own, by what
// it is (package estimate), so that what both hold is drawn alike and goes out of the difference
//
//	Δ = B − A    in each draw
//
// of which the central value is that of both centres, and the interval that of the draws. What is
// assumed, borrowed, filled by kin or bounded is drawn like anything else: where both hold as much
// of it there is no difference, where one holds it the difference has its spread.
//
// An amount's draw is shared where pot, food and written amount are the same (streams.go), wherever
// in the list the line stands and however many lines of that food stand before it. An amount that was
// changed is another: the hand errs anew, in both drinks, by a stream of what is written. So a change
// that is smaller than the hand is not told as one. Factors of steps are shared by the step's place.
//
// What nobody knows of a food is a part of the most that it could be, and that part is one property
// of the food, in both drinks:
//
//	open = t · (most in B − most in A)    0 ≤ t ≤ 1
//
// so that as much of it in both goes out, and else Least and Most are the ends of the interval with
// each unknown at its own worst. What nothing bounds goes out where both hold the same mass of it;
// else nobody knows. A pH, an acidity and a °Brix are open beyond their draws to what nobody has
// stated (package chemistry), both by the same unknown, as much as each holds of it: the ends move
// together, and apart by
//
//	max over foods (1 − smaller share of the serving / larger) · opening
//
// which is nothing where both hold as much of each, and all of it where a food is in one alone. A
// figure that is withheld has no difference but between its bounds, and none at all where the two
// liquids are the same.
//
// A difference has a sign where its whole interval, with what nobody knows, has. Whether a judge may
// notice it is asked of the shares of data/taste_differences.csv, which move with the mixture: what
// in no draw comes to the least of them is smaller than a judge notices, what in nine draws of ten is
// beyond the most of them a judge surely notices, and in between may. Sourness is told by the burette and
// by the molecules of acid with a proton to give, since the field disputes which a tongue follows.
//
// # Limits
//
// A component is known by its name: one that was renamed is another, and draws anew. Two steps of a
// kind in one component are known by their order. A food that borrows from one food here and from
// another there is two foods where it is unknown. Sharing says nothing of two cups: each is poured by
// a hand of its own.
package contrast

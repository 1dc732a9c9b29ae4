// Package optimise finds amounts on the steps of a scale at which targets are met.
//
// # Model
//
// An amount is a whole number of steps between two ends. A target is met where its margin is not
// below zero. Of the points of the grid at which every target is met, the best has the least goal,
// and of those the least change Σ |x − x₀| ÷ x₀ from what is written; without a goal, the least
// change alone.
//
// Where every margin and the goal are linear (asked at three points away from those that drew the
// lines) the grid is searched by branches over linear programmes (branch.go, program.go), and the
// answer is the best there is. A margin that bends by itself may be a line once it is multiplied by a
// size of the point that is above zero, as a share of a mass is by the mass: its sign is the same.
// Where one bends nevertheless, lines are drawn at each point (walk.go), and at the end every neighbour
// is asked; a grid of few points is calculated whole. Every answer is calculated, never taken from a line.
//
// Where no point meets all, the answer misses fewest targets (fewest.go): one after the other is given
// up, then each two. Of those it misses least, in the sum of misses, each as a share of its scale; what
// misses by up to a hundredth more is as near, and the goal and the change decide. A least set of targets
// that are in each other's way is told, and for each the least by which it would have to give for all
// others to be met (conflict.go).
//
// Beside a point of least change there may be one that changes hardly more and holds more surely
// (surer.go): the product of chances is maximised within a room.
//
// Programmes are solved by a simplex of our own (simplex.go), in which ends of amounts are no rows, and
// which comes to an end where corners meet. A point that cannot be calculated misses everything and tells
// nothing of a slope: strides that lead to one are halved.
//
// # Limits
//
// Of a problem that bends the point is as good as its neighbours, and none is proven to be the best;
// that no point was found is no proof that there is none. Of more than twelve amounts neighbours are not
// asked: lines drawn a step apart stand for them. A search by branches ends after 4,000
// programmes, of many amounts after fewer: Proven says whether it came to its end. A walk ends after Most
// points; the search for fewest misses, of at most 45 sets, after a third as many more, and so does that for
// what is in the way: the least set is then as least as it had got. Chances are taken as normal and as independent of
// each other where a surer point is searched; whoever has the draws judges it.
package optimise

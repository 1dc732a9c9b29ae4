// Package optimise finds amounts on the steps of a scale at which targets are met.
//
// # Model
//
// An amount is a whole number of steps between two ends. A target is met where its margin is not
// below zero. Of the points of the grid at which every target is met, the best has the least goal,
// and of those the least change Σ |x − x₀| ÷ x₀ from what is written; without a goal, the least
// change alone.
//
// Where every margin and the goal are linear (asked at two points away from those that drew the
// lines) the grid is searched by branches over linear programmes (branch.go, program.go), and the
// answer is the best there is. Where one bends, lines are drawn anew at each point (walk.go), and
// at the end every neighbour is asked; a grid of few points is calculated whole. Every answer is
// calculated, never taken from a line.
//
// Where no point meets all, the answer misses least: of the sum of misses, each as a share of what
// its figure moves by. A least set of targets that are in each other's way is told, and for each
// the least by which it would have to give for all others to be met (conflict.go).
//
// Programmes are solved by a simplex of our own (simplex.go), which comes to an end where corners meet.
// A point that cannot be calculated misses everything and tells nothing of a slope: strides that lead
// to one are halved.
//
// # Limits
//
// Of a problem that bends the point is as good as its neighbours, and none is proven to be the best;
// that no point was found is no proof that there is none. A search by branches ends after 4,000
// programmes: Proven says whether it came to its end. A walk ends after 2,500 points, and the search for
// what is in the way after as many more: the least set is then as least as it had got.
package optimise

// Mutants asks how strong the tests of the domain packages are: it changes the
// program in one place, runs the tests of that package alone, and tells whether
// one of them fails.
//
//	go run ./scripts/mutants --seed 1 --count 40 [--packages internal/label,internal/food] [--only 3,17] [--limit 5m]
//
// # Model
//
// A place is somewhere in a file that is no test where one change is possible:
//
//	comparison   turned round: < becomes >=, == becomes !=
//	arithmetic   + and −, * and / change places; % becomes *; −x becomes x
//	boolean      && and || change places, a condition is turned round, !x becomes x
//	number       0 becomes 1, a fraction below 1 is doubled, any other x becomes x + 1
//	statement    one that declares nothing is left out
//	return       a bool is returned turned round
//	extreme      min and max change places
//
// Places that cannot matter are left out: capacities, bit sizes of ParseFloat, the
// size of an infinity, the numbers of an enumeration, statements that only quiet the compiler, generated
// files. Texts are left alone.
//
// All places of all packages stand in one row, which the seed shuffles; a package
// has as many lots as places. The mutants are the first of the row that build. A
// mutant is dead if a test fails, if the test binary ends otherwise, or if it does
// not end within the limit of time. The packages are those that
// internal/floors_test.go lists as pure, but for report and tables; their tests are
// run once unchanged before a mutant of theirs is judged.
//
// The changed file lies in a temporary folder and takes the place of the other by
// go test -overlay: the tree is never written to. The same seed gives the same row
// as long as no file but tests changes; --only runs those of its mutants again,
// by the number in front of them, after a test has been written.
//
// # Limits
//
// A comparison is not shifted by its boundary (< to <=): between figures of draws nothing
// stands on it, so nearly all such mutants are the program. What survives may be equivalent: a bound that is met nowhere, a shortcut that
// only saves time. A package's tests may lean on others to catch it; here they do
// not count. Rows of data are not changed, nor two places at once. Places are
// found by syntax, so some do not build, and packages of many figures have many.
// It wants a shell with ulimit, which keeps a mutant from eating all memory.
package main

// Package sweep holds no code of the program: its tests calculate every core
// food, blends of every liquid and random drinks, print them in every form, and
// ask of each what must hold of any drink whatever ("never absurd").
//
// # Model
//
// A subject is a drink file with its assay, its pages of text and its JSON
// documents. A law is a named function of a subject that says what is broken
// (laws_test.go for the calculation, printed_test.go for what a reader sees); a
// twin law compares a subject with the same drink written otherwise
// (twins_test.go), a blend law with its two liquids (blends_test.go), a law of
// steps follows a step's parameter down to no effect (continuity_test.go). Limits
// that are not laws of arithmetic are rows of testdata/limits.csv with a source.
//
// What is broken is printed by law, with counts and the worst cases, each with the
// drink file that shows it.
//
// `go test` takes a seeded sample. SIPSUM_SWEEP=all takes everything, SIPSUM_SWEEP=3
// each third: that is the sweep step of .ci/run. SIPSUM_SWEEP_REPORT=FILE
// writes the report to a file.
//
// # Guards
//
// A guard is a statement of the program without which a figure becomes absurd. The
// line above it says "// guard: NAME"; guards_test.go lists each with the law that
// breaks without it and a drink that shows so. SIPSUM_GUARDS=all takes every guard
// out in turn and insists that its law is then broken.
//
// # Limits
//
// The sweep says that no figure is absurd, not that one is true: published tables
// are for that (internal/assay, internal/prep). A law that holds only up to a
// tolerance of the model says so in its row.
package sweep

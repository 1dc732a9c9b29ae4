// Package note is what the user should know of a calculation beside its figures: a sentence,
// its kind and whom it is about.
//
// # Limits
//
// Sentences are English. What a note is about is said by ids, for those who read documents.
package note

// Package clean makes the texts of files and tables harmless: names of drinks, of components
// and of foods come from strangers, and stand on terminals, in pages and in spreadsheets.
//
// # Model
//
// What could steer a terminal, turn the reading direction or hide in a text is taken out,
// every run of blanks becomes one space, piles of accents are cut, and what is absurdly long
// is clipped. What a form reads as its own signs (&, |, a leading =) is left alone: each
// renderer escapes those of its form.
//
// # Limits
//
// Letters that look like others are not told apart, and no language is corrected.
package clean

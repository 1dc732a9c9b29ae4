// Package markdownreport prints a sheet and its leaves as Markdown, with tables as most
// programs that show it read them.
//
// # Model
//
// A leaf is a heading, its blocks below it: lists, and tables whose first column names the
// row. Every character that Markdown would read as a sign is escaped with a backslash
// (CommonMark 0.31, 2.4), those of HTML by their names (2.5), so that a name stays a name; a
// line never begins with one of theirs.
//
// # Limits
//
// Tables are the extension of GitHub's Markdown; where they are not known they stay readable
// as text. Indents of a declaration are two no-break spaces.
package markdownreport

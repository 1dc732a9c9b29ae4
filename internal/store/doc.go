// Package store keeps food-composition tables in one SQLite file. It is the only
// package that knows SQL, and the only importer of sqlx and of the driver.
//
// # Model
//
// A table has releases; at most one of them is current and only its rows are
// ever read. Load writes all rows of a new release, and the switch of current,
// in one transaction, which first asks again whether the same is loaded already:
// of many that start at once, one writes. Whatever stops it (a fault in the files, a full disk,
// Ctrl-C, a kill), the previous release stays whole and nothing of the new one
// is seen. The rows of releases that are no longer current are deleted
// afterwards in chunks, each in a short transaction of its own; what a kill
// leaves of them is deleted by the next Load. The file is in WAL mode, so
// readers run during a load, and every lookup reads inside one read
// transaction: a food is never put together from two releases.
//
// The schema is the numbered files of migrations/, each applied in its own
// transaction. PRAGMA user_version counts those applied; a file with a higher
// count was written by a newer sipsum and is refused. PRAGMA application_id
// tells our files from the databases of other programs, which are refused too
// and not touched.
//
// All that a table states of a food is one text of JSON in its row (facts.go), with texts that many values
// share kept once for a release (sharedtext.go); a number that nobody has stated (food.None) is null in it.
// The view "value" unpacks it into rows for who asks by SQL. How much foods have of the constituents that drinks
// are made of stands in "ranked" besides, by "stratum": the foods of one group of a release, the one with the most
// first. A ranking merges the strata of the groups that it asks for (walk.go), and how many foods it leaves out was
// counted with them. Ranks are gathered while the foods are written, in a file what has no room in memory
// (ranks.go), and filled at the end, as is what foods are called. Foods are read ahead by
// another goroutine while others are written. The values of
// a food come back sorted by constituent id, so that their order does not
// depend on which tables were loaded before.
//
// A database that may be read and not written to is read: in a folder in which
// SQLite cannot keep its notes, as a file that nobody changes meanwhile. A
// database in memory (OpenMemory) is gone when it is closed.
//
// # Finding
//
// Find takes the beginnings of words. A name that has them all is a hit,
// whatever their order, case and accents. Names that have them as whole words come
// first, then the core table (or the tables in the order asked for), within a table
// shorter names, then the publisher's order. If there is no hit, foods are given whose labels
// have all the words, whole ones, in their name and in what they are made of (marked Label). If there
// is none either, words that begin no word of any name are replaced by the nearest ones: those that they are a part of
// ("saft" of "Zitronensaft"), else those a slip or two away (optimal string alignment distance: one slip in short
// words, two in longer ones), else those whose beginning is one slip away. If that fails too, foods with some of the
// words are given; such hits are marked Near. Of each table the first 5,000 names that match are ranked, in the
// publisher's order; of chosen food groups, all. Eight to fourteen digits alone are first looked up as the
// number of an article.
//
// The words of each release stand in "vocabulary", as one text for all of as many letters: a misspelt word is
// compared with every one that it can be, which no index of parts of words allows (two slips in a word of seven
// letters can leave none of its trigrams whole), and a text of some megabytes is read and compared in
// milliseconds. It also tells the index which words begin as somebody typed.
//
// # Limits
//
// One load at a time: a second one waits half a minute and then gives up. A
// load needs free disk space of about twice the new rows. Deleted rows leave
// free pages that the next load fills; the file does not shrink. A ranking by a constituent that is not
// ranked, or in relation to another, reads every food that has any. Words are those of the Unicode letters and digits: scripts
// written without spaces are found by the beginning of a run of characters and, where nothing begins so, by a
// part of it. A number is never corrected, nor is a word that stands on labels alone. The beginning of hundreds of words, such as one letter, takes the index longer
// the more names there are. The file must not be on a network drive (WAL needs shared
// memory).
package store

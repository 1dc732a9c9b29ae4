// Package workshop is the folder of drink files that the page works in.
//
// # Model
//
// A Folder is opened once, as an os.Root: a name never leads out of it, through a link or
// otherwise, and only plain files with the names of drink files are seen (name.go).
//
// Whoever changes a file says what it was when the change began, by its Fingerprint. Save writes the new text to a file of
// its own, on the disk, and then puts that in the place of the old one in one step: who reads, and who looks after a power
// cut, sees the old text or the new one, whole. What was there before stays as a version, under .sipsum/versions beside the
// drinks, the last twenty of each file (data/size_limits.csv); it is the old file itself, under another name, so that an
// editor that still writes to it writes to what is kept. If the text is no longer what it was, nothing is written and the
// error is Changed, with the text that is there now.
//
// # Limits
//
// Folders inside it are not looked into; a drink may take from shelves in them. Two programs that put a whole new file in the place
// of the same drink within some microseconds of each other are not told apart: the later one stands. Where the disk has no second
// names of a file, a version is a copy. A comment of a drink file is of its line and travels with it, for it stands in the file.
package workshop

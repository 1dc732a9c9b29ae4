// Package workshop is the folder of drink files that the page works in.
//
// # Model
//
// A Folder is opened once, as an os.Root: a name never leads out of it, through a link or
// otherwise, and only drink files by their ending are seen.
//
// # Limits
//
// Folders inside it are not looked into.
package workshop

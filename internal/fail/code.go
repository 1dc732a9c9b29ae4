package fail

// Code is an exit code of the program.
type Code int

// The exit codes, one table for every command.
const (
	OK          Code = 0   // done
	Failed      Code = 1   // something outside the user's files went wrong: disk, database, a bug
	Wrong       Code = 2   // the command line or a file that the user wrote is wrong
	Findings    Code = 3   // done, with findings that need a decision
	NeedsTable  Code = 4   // a table is needed that is not loaded
	Partly      Code = 5   // many drinks were done, but some of them failed
	Interrupted Code = 130 // stopped by the user
)

// Meanings lists the exit codes in order with the sentence that help texts print.
func Meanings() []struct {
	Code    Code
	Meaning string
} {
	return []struct {
		Code    Code
		Meaning string
	}{
		{OK, "done"},
		{Failed, "failed: disk, database, or a fault of sipsum itself"},
		{Wrong, "the command line or a file you wrote is wrong"},
		{Findings, "done, with findings that need a decision"},
		{NeedsTable, "a table is needed: load it first"},
		{Partly, "of many drinks some failed: each has a line that says why"},
		{Interrupted, "interrupted"},
	}
}

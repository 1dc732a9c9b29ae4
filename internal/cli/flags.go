package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"sipsum/internal/fail"
)

// flagFault says what is wrong with a flag.
func flagFault(cmd *cobra.Command, err error) error {
	see := "see: " + cmd.CommandPath() + " --help"
	var bad *pflag.InvalidValueError
	if !errors.As(err, &bad) {
		return fail.New(fail.Wrong, err.Error(), see)
	}
	takes, ok := valueWords[bad.GetFlag().Value.Type()]
	if !ok {
		takes = "another value"
	}
	return fail.New(fail.Wrong, fmt.Sprintf("--%s cannot be %q", bad.GetFlag().Name, bad.GetValue()), "it takes "+takes+"; "+see)
}

// valueWords says what a flag of a type takes.
var valueWords = map[string]string{
	"int":     "a whole number",
	"uint64":  "a whole number, zero or more",
	"float64": "a number",
	"bool":    "true or false",
}

// wantsJSON reports whether a command line asks for JSON, whatever else is wrong with it:
// the flag may stand behind the one at fault.
func wantsJSON(args []string) bool {
	if end := slices.Index(args, "--"); end >= 0 {
		args = args[:end]
	}
	for i, arg := range args {
		if arg == "--format="+formatJSON || arg == "--format" && i+1 < len(args) && args[i+1] == formatJSON {
			return true
		}
	}
	return false
}

package cli

import (
	_ "embed" // the drink to begin from
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
)

// The endings of what a designer writes: a drink, and a shelf of foods and components that
// drinks share.
const (
	drinkEnding = ".drink.yaml"
	shelfEnding = ".shelf.yaml"
)

// start is the drink file to begin from: one example of each part, with comments.
//
//go:embed start.drink.yaml
var start string

func newNew(a *app) *cobra.Command {
	var from string
	var steps bool
	cmd := &cobra.Command{
		Use: "new NAME", Short: "start a drink file; print all steps",
		Long: "sipsum new NAME                a drink file that teaches: comments, one example of each part\n" +
			"sipsum new NAME --from DRINK   a copy of a drink or a shelf under another name, comments kept\n" +
			"sipsum new --steps             every step with a line to paste\n\n" +
			"DRINK is a file, demo or demo:NAME. What exists is never overwritten.",
		Args: cobra.ArbitraryArgs, // too many are RunE's to refuse, in our words
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case len(args) > 1:
				return fail.New(fail.Wrong, "more than one name for the drink", "put quotes round it: sipsum new \""+strings.Join(args, " ")+"\"")
			case steps && (len(args) > 0 || from != ""):
				return fail.New(fail.Wrong, "--steps starts no drink", "write: sipsum new --steps")
			case steps:
				return starter{a}.steps()
			case len(args) == 1:
				return starter{a}.drink(args[0], from)
			case from != "":
				return fail.New(fail.Wrong, "the copy of "+from+" has no name", "write: sipsum new \"A Name\" --from "+from)
			}
			return fail.New(fail.Wrong, "the drink has no name", "write: sipsum new \"A Name\"; all steps: sipsum new --steps; see: sipsum new --help")
		},
	}
	cmd.Flags().StringVar(&from, "from", "", "the drink or the shelf to copy: a file, demo or demo:NAME")
	cmd.Flags().BoolVar(&steps, "steps", false, "print every step with one example each")
	return cmd
}

// starter starts what a designer writes.
type starter struct{ *app }

// drink writes a new file: the drink to begin from, or a copy.
func (a starter) drink(name, from string) error {
	name = strings.TrimSpace(name)
	file := fileName(name)
	if file == "" {
		return fail.New(fail.Wrong, fmt.Sprintf("%q gives no file name", name), "use letters or digits")
	}
	path, text, err := file+drinkEnding, start, error(nil)
	if from != "" {
		path, text, err = a.copied(file, from)
	}
	if err == nil && strings.HasSuffix(path, drinkEnding) {
		text, err = renamed(path, text, name)
	}
	if err == nil {
		err = writeNew(path, text)
	}
	if err != nil {
		return err
	}
	if a.json() {
		return jsonreport.New(a.streams.Out, path)
	}
	next := "sipsum brief " + path
	if strings.HasSuffix(path, shelfEnding) {
		next = "write use: [" + path + "] into a drink"
	}
	_, err = fmt.Fprintf(a.streams.Out, "%s written. Next: %s\n", path, next)
	return err
}

// copied reads what is to be copied, and says what the copy is called. What sipsum would
// refuse to read is not copied.
func (a starter) copied(file, from string) (path, text string, err error) {
	name, raw, open, err := a.drinkText(from)
	if err != nil {
		return "", "", err
	}
	text = string(raw)
	if isShelf(name, raw) {
		return file + shelfEnding, text, nil
	}
	shelves := 0
	_, faults := drink.Parse(name, raw, func(path string) ([]byte, error) {
		shelves++
		return open(path)
	})
	if err := faults.Err(fail.Wrong); err != nil {
		return "", "", err
	}
	if folder := filepath.Dir(from); shelves > 0 && folder != "." {
		return "", "", fail.New(fail.Wrong, from+" takes from shelves by their path, which the copy could not find here", "copy it where it is: cd "+folder)
	}
	return file + drinkEnding, text, nil
}

// isShelf tells a file of foods and components alone: a drink that takes from it reads well.
func isShelf(name string, raw []byte) bool {
	const taker = "use: [shelf]\ndrink: x\nserves: 1\nbuild: [1 g core:water-pure]\n"
	_, faults := drink.Parse(name, []byte(taker), func(string) ([]byte, error) { return raw, nil })
	return faults.Len() == 0
}

// writeNew writes a file that is not there yet.
func writeNew(path, text string) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fail.New(fail.Wrong, path+" exists already", "choose another name")
	}
	if err != nil {
		return fail.Because(fail.Failed, err, "cannot write "+path, "")
	}
	_, err = file.WriteString(text)
	if closeErr := file.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		return fail.Because(fail.Failed, err, "cannot write "+path, "")
	}
	return nil
}

// fileName makes a file name of a drink's name, without its ending.
func fileName(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.In(r, unicode.L, unicode.M, unicode.Nd)
	}), "-")
}

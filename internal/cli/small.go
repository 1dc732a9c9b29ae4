package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
)

func newSchema(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "schema", Short: "JSON Schema of the drink file, for editors", Args: exactly(0, "no argument"),
		RunE: func(*cobra.Command, []string) error {
			_, err := a.streams.Out.Write(drink.Schema())
			return err
		},
	}
}

func newVersion(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: "the program's version", Args: exactly(0, "no argument"),
		RunE: func(*cobra.Command, []string) error {
			if a.json() {
				return jsonreport.Version(a.streams.Out, "sipsum "+Version)
			}
			_, err := fmt.Fprintln(a.streams.Out, "sipsum "+Version)
			return err
		},
	}
}

// drinkEnding is how drink files are called.
const drinkEnding = ".drink.yaml"

// start is a drink file to begin from; %s is its name.
const start = `drink: %s
serves: 1
scale: 0.1 g                 # what your scale shows
rules: [eu, us]
compare-with: espresso

components:
  espresso:
    ingredients:
      - 36 g ± 2 g core:espresso
  syrup:
    ingredients:
      - 100 g core:sugar-white
      - 100 g core:water-pure
    steps:
      - reduce: {to: 190 g}  # weigh the pot

build:
  - 36 g espresso
  - 10 g syrup
`

func newNew(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "new NAME", Short: "start a drink file", Args: exactly(1, "a name for the drink"),
		RunE: func(_ *cobra.Command, args []string) error { return a.newDrink(args[0]) },
	}
}

func (a *app) newDrink(name string) error {
	path := fileName(name)
	if path == "" {
		return fail.New(fail.Wrong, fmt.Sprintf("%q gives no file name", name), "use letters or digits")
	}
	quoted, err := json.Marshal(name) // a JSON string is a YAML string
	if err != nil {
		return fail.Because(fail.Wrong, err, fmt.Sprintf("%q cannot be the name of a drink", name), "")
	}
	text := fmt.Sprintf(start, quoted)
	if _, faults := drink.Parse(path, []byte(text), nil); faults.Len() > 0 {
		return fail.New(fail.Wrong, fmt.Sprintf("%q cannot be the name of a drink", name), "use plain letters, and not more than a line or two")
	}
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
	if a.json() {
		return jsonreport.New(a.streams.Out, path)
	}
	_, err = fmt.Fprintf(a.streams.Out, "%s written. Next: sipsum sheet %s\n", path, path)
	return err
}

// fileName makes a file name of a drink's name.
func fileName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	})
	if len(words) == 0 {
		return ""
	}
	return strings.Join(words, "-") + drinkEnding
}

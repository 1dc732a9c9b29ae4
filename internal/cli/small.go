package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
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

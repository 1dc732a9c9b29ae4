package reporttest

import (
	"embed"
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

//go:embed drinks/*.yaml
var paperDrinks embed.FS

// PaperDrinks are drinks that a page has to hold whatever they are: with readings that contradict
// them, fifteen parts, long names, names from right to left, no volume, gas and spirit, foods that
// nobody has assessed or of which hardly anything is known.
func PaperDrinks(t testing.TB) map[string]string {
	t.Helper()
	names, err := fs.Glob(paperDrinks, "drinks/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	all := map[string]string{"hostile": HostileDrink()}
	for _, name := range names {
		text, err := paperDrinks.ReadFile(name)
		require.NoError(t, err)
		all[strings.TrimSuffix(path.Base(name), ".yaml")] = string(text)
	}
	return all
}

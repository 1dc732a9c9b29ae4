package workshop

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/fail"
)

// endings are how drink files end, as the commands take them.
var endings = []string{".yaml", ".yml"}

// No drink: foods and components that drinks share, the rules that all of a folder are held to, the bar's meters.
var others = []string{".shelf.yaml", ".shelf.yml", "house-rules.yaml", ".meters.yaml"}

// metersFile is the shelf of meters that is read beside drinks unasked.
const metersFile = "meters.yaml"

// longestName is what the file systems of today take, in bytes.
const longestName = 255

// devices are names that Windows gives to devices, whatever stands behind the first dot.
// (Microsoft, Naming Files, Paths, and Namespaces.)
var devices = []string{
	"con", "prn", "aux", "nul", "conin$", "conout$",
	"com0", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9", "com¹", "com²", "com³",
	"lpt0", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9", "lpt¹", "lpt²", "lpt³",
}

// forbiddenSigns stand in no name: they lead to another folder, to a stream of a file, or mean something to a shell.
const forbiddenSigns = `/\:*?"<>|`

// IsDrink reports whether a name is that of a drink file: of one part, seen by everybody, the same on every system.
func IsDrink(name string) bool {
	ends := func(ending string) bool { return strings.HasSuffix(strings.ToLower(name), ending) }
	return isName(name) && slices.ContainsFunc(endings, ends) && !slices.ContainsFunc(others, ends) && !strings.EqualFold(name, metersFile)
}

// isName reports whether a name may be that of a file in a folder, here and elsewhere.
func isName(name string) bool {
	first, _, _ := strings.Cut(name, ".")
	switch {
	case len(name) > longestName, !utf8.ValidString(name), strings.ContainsAny(name, forbiddenSigns):
		return false
	case first == "", strings.TrimSpace(name) != name, strings.HasSuffix(name, "."): // hidden, or another name on another system
		return false
	case slices.Contains(devices, strings.ToLower(strings.TrimSpace(first))):
		return false
	}
	return !strings.ContainsFunc(name, func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) })
}

// drinkFile refuses what is no name of a drink file.
func drinkFile(name string) error {
	if IsDrink(name) {
		return nil
	}
	return fail.New(fail.Wrong, "that is no name of a drink file", "name it with letters and digits, and end it with .drink.yaml")
}

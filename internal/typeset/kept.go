package typeset

import "strings"

// Kept writes a text so that no form that breaks its lines by itself, as a browser does, breaks
// it within a figure.
func Kept(text string) string {
	var kept []string
	for _, group := range groups(text) {
		kept = append(kept, strings.ReplaceAll(group, " ", string(glue)))
	}
	return strings.Join(kept, " ")
}

package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// nameLine finds the line of a drink file that names the drink: the key, the name and what
// stands behind it.
var nameLine = regexp.MustCompile(`(?mi)^(["']?drink["']?[ \t]*:[ \t]+)("(?:[^"\\\n]|\\.)*"|'(?:[^'\n]|'')*'|[^"'|>&*!\s#](?:[^\n#]|[^\s]#)*?)([ \t]*(?:[ \t]#[^\n]*)?\r?)$`)

// renamed gives the text of a drink file under another name; all else of it, comments
// included, stays as it is written.
func renamed(path, text, name string) (string, error) {
	quoted, err := yamlText(name)
	if err != nil {
		return "", fail.Because(fail.Wrong, err, fmt.Sprintf("%q cannot be the name of a drink", name), "")
	}
	at := nameLine.FindStringSubmatchIndex(text)
	if at == nil {
		return "", fail.New(fail.Wrong, "no line of it begins with drink: and a name", "write the drink's name so: drink: \"A Name\"")
	}
	text = text[:at[4]] + quoted + text[at[5]:]
	open := func(string) ([]byte, error) { return []byte("components: {}\n"), nil }
	if d, _ := drink.Parse(path, []byte(text), open); d.Name != name {
		return "", fail.New(fail.Wrong, fmt.Sprintf("%q cannot be the name of a drink", name), "use plain letters, and not more than a line or two")
	}
	return text, nil
}

// yamlText quotes a text: a JSON string is a YAML string.
func yamlText(text string) (string, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err := e.Encode(text)
	return strings.TrimSuffix(out.String(), "\n"), err
}

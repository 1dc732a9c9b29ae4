package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/json"
	"sipsum/internal/sheet"
)

// Two keys of one object that differ only in their case are one thing said twice, and a
// reader that matches keys without regard to case (RFC 8259 leaves that open) takes either.
func TestNoKeyStandsTwice(t *testing.T) {
	for name, write := range documents(t) {
		var out bytes.Buffer
		require.NoError(t, write(&out), name)
		var document any
		require.NoError(t, json.Unmarshal(out.Bytes(), &document), name)
		keysOnce(t, name, document)
	}
}

func keysOnce(t *testing.T, at string, value any) {
	t.Helper()
	switch v := value.(type) {
	case []any:
		for _, each := range v {
			keysOnce(t, at+"[]", each)
		}
	case map[string]any:
		seen := map[string]string{}
		for key, each := range v {
			low := strings.ToLower(key)
			assert.Empty(t, seen[low], "%s: %s and %s", at, seen[low], key)
			seen[low] = key
			keysOnce(t, at+"."+key, each)
		}
	}
}

// Under several rules a document of its own and that of the sheet hold the same lists, the
// first of which is the document's own keys as well.
func TestRulesStandAlikeInEveryDocument(t *testing.T) {
	read := func(name string) map[string]any {
		var out bytes.Buffer
		require.NoError(t, documents(t)[name](&out))
		var document map[string]any
		require.NoError(t, json.Unmarshal(out.Bytes(), &document))
		return document
	}
	whole := read("sheet")
	for name, list := range map[string]string{"card": "cards", "cardworking": "cards", "allergens": "allergens"} {
		document := read(name)
		all, ok := document[list].([]any)
		require.True(t, ok, name)
		require.Len(t, all, 2, "the drink asks for eu and us")
		assert.Equal(t, whole[list], document[list], name)
		assert.Equal(t, all[1:], document["further"], name)
		for key, value := range all[0].(map[string]any) {
			assert.Equal(t, value, document[key], "%s: %s", name, key)
		}
	}
}

// A list without elements is an empty list, not null: a reader walks it all the same.
func TestNoListIsNull(t *testing.T) {
	document := map[string]any{}
	raw, err := json.Marshal(jsonreport.Declarations(&sheet.Sheet{Allergens: func() []sheet.Declaration { return []sheet.Declaration{{}} }}))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(raw[1:len(raw)-1], &document))
	for _, key := range []string{"contains", "may_contain", "not_declared", "check", "cautions"} {
		assert.Equal(t, []any{}, document[key], key)
	}
}

package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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

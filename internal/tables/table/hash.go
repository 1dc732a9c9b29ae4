package table

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"slices"

	"sipsum/internal/fail"
)

// Hash gives the SHA-256 over the names and bytes of files, in order of name.
// Each name and each file is preceded by its length, so that no two sets of
// files run together to the same bytes.
func Hash(fsys fs.FS, names []string) (string, error) {
	h := sha256.New()
	for _, name := range slices.Sorted(slices.Values(names)) {
		file, err := fsys.Open(name)
		if err != nil {
			return "", fail.Because(fail.Failed, err, "cannot read "+name, "")
		}
		defer file.Close()
		info, err := file.Stat()
		if err != nil {
			return "", fail.Because(fail.Failed, err, "cannot read "+name, "")
		}
		writeLength(h, int64(len(name)))
		io.WriteString(h, name)
		writeLength(h, info.Size())
		if _, err := io.Copy(h, file); err != nil {
			return "", fail.Because(fail.Failed, err, "cannot read "+name, "")
		}
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

func writeLength(w io.Writer, n int64) {
	var raw [8]byte
	for i := range raw {
		raw[i] = byte(n >> (8 * i))
	}
	w.Write(raw[:])
}

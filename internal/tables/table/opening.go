package table

import (
	"context"
	"io"
	"io/fs"
	"strings"

	"sipsum/internal/fail"
)

// Opening makes the Open of a format whose release may be a folder, a .zip
// archive or a single file; dir names the place of the files in messages.
func Opening(open func(ctx context.Context, files fs.FS, dir, id string) (*Release, error)) func(ctx context.Context, path, id string) (*Release, error) {
	return func(ctx context.Context, path, id string) (*Release, error) {
		files, err := Files(path)
		if err != nil {
			return nil, err
		}
		return open(ctx, files, Dir(path), id)
	}
}

// Has tells whether a folder holds a file.
func Has(files fs.FS, name string) bool {
	info, err := fs.Stat(files, name)
	return err == nil && info.Mode().IsRegular()
}

// Present gives those of the publisher's files that are there; without all of
// the needed ones it is an error. do says what must be there and what may be.
func Present(files fs.FS, dir string, needed, optional []string, do string) (names []string, err error) {
	var missing []string
	for _, name := range needed {
		if !Has(files, name) {
			missing = append(missing, name)
		}
	}
	if len(missing) > 0 {
		return nil, fail.At(fail.Wrong, fail.Place{File: dir}, "lacks "+strings.Join(missing, ", "), do)
	}
	names = append(names, needed...)
	for _, name := range optional {
		if Has(files, name) {
			names = append(names, name)
		}
	}
	return names, nil
}

// Start gives the first bytes of a file, enough to tell what it is; none if it
// cannot be read.
func Start(files fs.FS, name string) []byte {
	in, err := files.Open(name)
	if err != nil {
		return nil
	}
	defer in.Close()
	start := make([]byte, 256)
	n, _ := io.ReadFull(in, start) // a shorter file is all there is
	return start[:n]
}

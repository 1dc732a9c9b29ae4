package data

import "embed"

// FS is the embedded file tree. Paths are those of this folder, for instance
// "constituents.csv" or "core/values.csv".
//
//go:embed *.csv core/*.csv maps/*.csv demo/*.yaml
var FS embed.FS

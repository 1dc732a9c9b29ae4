package jsonreport

import "sipsum/internal/sheet"

// Declarations are the declarations of a sheet as its documents write them.
func Declarations(s *sheet.Sheet) any { return declarationsOf(s) }

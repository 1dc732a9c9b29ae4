package main

import (
	"fmt"
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
)

// place is a change that can be made to a file.
type place struct {
	folder, file string // of the package; in it
	line         int
	around       string // the line as it is
	start, end   int    // the bytes that go
	before       string // what they say
	after        string // what comes for them
}

func (p place) String() string {
	after := strings.TrimSpace(p.after)
	if after == "" {
		after = "nothing"
	}
	text := fmt.Sprintf("%s/%s:%d: %s → %s", p.folder, p.file, p.line, short(p.before), short(after))
	if short(p.before) != short(p.around) {
		text += " in " + short(p.around)
	}
	return text
}

// short cuts a text to what a line of the report can hold.
func short(text string) string {
	const most = 90
	text = strings.Join(strings.Fields(text), " ")
	if letters := []rune(text); len(letters) > most {
		return string(letters[:most]) + " …"
	}
	return text
}

// changed gives the whole file with the change in it.
func (p place) changed(text []byte) []byte {
	return []byte(string(text[:p.start]) + p.after + string(text[p.end:]))
}

// placesOf finds the places of a package, file by file.
func placesOf(root, folder string) ([]place, error) {
	known, err := build.ImportDir(filepath.Join(root, folder), 0)
	if err != nil {
		return nil, err
	}
	var all []place
	for _, name := range known.GoFiles {
		text, err := os.ReadFile(filepath.Join(root, folder, name))
		if err != nil {
			return nil, err
		}
		files := token.NewFileSet()
		file, err := parser.ParseFile(files, name, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		if ast.IsGenerated(file) {
			continue
		}
		f := finder{files: files, text: string(text), folder: folder, idle: map[ast.Node]bool{}}
		ast.Inspect(file, f.visit)
		all = append(all, f.found...)
	}
	return all, nil
}

// finder collects the places of a file.
type finder struct {
	files  *token.FileSet
	text   string
	folder string
	idle   map[ast.Node]bool // that cannot matter
	found  []place
}

// put notes that the text from one position to another may become another.
func (f *finder) put(from, to token.Pos, after string) {
	at := f.files.Position(from)
	start, end := at.Offset, f.files.Position(to).Offset
	line := f.text[strings.LastIndexByte(f.text[:start], '\n')+1:]
	line, _, _ = strings.Cut(line, "\n")
	f.found = append(f.found, place{
		folder: f.folder, file: at.Filename, line: at.Line, around: line,
		start: start, end: end, before: f.text[start:end], after: after,
	})
}

// said is what a node says.
func (f *finder) said(n ast.Node) string {
	return f.text[f.files.Position(n.Pos()).Offset:f.files.Position(n.End()).Offset]
}

// turned is a condition the other way round.
func (f *finder) turned(condition ast.Expr) string { return "!(" + f.said(condition) + ")" }

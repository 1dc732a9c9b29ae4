package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/report/html"
	"sipsum/internal/report/text"
)

// The forms of output: every command has the first two, what is handed out or hung up all.
const (
	formatText     = "text"
	formatJSON     = "json"
	formatHTML     = "html"
	formatSVG      = "svg"
	formatMarkdown = "md"
	formatCSV      = "csv"
	formatLines    = "jsonl" // of many drinks
)

var (
	usualFormats = []string{formatText, formatJSON}
	pageFormats  = []string{formatText, formatJSON, formatMarkdown} // of a page that is no drink's
	allFormats   = []string{formatText, formatJSON, formatHTML, formatSVG, formatMarkdown, formatCSV}
	manyFormats  = []string{formatText, formatJSON, formatLines}
)

// byEnding are the forms that the name of a file asks for.
var byEnding = map[string]string{
	".txt": formatText, ".json": formatJSON, ".jsonl": formatJSON, ".html": formatHTML, ".htm": formatHTML,
	".svg": formatSVG, ".md": formatMarkdown, ".markdown": formatMarkdown, ".csv": formatCSV,
}

// handsOut is the annotation of a command whose output may have every form, or of the flag with which
// it is a page to keep.
const handsOut = "hands out"

// streams is the annotation of a command that takes many drinks, a line each.
const streams = "streams"

// asMarkdown is the annotation of a command that prints Markdown too, and hands out nothing.
const asMarkdown = "as markdown"

// formatsOf lists the forms that a command has.
func formatsOf(cmd *cobra.Command) []string {
	of := cmd.Annotations[handsOut]
	switch flag := cmd.Flags().Lookup(of); {
	case flag != nil && flag.Changed:
		return pageFormats
	case cmd.Annotations[streams] != "":
		return manyFormats
	case cmd.Annotations[asMarkdown] != "":
		return slices.Concat(usualFormats, []string{formatMarkdown})
	case of == "", flag != nil:
		return usualFormats
	}
	return allFormats
}

// askedOf names a command, and the flag by which it is another page.
func askedOf(cmd *cobra.Command) string {
	if flag := cmd.Flags().Lookup(cmd.Annotations[handsOut]); flag != nil && flag.Changed {
		return cmd.CommandPath() + " --" + flag.Name
	}
	return cmd.CommandPath()
}

// output is what a command hands out: in which form, where, and on which paper.
type output struct {
	path     string
	paper    string
	replaces bool // the file that is there
	drink    bool // what is written is a drink file itself
}

// flags adds what a command that hands something out can be told. usualPaper is what it is
// printed on if nobody says.
func (o *output) flags(cmd *cobra.Command, usualPaper string) {
	cmd.Annotations = map[string]string{handsOut: "yes"}
	cmd.Flags().StringVarP(&o.path, "output", "o", "", "write to this file; its ending names the form: .txt .json .html .svg .md .csv")
	cmd.Flags().BoolVar(&o.replaces, "replace", false, "write over the file of --output if there is one")
	cmd.Flags().StringVar(&o.paper, "paper", "", "paper of the html: "+strings.Join(htmlreport.Papers(), ", ")+" (default "+usualPaper+")")
}

// form settles in which form a command hands out: what --format says, else the ending of the
// file.
func (o *output) form(a *app, cmd *cobra.Command) (string, error) {
	form := a.options.format
	if o.path != "" && o.path != "-" {
		named, ok := byEnding[strings.ToLower(filepath.Ext(o.path))]
		asked := cmd.Flags().Changed("format")
		switch {
		case asked && ok && named != form:
			return "", fail.New(fail.Wrong, fmt.Sprintf("--format says %s and the ending of %s says %s", form, o.path, named), "leave --format out, or end the file otherwise")
		case !asked && !ok:
			return "", fail.New(fail.Wrong, "the ending of "+o.path+" names no form", "end it with .txt .json .html .svg .md or .csv, or say --format")
		case !asked:
			form = named
		}
	}
	switch {
	case o.paper != "" && form != formatHTML:
		return "", fail.New(fail.Wrong, "--paper is for html", "add --format html, or leave it out")
	case o.paper != "" && !slices.Contains(htmlreport.Papers(), o.paper):
		return "", fail.New(fail.Wrong, fmt.Sprintf("no paper is called %q", o.paper), "use one of: "+strings.Join(htmlreport.Papers(), ", "))
	}
	return form, nil
}

// spares refuses to write over what is read, a drink, a shelf or the database, and over any
// other file that is there already unless that is asked for.
func (o *output) spares(a *app, drinks []string) error {
	written, err := os.Stat(o.path)
	switch {
	case o.path == "" || err != nil:
		return nil
	case !written.Mode().IsRegular():
		return noPlainFile(o.path, written)
	}
	same := func(name string) bool {
		read, err := os.Stat(name)
		return err == nil && os.SameFile(read, written)
	}
	for _, drink := range drinks {
		name, err := drinkNamed(drink)
		if err != nil {
			return err
		}
		if same(name) {
			return fail.New(fail.Wrong, o.path+" is the drink itself", "write to another file")
		}
	}
	db, _ := a.path()
	switch {
	case same(db), same(db + "-wal"), same(db + "-shm"):
		return fail.New(fail.Wrong, o.path+" is the database", "write to another file")
	case strings.HasSuffix(o.path, ".yaml") && !o.drink:
		return fail.New(fail.Wrong, o.path+" is a file that drinks are read from", "write to another file")
	case !o.replaces:
		return fail.New(fail.Wrong, o.path+" is there already", "write to another file, or add --replace")
	}
	return nil
}

// noPlainFile refuses a pipe or a device, which may keep whoever writes waiting for ever; a folder is told of where
// it is written to.
func noPlainFile(path string, info fs.FileInfo) error {
	if info.IsDir() {
		return nil
	}
	return fail.New(fail.Wrong, path+" is a pipe or a device, no plain file", "write to a file, or to the standard output and from there with > or |")
}

// style says how text looks that is handed out: in a file it is plain.
func (o *output) style(a *app) textreport.Style {
	if o.path == "" || o.path == "-" {
		return a.style()
	}
	return textreport.Style{}
}

// write prints to the output, or writes the file: whole, or not at all.
func (o *output) write(a *app, print func(io.Writer) error) error {
	if o.path == "" || o.path == "-" {
		return print(a.streams.Out)
	}
	var text bytes.Buffer
	if err := print(&text); err != nil {
		return err
	}
	if err := put(o.path, text.Bytes()); err != nil {
		return err
	}
	if a.options.quiet {
		return nil
	}
	_, err := fmt.Fprintln(a.streams.Out, o.path+" written")
	return err
}

// filePerm is that of a file which anybody may read.
const filePerm = 0o644

// put writes a file, whole or not at all, and says what to do where it cannot.
func put(path string, text []byte) error {
	if err := replace(path, text); err != nil {
		return fail.Because(fail.Failed, err, "cannot write "+path, "see whether the folder is there and can be written to")
	}
	return nil
}

// replace puts a file in the place of what was there, in one step: who reads it meanwhile sees
// the old one or the new one. What is no plain file (a device, a pipe) is left alone: it may keep the writer waiting.
func replace(path string, text []byte) error {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return errors.New("it is a folder")
	case err == nil && !info.Mode().IsRegular():
		return errors.New("it is a pipe or a device, no plain file")
	case err == nil:
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return err
		}
	case !errors.Is(err, fs.ErrNotExist):
		return err
	}
	perm := fs.FileMode(filePerm)
	if info != nil {
		perm = info.Mode().Perm()
	}
	file, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return errors.Unwrap(err)
	}
	defer os.Remove(file.Name()) // gone already if all went well
	_, err = file.Write(text)
	err = errors.Join(err, file.Chmod(perm), file.Close())
	if err != nil {
		return err
	}
	return os.Rename(file.Name(), path)
}

package textreport

import (
	"strconv"

	"sipsum/internal/sheet"
)

// A page numbers and writes its sources as every form does.
type footnotes = sheet.Footnotes

var (
	signs     = sheet.Numbered
	citation  = sheet.Citation
	sentences = sheet.Sentences
	kinWords  = sheet.KinWords
	kinRows   = sheet.KinRows
)

// sources prints the footnotes that the page has used.
func (p *page) sources(f *footnotes) {
	if len(f.Texts) == 0 {
		return
	}
	p.heading("Sources")
	margin := len("[99] ")
	for i, text := range f.Texts {
		p.hanging(left("["+strconv.Itoa(i+1)+"]", margin), margin, text)
	}
}

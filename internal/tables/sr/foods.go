package sr

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs from the small files.
type reader struct {
	files   folder
	tableID string
	groups  map[string]string
	rules   *table.Groups
	columns map[string]column
	origins map[string]origin
}

// beside are the files that are read in step with FOOD_DES.
type beside struct{ values, portions, footnotes *follower }

func (r *reader) openBeside() (b beside, err error) {
	if b.values, err = follow(r.files, valueFile, valueFields); err != nil {
		return b, err
	}
	if b.portions, err = follow(r.files, portionFile, 7); err != nil {
		return b, err
	}
	b.footnotes, err = follow(r.files, footnoteFile, 5)
	return b, err
}

func (b beside) close() {
	for _, f := range []*follower{b.values, b.portions, b.footnotes} {
		if f != nil && f.lines != nil {
			f.close()
		}
	}
}

func (b beside) end() error {
	for _, f := range []*follower{b.values, b.portions, b.footnotes} {
		if err := f.end(); err != nil {
			return err
		}
	}
	return nil
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	in, err := openLines(r.files, foodFile, foodFields)
	if err != nil {
		yield(nil, err)
		return
	}
	defer in.close()
	b, err := r.openBeside()
	defer b.close()
	if err != nil {
		yield(nil, err)
		return
	}
	v := &values{columns: r.columns, origins: r.origins, refs: map[string]string{}, seen: make([]int, len(r.columns))}
	last := ""
	table.Stream(ctx, yield, func() (*food.Food, error) {
		if err := in.next(); err == io.EOF {
			return nil, cmp.Or(b.end(), err)
		} else if err != nil {
			return nil, err
		}
		f := r.describe(in)
		if err := r.check(in, f, last); err != nil {
			return nil, err
		}
		last = f.ID.Code
		var err error
		if f.Edible, err = edible(in); err != nil {
			return nil, err
		}
		return f, r.fill(f, in, b, v)
	})
}

// check refuses a code that is not five digits or not above the last one, and
// an unknown group.
func (r *reader) check(in *lines, f *food.Food, last string) error {
	code := f.ID.Code
	if len(code) != 5 || strings.Trim(code, "0123456789") != "" {
		return in.wrongField(0, fmt.Sprintf("code %.40q is not five digits", code), again)
	}
	if code <= last {
		return in.wrongField(0, fmt.Sprintf("food %s does not come after %s", code, last), "the rows must be sorted by code, each code once")
	}
	if f.PublisherGroup == "" {
		return in.wrongField(1, fmt.Sprintf("group %.40q is not in FD_GROUP.txt", in.field(1)), again)
	}
	return nil
}

// fill adds values, portions and footnotes.
func (r *reader) fill(f *food.Food, in *lines, b beside, v *values) error {
	v.current++
	v.food = v.food[:0]
	err := b.values.rows(f.ID.Code, func() error {
		value, err := v.of(b.values.lines)
		v.food = append(v.food, value)
		return err
	})
	f.Values = slices.Clone(v.food)
	if err != nil {
		return err
	}
	if len(f.Values) == 0 {
		return in.wrongField(0, fmt.Sprintf("food %s has no row in NUT_DATA.txt", f.ID.Code), "NUT_DATA.txt may be cut off; "+again)
	}
	err = b.portions.rows(f.ID.Code, func() error {
		portion, err := portionOf(b.portions.lines)
		f.Portions = append(f.Portions, named(portion, f.Portions))
		return err
	})
	if err != nil {
		return err
	}
	notes := []string{}
	if f.Note != "" {
		notes = append(notes, f.Note)
	}
	err = b.footnotes.rows(f.ID.Code, func() error {
		notes = append(notes, footnoteOf(b.footnotes.lines))
		return nil
	})
	f.Note = strings.Join(notes, "\n")
	return err
}

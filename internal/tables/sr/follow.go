package sr

import (
	"fmt"
	"io"
)

// follower reads a file that is sorted by the code of the food, in step with
// FOOD_DES.
type follower struct {
	*lines
	waiting bool // the current line belongs to a later food
	ended   bool
}

// follow opens a file; an absent optional file has no rows.
func follow(files folder, name string, want int) (*follower, error) {
	if !files.has(name) {
		return &follower{ended: true, lines: &lines{file: nothing{}}}, nil
	}
	l, err := openLines(files, name, want)
	return &follower{lines: l}, err
}

// rows calls use for each line of a food.
func (f *follower) rows(code string, use func() error) error {
	for !f.ended {
		if !f.waiting {
			switch err := f.next(); {
			case err == io.EOF:
				f.ended = true
				return nil
			case err != nil:
				return err
			}
		}
		f.waiting = true
		switch key := string(f.field(0)); {
		case key > code:
			return nil
		case key < code:
			return f.stray()
		}
		f.waiting = false
		if err := use(); err != nil {
			return err
		}
	}
	return nil
}

// end makes sure that no lines are left.
func (f *follower) end() error {
	if f.ended {
		return nil
	}
	if !f.waiting {
		if err := f.next(); err != nil {
			if err == io.EOF {
				return nil
			}
			return err
		}
	}
	return f.stray()
}

func (f *follower) stray() error {
	return f.wrongField(0, fmt.Sprintf("food %.40q is not in FOOD_DES.txt or its rows are not together", f.field(0)), again)
}

package web

import (
	"context"
	"errors"
	"io/fs"
	"net/http"

	"sipsum/internal/fail"
)

// problem is the page of what could not be done.
type problem struct {
	Head   head
	Faults []fail.Fault
}

// fails answers that something could not be done: what is wrong, where, and what to do. What is no error for people
// is a fault of the program, and its words are not shown.
func fails(w http.ResponseWriter, err error) {
	status, told := saidOf(err)
	show(w, status, "problem", problem{head{Title: titles[status]}, told.Faults})
}

// titles are what a page is called that could not be shown.
var titles = map[int]string{
	http.StatusNotFound:            "Not there",
	http.StatusUnprocessableEntity: "Not yet",
	http.StatusServiceUnavailable:  "Not now",
	http.StatusInternalServerError: "Our fault",
}

// saidOf gives the status of an error, and how it is told.
func saidOf(err error) (int, *fail.Error) {
	var told *fail.Error
	switch {
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return http.StatusServiceUnavailable, fail.New(fail.Interrupted, "this was not calculated to its end", "something newer came in its place, or it took too long: send it again")
	case errors.Is(err, errFull):
		return http.StatusServiceUnavailable, fail.New(fail.Failed, "too many ask at once", "wait a moment and send it again")
	case !errors.As(err, &told):
		return http.StatusInternalServerError, fail.New(fail.Failed, "sipsum could not do this", "what you have typed is still in the page before this one")
	case errors.Is(err, fs.ErrNotExist):
		return http.StatusNotFound, told
	case told.Exit == fail.Failed:
		return http.StatusInternalServerError, told
	}
	return http.StatusUnprocessableEntity, told
}

// notThere says that something is not there.
func notThere(what, do string) error {
	e := fail.New(fail.Wrong, what, do)
	e.Cause = fs.ErrNotExist
	return e
}

// errFault is what is told of a fault of ours.
var errFault = errors.New("a fault of the program")

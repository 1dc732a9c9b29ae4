package drink

import (
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
)

// Task is how long a step of finish takes before guests or judges.
type Task struct {
	Place fail.Place
	Word  string   // the step's keyword, as the file has it
	Takes Quantity // min
	Each  bool     // a glass, one after the other; else once for all of them
	Hands int      // how many work at it side by side, each at a glass of their own; 1 if nobody says

	text string // of Takes
}

const (
	takes = "takes"
	hands = "hands"
)

var taskKeys = grammar[Task]{"the time of a step", []key[Task]{
	{takes, "of a step of finish: how long it takes, 40 s for all glasses together, 10 s a glass for one after the other", true, taskShape, readTakes},
	{hands, "of a step of finish that takes its time a glass: how many work side by side, each at a glass", false, shape{"type": "integer", "minimum": 1, "maximum": mostHands}, readHands},
}}

// mostHands is how many work side by side: our own bound, ten people at a bar.
const mostHands = 10

// aGlass are the words that make a time that of one glass; the first is the one that advice shows.
var aGlass = []string{" a glass", " per glass", " each glass", " each", " a serving", "/glass"}

// taskShape is a time, with or without the words of one glass.
var taskShape = anyOf(quantityShape(duration), shape{"type": "string", "pattern": ` ?(` + strings.Join(aGlass, "|") + `)$`})

// readTakes reads "40 s" or "10 s a glass".
func readTakes(r *reader, t *Task, n ast.Node) {
	text, ok := r.scalar(n, takes)
	if !ok {
		return
	}
	t.text = clip(text)
	for _, words := range aGlass {
		if rest, found := strings.CutSuffix(text, words); found {
			n, t.Each = textNode(rest, n.GetToken().Position), true
			break
		}
	}
	if q := r.minutesOf(n, takes); q != nil {
		t.Takes = *q
	}
}

// readHands reads how many work side by side.
func readHands(r *reader, t *Task, n ast.Node) {
	text, ok := r.scalar(n, hands)
	if !ok {
		return
	}
	for i := 1; i <= mostHands; i++ {
		if text == strconv.Itoa(i) {
			t.Hands = i
			return
		}
	}
	r.faults.Add(r.nodeAt(n), "write a whole number from 1 to "+strconv.Itoa(mostHands), "hands is %s", quoted(text))
}

// untimed takes the time of a step out of its entry, from beside the step or from between its
// parameters. Only what finishes a drink is on the clock.
func untimed(r *reader, n ast.Node, owner string) (rest ast.Node) {
	entry, ok := n.(*ast.MappingNode)
	if !ok {
		return n
	}
	left, given := parted(entry)
	if len(left.Values) > 0 {
		if inner, ok := left.Values[0].Value.(*ast.MappingNode); ok {
			params, within := parted(inner)
			first := *left.Values[0]
			first.Value = params
			left.Values[0] = &first
			given.Values = append(given.Values, within.Values...)
		}
	}
	if len(left.Values) == 0 || len(given.Values) == 0 {
		return n
	}
	if word, _ := raw(left.Values[0].Key); owner == finish {
		readTask(r, given, word)
	} else {
		r.faults.Add(r.nodeAt(given), "take it out: what is made before is not on the clock", "%s is of a step of finish", quoted(takes))
	}
	return left
}

// parted parts a map into the keys of a task and the others.
func parted(n *ast.MappingNode) (left, given *ast.MappingNode) {
	others, own := *n, *n
	others.Values, own.Values = nil, nil
	for _, v := range n.Values {
		if word, _ := raw(v.Key); asKnown(strings.TrimSpace(word), taskKeys.names()) == takes || asKnown(strings.TrimSpace(word), taskKeys.names()) == hands {
			own.Values = append(own.Values, v)
		} else {
			others.Values = append(others.Values, v)
		}
	}
	return &others, &own
}

// readTask reads how long a step takes.
func readTask(r *reader, n *ast.MappingNode, word string) {
	t, before := Task{Place: r.nodeAt(n), Word: word}, r.faults.Len()
	found, _ := taskKeys.read(r, &t, n)
	switch {
	case r.faults.Len() > before:
		return
	case t.Hands > 0 && !t.Each:
		r.faults.Add(found[hands], "write takes: "+t.text+aGlass[0]+", or take hands out", "hands counts where each glass takes its time, and %s is for all of them together", t.text)
		return
	}
	t.Hands = max(t.Hands, 1)
	r.tasks = append(r.tasks, t)
}

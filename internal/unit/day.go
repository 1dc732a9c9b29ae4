package unit

import (
	"regexp"
	"strconv"
)

var isoDate = regexp.MustCompile(`^([0-9]{4})-([0-9]{2})-([0-9]{2})$`)

const (
	february     = 2
	lengthOfYear = 365
	fourYears    = 4
	century      = 100
	fourHundred  = 400
)

// Day counts the days of the calendar up to a date as ISO 8601 writes it, 2027-03-31, so that dates
// can be set against each other; false if there is no such day.
func Day(text string) (int, bool) {
	found := isoDate.FindStringSubmatch(text)
	if found == nil {
		return 0, false
	}
	year, _ := strconv.Atoi(found[1])
	month, _ := strconv.Atoi(found[2])
	day, _ := strconv.Atoi(found[3])
	lengths := []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	if leap(year) {
		lengths[february-1]++
	}
	if year < 1 || month < 1 || month > len(lengths) || day < 1 || day > lengths[month-1] {
		return 0, false
	}
	past := year - 1
	days := past*lengthOfYear + past/fourYears - past/century + past/fourHundred + day
	for _, length := range lengths[:month-1] {
		days += length
	}
	return days, true
}

func leap(year int) bool {
	return year%fourYears == 0 && (year%century != 0 || year%fourHundred == 0)
}

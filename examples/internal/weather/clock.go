package weather

import (
	"bytes"
	"errors"
	"time"
)

const (
	hour = 3600  // s
	day  = 86400 // s
)

// Nominal years of files whose months come from different years.
var (
	leapStart  = time.Date(2004, 1, 1, 0, 0, 0, 0, time.UTC).Unix()
	leapMarch  = time.Date(2004, 3, 1, 0, 0, 0, 0, time.UTC).Unix()
	plainStart = time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC).Unix()
)

var monthDays = [13]int{0, 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// inLeapYear is the second, in the nominal leap year, at which an hour of a day
// begins; false if there is no such day.
func inLeapYear(month, dayOfMonth, clock int) (int64, bool) {
	if month < 1 || month > 12 || dayOfMonth < 1 || dayOfMonth > monthDays[month] {
		return 0, false
	}
	days := dayOfMonth - 1
	for m := 1; m < month; m++ {
		days += monthDays[m]
	}
	return leapStart + int64(days)*day + int64(clock)*hour, true
}

// nominal moves stamps of the nominal leap year into one of 365 days unless
// there is a 29 February among them, and returns the length of the year, s.
func nominal(stamps []int64) int64 {
	for _, s := range stamps {
		if s >= leapMarch-day && s < leapMarch {
			return 366 * day
		}
	}
	for i, s := range stamps {
		if s >= leapMarch {
			s -= day
		}
		stamps[i] = s - leapStart + plainStart
	}
	return 365 * day
}

// digits reads a number without sign from ASCII digits.
func digits(b []byte) (int, bool) {
	if len(b) == 0 || len(b) > 6 {
		return 0, false
	}
	n := 0
	for _, c := range b {
		if c < '0' || c > '9' {
			return 0, false
		}
		n = 10*n + int(c-'0')
	}
	return n, true
}

var errTime = errors.New("not a time such as 2001-07-01T13:00, 2001-07-01T13:00Z or 2001-07-01T13:00+02:00")

// clock reads a time of Cloche's own CSV: s since 1970, by the clock of the
// file or, where absolute says so, in UTC.
func clock(b []byte) (s int64, absolute bool, err error) {
	b = bytes.TrimSpace(b)
	if len(b) < 16 || b[4] != '-' || b[7] != '-' || (b[10] != 'T' && b[10] != ' ') || b[13] != ':' {
		return 0, false, errTime
	}
	var part [5]int
	for i, at := range [5][2]int{{0, 4}, {5, 7}, {8, 10}, {11, 13}, {14, 16}} {
		n, ok := digits(b[at[0]:at[1]])
		if !ok {
			return 0, false, errTime
		}
		part[i] = n
	}
	midnight := time.Date(part[0], time.Month(part[1]), part[2], 0, 0, 0, 0, time.UTC)
	late := part[3] > 24 || part[4] > 59 || part[3] == 24 && part[4] > 0
	if midnight.Day() != part[2] || int(midnight.Month()) != part[1] || late {
		return 0, false, errTime
	}
	t := midnight.Unix() + int64(part[3])*hour + int64(part[4])*60
	// The sun of package sun runs from 1950 to 2100; zones reach over the ends.
	if part[0] < 1951 || part[0] > 2099 {
		return 0, false, errors.New("a year outside 1951 to 2099")
	}
	rest := b[16:]
	if len(rest) >= 3 && rest[0] == ':' { // seconds
		if n, ok := digits(rest[1:3]); !ok || n != 0 {
			return 0, false, errTime
		}
		rest = rest[3:]
	}
	switch {
	case len(rest) == 0:
		return t, false, nil
	case string(rest) == "Z":
		return t, true, nil
	case len(rest) == 6 && (rest[0] == '+' || rest[0] == '-') && rest[3] == ':':
		h, okH := digits(rest[1:3])
		m, okM := digits(rest[4:6])
		if !okH || !okM || h > 14 || m > 59 {
			return 0, false, errTime
		}
		ahead := int64(h)*hour + int64(m)*60
		if rest[0] == '-' {
			ahead = -ahead
		}
		return t - ahead, true, nil
	}
	return 0, false, errTime
}

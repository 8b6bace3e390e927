package weather

import (
	"fmt"
	"math"
	"time"
)

// longestFill is how many hours of a gap can be filled.
const longestFill = 3

// order puts the rows on a line of hours without gaps: it names hours that
// come twice, out of order or not at all, and inserts rows for the gaps that
// are to be filled, each with missing values. It reports false for a file with no
// hours, or too many.
func (t *table) order(fill bool, a *Account, f *faults) bool {
	if len(t.stamp) == 0 {
		f.file(fmt.Errorf("the file has no hours"))
		return false
	}
	seen := map[int64]int{}
	keep := []int{0} // rows, -1 for inserted ones
	at := []int64{t.stamp[0]}
	seen[t.stamp[0]] = t.line[0]
	turn := int64(0)
	for i := 1; i < len(t.stamp); i++ {
		s, last := t.stamp[i]+turn, at[len(at)-1]
		if t.typical && s-last < -t.year/2 { // a nominal year that begins in another month
			s += t.year
			turn += t.year
		}
		step := s - last
		lost := int(step/hour) - 1
		leap := !t.typical && leapDayOnly(last, s)
		switch {
		case seen[s] != 0:
			f.addf(t.line[i], "the hour %s comes twice, first in line %d", stampText(t.stamp[i]), seen[s])
			continue
		case step < 0:
			f.addf(t.line[i], "the hour %s stands out of order, after %s", stampText(t.stamp[i]), stampText(last))
			continue
		case step%hour != 0:
			f.addf(t.line[i], "%s is %d minutes after the line before; lines must be an hour apart", stampText(t.stamp[i]), step/60)
		case leap:
			a.LeapDayLeftOut = true
		case lost > longestFill || lost > 0 && !fill:
			hint := ""
			if lost <= longestFill {
				hint = "; gaps of at most 3 hours can be filled on request"
			}
			f.addf(t.line[i], "%s before it, from %s on%s", hours(lost, "is", "are")+" missing", stampText(last+hour), hint)
		case lost > 0:
			a.Filled = append(a.Filled, Filled{t.line[i], lost, "all"})
			for k := range lost {
				keep, at = append(keep, -1), append(at, last+int64(k+1)*hour)
			}
		}
		seen[s] = t.line[i]
		keep, at = append(keep, i), append(at, s)
	}
	if len(at) > mostHours {
		f.file(fmt.Errorf("the file has more than the %d hours of a leap year", mostHours))
		return false
	}
	line := make([]int, len(keep))
	for c := range t.col {
		col := make([]float64, len(keep))
		for i, k := range keep {
			col[i] = missing
			if k >= 0 {
				col[i] = t.col[c][k]
			}
		}
		t.col[c] = col
	}
	for i, k := range keep {
		if k >= 0 {
			line[i] = t.line[k]
		}
	}
	t.line, t.stamp = line, at
	return true
}

// leapDayOnly reports whether just 29 February lies between two hours.
func leapDayOnly(last, next int64) bool {
	a, b := time.Unix(last, 0).UTC(), time.Unix(next, 0).UTC()
	return next-last == 25*hour && a.Month() == time.February && a.Day() == 28 && b.Month() == time.March && b.Day() == 1
}

func hours(n int, one, more string) string {
	if n == 1 {
		return "1 hour " + one
	}
	return fmt.Sprintf("%d hours %s", n, more)
}

// whole reports whether the rows are a year that can be taken as a ring.
func (t *table) whole() bool {
	n := int64(len(t.stamp))
	return t.typical && n > 1 && t.stamp[n-1]-t.stamp[0] == (n-1)*hour && n*hour == t.year
}

// fill replaces short runs of missing values by a straight line; longer ones,
// and all of them when they are not to be filled, are faults. A column
// without a single value is dropped unless it is needed.
func (t *table) fill(c column, fill bool, done []bool, a *Account, f *faults) {
	v, name := t.col[c], t.headers[c]
	if name == "" {
		return
	}
	for i := 0; i < len(v); i++ {
		if !math.IsNaN(v[i]) {
			continue
		}
		end, inserted := i, true
		for ; end < len(v) && math.IsNaN(v[end]); end++ {
			inserted = inserted && t.line[end] == 0
		}
		n := end - i
		if n == len(v) {
			t.headers[c] = ""
			return
		}
		number := t.line[i]
		for k := i; number == 0; k++ {
			number = t.line[k]
		}
		switch {
		case n > longestFill || !fill:
			hint := ""
			if n <= longestFill {
				hint = "; gaps of at most 3 hours can be filled on request"
			}
			if !t.named[number] {
				f.addf(number, "%s has no value for %s%s", name, plural(n), hint)
			}
		case i == 0 || end == len(v):
			f.addf(number, "%s has no value for %s at the end of the file, where nothing can be filled", name, plural(n))
		default:
			for k := range n {
				v[i+k] = v[i-1] + (v[end]-v[i-1])*float64(k+1)/float64(n+1)
				done[i+k] = true
			}
			if !inserted {
				a.Filled = append(a.Filled, Filled{number, n, name})
			}
		}
		i = end
	}
}

func plural(n int) string {
	if n == 1 {
		return "1 hour"
	}
	return fmt.Sprintf("%d hours", n)
}

// means turns readings at one end of the hours into means of the hours. The
// hour at the end of the file that has no second reading keeps its one.
func (t *table) means(v []float64) {
	n := len(v)
	if n < 2 || t.readings == meanOfHour {
		return
	}
	ring := t.whole()
	if t.readings == atStart {
		first := v[0]
		for i := range n - 1 {
			v[i] = (v[i] + v[i+1]) / 2
		}
		if ring {
			v[n-1] = (v[n-1] + first) / 2
		}
		return
	}
	last := v[n-1]
	for i := n - 1; i > 0; i-- {
		v[i] = (v[i] + v[i-1]) / 2
	}
	if ring {
		v[0] = (v[0] + last) / 2
	}
}

// shift moves radiation that stands for an hour around the instant offset
// hours after its stamp into the hours that begin at the stamps.
func (t *table) shift(v []float64) {
	n := len(v)
	weight := math.Abs(t.offset - 0.5) // of the hour beside
	if n < 2 || weight == 0 {
		return
	}
	step := 1
	if t.offset > 0.5 {
		step = -1
	}
	old := append([]float64(nil), v...)
	ring := t.whole()
	for i := range v {
		k := i + step
		if k < 0 || k >= n {
			if !ring {
				continue
			}
			k = (k + n) % n
		}
		v[i] = (1-weight)*old[i] + weight*old[k]
	}
}

// turn moves the hours of a whole nominal year that lie outside it, after a
// change of zone, to its other end.
func (t *table) turn() {
	n := len(t.stamp)
	start := plainStart
	if t.year == 366*day {
		start = leapStart
	}
	if t.stamp[0] >= start && t.stamp[n-1] < start+int64(n)*hour {
		return
	}
	k := 0 // the row that becomes the first
	for i, s := range t.stamp {
		if s >= start && s < start+hour {
			k = i
		}
		if s >= start+int64(n)*hour && s < start+int64(n+1)*hour {
			k = i
		}
	}
	for c := range t.col {
		t.col[c] = append(append(make([]float64, 0, n), t.col[c][k:]...), t.col[c][:k]...)
	}
	t.line = append(append(make([]int, 0, n), t.line[k:]...), t.line[:k]...)
	first := t.stamp[k]
	for first >= start+hour {
		first -= int64(n) * hour
	}
	for first < start {
		first += int64(n) * hour
	}
	for i := range t.stamp {
		t.stamp[i] = first + int64(i)*hour
	}
}

package plan

import (
	"errors"
	"fmt"
	"strings"
)

// MaxFaults is how many faults of one plan are listed.
const MaxFaults = 50

// faults gathers what is wrong with a plan, in the order of the table.
type faults struct {
	list []error
	at   map[string]bool // keys at fault
	more int
}

// add notes a fault of the keys at the given paths. A fault between keys is
// left out when one of them has a fault of its own.
func (f *faults) add(err error, paths ...string) {
	if err == nil {
		return
	}
	if f.at == nil {
		f.at = map[string]bool{}
	}
	if len(paths) > 1 {
		for _, p := range paths {
			if f.under(p) {
				return
			}
		}
	}
	if len(paths) == 1 {
		f.at[paths[0]] = true
	}
	if len(f.list) == MaxFaults {
		f.more++
		return
	}
	f.list = append(f.list, err)
}

// under reports whether the key, or a section that holds it, is at fault.
func (f *faults) under(path string) bool {
	for p := path; p != ""; {
		if f.at[p] {
			return true
		}
		i := strings.LastIndexAny(p, ".[")
		p = p[:max(i, 0)]
	}
	return false
}

// err joins all faults.
func (f *faults) err() error {
	if f.more > 0 {
		return errors.Join(append(f.list, fmt.Errorf("and %d faults more", f.more))...)
	}
	return errors.Join(f.list...)
}

// distance is the least count of letters to put in, take out, change or swap
// with a neighbour that turns a into b (optimal string alignment); more than
// most is answered as most + 1.
func distance(a, b string, most int) int {
	if d := len(a) - len(b); d > most || -d > most {
		return most + 1
	}
	var before, last, row [maxCompared + 1]int
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		best := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			row[j] = d
			best = min(best, d)
		}
		if best > most {
			return most + 1
		}
		before, last = last, row
	}
	return last[len(b)]
}

// maxCompared is the length of the longest word that is compared, bytes; no
// key is as long.
const maxCompared = 64

// nearest returns the word most like s among words, or "". A word that s
// begins, or that begins as s does up to the unit, is like it, too.
func nearest(s string, words []string) string {
	if len(s) > maxCompared || len(s) < 2 {
		return ""
	}
	found, best := "", 2+len(s)/4
	for _, w := range words {
		if len(w) > maxCompared {
			continue
		}
		d := distance(s, w, best)
		if strings.HasPrefix(w, s) && len(s) > 3 { // the unit left out
			d = min(d, 1)
		}
		if d < best {
			found, best = w, d
		}
	}
	return found
}

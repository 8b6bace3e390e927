package plan

import (
	"math"
	"strings"

	"cloche.example/internal/domain"
)

// Kind says what may stand at a key.
type Kind uint8

// The kinds of keys.
const (
	Number   Kind = iota // a number
	Whole                // a whole number
	Text                 // a text
	Choice               // one of a few words
	Name                 // a name from a list, or of something else in the plan
	Switch               // true or false
	Numbers              // a list of numbers
	Section              // an object that every plan has
	Optional             // an object that a plan may have
	List                 // a list of objects
)

// String names the kind.
func (k Kind) String() string {
	return [...]string{"number", "whole number", "text", "choice", "name", "true or false", "list of numbers", "section", "optional section", "list"}[min(k, List)]
}

// Key is a row of the table of keys.
type Key struct {
	Path    string   // as in site.altitude_m; [] stands for any place in a list
	Kind    Kind     // what may stand there
	Unit    string   // of a number
	Min     float64  // the smallest number accepted, in Unit
	Max     float64  // the largest number accepted, in Unit
	Default any      // float64, string, bool or []float64; nil when there is none or it is derived
	Choices []string // of a Choice or a Name
	Means   string   // what it is

	Open    bool   // a number that may be without a value
	Needed  bool   // it has no default: it must be given wherever its section or list item stands
	Most    int    // count of entries that a list may have
	Least   int    // count of entries that a list must have
	Unless  int    // count of entries that a list has unless it is given
	Derived string // in words, how a default is derived from other keys

	rule func(p *Plan, at int) float64  // the derived default; at is the place in the innermost list
	of   func(p *Plan, at int) []string // names in the plan that a Name may take besides Choices
}

// Last is the last part of the path, the key as it stands in the file.
func (k Key) Last() string {
	return strings.TrimSuffix(k.Path[strings.LastIndexByte(k.Path, '.')+1:], "[]")
}

// accepts is the range of a number.
func (k Key) accepts() domain.Range { return domain.Range{Min: k.Min, Max: k.Max, Unit: k.Unit} }

func num(path, unit string, low, high, usual float64, means string) Key {
	return Key{Path: path, Kind: Number, Unit: unit, Min: low, Max: high, Default: usual, Means: means}
}

func whole(path, unit string, low, high, usual float64, means string) Key {
	k := num(path, unit, low, high, usual, means)
	k.Kind = Whole
	return k
}

func derived(path, unit string, low, high float64, rule func(*Plan, int) float64, words, means string) Key {
	k := Key{Path: path, Kind: Number, Unit: unit, Min: low, Max: high, Derived: words, Means: means, rule: rule}
	if unit == "count" {
		k.Kind = Whole
	}
	return k
}

func optional(path, unit string, low, high float64, means string) Key {
	return Key{Path: path, Kind: Number, Unit: unit, Min: low, Max: high, Open: true, Means: means}
}

// or gives a number that may stay open a default that is derived where the
// rule has one; NaN leaves it open.
func (k Key) or(rule func(*Plan, int) float64, words string) Key {
	k.rule, k.Derived, k.Open = rule, words, true
	return k
}

func needed(path, unit string, low, high float64, means string) Key {
	return Key{Path: path, Kind: Number, Unit: unit, Min: low, Max: high, Needed: true, Means: means}
}

func text(path, usual, means string) Key {
	return Key{Path: path, Kind: Text, Default: usual, Means: means}
}

func naming(path, means string) Key { return Key{Path: path, Kind: Text, Needed: true, Means: means} }

func one(path, choices, usual, means string) Key {
	return Key{Path: path, Kind: Choice, Choices: strings.Split(choices, "|"), Default: usual, Means: means}
}

func named(path string, n names, usual, means string) Key {
	return Key{Path: path, Kind: Name, Choices: n.fixed, Default: usual, Means: means, of: n.of}
}

func yes(path string, usual bool, means string) Key {
	return Key{Path: path, Kind: Switch, Default: usual, Means: means}
}

func numbers(path, unit string, low, high float64, least, most int, usual []float64, means string) Key {
	k := Key{Path: path, Kind: Numbers, Unit: unit, Min: low, Max: high, Least: least, Most: most, Means: means}
	switch {
	case usual != nil:
		k.Default = usual
	case least > 0:
		k.Needed = true
	default:
		k.Default = []float64{}
	}
	return k
}

func group(path, means string) Key { return Key{Path: path, Kind: Section, Means: means} }

func maybe(path, means string) Key { return Key{Path: path, Kind: Optional, Means: means} }

func several(path, means string) Key { return Key{Path: path, Kind: List, Means: means} }

func (k Key) atMost(n int) Key { k.Most = n; return k }

func (k Key) atLeast(n int) Key { k.Least, k.Needed = n, true; return k }

func (k Key) unless(n int) Key { k.Unless = n; return k }

// Keys returns the table of all keys, in the order in which a plan prints.
// Defaults are derived in this order, so a key stands below those that its own
// default follows from.
func Keys() []Key {
	var all []Key
	for _, part := range [][]Key{keysSite, keysHouse, keysCover, keysGround, keysCrop, keysHeater, keysDucts, keysLights, keysVents} {
		all = append(all, part...)
	}
	return all
}

// clamped keeps a derived default within its key's range and short.
func (k Key) clamped(v float64) float64 {
	if k.Kind == Whole {
		v = math.Floor(v)
	} else if v != 0 && !math.IsInf(v, 0) {
		p := math.Pow(10, 2-math.Floor(math.Log10(math.Abs(v))))
		if v = math.Round(v*p) / p; p >= 1e15 {
			v = 0
		}
	}
	return math.Max(k.Min, math.Min(k.Max, v))
}

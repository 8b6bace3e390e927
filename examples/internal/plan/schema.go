package plan

import (
	"reflect"
	"strings"
	"sync"
)

// node is a key in the tree of keys, bound to the field that holds its value.
type node struct {
	Key
	last     string // of the path
	field    int    // index in the parent's struct
	children []*node
	byName   map[string]*node
}

// tree is the tree of keys, built once from the table.
var tree = sync.OnceValue(func() *node {
	root := &node{Key: Key{Kind: Section}, byName: map[string]*node{}}
	byPath := map[string]*node{"": root}
	for _, k := range Keys() {
		n := &node{Key: k, last: k.Last(), byName: map[string]*node{}}
		byPath[k.Path] = n
		if k.Kind == List {
			byPath[k.Path+"[]"] = n
		}
		parent := ""
		if i := strings.LastIndexByte(k.Path, '.'); i >= 0 {
			parent = k.Path[:i]
		}
		p, ok := byPath[parent]
		if !ok {
			panic("the table has no key " + parent + " before " + k.Path)
		}
		p.children = append(p.children, n)
		p.byName[n.last] = n
	}
	bind(root, reflect.TypeFor[Plan]())
	return root
})

// bind finds the field of each key. A table and structs that do not fit are a
// fault of this package, which every test meets.
func bind(n *node, t reflect.Type) {
	fields := map[string]int{}
	for i := range t.NumField() {
		fields[t.Field(i).Tag.Get("json")] = i
	}
	if len(fields) != len(n.children) {
		panic(t.Name() + " has other fields than " + n.Path + " has keys")
	}
	for _, c := range n.children {
		i, ok := fields[c.last]
		if !ok {
			panic(t.Name() + " has no field for " + c.Path)
		}
		c.field = i
		f := t.Field(i).Type
		if c.fits(f) != nil {
			bind(c, c.fits(f))
		}
	}
}

// fits returns the struct below a key, or nil when there is none. It panics
// when the field cannot hold what the key says.
func (n *node) fits(f reflect.Type) reflect.Type {
	kind, below := f.Kind(), reflect.Type(nil)
	ok := false
	switch n.Kind {
	case Number:
		ok = kind == reflect.Float64 && !n.Open || n.Open && kind == reflect.Pointer && f.Elem().Kind() == reflect.Float64
	case Whole:
		ok = kind == reflect.Int
	case Text, Choice, Name:
		ok = kind == reflect.String
	case Switch:
		ok = kind == reflect.Bool
	case Numbers:
		ok = kind == reflect.Slice && f.Elem().Kind() == reflect.Float64
	case Section:
		ok, below = kind == reflect.Struct, f
	case Optional, List:
		ok = kind == reflect.Pointer && n.Kind == Optional || kind == reflect.Slice && n.Kind == List
		if ok {
			below = f.Elem()
		}
	}
	if !ok {
		panic("the field of " + n.Path + " is a " + f.String())
	}
	return below
}

package plan

import "fmt"

// unknown notes a key that the table does not have, and the one most like it.
func (f *filler) unknown(n *node, path string, m member) {
	words := make([]string, len(n.children))
	for i, c := range n.children {
		words[i] = c.last
	}
	text := fmt.Sprintf("%s is not a key of a plan (its value is %s)", shown(path), m.show())
	if w := nearest(m.key, words); w != "" {
		meant := join(path[:max(0, len(path)-len(m.key)-1)], w)
		text += "; perhaps " + meant
		defer func() { f.at[meant] = true }() // nothing can be said about its value
	} else if places := elsewhere(m.key); places != "" {
		text += "; perhaps " + places
	}
	f.add(fmt.Errorf("%s", text), path)
}

// shown is a path for a message; what a plan calls its keys may hold anything.
func shown(path string) string {
	for _, r := range path {
		if r > '~' || r <= ' ' || r == '"' {
			return quote(path)
		}
	}
	if len(path) > 100 {
		return quote(path)
	}
	return path
}

// elsewhere finds a key of that name in another section.
func elsewhere(key string) string {
	for _, k := range Keys() {
		if k.Last() == key {
			return k.Path
		}
	}
	return ""
}

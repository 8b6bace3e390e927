package figures

// All returns every figure, by subject and within a subject from the simple to
// the composed.
func All() []Figure {
	all := []Figure{
		altitude(),
	}
	return all
}

package envelope

// LeakageClass is a row of the table of air changes.
type LeakageClass struct {
	Name    string  // how the house is covered, and its state
	Low     float64 // air changes per hour
	Typical float64 // air changes per hour
	High    float64 // air changes per hour
	Source  string  // source, or "from memory"
}

const (
	asaeRow = "[AsaeHeat03] table of air changes, from memory"
	ashRow  = "[AshApp11] table of air changes, from memory"
)

// leakageClasses returns the table of air changes. The two sources differ; Low
// and High hold both.
func leakageClasses() []LeakageClass {
	return []LeakageClass{
		{"glass, new, laps sealed", 0.75, 1.0, 1.5, asaeRow + "; typical " + ashRow},
		{"glass, new, laps open", 0.75, 1.25, 1.5, asaeRow + "; typical " + ashRow},
		{"glass, old, kept up", 1, 1.5, 2, asaeRow + "; typical is the middle"},
		{"glass, old, in poor state", 2, 3, 4, asaeRow + "; typical is the middle"},
		{"structured sheets, new", 0.75, 1.0, 1.5, ashRow + "; ends those of new glass"},
		{"film, new", 0.5, 0.6, 1.0, ashRow + "; ends " + asaeRow},
		{"double film, new", 0.5, 0.75, 1.0, asaeRow + "; typical is the middle"},
		{"film over glass", 0.75, 0.9, 1.5, ashRow + "; ends those of new glass"},
	}
}

// FindLeakageClass returns the row of the name, and whether there is one:
// "glass, new, laps sealed", "glass, new, laps open", "glass, old, kept up",
// "glass, old, in poor state", "structured sheets, new", "film, new", "double
// film, new" or "film over glass". Films that are old are replaced, not
// tabulated. Wind, frozen laps and drawn screens move a house within its row
// and beyond.
func FindLeakageClass(name string) (LeakageClass, bool) {
	for _, r := range leakageClasses() {
		if r.Name == name {
			return r, true
		}
	}
	return LeakageClass{}, false
}

package envelope

// Construction is how a house is covered, as far as its leaks go.
type Construction uint8

// Tightness is the state of a cover, as far as its leaks go.
type Tightness uint8

// The constructions.
const (
	LappedGlass   Construction = iota // panes that overlap, or glass in bars
	HollowSheet                       // structured plastic sheets
	SingleLayer                       // one film
	DoubleLayer                       // inflated double film
	FilmOverGlass                     // a film drawn over glass
)

// The conditions.
const (
	NewTight Tightness = iota // new, laps sealed
	NewLoose                  // new, laps open
	OldGood                   // old, kept up
	OldPoor                   // old, panes slipped, film torn, doors open a crack
)

// LeakageClass is a row of the table of air changes.
type LeakageClass struct {
	Construction Construction // cover
	Tightness    Tightness    // state
	Name         string       // for reports
	Low          float64      // air changes per hour
	Typical      float64      // air changes per hour
	High         float64      // air changes per hour
	Source       string       // source, or "from memory"
}

const (
	asaeRow = "[AsaeHeat03] table of air changes, from memory"
	ashRow  = "[AshApp11] table of air changes, from memory"
)

// LeakageClasses returns the table of air changes by construction and
// condition, as a fresh slice. The two sources differ; Low and High hold both.
// Wind, frozen laps and drawn screens move a house within its row and beyond.
func LeakageClasses() []LeakageClass {
	return []LeakageClass{
		{LappedGlass, NewTight, "glass, new, laps sealed", 0.75, 1.0, 1.5, asaeRow + "; typical " + ashRow},
		{LappedGlass, NewLoose, "glass, new, laps open", 0.75, 1.25, 1.5, asaeRow + "; typical " + ashRow},
		{LappedGlass, OldGood, "glass, old, kept up", 1, 1.5, 2, asaeRow + "; typical is the middle"},
		{LappedGlass, OldPoor, "glass, old, in poor state", 2, 3, 4, asaeRow + "; typical is the middle"},
		{HollowSheet, NewTight, "structured sheets, new", 0.75, 1.0, 1.5, ashRow + "; ends those of new glass"},
		{SingleLayer, NewTight, "film, new", 0.5, 0.6, 1.0, ashRow + "; ends " + asaeRow},
		{DoubleLayer, NewTight, "double film, new", 0.5, 0.75, 1.0, asaeRow + "; typical is the middle"},
		{FilmOverGlass, NewTight, "film over glass", 0.75, 0.9, 1.5, ashRow + "; ends those of new glass"},
	}
}

// FindLeakageClass returns the row of the table for a construction and condition, and
// whether there is one: films that are old are replaced, not tabulated.
func FindLeakageClass(c Construction, k Tightness) (LeakageClass, bool) {
	for _, r := range LeakageClasses() {
		if r.Construction == c && r.Tightness == k {
			return r, true
		}
	}
	return LeakageClass{}, false
}

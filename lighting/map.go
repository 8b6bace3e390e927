package lighting

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"cloche.example/internal/domain"
)

// Lights are fixtures made ready for maps. They never change and may be used
// by several goroutines at once.
type Lights struct {
	down   []downSource  // Lambertian points, straight down
	power  []powerSource // other cosine-power points
	tables []tableSource
	bars   []barSource
	lowest float64 // m, of the lowest fixture
	low    int     // its index
	ppf    float64 // µmol/s
	made   bool    // by newLights
}

// downSource gives c/(d² + h²)² with c = I0 h².
type downSource struct{ x, y, z, intensity float64 }

// powerSource is a cosine-power point at any aim.
type powerSource struct {
	x, y, z    float64
	ax, ay, az float64
	intensity  float64
	power      *powerTable // of (m+3)/2; nil takes math.Pow
	exponent   float64     // (m+3)/2
}

// NewLights checks the fixtures and makes them ready. Bars with a cosine-power
// light are integrated along their length for each point; a bar with a table
// must be split first (Fixture.SplitWithin). Every fault of every fixture is
// reported, with its index.
func NewLights(fixtures ...Fixture) (*Lights, error) { return newLights(fixtures, &tables{}) }

// tables are what lights of one kind share.
type tables struct {
	powers map[float64]*powerTable
	fast   map[*Table]*fastTable
}

func newLights(fixtures []Fixture, shared *tables) (*Lights, error) {
	var errs []error
	if len(fixtures) == 0 {
		errs = append(errs, fmt.Errorf("no fixtures: %w", ErrRange))
	}
	l := &Lights{lowest: math.Inf(1), made: true}
	if shared.powers == nil {
		shared.powers, shared.fast = map[float64]*powerTable{}, map[*Table]*fastTable{}
	}
	for i, f := range fixtures {
		name := fmt.Sprintf("fixtures[%d]", i)
		if err := f.check(); err != nil {
			errs = append(errs, domain.Within(name, err))
			continue
		}
		a, b := f.ends()
		if z := math.Min(a.Z, b.Z); z < l.lowest {
			l.lowest, l.low = z, i
		}
		l.ppf += f.ppf()
		switch d := f.Light.(type) {
		case CosinePower:
			l.addCosine(f, d, shared.powers)
		case *Table:
			if f.Length > 0 {
				errs = append(errs, fmt.Errorf("%s is a bar with a table, split it first: %w", name, ErrRange))
				continue
			}
			if shared.fast[d] == nil {
				shared.fast[d] = newFastTable(d)
			}
			l.tables = append(l.tables, newTableSource(f, d, shared.fast[d]))
		}
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return l, nil
}

func (l *Lights) addCosine(f Fixture, d CosinePower, powers map[float64]*powerTable) {
	if d.ppf == 0 {
		return
	}
	axis := f.Aim.Axis()
	if f.Length > 0 {
		l.bars = append(l.bars, barSource{at: f.At, along: f.Aim.along(), axis: axis, half: f.Length / 2, m: d.m, scale: d.axial() / f.Length})
		return
	}
	if d.m == 1 && axis == (Vector{0, 0, -1}) {
		l.down = append(l.down, downSource{f.At.X, f.At.Y, f.At.Z, d.axial()})
		return
	}
	p := (d.m + 3) / 2
	t, ok := powers[p]
	if !ok {
		t = newPowerTable(p)
		powers[p] = t
	}
	l.power = append(l.power, powerSource{f.At.X, f.At.Y, f.At.Z, axis.X, axis.Y, axis.Z, d.axial(), t, p})
}

// block is how many points are mapped at a time: they stay in the nearest
// cache while all fixtures pass over them, and cores share out blocks.
const block = 512

// MapTo writes the PPFD in µmol/(m² s) at each point to dst and returns it: the
// direct light of all fixtures, Σ I cos φ/r², exact to 1e-9. A nil dst is
// allocated; otherwise its length must be that of the points, or MapTo panics,
// and nothing is allocated. Level points must lie below every fixture; a
// fixture at or below them, or a point of any tilt on a fixture, is refused
// with an error that matches ErrRange, and dst then holds no map.
func (l *Lights) MapTo(dst []float64, p *Points) ([]float64, error) {
	dst, err := l.ready(dst, p)
	if err != nil {
		return dst, err
	}
	for lo := 0; lo < len(dst); lo += block {
		l.mapBlock(dst, p, lo, min(lo+block, len(dst)))
	}
	return dst, checkFinite(dst, p)
}

// ready returns room for the map; it refuses what no constructor made, and
// lights that do not hang above level points.
func (l *Lights) ready(dst []float64, p *Points) ([]float64, error) {
	switch {
	case l == nil || !l.made:
		return dst, fmt.Errorf("lights that NewLights did not make: %w", ErrRange)
	case p.Len() == 0:
		return dst, fmt.Errorf("no points: make them with Bed.Grid, Bed.GridFor or NewPoints: %w", ErrRange)
	}
	if dst == nil {
		dst = make([]float64, p.Len())
	}
	if len(dst) != p.Len() {
		panic("lighting: dst and points differ in length")
	}
	if p.level && !(l.lowest > p.top) {
		return dst, clearanceRange.Check(fmt.Sprintf("height of fixtures[%d] above the plane", l.low), l.lowest-p.top)
	}
	return dst, nil
}

func checkFinite(dst []float64, p *Points) error {
	for i, v := range dst {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			a := p.At(i)
			return fmt.Errorf("point %d at (%g, %g, %g) m touches a fixture: %w", i, a.X, a.Y, a.Z, ErrRange)
		}
	}
	return nil
}

// mapBlock fills dst[lo:hi], run by run of points that differ in x alone.
func (l *Lights) mapBlock(dst []float64, p *Points, lo, hi int) {
	clear(dst[lo:hi])
	var b rays // working space of addTable
	k := sort.SearchInts(p.ends, lo+1)
	for lo < hi {
		end := min(hi, p.ends[k])
		r := run{out: dst[lo:end], x: p.x[lo:end], y: p.y[lo], z: p.z[lo], n: p.normal(lo)}
		if r.n == up {
			r.addDown(l.down)
		} else {
			for i := range l.down {
				s := &l.down[i]
				r.addLambert(&powerSource{x: s.x, y: s.y, z: s.z, az: -1, intensity: s.intensity})
			}
		}
		for i := range l.power {
			switch s := &l.power[i]; {
			case s.exponent == 2:
				r.addLambert(s)
			case s.power != nil:
				r.addPower(s)
			default:
				r.addSteep(s)
			}
		}
		for i := range l.tables {
			r.addTable(&l.tables[i], &b)
		}
		for i := range l.bars {
			for j, x := range r.x {
				r.out[j] += l.bars[i].ppfd(x, r.y, r.z, r.n.X, r.n.Y, r.n.Z)
			}
		}
		lo = end
		k++
	}
}

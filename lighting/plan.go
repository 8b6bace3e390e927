package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/optimize"
)

// Maintenance is what is left of the first day's light, as in the maintenance
// factor of interior lighting [CieMaint05].
type Maintenance struct {
	Flux      float64 // fraction of the flux left in each fixture
	Survival  float64 // fraction of the fixtures still lit
	Luminaire float64 // fraction that dirt on the fixtures lets through
	Surfaces  float64 // fraction left by dirt on the room's surfaces
}

// Factor returns the product of the four, fraction.
func (m Maintenance) Factor() float64 { return m.Flux * m.Survival * m.Luminaire * m.Surfaces }

// Check reports every factor outside 0.1 to 1.
func (m Maintenance) Check() error {
	r := domain.Range{Min: 0.1, Max: 1, Unit: "fraction"}
	return errors.Join(r.Check("flux maintenance", m.Flux), r.Check("survival", m.Survival), r.Check("luminaire maintenance", m.Luminaire), r.Check("surface maintenance", m.Surfaces))
}

// Need says what a plan shall reach.
type Need struct {
	PPFD        float64     // µmol/(m² s), mean at harvest, after maintenance
	U0          float64     // minimum/mean to reach, fraction
	Maintenance Maintenance // from the first day to harvest
	Fixture     Fixture     // the fixture to repeat: light, aim, length and power
	Bed         Bed         // the plane of the crop
	MinHeight   float64     // m, least height above the bed
	MaxHeight   float64     // m, greatest height above the bed
	MaxCount    int         // most fixtures
	Room        *Room       // the room whose reflected light counts; nil for direct light alone
}

// Plan is a layout that reaches a need.
type Plan struct {
	Layout       Layout     // the fixtures
	Height       float64    // m above the bed
	SpacingX     float64    // m between fixtures along x
	SpacingY     float64    // m between fixtures along y
	Columns      int        // count along x
	Rows         int        // count along y
	FirstDay     Statistics // of the new layout
	Harvest      Statistics // of the first day times the maintenance factor
	Utilisation  float64    // fraction of the photons that fall on the bed, direct light
	Reflected    float64    // fraction of the first day's mean that is reflected light
	Power        float64    // W at full output
	PowerDensity float64    // W/m² of bed
}

// FixturesNeeded returns the count of fixtures, not rounded, for the mean ppfd,
// µmol/(m² s), at least 0, over area, m², above 0, from fixtures of ppf each,
// µmol/s, above 0, of whose photons the fraction utilisation, above 0 to 1,
// reaches the bed, with the maintenance factor maintenance, above 0 to 1:
// N = E A/(PPF UF MF). NaN outside.
func FixturesNeeded(ppfd, area, ppf, utilisation, maintenance float64) float64 {
	if !(ppfd >= 0) || !(area > 0) || !(ppf > 0) || !(utilisation > 0 && utilisation <= 1) || !(maintenance > 0 && maintenance <= 1) {
		return math.NaN()
	}
	return ppfd * area / (ppf * utilisation * maintenance)
}

func (n Need) check() error {
	errs := []error{
		domain.Range{Min: 1, Max: 3000, Unit: "µmol/(m² s)"}.Check("PPFD", n.PPFD),
		domain.Range{Min: 0, Max: 0.99, Unit: "fraction"}.Check("U0", n.U0),
		n.Maintenance.Check(), n.Fixture.check("fixture"), n.Bed.Check(),
		heightRange.Check("least height", n.MinHeight), heightRange.Check("greatest height", n.MaxHeight),
	}
	if n.MinHeight > n.MaxHeight {
		errs = append(errs, &RangeError{Field: "least height", Value: n.MinHeight, Min: heightRange.Min, Max: n.MaxHeight, Unit: "m"})
	}
	if n.MaxCount < 1 || n.MaxCount > 10000 {
		errs = append(errs, &RangeError{Field: "most fixtures", Value: float64(n.MaxCount), Min: 1, Max: 10000, Unit: "(count)"})
	}
	if n.Room != nil {
		errs = append(errs, n.Room.Check(), n.Room.holds(nil, n.Bed),
			domain.Range{Min: heightRange.Min, Max: n.Room.Height - n.Bed.Z, Unit: "m", Source: "within the room"}.Check("greatest height", n.MaxHeight))
	}
	if n.Fixture.PPF() == 0 {
		errs = append(errs, &RangeError{Field: "fixture PPF", Value: 0, Min: ppfRange.Min, Max: ppfRange.Max, Unit: "µmol/s", Source: "more than 0"})
	}
	return errors.Join(errs...)
}

// Find returns the plan with the fewest fixtures whose mean and evenness after
// maintenance reach the need: for each count, from what the photons demand
// upwards, and each way to set it in rows, height and spacings are chosen by a
// simplex search for the highest evenness at the wanted mean.
//
// The search goes by direct light. With a Room, what its surfaces add to the
// plan found is taken off the wanted mean, and the search goes on until the
// plan reaches the need with 16 patches along a side of each face.
//
// ErrNoSolution tells that no plan of up to MaxCount fixtures does, and how
// near the best came.
func (n Need) Find() (Plan, error) {
	if err := n.check(); err != nil {
		return Plan{}, err
	}
	if n.Room == nil {
		return n.find(n.PPFD)
	}
	var p Plan
	var err error
	for range planRounds {
		share := p.Reflected
		if p, err = n.find(n.PPFD * (1 - share)); err != nil {
			return p, err
		}
		if err = n.judge(&p, &tables{}, true); err != nil {
			return p, err
		}
		// The first round, for direct light alone, takes more than it needs.
		if reached := n.lack(p.Harvest.Mean, p.Harvest.U0) <= 0; reached && share > 0 || p.Reflected == 0 {
			return p, nil
		}
	}
	return p, fmt.Errorf("%w: after %d rounds of adding reflected light %.4g µmol/(m² s) with U0 %.3g at harvest", ErrNotConverged, planRounds, p.Harvest.Mean, p.Harvest.U0)
}

const (
	planRounds  = 8  // of adding reflected light
	planPatches = 16 // along a side of each face
)

// lack is how far mean, µmol/(m² s), and evenness at harvest fall short, 0 or
// less when both are reached.
func (n Need) lack(mean, u0 float64) float64 { return math.Max((n.PPFD-mean)/n.PPFD, n.U0-u0) }

// find is Find by direct light, for the mean ppfd.
func (n Need) find(ppfd float64) (Plan, error) {
	n.PPFD = ppfd
	factor, shared := n.Maintenance.Factor(), &tables{}
	least := int(math.Ceil(FixturesNeeded(n.PPFD, n.Bed.Area(), n.Fixture.PPF(), 1, factor) * (1 - 1e-9)))
	var best Plan
	miss := math.Inf(1)
	for count := max(least, 1); count <= n.MaxCount; count++ {
		found := math.Inf(1)
		for rows := 1; rows <= count; rows++ {
			if count%rows != 0 || !n.sensible(count/rows, rows) {
				continue
			}
			p, lack := n.tune(count/rows, rows, shared)
			if lack < found {
				found = lack
				if lack < miss || lack <= 0 {
					best, miss = p, lack
				}
			}
		}
		if found <= 0 {
			return best, nil
		}
	}
	if best.Layout == nil {
		return Plan{}, fmt.Errorf("%w: the photons alone ask for %d fixtures, %d are allowed", ErrNoSolution, least, n.MaxCount)
	}
	return best, fmt.Errorf("%w: up to %d fixtures reach at best %.4g µmol/(m² s) with U0 %.3g at harvest", ErrNoSolution, n.MaxCount, best.Harvest.Mean, best.Harvest.U0)
}

// sensible keeps rows and columns to spacings within a factor of four.
func (n Need) sensible(columns, rows int) bool {
	ratio := n.Bed.Length / float64(columns) / (n.Bed.Width / float64(rows))
	return ratio <= 4 && ratio >= 0.25 || columns == 1 || rows == 1
}

// tune sets height and the two spacings of columns by rows fixtures; lack is
// how far mean and evenness fall short, 0 or less when both are reached.
func (n Need) tune(columns, rows int, shared *tables) (Plan, float64) {
	lack := func(x []float64) float64 {
		p, err := n.place(columns, rows, x)
		if err != nil {
			return math.Inf(1)
		}
		_, _, ppfd, err := n.light(&p, shared)
		if err != nil {
			return math.Inf(1)
		}
		mean := floats.Sum(ppfd) / float64(len(ppfd))
		return n.lack(mean*n.Maintenance.Factor(), floats.Min(ppfd)/mean)
	}
	best, miss := []float64(nil), math.Inf(1)
	for _, h := range [3]float64{-1.5, 0, 1.5} {
		settings := &optimize.Settings{FuncEvaluations: 90, Converger: &optimize.FunctionConverge{Absolute: 1e-4, Iterations: 15}}
		result, err := optimize.Minimize(optimize.Problem{Func: lack}, []float64{h, 0, 0}, settings, &optimize.NelderMead{})
		if result == nil || err != nil && result.X == nil {
			continue
		}
		if result.F < miss {
			best, miss = result.X, result.F
		}
		if miss <= 0 || miss > hopeless {
			break
		}
	}
	if best == nil {
		return Plan{}, miss
	}
	p, err := n.place(columns, rows, best)
	if err == nil {
		err = n.judge(&p, shared, false)
	}
	if err != nil {
		return Plan{}, math.Inf(1)
	}
	return p, n.lack(p.Harvest.Mean, p.Harvest.U0)
}

// hopeless is the lack after one search from which no other start is tried.
const hopeless = 0.2

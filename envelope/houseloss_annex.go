package envelope

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// AnnexPlan says how an annex of the shape is built and kept.
type AnnexPlan struct {
	Covers      map[FacetKind]Cover // cover of each kind of facet against the air
	PartitionU  float64             // W/(m² K), 0 to 30, air to air, of the wall shared with the house, above grade and below
	AirChanges  float64             // air changes per hour, 0 to 60, of the annex with the outside
	Humidity    float64             // fraction, 0 to 1, relative humidity in the annex
	Heated      bool                // held at Temperature; otherwise it floats
	Temperature float64             // °C, -60 to 60, read when Heated
	Ground      Ground              // floor and buried walls; its geometry is filled in from the shape
}

// AnnexLoss is what an annex does in one hour.
type AnnexLoss struct {
	Name        string  // of the annex
	Temperature float64 // °C, -60 to 60, held or found
	Partition   float64 // W, from the house through the shared wall, above grade and below
	Cover       float64 // W, lost through its own covers
	Ground      float64 // W, into the ground, of the month, which has settled to the annex's annual mean
	Leakage     float64 // W, sensible
	Heating     float64 // W, that holds Temperature; 0 when it floats
}

// floatRange holds the temperature in °C of an annex without heating.
var floatRange = domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the cover solver"}

func (h *House) checkAnnexes() (faults []error) {
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	p := &h.plan
	want := float64(len(p.Shape.Annexes))
	check(domain.Range{Min: want, Max: want, Unit: "annexes", Source: "one for each annex of the shape"}, "number of Annexes", float64(len(p.Annexes)))
	if len(faults) > 0 {
		return faults
	}
	for i := range p.Annexes {
		a, s := &p.Annexes[i], &p.Shape.Annexes[i]
		at := fmt.Sprintf("Annexes[%d].", i)
		covers, bad := coversOf(s.Facets, a.Covers, at+"Covers")
		faults = append(faults, bad...)
		h.annexCovers = append(h.annexCovers, covers)
		check(uRange, at+"PartitionU", a.PartitionU)
		check(airChangesRange, at+"AirChanges", a.AirChanges)
		check(fractionRange, at+"Humidity", a.Humidity)
		if a.Heated {
			check(coverTemperatureRange, at+"Temperature", a.Temperature)
		}
		g := a.Ground
		g.Area, g.Perimeter, g.Depth = s.FloorArea, s.Perimeter, s.Annex.Depth
		r, err := g.Solve()
		if err != nil {
			faults = append(faults, domain.Within(at+"Ground", err))
		}
		h.annex = append(h.annex, r)
	}
	return faults
}

// A year's mean weather over an annex, for the heat that its ground has taken up
// (chosen).
const (
	annexWind = 2.0 // m/s
	annexSky  = 8.0 // K below the air
)

// floatAnnexes finds the annual mean temperature of each annex, to which its
// ground has settled: that held, or the one at which it floats between the
// annual means inside and outside.
func (h *House) floatAnnexes() error {
	c := &h.plan.Climate
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.Wind, k.SkyDrop = c.InsideMean, c.OutsideMean, annexWind, annexSky
	for i := range h.plan.Annexes {
		t := h.plan.Annexes[i].Temperature
		if !h.plan.Annexes[i].Heated {
			var err error
			if t, err = h.floats(i, &k, nan, newAnnexNear(len(h.plan.Shape.Annexes[i].Facets))); err != nil {
				return err
			}
		}
		h.annexMean = append(h.annexMean, t)
	}
	return nil
}

// exposed returns the rim in m of the house's floor that is exposed to the
// outside and the area in m² of its buried walls that stands against an annex:
// the wall to a heated annex is no rim, that to another is, [IsoGround17] 5, but
// what an annex has been dug out of touches no soil. A twentieth of the rim
// always counts, so that a house among heated rooms keeps one.
func exposed(p *HousePlan) (rim, shared float64) {
	rim = p.Shape.Perimeter
	for i := range p.Annexes {
		if i >= len(p.Shape.Annexes) {
			break
		}
		if s := &p.Shape.Annexes[i]; p.Annexes[i].Heated {
			rim -= s.Annex.Width
		} else {
			shared += s.Sunken
		}
	}
	rim = max(rim, leastRim*p.Shape.Perimeter)
	return rim, min(shared, rim*p.Shape.Depth)
}

const leastRim = 0.05

// annexes finds the temperature and the loss of each annex.
func (h *House) annexes(dst *HouseLoss, k *HouseConditions) error {
	if len(dst.annexNear) != len(h.plan.Annexes) {
		dst.annexNear = nil
		for i := range h.plan.Annexes {
			dst.annexNear = append(dst.annexNear, newAnnexNear(len(h.plan.Shape.Annexes[i].Facets)))
		}
	}
	for i := range h.plan.Annexes {
		a := &h.plan.Annexes[i]
		t, near := a.Temperature, dst.annexNear[i]
		if !a.Heated {
			var err error
			if t, err = h.floats(i, k, h.annexMean[i], near); err != nil {
				return err
			}
		}
		x, err := h.annexAt(i, k, t, h.annexMean[i], near)
		if err != nil {
			return fmt.Errorf("Annexes[%d]: %w", i, err)
		}
		if a.Heated {
			x.Heating = x.Cover + x.Ground + x.Leakage - x.Partition
		}
		dst.Annexes = append(dst.Annexes, x)
		dst.Partitions += x.Partition
	}
	return nil
}

// annexNear is where the search for an annex begins: its last temperature in °C,
// NaN of none, with the slope of its balance there, and the iterates of its covers.
type annexNear struct {
	temperature float64
	slope       float64 // W/K, of what it loses less what it gets
	covers      []nearCover
}

func newAnnexNear(facets int) *annexNear {
	near := annexNear{temperature: nan, covers: make([]nearCover, facets)}
	space := new(system)
	for i := range near.covers {
		near.covers[i].space = space
	}
	return &near
}

// Search for the temperature of an annex.
const (
	floatStep  = 0.1   // K, between the first two temperatures
	floatTold  = 1e-4  // K, between two that tell the slope
	floatSteps = 8     // secants from the last temperature; four are usual
	floatLimit = 1e-10 // K, last step of the secants
	floatRoot  = 1e-9  // K, to which the bracket narrows: worth 1e-6 W in a large annex
)

// floats returns the temperature in °C of annex i without heating, whose ground
// has settled to the annual mean in °C, or NaN for the temperature itself. The
// balance is nearly straight: secants from the last temperature find it, else a
// bracket does.
func (h *House) floats(i int, k *HouseConditions, mean float64, near *annexNear) (float64, error) {
	var inner error
	off := func(t float64) float64 {
		x, err := h.annexAt(i, k, t, mean, near)
		if err != nil {
			inner = err
			return math.NaN()
		}
		return x.Cover + x.Ground + x.Leakage - x.Partition
	}
	if a := near.temperature; floatRange.Contains(a) {
		b, fa := a+floatStep, off(a)
		for range floatSteps {
			fb := off(b)
			next := b - fb*(b-a)/(fb-fa)
			if !floatRange.Contains(next) {
				break
			}
			if math.Abs(b-a) > floatTold {
				near.slope = (fb - fa) / (b - a)
			}
			if math.Abs(next-b) <= floatLimit {
				near.temperature = next
				return next, nil
			}
			a, fa, b = b, fb, next
		}
		inner = nil
	}
	t, err := solve.Root(off, floatRange.Min, floatRange.Max, floatRoot)
	if inner != nil {
		return t, fmt.Errorf("Annexes[%d]: %w", i, inner)
	}
	if err != nil {
		return t, fmt.Errorf("Annexes[%d], temperature without heating: %w", i, beyond(off, err))
	}
	near.temperature, near.slope = t, (off(t+floatStep)-off(t-floatStep))/(2*floatStep)
	return t, nil
}

// partitionSlope returns by how much the heat into annex i grows, W/K, as the house
// is warmer: an annex that floats follows.
func (h *House) partitionSlope(i int, near *annexNear) float64 {
	a, s := &h.plan.Annexes[i], &h.plan.Shape.Annexes[i]
	between := a.PartitionU * (s.Partition + s.Sunken)
	if a.Heated || !(near.slope > between) {
		return between
	}
	return between * (1 - between/near.slope)
}

// beyond returns the fault of an annex whose heat balances outside floatRange alone,
// as by the line through its end and a kelvin within; else err.
func beyond(off func(float64) float64, err error) error {
	end, within := floatRange.Min, floatRange.Min+1
	if off(end) < 0 {
		end, within = floatRange.Max, floatRange.Max-1
	}
	a, b := off(end), off(within)
	t := end - a*(within-end)/(b-a)
	if fault := floatRange.Check("Temperature", t); fault != nil {
		return fault
	}
	return err
}

// annexAt returns the terms of annex i at the temperature t in °C; mean is as
// in floats.
func (h *House) annexAt(i int, k *HouseConditions, t, mean float64, near *annexNear) (AnnexLoss, error) {
	a, s := &h.plan.Annexes[i], &h.plan.Shape.Annexes[i]
	r := AnnexLoss{Name: s.Annex.Name, Temperature: t}
	r.Partition = a.PartitionU * (s.Partition + s.Sunken) * (k.Inside - t)
	one := k.CoverConditions
	one.Inside, one.RadiantRise, one.InsideHumidity, one.InnerFace = t, 0, a.Humidity, InnerDry
	one.AbsorbedSun = [MaxLayers]float64{}
	room := newRoomAir(&one)
	var x Solution
	var last *Facet
	for j := range s.Facets {
		f := &s.Facets[j]
		if f.Kind.InGround() {
			continue
		}
		one.Tilt, one.Height = f.Tilt, f.Height
		if last == nil || last.Kind != f.Kind || last.Tilt != f.Tilt || last.Height != f.Height { // the two cheeks are alike
			c := h.annexCovers[i][j].set
			if err := one.check(c.n); err != nil {
				return r, err
			}
			if err := c.solve(&one, &standard, &room, &near.covers[j], &x); err != nil {
				return r, err
			}
		}
		last = f
		r.Cover += f.Area * x.FluxIn
	}
	c := h.plan.Climate
	if c.InsideMean, c.InsideSwing = mean, 0; math.IsNaN(mean) {
		r.Ground = h.annex[i].Total * (t - c.OutsideMean)
	} else {
		r.Ground = h.annex[i].Flow(c, k.Month).Total
	}
	air := standard.air(k.Outside+constant.ZeroCelsius, k.Pressure)
	volume := a.AirChanges * s.Volume / secondsPerHour * (k.Outside + constant.ZeroCelsius) / (t + constant.ZeroCelsius)
	r.Leakage = volume * air.Density * air.HeatCapacity * (t - k.Outside)
	return r, nil
}

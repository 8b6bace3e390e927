package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// InletJet says how the air enters by one opening of a network.
type InletJet struct {
	Shape    InletShape // of each vent
	Count    int        // equal vents that the opening stands for
	Length   float64    // m, more than 0, at most 200; of a slot, that of all Count vents; not used for CompactInlet
	Angle    float64    // degree above the horizontal at which the air enters, -90 to 60
	Reach    float64    // m, 0.01 to 500, level distance to the wall or row that stops the jet
	Velocity float64    // dimensionless, 1 to 10, decay factor K of the speed
	Thermal  float64    // dimensionless, 1 to 10, decay factor KT of the temperature difference
}

// DefaultInletJet returns one vent of the given shape with the decay factors
// of plain openings; Length, Angle and Reach are still to be set.
func DefaultInletJet(shape InletShape) InletJet {
	j := defaultColdJet(shape)
	return InletJet{Shape: shape, Count: 1, Velocity: j.Velocity, Thermal: j.Thermal}
}

// ColdVents is a warm house with vents towards cold air.
type ColdVents struct {
	Network  *Network   // the house with every vent wholly open; leaks and fans as they are
	Jets     []InletJet // how air enters, one for each opening of Network, in its order
	Inside   float64    // °C, -60 to 80, house air
	Outside  float64    // °C, -60 to Inside, and no more than 80 K colder
	Pressure float64    // Pa, 60000 to 110000
	Wind     float64    // m/s, 0 to 45, at the height to which the pressure coefficients refer
	Crop     float64    // m, -10 to 50, above the datum of the network, top of the crop
	Limit    float64    // °C, -60 to Inside, chill limit of the crop
}

// ColdInlet is what enters by one opening.
type ColdInlet struct {
	Flow float64 // kg/s, inward; zero where the opening is shut or lets air out alone
	Drop float64 // m, from the middle of the part that lets air in to the crop; zero if that lies at the crop or below
	Jet  ColdJet // of each of its vents
	Fall Fall    // at the crop
}

// ColdAir is the answer of ColdVents for one setting of the vents.
type ColdAir struct {
	Fractions []float64   // fraction of each opening's area that is open
	Air       Balance     // with the flow of each opening, leak and fan of the whole network
	Inlets    []ColdInlet // one for each opening
	Coldest   float64     // °C, lowest on the axis of a jet at the crop; the house air's if no vent lets air in
	By        int         // index of the opening that brings it, -1 if none does
	Chill     bool        // Coldest lies below the limit: the crop under it is in danger
}

// check joins every fault of v, by field.
func (v ColdVents) check() error {
	faults := []error{
		temperatureRange.Check("Inside", v.Inside),
		pressureRange.Check("Pressure", v.Pressure),
		windRange.Check("Wind", v.Wind),
		heightRange.Check("Crop", v.Crop),
		domain.Range{Min: math.Max(temperatureRange.Min, v.Inside+inletExcessRange.Min), Max: v.Inside, Unit: "°C", Source: "no warmer than the house, nor colder by more than 80 K"}.Check("Outside", v.Outside),
		domain.Range{Min: temperatureRange.Min, Max: v.Inside, Unit: "°C", Source: "no warmer than the house"}.Check("Limit", v.Limit),
	}
	if v.Network == nil || len(v.Network.paths) == 0 {
		return errors.Join(append(faults, fmt.Errorf("Network: %w: none given, NewNetwork makes one", ErrRange))...)
	}
	if n := len(v.Network.openings); len(v.Jets) != n {
		return errors.Join(append(faults, &RangeError{Field: "number of Jets", Value: float64(len(v.Jets)), Min: float64(n), Max: float64(n), Unit: "count", Source: "one for each opening"})...)
	}
	for i, j := range v.Jets {
		where := place("Jets", i, v.Network.openings[i].Name)
		faults = append(faults, enumFault(where+".Shape", "InletShape", inletShapeNames, uint8(j.Shape)))
		if j.Shape == SlotInlet {
			faults = append(faults, openFreeAreaRange.Check(where+".Length", j.Length))
		}
		if j.Count < 1 {
			faults = append(faults, &RangeError{Field: where + ".Count", Value: float64(j.Count), Min: 1, Max: math.Inf(1), Unit: "count"})
		}
		faults = append(faults,
			inletAngleRange.Check(where+".Angle", j.Angle),
			reachRange.Check(where+".Reach", j.Reach),
			inletFactorRange.Check(where+".Velocity", j.Velocity),
			inletFactorRange.Check(where+".Thermal", j.Thermal),
		)
	}
	return errors.Join(faults...)
}

// At returns the cold air at the crop with each opening at the
// fraction of its area that fractions gives, fraction, 0 to 1. The flow is that of Network.Solve for
// dry air; each inflow is one jet or Count of them, and jets do not meet. Of a
// tall opening with air both ways the part below its own neutral level counts;
// a gap or speed below the range of ColdJet counts as its least.
// Leaks let in air too, but their jets are spent before they reach the crop.
// The error joins every fault by field.
func (v ColdVents) At(fractions []float64) (ColdAir, error) {
	err := v.check()
	if v.Network != nil && len(fractions) != len(v.Network.openings) {
		n := float64(len(v.Network.openings))
		err = errors.Join(err, &RangeError{Field: "number of fractions", Value: float64(len(fractions)), Min: n, Max: n, Unit: "count", Source: "one for each opening"})
	}
	for i, f := range fractions {
		err = errors.Join(err, openRange.Check(fmt.Sprintf("fractions[%d]", i), f))
	}
	if err != nil {
		return ColdAir{}, err
	}
	return v.at(fractions)
}

// at is At for sound input.
func (v ColdVents) at(fractions []float64) (ColdAir, error) {
	c, err := DrySides{Inside: v.Inside, Outside: v.Outside, Pressure: v.Pressure, Wind: v.Wind}.Conditions()
	if err != nil {
		return ColdAir{}, err
	}
	a := ColdAir{Fractions: append([]float64(nil), fractions...), Inlets: make([]ColdInlet, len(v.Jets)), Coldest: v.Inside, By: -1}
	if a.Air, err = v.Network.openedTo(fractions, c); err != nil {
		return ColdAir{}, err
	}
	for i := range v.Jets {
		in := a.Air.Paths[i]
		if !(in.In > 0) {
			continue
		}
		o := v.Network.openings[i]
		o.Area *= fractions[i]
		n := v.inlet(i, o, in, c)
		if err := n.Jet.check(); err != nil {
			return ColdAir{}, fmt.Errorf("the jet of %s: %w", place("openings", i, o.Name), err)
		}
		a.Inlets[i] = n
		if t := n.Fall.Coldest; t < a.Coldest || a.By < 0 {
			a.Coldest, a.By = t, i
		}
	}
	a.Chill = a.Coldest < v.Limit
	return a, nil
}

// inlet makes the jet of opening i as it stands, o, with the flow f.
func (v ColdVents) inlet(i int, o Opening, f PathFlow, c FlowConditions) ColdInlet {
	j := v.Jets[i]
	share, middle := 1.0, o.Height
	if f.Out > 0 { // its drive vanishes at level, inside it; the heavy air enters below
		level := o.Height - f.Drive/buoyancy(c)
		bottom := o.Height - 0.5*o.Vertical
		share, middle = (level-bottom)/o.Vertical, 0.5*(level+bottom)
	}
	effective := o.Discharge * o.Area * share
	n := ColdInlet{Flow: f.In, Drop: math.Max(0, middle-v.Crop)}
	n.Jet = ColdJet{
		Shape: j.Shape, Speed: f.In / (c.OutsideDensity * effective), Excess: v.Outside - v.Inside, House: v.Inside,
		Angle: j.Angle, Velocity: j.Velocity, Thermal: j.Thermal,
	}
	if j.Shape == SlotInlet {
		n.Jet.Size = effective / j.Length
	} else {
		n.Jet.Size = math.Sqrt(effective / float64(j.Count))
	}
	n.Jet.Size = math.Max(n.Jet.Size, inletSizeRange.Min)
	n.Jet.Speed = math.Max(n.Jet.Speed, inletSpeedRange.Min)
	n.Fall = n.Jet.Fall(n.Drop, j.Reach)
	return n
}

// openedTo solves the network with each opening at the fraction of its area;
// those shut are left out, and have no flow in the answer. The pressures alone
// count: what gusts exchange is no steady jet.
func (n *Network) openedTo(fractions []float64, c FlowConditions) (Balance, error) {
	part := &Network{}
	var at []int
	for i, p := range n.paths {
		if i < len(n.openings) {
			f := fractions[i]
			if f == 0 {
				continue
			}
			o := n.openings[i]
			o.Area *= f
			o.Viscous /= f
			p = o.path()
		}
		part.paths, at = append(part.paths, p), append(at, i)
	}
	b := Balance{Pressure: math.NaN(), Neutral: math.NaN()}
	ways := 0
	for _, p := range part.paths {
		if p.kind != fanPath {
			ways++
		}
	}
	var err error
	if ways > 0 {
		b, err = part.Solve(c)
	}
	flows := b.Paths
	b.Paths = make([]PathFlow, len(n.paths))
	for k, f := range flows {
		b.Paths[at[k]] = f
	}
	return b, err
}

package envelope

import (
	"errors"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// HouseConditions are the boundary conditions of a house for one hour. Tilt, Height and
// AbsorbedSun of the embedded CoverConditions are not read: each facet has its own.
type HouseConditions struct {
	CoverConditions                      // air, sky, wind and correlations, the same for all facets
	OutsideHumidity float64              // fraction, 0 to 1, relative humidity of the outside air
	ScreenDrawn     bool                 // the Screened covers stand in for the others
	Month           float64              // number of the month, 0.5 to 12.5, for the ground: 1 the mean of January
	Sun             [][MaxLayers]float64 // W/m², absorbed in each layer of each facet, see SolarGain.Sun; nil at night
}

// DefaultHouseConditions returns DefaultCoverConditions in January with 85 %
// outside, no screen and no sun, and a face that is wet where it lies below
// the dew point.
func DefaultHouseConditions() HouseConditions {
	k := HouseConditions{CoverConditions: DefaultCoverConditions(), OutsideHumidity: 0.85, Month: 1}
	k.InnerFace = InnerAuto
	return k
}

// FacetLoss is what one facet against the air does.
type FacetLoss struct {
	Facet            int       // index in Shape.Facets
	Kind             FacetKind // part of the house
	Name             string    // kind and compass direction
	Area             float64   // m², doors taken off
	Loss             float64   // W, that the heater pays for, the sum of the three below
	AirDriven        float64   // W, driven by the inside against the outside air
	SkyDriven        float64   // W, because sky and ground are not at the outside air temperature
	SunDriven        float64   // W, because of absorbed sun, negative as a gain
	Latent           float64   // W, part of AirDriven: what evaporates the condensate again at the temperature of the inside air
	U                float64   // W/(m² K), air to air, sky included; NaN at equal temperatures
	UOvercast        float64   // W/(m² K), with the sky at air temperature
	InnerTemperature float64   // °C, of the inner face, wet if it is
	Drips            bool      // water gathers on the inner face, or would if it were not declared dry
	Frosts           bool      // frost gathers on it; at 0.01 °C both may
	DripsAbove       bool      // vapour that leaks through a screen condenses above it; not counted
	DripHumidity     float64   // fraction, relative humidity inside above which the dry inner face drips; above 1 it never does
	Condensate       float64   // kg/s; negative while a declared wet face dries, 0 on a face taken as dry
	TwoStates        bool      // the facet passes heat radiation and could be dry, or wet in part, as well as wet: it is taken as wet
	DryLoss          float64   // W, Loss of its other, drier state where there are two, else Loss
	Solution         Solution  // every face, gap and coefficient
}

// HouseLoss is the heat a house loses in one hour with its terms, as far as the
// heater pays for it: vapour that condenses counts with the heat that evaporates
// it again in the house, and nothing for freezing. Total is the sum of Cover,
// Frame, Doors, Bridges, Ground.Total, Leakage.Total and Partitions. Latent is
// the part of it that only evaporation in the house sustains, and Evaporation
// is how much that is: where nothing evaporates so much, the humidity is lower
// than was asked, see SolveVapour.
type HouseLoss struct {
	Facets      []FacetLoss // facets against the air
	Cover       float64     // W, of all facets, without doors
	CoverAir    float64     // W, air-driven part of Cover
	CoverSky    float64     // W, sky-driven part of Cover
	CoverSun    float64     // W, sun-driven part of Cover
	Frame       float64     // W, allowance for bars and profiles, on the air- and sky-driven loss of roof and walls
	Doors       float64     // W, with vapour that condenses on them
	Bridges     float64     // W
	Ground      GroundFlow  // W, month's mean
	Leakage     LeakageFlow // W, sensible and latent
	Annexes     []AnnexLoss // lobby, plant room
	Partitions  float64     // W, from the house into its annexes
	Total       float64     // W
	Latent      float64     // W, part of Total carried by vapour: condensation on covers, frame and doors, and leakage
	DryTotal    float64     // W, Total with the drier state of each facet that has two: it governs the size of the heater where it is larger
	PerFloor    float64     // W/m², Total over the floor area
	Coefficient float64     // W/K, Total over inside less outside air; NaN at equal temperatures
	Dripping    int         // count of facets where water gathers
	Frosting    int         // count of facets where frost gathers
	Condensate  float64     // kg/s, water and frost on all facets, their frame and the doors
	Evaporation float64     // kg/s, that holds the humidity inside: Condensate and what the leakage carries off more than it brings
	Linear      LinearLoss  // the loss near this state

	// RadiantResidual is by how much, in W/m², what a facet sees may miss what the
	// others send: 1e-8, more where a cover jumps between two states.
	RadiantResidual float64

	mutual []mutual    // used again from hour to hour, where the search begins
	floor  float64     // W/m², emission of the floor then
	near   []nearCover // of each facet, the iterates from which it is sought
	table  []float64   // space

	annexNear []*annexNear // where the search for each annex begins
}

// Loss returns the heat that the house loses in the conditions k. The error
// joins a *RangeError for each field out of range.
func (h *House) Loss(k HouseConditions) (HouseLoss, error) {
	var r HouseLoss
	err := h.LossTo(&r, &k)
	return r, err
}

// LossTo is Loss that writes to dst and uses its slices again: no allocation
// from the second hour on. Facets are sought from what dst holds of the hour
// before, which changes the answer by no more than is left open: RadiantResidual
// where facets see each other, else 1e-9 W/m². On an error dst is undefined.
func (h *House) LossTo(dst *HouseLoss, k *HouseConditions) error {
	t := together{h: h, dst: dst, k: *k}
	var err error
	if t.inside, t.outside, err = h.states(k); err != nil {
		return err
	}
	t.air = roomOf(t.inside)
	dst.clear()
	t.begin()
	for {
		if err := t.settle(); err != nil {
			return err
		}
		if !t.judge() {
			return t.total()
		}
	}
}

// clear empties the loss but for what serves the next hour.
func (r *HouseLoss) clear() {
	*r = HouseLoss{Facets: r.Facets[:0], Annexes: r.Annexes[:0], mutual: r.mutual, floor: r.floor, near: r.near, table: r.table, annexNear: r.annexNear}
}

// total sums what the facets, once solved, and all else of the house do.
func (t *together) total() (err error) {
	h, dst, k := t.h, t.dst, &t.k
	p := &h.plan
	inside, outside, room := t.inside, t.outside, &t.air
	t.split()
	linear := LinearLoss{Inside: k.Inside, Outside: k.Outside}
	for i := range dst.Facets {
		r := &dst.Facets[i]
		dst.Cover += r.Loss
		dst.CoverAir += r.AirDriven
		dst.CoverSky += r.SkyDriven
		dst.CoverSun += r.SunDriven
		if r.Drips {
			dst.Dripping++
		}
		if r.Frosts {
			dst.Frosting++
		}
		frame := h.frame(r.Kind)
		dst.Latent += (1 + frame) * r.Latent
		dst.Condensate += (1 + frame) * r.Condensate
		dst.DryTotal += (1 + frame) * (r.DryLoss - r.Loss)
		dst.Frame += frame * (r.AirDriven + r.SkyDriven)
		linear.CoverAir += (1 + frame) * r.Area * r.UOvercast
		linear.SkyDriven += (1 + frame) * r.SkyDriven
	}
	dt := k.Inside - k.Outside
	for _, d := range p.Doors {
		linear.Doors += d.Area * d.U
		x := doorHeat{load: d.U * dt}
		if k.InnerFace != InnerDry {
			x = room.door(d.U, k.Outside)
		}
		dst.Doors += d.Area * x.load
		dst.Condensate += d.Area * x.condensate
		dst.Latent += d.Area * x.condensate * room.load
	}
	linear.OtherDriven += dst.Doors - linear.Doors*dt
	for _, b := range p.Bridges {
		linear.Bridges += b.Length * b.Psi
	}
	dst.Bridges = linear.Bridges * dt
	dst.Ground = h.ground.Flow(p.Climate, k.Month)
	if dst.Leakage, err = p.Leakage.Flow(p.Shape.Volume, p.Shape.RidgeHeight, HouseAir{Inside: inside, Outside: outside, Wind: k.Wind}); err != nil {
		return err
	}
	if err := h.annexes(dst, k); err != nil {
		return err
	}
	dst.Latent += dst.Leakage.Latent
	dst.Evaporation = dst.Condensate + dst.Leakage.DryAir*(inside.HumidityRatio()-outside.HumidityRatio())
	dst.Total = dst.Cover + dst.Frame + dst.Doors + dst.Bridges + dst.Ground.Total + dst.Leakage.Total + dst.Partitions
	dst.DryTotal += dst.Total
	dst.PerFloor = dst.Total / p.Shape.FloorArea
	dst.Coefficient = quotient(dst.Total, dt)
	linear.finish(dst, h.ground.Total)
	dst.Linear = linear
	return nil
}

// frame returns the frame's share on a facet of the kind.
func (h *House) frame(kind FacetKind) float64 {
	if kind == DwarfWall || kind == Gutter {
		return 0
	}
	return h.plan.FrameAllowance
}

// states checks the conditions and returns the inside and the outside air.
func (h *House) states(k *HouseConditions) (inside, outside psychro.State, err error) {
	if h == nil || len(h.net) == 0 {
		return inside, outside, domain.Range{Min: 1, Max: 1e5, Unit: "facets", Source: "a House is made by NewHouse"}.Check("number of facets", 0)
	}
	one := k.CoverConditions
	one.Tilt, one.Height, one.AbsorbedSun = 0, 1, [MaxLayers]float64{}
	ok := one.valid(MaxLayers) && fractionRange.Contains(k.OutsideHumidity) && monthRange.Contains(k.Month) &&
		(k.Sun == nil || len(k.Sun) == len(h.net))
	if !ok {
		n := float64(len(h.net))
		faults := []error{one.check(MaxLayers), fractionRange.Check("OutsideHumidity", k.OutsideHumidity), monthRange.Check("Month", k.Month)}
		if k.Sun != nil {
			faults = append(faults, domain.Range{Min: n, Max: n, Unit: "facets", Source: "one entry for each facet of the shape"}.Check("length of Sun", float64(len(k.Sun))))
		}
		return inside, outside, errors.Join(faults...)
	}
	if inside, err = psychro.FromRelativeHumidity(k.Inside, k.InsideHumidity, k.Pressure); err != nil {
		return inside, outside, domain.Within("inside air", err)
	}
	if outside, err = psychro.FromRelativeHumidity(k.Outside, k.OutsideHumidity, k.Pressure); err != nil {
		return inside, outside, domain.Within("outside air", err)
	}
	return inside, outside, nil
}

// solve finds the facet's state, and of a declared wet face the humidity from
// which it would drip if dry.
func (r *FacetLoss) solve(c *layerSet, k *CoverConditions, room *roomAir, near *nearCover) error {
	if err := k.checkFacet(c.n); err != nil {
		return err
	}
	if k.InnerFace == InnerWet {
		dry := *k
		dry.InnerFace = InnerDry
		if err := c.solve(&dry, &standard, room, near, &r.Solution); err != nil {
			return err
		}
		r.DripHumidity = r.Solution.DripHumidity
		r.Solution = Solution{}
		return c.solve(k, &standard, room, near, &r.Solution)
	}
	err := c.solve(k, &standard, room, near, &r.Solution)
	r.DripHumidity = r.Solution.DripHumidity
	return err
}

// scale turns the solution per area into what the facet does.
func (r *FacetLoss) scale(i int, f *Facet, area float64) {
	s := &r.Solution
	r.Facet, r.Kind, r.Name, r.Area = i, f.Kind, f.Name, area
	r.Loss, r.SkyDriven, r.SunDriven = area*s.Load, area*s.SkyDriven, area*s.SunDriven
	r.AirDriven = area * (s.AirDriven + s.Load - s.FluxIn)
	r.Latent = area * s.LatentLoad
	r.Drips, r.Frosts = s.Condenses && s.IceShare < 1, s.Condenses && s.IceShare > 0
	r.U, r.UOvercast, r.InnerTemperature, r.DripsAbove = s.U, s.UOvercast, s.InnerTemperature, s.DripsAbove
	r.Condensate = area * s.Condensate
	r.TwoStates, r.DryLoss = s.TwoStates, r.Loss+area*(s.DryFluxIn-s.FluxIn)
	if s.TwoStates {
		r.DryLoss = area * s.DryFluxIn
	}
}

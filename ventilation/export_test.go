package ventilation

import (
	"math"
	"time"

	"cloche.example/internal/check"
)

// What the tests of package ventilation_test read of the inside: checks, and
// the formulas that larger functions are made of.

// Constants of moist air.
const (
	GasConstantDryAir = gasConstantDryAir
	HeatCapacityAir   = heatCapacityAir
)

// Formulas.
var (
	AspectDischarge = aspectDischarge
	EnAreaRatio     = enAreaRatio
	Interception    = interception
	LeafBoundary    = leafBoundary
	NeutralLevel    = neutralLevel
	Quadrature      = quadrature

	NetShortwave        = netShortwave
	NetLongwaveDay      = netLongwaveDay
	NetLongwaveHour     = netLongwaveHour
	SoilHeatHour        = soilHeatHour
	FAO56MeanSaturation = faoMeanSaturation
	FAO56Vapour         = faoVapour
)

// Checks.
func (c Canopy) Check() error     { return c.check("") }
func (x ColdVents) Check() error  { return x.check() }
func (x DoorCase) Check() error   { return x.check() }
func (x DryingCase) Check() error { return x.check() }
func (x DugIn) Check() error      { return x.check() }
func (x Fogging) Check() error    { return x.check() }
func (x Grass) Check() error      { return x.check() }
func (x Hinged) Check() error     { return x.check() }
func (x Lobby) Check() error      { return x.check() }
func (x Louvre) Check() error     { return x.check() }
func (x OneFace) Check() error    { return x.check() }
func (x PadWall) Check() error    { return x.check() }
func (x Purge) Check() error      { return x.check() }
func (x RidgeVent) Check() error  { return x.check() }
func (x Screen) Check() error     { return x.check() }
func (x Shade) Check() error      { return x.check() }

// Methods.
func (c Canopy) Sun(sun float64) CanopySun { return c.sun(sun) }

// Response is that of leaves whose surface takes sun, W/m², by day.
func (s Stomata) Response(sun, leaf, deficit, co2 float64) Response {
	return s.still(CanopySun{Leaf: sun, Canopy: 10 * sun, Floor: 10 * sun}, co2).at(s, leaf, deficit)
}

func (o Optics) Absorptance() float64                { return o.absorptance() }
func (f PathFlow) Net() float64                      { return f.net() }
func (r OpeningRule) Demand(inside float64) float64  { return r.demand(inside) }
func (s Shelter) Coefficients() coefficientTable     { return s.coefficients() }
func (t RoughTerrain) Factor(height float64) float64 { return t.factor(height) }

// The correlations of one opening.
type SingleSided = singleSided

const (
	BrownSolvason    = brownSolvason
	DeGidsPhaff      = deGidsPhaff
	EN16798          = en16798
	WarrenParkins    = warrenParkins
	DIN4108          = din4108
	LarsenHeiselberg = larsenHeiselberg
)

// OrificeFlow is the flow of a sharp opening.
func OrificeFlow(cd, area, density, dp float64) float64 {
	return Opening{Area: area, Discharge: cd}.MassFlow(dp, density)
}

func (j ColdJet) Check() error { return j.check() }

var DefaultColdJet = defaultColdJet

func (s Schedule) Check() error                       { return s.check() }
func (s Schedule) OpeningAt(at time.Duration) float64 { return s.opening(at) }
func (p PadWall) EfficiencyAt(speed float64) float64  { return p.efficiencyAt(speed) }
func (j ColdJet) AxisSpeed(path float64) float64      { return j.axisSpeed(path) }
func (j ColdJet) Falling(path float64) float64        { return j.falling(path) }
func (j ColdJet) MildExcess(path float64) float64     { return j.mildExcess(path) }

// Discharge is the screen's own discharge coefficient on its face.
func (s Screen) Discharge(speed, density, viscosity float64) float64 {
	return speed * math.Sqrt(0.5*density/s.PressureDrop(speed, density, viscosity))
}

// EffectiveDischarge is the discharge coefficient of o, screen and all.
func (o Opening) EffectiveDischarge(dp, density float64) float64 {
	return o.MassFlow(dp, density) / (o.Area * math.Sqrt(2*density*dp))
}
func (j ColdJet) AxisExcess(path float64) float64 { return j.axisExcess(path) }

// SolveWithLewis is Solve with a given Lewis factor.
func (c *Climate) SolveWithLewis(w Weather, s Setting, factor float64) (out ClimateState, err error) {
	var k climateCase
	if err = c.prepare(&k, &w, &s); err != nil {
		return out, err
	}
	k.lewis = factor
	x, stable, err := k.solve()
	if err == nil {
		k.state(&out, &x, stable)
	}
	return out, err
}

// DataTables are the coefficients of flaps and screens, row by row.
func DataTables() (aspects, cubic, screens []check.Line) {
	for i, name := range []string{"narrow", "upright", "lying", "wide"} {
		c := aspectClasses[i]
		if math.IsInf(c.limit, 1) {
			c.limit = math.NaN()
		}
		aspects = append(aspects, check.Line{Name: name, Cells: []float64{c.limit, c.m, c.max}})
	}
	for i, name := range []string{"Miguel", "Valera"} {
		f := porosityFits[i]
		screens = append(screens, check.Line{Name: name, Cells: []float64{f.a, f.b, f.c, f.d}})
	}
	return aspects, []check.Line{{Name: "CEN/TR 16798-8", Cells: enCubic[:]}}, screens
}

// ForgetfulYear is YearTo with every hour sought from afar, and says in which hours
// covers stand between dry and wet.
func ForgetfulYear(c *Climate, hours Hours) (*HouseYear, []bool, error) {
	var between []bool
	y := yearRun{c: c, hours: hours, dst: newHouseYear(len(hours.Temperature))}
	if err := y.begin(); err != nil {
		return nil, nil, err
	}
	for i := range hours.Temperature {
		if err := y.hour(i); err != nil {
			return nil, nil, err
		}
		between = append(between, y.state.CoversBetween)
		k := &y.keeping.k
		k.warm, k.skin = false, nil
		y.keeping.course, y.keeping.vented = course{}, false
	}
	return y.dst, between, nil
}

// CoversAt solves the covers of c in the weather w at the inside temperature, the
// radiation of crop and floor and the vapour pressure of z.
func CoversAt(c *Climate, w Weather, z [3]float64) error {
	var k climateCase
	if err := c.prepare(&k, &w, &Setting{}); err != nil {
		return err
	}
	_, err := k.skin.solve((*[drives]float64)(&z))
	return err
}

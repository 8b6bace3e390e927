package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// filmRange is the range of a film coefficient inside a duct.
var filmRange = domain.Range{Min: 0.1, Max: 1000, Unit: "W/(m² K)", Source: "air in ducts"}

// DuctDew is what a duct's wall takes from moist air, water included.
type DuctDew struct {
	Outlet        float64 // °C, air at the end
	HumidityRatio float64 // kg/kg dry air, at the end
	Water         float64 // kg/s, that condenses on the wall or falls as fog
	Loss          float64 // W, through the wall to the air around
	Latent        float64 // W, the part of Loss that condensing water gives
	DewPoint      float64 // °C, of the entering air
	ColdestWall   float64 // °C, inside of the wall at its coldest
	WetFrom       float64 // m from the inlet to the first wet wall; NaN for a dry duct
	Frost         bool    // the coldest wet wall lies below 0 °C: the duct ices up
}

// dewCells is into how many parts a duct is cut to follow the water.
const dewCells = 200

// Dew returns what the duct's wall takes from dryAir, kg/s of dry air (1e-6 to
// 1000), that enters in the state in, when the air around is at around (-60 to
// 200 °C), and the water that condenses where the inside of the wall lies below
// the air's dew point. film is the coefficient from the air to the wall, W/(m²
// K), above HeatTransfer; DuctNusselt gives it. Mass follows heat by Lewis's
// relation: temperature and humidity ratio both approach the wall's state
// exponentially, the humidity ratio faster by the factor
// 1/psychro.State.LewisFactor of the inlet. Fog that forms in the stream counts
// as water. Without condensation the answer is that of Heat. The error lists
// every fault.
func (d Duct) Dew(film, dryAir float64, in psychro.State, around float64) (DuctDew, error) {
	outer := filmRange
	outer.Min, outer.Source = math.Nextafter(math.Max(d.HeatTransfer, outer.Min), math.Inf(1)), "above HeatTransfer"
	if err := errors.Join(
		domain.Within("Section", d.Section.check()),
		ductLengthRange.Check("Length", d.Length),
		notZero(heatTransferRange).Check("HeatTransfer", d.HeatTransfer),
		outer.Check("film", film),
		domain.Range{Min: 1e-6, Max: 1000, Unit: "kg/s"}.Check("dryAir", dryAir),
		stateCheck("in", in),
		airTemperatureRange.Check("around", around),
	); err != nil {
		return DuctDew{}, err
	}
	t, w, p := in.Temperature(), in.HumidityRatio(), in.Pressure()
	r := DuctDew{DewPoint: in.DewPoint(), ColdestWall: math.Inf(1), WetFrom: math.NaN()}
	lewis, moist := in.LewisFactor(), in.Model()
	area := d.Section.perimeter() * d.Length / dewCells
	grip := area / (1/d.HeatTransfer - 1/film) // W/K, from the wall's inside outwards
	for i := range dewCells {
		cp := dryAir * (cpAir + cpVapour*w)
		wall := t - d.HeatTransfer/film*(t-around)
		if ws := moist.SaturationHumidityRatio(wall, p); !(ws < w) {
			r.ColdestWall = math.Min(r.ColdestWall, wall)
			drop := -(t - around) * math.Expm1(-d.HeatTransfer*area/cp)
			r.Loss += cp * drop
			t -= drop
			continue
		}
		if math.IsNaN(r.WetFrom) {
			r.WetFrom = d.Length * float64(i) / dewCells
		}
		c := wetCell(moist, passing{t, w, p, dryAir, film * area / cp}, lewis, grip, around)
		r.Loss += c.heat
		r.Latent += c.heat - dryAir*(cpAir+cpVapour*c.w)*(t-c.t)
		r.Water += dryAir * (w - c.w)
		r.Frost = r.Frost || c.wall < 0
		r.ColdestWall = math.Min(r.ColdestWall, c.wall)
		t, w = c.t, c.w
	}
	r.Outlet, r.HumidityRatio = t, w
	return r, nil
}

func stateCheck(field string, s psychro.State) error {
	return (domain.Range{Min: 30e3, Max: 200e3, Unit: "Pa"}).Check(field+": its pressure (the state comes from package psychro)", s.Pressure())
}

// Heats of moist air for balances with water [HoF17] ch. 1 eq. 30, and of
// water and ice above liquid at 0 °C.
const (
	cpAir    = constant.HeatDryAir // J/(kg K)
	cpVapour = constant.HeatVapour // J/(kg K)
	heatIce  = -fusionHeat
)

func condensedHeat(t float64) float64 {
	if t < 0 {
		return heatIce + iceCapacity*t
	}
	return waterCapacity * t
}

// fogRounding is what a state's humidity ratio and the saturation at its own
// temperature may differ by without any fog.
const fogRounding = 1e-12

// wallSettled is how well the wall of a cell is found, K: by it the balance of a
// duct closes to 1e-8.
const wallSettled = 1e-12

// cell is moist air at the end of a short stretch of cold wall.
type cell struct {
	t, w float64 // °C, kg/kg
	wall float64 // °C
	heat float64 // W, from air and water into the wall
}

// passing is moist air on its way past a stretch of wall.
type passing struct {
	t, w  float64 // °C, kg/kg, before it
	p     float64 // Pa
	mass  float64 // kg/s of dry air
	units float64 // number of transfer units of heat between air and wall
}

// wetCell passes the air a along a wall of one temperature, with lewis times
// fewer transfer units of mass than of heat, behind which lies sink, °C, at
// grip, W/K. Saturation is that of the air's own model m, or air saturated in one
// model would be foggy in another. What the air's enthalpy loses is the heat into
// the wall and what the water takes along.
func wetCell(m psychro.Model, a passing, lewis, grip, sink float64) cell {
	t, w, p, mass, units := a.t, a.w, a.p, a.mass, a.units
	e, em := -math.Expm1(-units), -math.Expm1(-units/lewis)
	pass := func(wall float64) cell {
		c := cell{wall: wall, t: t - e*(t-wall), w: w}
		if ws := m.SaturationHumidityRatio(wall, p); ws < w {
			c.w -= em * (w - ws)
		}
		// Fog: saturated air of the same enthalpy.
		for range 4 {
			ws := m.SaturationHumidityRatio(c.t, p)
			if !(c.w > ws*(1+fogRounding)) { // also where it boils and nothing saturates it
				break
			}
			slope := ws * psychro.SaturationSlope(c.t) / psychro.SaturationPressure(c.t)
			dt := vapourHeat * (c.w - ws) / (cpAir + cpVapour*c.w + vapourHeat*slope)
			c.t += dt
			c.w = math.Min(c.w, ws+slope*dt)
		}
		c.heat = mass * ((cpAir+cpVapour*c.w)*(t-c.t) + (w-c.w)*(vapourHeat+cpVapour*t-condensedHeat(wall)))
		return c
	}
	dry := mass * (cpAir + cpVapour*w) * e
	if dry+grip == 0 { // no wall
		return cell{t: t, w: w, wall: t}
	}
	wall := (dry*t + grip*sink) / (dry + grip)
	if c := pass(wall); c.w == w {
		return c
	}
	// Condensing water warms the wall above the dry one.
	wall, err := solve.Root(func(wall float64) float64 { return pass(wall).heat - grip*(wall-sink) }, sink, t, wallSettled)
	if err != nil {
		return pass(sink) // by rounding the wall is the sink
	}
	c := pass(wall)
	c.heat = grip * (wall - sink) // where part of the water freezes at 0 °C, between all and none
	return c
}

package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
	"cloche.example/internal/transient"
)

// SeasonNodes is a year of a three-node house with a thermostat.
type SeasonNodes struct {
	House     Transient // the three nodes
	Outside   []float64 // °C, -90 to 120, hourly
	Sun       []float64 // W/m², 0 to 1500, hourly, global on the horizontal
	SkyDrop   []float64 // K, -10 to 100, hourly, sky below outside air; nil for a house without CoverSky
	SetPoints SetPoints // °C, asked for at the end of each hour
	VentAt    float64   // °C, the higher set-point to 120; the vents keep the air from rising above it
	Deep      float64   // °C, -90 to 120, ground below the soil layer
	Plants    Plants    // what they turn into vapour
	Lamps     []float64 // W, 0 to 1e9, hourly heat of the lamps, radiant to structure and plants, the rest to the air; nil for none
	Gain      float64   // W, 0 to 1e9, constant heat to the air
	ToAir     float64   // m², 0 to 1e6, of horizontal area whose sun goes to the air
	ToPlants  float64   // m², 0 to 1e6, whose sun goes to structure and plants
	ToSoil    float64   // m², 0 to 1e6, whose sun goes to the soil
	Burner    Burner    // heater and fuel
	Price     float64   // currency per kg, 0 to 1e6, of fuel
}

// SeasonCourse is the result of SeasonNodes.Solve with its balance:
// Heat + Gains = Loss + ToGround + Vented + Stored.
type SeasonCourse struct {
	SeasonHeat                // J, kg and currency as its fields say
	ToGround     float64      // J, lost to the ground below
	Vented       float64      // J, let out by the vents
	Stored       float64      // J, gained by the three nodes from start to end
	Residual     float64      // J, what the balance misses by rounding
	Lowest       float64      // °C, coldest air at the end of an hour
	Highest      float64      // °C, warmest air at the end of an hour
	LowestSoil   float64      // °C, coldest soil layer
	BelowHours   int          // count of hours that end more than 0.1 K below the set-point
	FrostHours   int          // count of hours that end with air below 0 °C
	End          Temperatures // °C, at the end of the year
	HeatPerMonth [12]float64  // J
}

func (s *SeasonNodes) check() error {
	err := errors.Join(checkColumn("Outside", s.Outside, roomRange), checkColumn("Sun", s.Sun, sunRange))
	if err == nil && len(s.Outside) != len(s.Sun) {
		err = fmt.Errorf("Outside has %d values and Sun %d: %w", len(s.Outside), len(s.Sun), ErrRange)
	}
	switch {
	case s.SkyDrop != nil:
		err = errors.Join(err, checkColumn("SkyDrop", s.SkyDrop, skyDropRange))
		if len(s.SkyDrop) != len(s.Outside) {
			err = errors.Join(err, fmt.Errorf("Outside has %d values and SkyDrop %d: %w", len(s.Outside), len(s.SkyDrop), ErrRange))
		}
	case s.House.n.CoverSky > 0:
		err = errors.Join(err, fmt.Errorf("SkyDrop is missing, but the house has CoverSky %g W/K: %w", s.House.n.CoverSky, ErrRange))
	}
	area := domain.Range{Min: 0, Max: 1e6, Unit: "m²"}
	warmest := math.Max(s.SetPoints.Day, s.SetPoints.Night)
	return errors.Join(err, s.Plants.check("part of ToPlants", s.ToPlants), checkLamps(s.Lamps, s.Outside), s.SetPoints.check(), s.Burner.Check(),
		domain.Range{Min: warmest, Max: roomRange.Max, Unit: "°C", Source: "at or above the set-points"}.Check("VentAt", s.VentAt),
		roomRange.Check("Deep", s.Deep), powerRange.Check("Gain", s.Gain),
		area.Check("ToAir", s.ToAir), area.Check("ToPlants", s.ToPlants), area.Check("ToSoil", s.ToSoil),
		domain.Range{Min: 0, Max: 1e6, Unit: "currency per kg"}.Check("Price", s.Price),
		domain.Within("House", s.House.made()),
	)
}

// Solve runs the year hour by hour, each hour exactly under its mean weather:
// the thermostat gives the constant heat, from none to the burner's rating,
// that brings the air to the set-point at the hour's end, and the vents take
// what would carry it above VentAt. The year starts from the steady state at
// the set-point of its first hour. Storage in structure and soil carries sun
// into the night, which the other methods leave out.
func (s SeasonNodes) Solve() (SeasonCourse, error) {
	if err := s.check(); err != nil {
		return SeasonCourse{}, err
	}
	h := &s.House
	n := &h.n
	step := h.s.Step(3600)
	c := SeasonCourse{Lowest: math.Inf(1), Highest: math.Inf(-1), LowestSoil: math.Inf(1)}
	c.Method = "three nodes, hourly"
	_, start := h.holdingHeat(s.drive(0), s.SetPoints.at(0))
	t := start
	var ground, lossOut, gains, vented float64 // W h
	month, left := 0, s.monthHours(0)
	for i := range s.Outside {
		d := s.drive(i)
		set := s.SetPoints.at(i)
		rest := h.steady(d)
		x := [3]float64{t.Air - rest.Air, t.Structure - rest.Structure, t.Soil - rest.Soil}
		free := rest.Air + step.Decay[0][0]*x[0] + step.Decay[0][1]*x[1] + step.Decay[0][2]*x[2]
		q := 0.0
		switch {
		case free < set:
			asked := (set - free) / step.PerWatt[0]
			q = math.Min(asked, s.Burner.Rated)
			c.Peak = math.Max(c.Peak, asked)
			c.Heat += q * 3600
			c.Unmet += (asked - q) * 3600
			c.Hours++
			c.HeatPerMonth[month] += q * 3600
		case free > s.VentAt:
			q = (s.VentAt - free) / step.PerWatt[0]
			vented -= q
		}
		if q != 0 {
			gain := d.Heat
			d.Heat += q
			rest = h.steady(d)
			d.Heat = gain
			x = [3]float64{t.Air - rest.Air, t.Structure - rest.Structure, t.Soil - rest.Soil}
		}
		m := transient.Times(&step.Mean, x)
		lossOut += (n.Cover+n.Leakage)*(rest.Air+m[0]-d.Outside) + n.CoverSky*(rest.Air+m[0]-d.Outside+d.SkyDrop) + n.StructureOutside*(rest.Structure+m[1]-d.Outside)
		ground += n.SoilDeep * (rest.Soil + m[2] - d.Deep)
		gains += d.Heat + d.StructureHeat + d.SoilHeat
		end := transient.Times(&step.Decay, x)
		t = Temperatures{rest.Air + end[0], rest.Structure + end[1], rest.Soil + end[2]}
		c.Lowest, c.Highest, c.LowestSoil = min(c.Lowest, t.Air), max(c.Highest, t.Air), min(c.LowestSoil, t.Soil)
		if t.Air < set-0.1 {
			c.BelowHours++
		}
		if t.Air < 0 {
			c.FrostHours++
		}
		if left--; left == 0 && month < 11 {
			month++
			left = s.monthHours(month)
		}
	}
	c.End = t
	c.Loss, c.ToGround, c.Gains, c.Vented = lossOut*3600, ground*3600, gains*3600, vented*3600
	c.Stored = n.AirCapacity*(t.Air-start.Air) + n.StructureCapacity*(t.Structure-start.Structure) + n.SoilCapacity*(t.Soil-start.Soil)
	c.Residual = c.Heat + c.Gains - c.Loss - c.ToGround - c.Vented - c.Stored
	c.finish(&s.Burner, s.Price)
	return c, nil
}

func (s *SeasonNodes) monthHours(month int) int {
	n := int(calendarHours()[month])
	if month == 1 && len(s.Outside) == 8784 {
		n += 24
	}
	return n
}

// drive is the weather of hour i without the heater.
func (s *SeasonNodes) drive(i int) envelope.Drive {
	lamps := 0.0
	if s.Lamps != nil {
		lamps = s.Lamps[i]
	}
	radiant := s.Plants.LampRadiant * lamps
	d := envelope.Drive{
		Heat:          s.Gain + s.ToAir*s.Sun[i] + lamps - radiant,
		StructureHeat: s.ToPlants*s.Sun[i] + radiant - s.Plants.evaporated(s.Sun[i], lamps),
		SoilHeat:      s.ToSoil * s.Sun[i], Outside: s.Outside[i], Deep: s.Deep,
	}
	if s.SkyDrop != nil {
		d.SkyDrop = s.SkyDrop[i]
	}
	return d
}

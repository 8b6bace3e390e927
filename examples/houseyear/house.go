package main

import (
	"errors"

	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
	"cloche.example/ventilation"
)

// house is a plan's house made ready for the hours of a weather.
type house struct {
	plan    *plan.Plan
	weather *weather.Series
	steady  answers.Result // what the plan's house does on its design days
	climate *ventilation.Climate
	glazing envelope.Glazing
	soil    ventilation.FloorStore
	mass    ventilation.StructureStore
	source  fromplan.Source
	burner  fromplan.CO2Burner
	outside float64 // µmol/mol of CO2
	lamps   lamps
	fan     float64 // W, electricity of the heater's fan
	vents   vents
	ridge   ridge
	ground  envelope.GroundCoefficients

	handDays [367]bool // days on which vents are opened by hand, by the day of the year
}

// newHouse makes the house of the plan, which stands where the weather was.
func newHouse(p *plan.Plan, s *weather.Series) (*house, error) {
	h := &house{plan: p, weather: s}
	var err error
	if h.steady, err = answers.Of(p, false); err != nil {
		return nil, err
	}
	if h.steady.Ducts != nil {
		h.fan = h.steady.Ducts.Electric
	}
	shape := h.steady.House.Shape
	var e1, e2, e3, e4 error
	h.glazing, e1 = fromplan.Glazing(p, shape)
	h.source, e2 = fromplan.HeatSource(p)
	h.lamps, e3 = newLamps(p, h.steady.Light)
	h.burner, e4 = fromplan.CarbonBurner(p)
	if err = errors.Join(e1, e2, e3, e4); err != nil {
		return nil, err
	}
	if h.vents, err = newVents(p, s.WindFrom != nil); err != nil {
		return nil, err
	}
	h.ridge, h.ground = h.newRidge(), h.steady.House.Envelope.Ground()
	h.stores(shape)
	h.hand()
	h.outside = h.carbon().Outside
	h.climate, err = h.steady.House.Climate(false)
	return h, err
}

// stores sets the ground and what stands in the house. Below the soil that
// follows within a night, the ground takes what the house's steady coefficient
// leaves, towards the deep ground.
func (h *house) stores(shape envelope.Shape) {
	p := h.plan
	at := answers.MeanSetPoint(p)
	mean := 0.0
	for _, t := range p.Site.Months.Temperature {
		mean += t / 12
	}
	h.soil = ventilation.FloorStoreUnder(h.steady.House.Envelope, fromplan.FloorSurface(p))
	h.soil.Capacity, h.soil.Ground, h.soil.Start = fromplan.Soil(p).HeatCapacity*p.HeatStorage.SoilDepth, mean, at
	if p.Assumptions.NoGroundLoss {
		h.soil.Deep = 0
	}
	n := fromplan.Stores(p, shape)
	h.mass = ventilation.DefaultStructureStore()
	h.mass.Capacity, h.mass.Exchange, h.mass.Start = n.Structure, n.AirStructure, at
}

// Ends of the temperature of the deep ground, °C.
const coldestDeep, warmestDeep = -40, 60

// deep is the deep ground of each hour, °C, and once more the last: the mean of
// the outside air with the wave that [IsoGround17] C.3 has it send under the
// house, behind the air's own and weaker.
func (h *house) deep() []float64 {
	c := fromplan.Climate(h.plan, answers.MeanSetPoint(h.plan))
	out := make([]float64, h.weather.Hours())
	for i, at := range h.weather.Time {
		out[i] = c.OutsideMean
		if h.soil.Deep > 0 {
			month := 0.5 + 12*min(1, (float64(at.YearDay()-1)+float64(at.Hour())/24)/365)
			out[i] = max(coldestDeep, min(warmestDeep, c.OutsideMean-h.ground.Flow(c, month).OutWave/h.ground.Total))
		}
	}
	return more(out)
}

// leftOut tells what of the plan a year of hours does not count.
func leftOut(p *plan.Plan) (list []string) {
	if len(p.VentFans) > 0 && len(p.Vents) == 0 {
		list = append(list, "The plan's fans in walls and roof stand still in this year: there are no vents through which the air could come.")
	}
	if p.Pads != nil && (len(p.VentFans) == 0 || len(p.Vents) == 0) {
		list = append(list, "The plan's wet pads are dry in this year: no fan draws air through them.")
	}
	return list
}

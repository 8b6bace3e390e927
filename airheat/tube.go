package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// PerforatedTube is a round tube, closed at its far end, that lets air out
// through rows of equal holes: a lead-in without holes from the fan, then
// Positions rows at the pitch Pitch, the first right after the lead-in and the
// last at the closed end.
type PerforatedTube struct {
	Diameter      float64 // m, 0.02 to 3, inside
	Roughness     float64 // m, 0 to 0.02, Colebrook's sand roughness of the wall
	LeadIn        float64 // m, 0 to 200, from the fan to the first row
	Pitch         float64 // m, 0 to 200, from row to row
	Positions     int     // number, 1 to 1e5, of rows
	HolesPerRow   int     // number, 1 to 1000, of holes in each row
	HoleDiameter  float64 // m, 0.001 to 0.5
	Discharge     float64 // discharge coefficient of a hole, a factor, 0.3 to 1
	Regain        float64 // factor, 0 to 1: 1 turns all the velocity pressure the tube loses at a row into static pressure, 0 none
	HeatTransfer  float64 // W/(m² K), 0 to 50, from the air inside through the wall to the house
	LargestSpread float64 // ratio, 0 to 1, of smallest to largest hole flow below which Warnings speaks
}

// DefaultPerforatedTube returns a tube of plain film with everything but its
// sizes set: discharge coefficient 0.65 and full regain [ElM97], a wall as
// smooth as drawn plastic (0.0015 mm, from memory), 6 W/(m² K) through the
// film (common practice, no source) and a smallest hole flow of 0.85 of the
// largest.
func DefaultPerforatedTube() PerforatedTube {
	return PerforatedTube{Roughness: 1.5e-6, Discharge: 0.65, Regain: 1, HeatTransfer: 6, LargestSpread: 0.85}
}

// TubeSupply is the air that enters a PerforatedTube and the house around it.
type TubeSupply struct {
	Flow        float64       // m³/s, 1e-9 to 1000, at the supply air's own density
	Temperature float64       // °C, -60 to 200, of the supply air
	House       float64       // °C, -60 to 200, of the air around the tube
	Properties  AirProperties // properties of the supply air, as DryAir gives them at Temperature
}

// The ranges of PerforatedTube's and TubeSupply's fields.
var (
	tubeDiameterRange  = domain.Range{Min: 0.02, Max: 3, Unit: "m", Source: "film tubes of small houses"}
	tubeLengthRange    = domain.Range{Min: 0, Max: 200, Unit: "m", Source: "film tubes of small houses"}
	tubePositionsRange = domain.Range{Min: 1, Max: 100000, Unit: "count", Source: "at least one row of holes"}
	tubeHolesRange     = domain.Range{Min: 1, Max: 1000, Unit: "count", Source: "at least one hole in a row"}
	holeDiameterRange  = domain.Range{Min: 0.001, Max: 0.5, Unit: "m", Source: "punched film"}
	dischargeRange     = domain.Range{Min: 0.3, Max: 1, Unit: "factor", Source: "orifice to rounded nozzle"}
	regainRange        = domain.Range{Min: 0, Max: 1, Unit: "factor", Source: "definition"}
	heatTransferRange  = domain.Range{Min: 0, Max: 50, Unit: "W/(m² K)", Source: "insulated duct to wet film"}
)

func (t PerforatedTube) check() error {
	one := domain.Range{Min: 0, Max: 1, Unit: "ratio", Source: "definition"}
	var fit error
	if a := float64(t.HolesPerRow) * t.HoleDiameter; a > math.Pi*t.Diameter {
		fit = fmt.Errorf("%w: HolesPerRow and HoleDiameter: %d holes of %g m do not fit on a circumference of %.4g m", ErrRange, t.HolesPerRow, t.HoleDiameter, math.Pi*t.Diameter)
	}
	if open := t.Discharge * float64(t.HolesPerRow) * t.HoleDiameter * t.HoleDiameter; open >= t.Diameter*t.Diameter {
		fit = errors.Join(fit, fmt.Errorf("%w: a row of %d holes of %g m, times Discharge, is as open as the tube, whose Diameter is %g m: such rows have no one answer", ErrRange, t.HolesPerRow, t.HoleDiameter, t.Diameter))
	}
	if t.HoleDiameter > t.Diameter {
		fit = errors.Join(fit, fmt.Errorf("%w: HoleDiameter is %g m, wider than the tube's Diameter of %g m", ErrRange, t.HoleDiameter, t.Diameter))
	}
	return errors.Join(
		tubeDiameterRange.Check("Diameter", t.Diameter),
		ductRoughnessRange.Check("Roughness", t.Roughness),
		relativeRoughnessRange.Check("Roughness over Diameter", t.Roughness/t.Diameter),
		tubeLengthRange.Check("LeadIn", t.LeadIn),
		tubeLengthRange.Check("Pitch", t.Pitch),
		tubePositionsRange.Check("Positions", float64(t.Positions)),
		tubeHolesRange.Check("HolesPerRow", float64(t.HolesPerRow)),
		holeDiameterRange.Check("HoleDiameter", t.HoleDiameter),
		dischargeRange.Check("Discharge", t.Discharge),
		regainRange.Check("Regain", t.Regain),
		heatTransferRange.Check("HeatTransfer", t.HeatTransfer),
		one.Check("LargestSpread", t.LargestSpread),
		fit,
	)
}

func (s TubeSupply) check() error {
	return errors.Join(
		notZero(ductFlowRange).Check("TubeSupply.Flow", s.Flow),
		airTemperatureRange.Check("TubeSupply.Temperature", s.Temperature),
		airTemperatureRange.Check("TubeSupply.House", s.House),
		domain.Within("TubeSupply.Properties", s.Properties.check()),
	)
}

// TubePosition is one row of holes, numbered from the fan.
type TubePosition struct {
	Distance    float64 // m, from the fan
	Pressure    float64 // Pa, static, above the house, just downstream of the row
	Velocity    float64 // m/s, in the tube just upstream of the row
	Flow        float64 // m³/s, out of the row's holes together; negative where the tube draws air in
	Friction    float64 // Darcy friction factor of the leg from the fan's side, dimensionless; 0 without flow
	JetSpeed    float64 // m/s, flow over the product of hole area and discharge coefficient
	Temperature float64 // °C, of the air in the tube at the row
	Heat        float64 // W, carried out by the row's air above the house temperature
}

// TubeFlow is the flow and heat along a PerforatedTube.
type TubeFlow struct {
	Positions   []TubePosition // the rows, from the fan on
	EndPressure float64        // Pa, static, at the closed end
	FanPressure float64        // Pa, static, at the fan
	FanTotal    float64        // Pa, static and velocity pressure at the fan: what the fan must give
	Residual    float64        // m³/s, sum of the hole flows less the flow given
	FanToEnd    float64        // ratio of the first row's flow to the last row's
	Evenness    float64        // ratio of the smallest row flow to the largest, negative with reversal
	HeatEven    float64        // ratio of the smallest row heat to the largest; 1 without a temperature difference
	HolesHeat   float64        // W, out of the holes above the house temperature
	WallHeat    float64        // W, through the wall
	AreaRatio   float64        // ratio of the area of all holes to the tube's section
	Reversed    int            // number of rows that draw house air in
	Marches     int            // number of times the tube was marched through
}

// holes returns the open area of all holes, m².
func (t PerforatedTube) holes() float64 {
	return float64(t.Positions*t.HolesPerRow) * math.Pi / 4 * t.HoleDiameter * t.HoleDiameter
}

// Length returns the tube's length from the fan to the closed end, m.
func (t PerforatedTube) Length() float64 { return t.LeadIn + t.Pitch*float64(t.Positions-1) }

// Solve returns flow, pressure and heat along the tube. The error lists every
// fault of the tube and the supply, or says why no such tube works. See SolveTo.
func (t PerforatedTube) Solve(supply TubeSupply) (TubeFlow, error) {
	return t.SolveTo(nil, supply)
}

// SolveTo is Solve with the rows written into dst, whose length must be
// Positions; a nil dst allocates.
//
// From the closed end to the fan: a row lets out Cd a √(2p/ρ) for the static
// pressure p just downstream of it; upstream of it the velocity is higher by
// that flow over the section, and the pressure lower by r ρ/2 times the
// difference of the squares; to the next row it rises by Darcy and Weisbach's
// loss. The end pressure is found so that the rows together give the supply's
// flow; each row's is then within 1e-9 of it of the exact solution. Density and
// viscosity are those of the supply throughout. Rows whose pressure is below
// the house's draw air in by the same law and are counted in Reversed. Heat:
// between rows the difference from the house's temperature falls by the factor
// exp(−U π D l/(m cp)).
//
// The error is ErrNoSolution for a tube so open that the air in it turns back, for
// one so long and thin that friction takes all pressure, and for a supply that would need more than 5,000
// Pa, at which film bursts and the law of incompressible flow ends;
// ErrNotConverged where the end pressure is not found.
func (t PerforatedTube) SolveTo(dst []TubePosition, supply TubeSupply) (TubeFlow, error) {
	if err := errors.Join(t.check(), supply.check()); err != nil {
		return TubeFlow{}, err
	}
	if dst == nil {
		dst = make([]TubePosition, t.Positions)
	}
	if len(dst) != t.Positions {
		panic("airheat: dst has not the length Positions")
	}
	f, err := t.solveTo(dst, supply)
	if err != nil {
		return TubeFlow{}, err
	}
	if f.EndPressure > tubeBursts || f.FanTotal > tubeBursts {
		return TubeFlow{}, fmt.Errorf("%w: the tube would stand at %.3g Pa, above %.0f Pa, where film bursts and the law of incompressible flow ends; it needs more or larger holes or less air", ErrNoSolution, math.Max(f.EndPressure, f.FanTotal), tubeBursts)
	}
	return f, nil
}

// solveTo is SolveTo at any pressure.
func (t PerforatedTube) solveTo(dst []TubePosition, supply TubeSupply) (TubeFlow, error) {
	m := t.marcher(supply)
	marches, err := m.endSpeed(supply.Flow/(math.Pi/4*t.Diameter*t.Diameter), dst)
	if err != nil {
		return TubeFlow{}, err
	}
	f := TubeFlow{Positions: dst, Marches: marches}
	t.finish(&f, &m, supply)
	f.EndPressure = dst[len(dst)-1].Pressure
	if err := t.sound(&f, supply); err != nil {
		return TubeFlow{}, err
	}
	return f, nil
}

// rowsMiss is the largest share of the flow by which the rows together may miss
// it: far above what the march leaves, far below what anyone measures.
const rowsMiss = 1e-6

// sound refuses an answer that no tube gives: rows that together miss the flow, or
// air that turns back.
func (t PerforatedTube) sound(f *TubeFlow, s TubeSupply) error {
	if !(math.Abs(f.Residual) <= rowsMiss*s.Flow) {
		return fmt.Errorf("%w: the rows together miss the flow of %g m³/s by %.3g m³/s; the holes are too large for the tube", ErrNotConverged, s.Flow, f.Residual)
	}
	for i := range f.Positions {
		if f.Positions[i].Velocity < 0 {
			return fmt.Errorf("%w: at row %d the air in the tube would flow back to the fan; the holes are too large for the tube", ErrNoSolution, i+1)
		}
	}
	return nil
}

// finish turns the last march's heads into pressures and flows, and follows
// the heat from the fan on.
func (t PerforatedTube) finish(f *TubeFlow, m *marcher, s TubeSupply) {
	section := math.Pi / 4 * t.Diameter * t.Diameter
	half := 0.5 * s.Properties.Density
	head := m.head + m.grows*m.last
	velocity := f.Positions[0].Velocity + f.Positions[0].Temperature*m.last
	f.FanPressure = half * head
	f.FanTotal = half * (head + velocity*velocity)
	f.AreaRatio = t.holes() / section
	rhoCp := s.Properties.Density * s.Properties.HeatCapacity
	wall := t.HeatTransfer * math.Pi * t.Diameter // W/(m K)
	theta := s.Temperature - s.House
	low, high := math.Inf(1), math.Inf(-1)
	lowHeat, highHeat := low, high
	sum, x, leg := 0.0, 0.0, t.LeadIn
	toJet := section / (m.hole * t.Discharge)
	unitsPerVelocity := wall / (rhoCp * section)
	for i := range f.Positions {
		p := &f.Positions[i]
		x += leg
		dHead, dVelocity, root, b, tangent := kept(p)
		dFlow := *dVelocity
		if i+1 < len(f.Positions) {
			dFlow -= f.Positions[i+1].Temperature
		}
		p.Pressure += *dHead * m.last
		p.Flow += dFlow * m.last // still as a velocity in the tube
		p.Velocity += *dVelocity * m.last
		p.Friction = m.friction(p.Velocity, *root, *b, *tangent)
		if leg > 0 && wall > 0 {
			speed := math.Abs(p.Velocity)
			drop := theta * drained(unitsPerVelocity*leg/speed)
			f.WallHeat += rhoCp * section * speed * drop
			theta -= drop
		}
		p.Distance = x
		p.Temperature = s.House + theta
		p.Pressure *= half
		p.JetSpeed = p.Flow * toJet
		p.Flow *= section
		if p.Flow < 0 {
			f.Reversed++
			// House air comes in and thins the temperature difference.
			p.Heat = 0
			down := p.Velocity*section - p.Flow
			theta *= p.Velocity * section / down
		} else {
			p.Heat = p.Flow * rhoCp * theta
		}
		sum += p.Flow
		f.HolesHeat += p.Heat
		heat := math.Abs(p.Heat)
		if p.Flow < low {
			low = p.Flow
		}
		if p.Flow > high {
			high = p.Flow
		}
		if heat < lowHeat {
			lowHeat = heat
		}
		if heat > highHeat {
			highHeat = heat
		}
		leg = t.Pitch
	}
	f.Residual = sum - s.Flow
	f.FanToEnd = f.Positions[0].Flow / f.Positions[len(f.Positions)-1].Flow
	f.Evenness = low / high
	f.HeatEven = 1
	if highHeat > 0 {
		f.HeatEven = lowHeat / highHeat
	}
}

// drained is 1 − exp(−units) for units >= 0, in a short series where that is as
// good.
func drained(units float64) float64 {
	const short = 0.02 // below which four terms leave 1e-11 of the value
	if units < short {
		return units * (1 - units/2*(1-units/3*(1-units/4*(1-units/5)))) // to units⁵/720
	}
	return 1 - math.Exp(-units)
}

// tubeBursts is a pressure, Pa, far above what film tubes are run at (some 100
// Pa); jets then pass 90 m/s.
const tubeBursts = 5000.0

// Warnings names reversal and unevenness in words; nil when there is nothing to
// say.
func (t PerforatedTube) Warnings(f TubeFlow) []string {
	var w []string
	if f.Reversed > 0 {
		w = append(w, fmt.Sprintf("%d rows near the fan draw house air in: the air passes them too fast for the pressure. Use smaller or fewer holes, or a wider tube.", f.Reversed))
	} else if f.Evenness < t.LargestSpread {
		w = append(w, fmt.Sprintf("The weakest row gives %.0f %% of the strongest.", 100*f.Evenness))
	}
	return w
}

// FrictionlessRatio returns the flow of the row at the fan over that at the
// closed end, a ratio, of a tube with very many holes, full regain and no
// friction: cos(discharge areaRatio), from Bernoulli's equation, for the
// discharge coefficient (0.3 to 1, a factor) and areaRatio, all holes over the
// section (0 up to where the cosine is zero). NaN outside. The extension rule
// of a hole area of 1.5 to 2 sections works only because friction offsets the
// regain in long thin tubes.
func FrictionlessRatio(discharge, areaRatio float64) float64 {
	b := discharge * areaRatio
	if !dischargeRange.Contains(discharge) || !(b >= 0 && b <= math.Pi/2) {
		return math.NaN()
	}
	return math.Cos(b)
}

package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// FanDrive is how a fan is driven and where its losses go.
type FanDrive struct {
	Speed           float64       // ratio, 0.05 to 2, to the speed at which the curve was tested
	FanEfficiency   float64       // fraction, 0.01 to 1: air power over shaft power
	MotorEfficiency float64       // fraction, 0.01 to 1: shaft power over electric power, with belt and control
	MotorInStream   bool          // the motor stands in the air it moves and heats it too
	Inlet           AirProperties // at the fan, where a heater stands between it and the ducts; the zero AirProperties where none does, so that it moves the ducts' air
}

// DefaultFanDrive is a fan at its tested speed with the efficiencies 0.5 and
// 0.75 of a small axial fan (common practice, no source), its motor in the
// stream.
func DefaultFanDrive() FanDrive {
	return FanDrive{Speed: 1, FanEfficiency: 0.5, MotorEfficiency: 0.75, MotorInStream: true}
}

// The ranges of FanDrive's fields.
var (
	fanSpeedRange      = domain.Range{Min: 0.05, Max: 2, Unit: "ratio", Source: "fan laws hold for one fan"}
	fanEfficiencyRange = domain.Range{Min: 0.01, Max: 1, Unit: "fraction", Source: "definition"}
)

func (d FanDrive) check() error {
	var inlet error
	if d.Inlet != (AirProperties{}) {
		inlet = domain.Within("FanDrive.Inlet", d.Inlet.check())
	}
	return errors.Join(inlet,
		fanSpeedRange.Check("FanDrive.Speed", d.Speed),
		fanEfficiencyRange.Check("FanDrive.FanEfficiency", d.FanEfficiency),
		fanEfficiencyRange.Check("FanDrive.MotorEfficiency", d.MotorEfficiency),
	)
}

// OperatingPoint is what a fan does on a duct system. Where the curves cross
// more than once it is the rightmost crossing, and Count tells so.
type OperatingPoint struct {
	Intersection             // the rightmost one
	Count            int     // number of intersections; see System.Intersections for all of them
	AirPower         float64 // W, flow times pressure
	ShaftPower       float64 // W
	ElectricPower    float64 // W
	DuctFlow         float64 // m³/s in the ducts: Flow, or what it swells to in a heater between
	HeatToAir        float64 // W: all shaft power, and the motor's loss if it stands in the stream
	Rise             float64 // K, warming of the air by HeatToAir
	SpecificFanPower float64 // W/(m³/s), electric power over flow
	PeakFlow         float64 // m³/s, flow at the fan's last peak at this speed
}

// Warnings names stall and multiple crossings in words; nil when there is
// nothing to say.
func (p OperatingPoint) Warnings() []string {
	var w []string
	if p.Count > 1 {
		w = append(w, fmt.Sprintf("The fan and duct curves cross %d times: the fan may settle at another flow after a start, or hunt between them.", p.Count))
	}
	if p.Stall {
		w = append(w, fmt.Sprintf("The fan works in stall, at %.4g m³/s, left of its peak at %.4g m³/s: noise, hunting and a hot heater must be expected.", p.Flow, p.PeakFlow))
	}
	if !p.Stable {
		w = append(w, "The fan's curve is the steeper one at this point: the flow cannot rest there.")
	}
	return w
}

// Intersections returns every point at which fan, driven by drive, gives what the
// system takes when air flows in the ducts, from the smallest flow up. The
// pressure of the fan is n²(ρ/1.2) p(Q/n) of the tested curve p, ρ that of
// drive.Inlet or of air.
// Crossings on falling pieces of the fan's curve and on straight or
// downward-curved rising ones cannot be missed; a rising piece of a polynomial
// that curves upward is searched in 32 parts. The error lists every fault of
// drive and air.
func (s System) Intersections(fan Fan, drive FanDrive, air AirProperties) ([]Intersection, error) {
	if err := s.checkDriven(&fan, drive, air); err != nil {
		return nil, err
	}
	var f finder
	if err := s.find(&f, &fan, drive, air); err != nil {
		return nil, err
	}
	return append([]Intersection(nil), f.found[:f.count]...), nil
}

func (s System) checkDriven(fan *Fan, drive FanDrive, air AirProperties) error {
	var err error
	if len(s.runs) == 0 {
		err = fmt.Errorf("%w: the duct system is empty, make it with NewSystem", ErrRange)
	}
	return errors.Join(err, checkFan(fan), drive.check(), domain.Within("air", air.check()))
}

func checkFan(fan *Fan) error {
	if len(fan.flow) < 2 {
		return fmt.Errorf("%w: the fan is empty, make it with NewFanTable or NewFanPolynomial", ErrRange)
	}
	return nil
}

// find fills f with the crossings of fan and system.
func (s System) find(f *finder, fan *Fan, drive FanDrive, air AirProperties) error {
	f.against = against(drive, air)
	f.against.ducts = s
	return f.run(fan, drive)
}

// against is what the fan works on: the air at it and in the ducts, the mass flow
// of both being one.
func against(drive FanDrive, air AirProperties) resistance {
	r := resistance{air: air, fan: air.Density, swell: 1}
	if drive.Inlet != (AirProperties{}) {
		r.fan = drive.Inlet.Density
		r.swell = r.fan / air.Density
	}
	return r
}

// run lists the crossings of the fan with what f.against says.
func (f *finder) run(fan *Fan, drive FanDrive) error {
	f.fan, f.speed, f.last = *fan, drive.Speed, -1
	f.scale = drive.Speed * drive.Speed * f.against.fan / StandardDensity // fan laws
	n := len(fan.flow) - 1
	q := f.falling(f.system(fan.flow[n]))
	// Left of the peak the system takes no more than at the crossing found: a
	// fan that stays above that has no other.
	low := math.Inf(1)
	for _, p := range fan.pressure[:fan.peak+1] {
		low = math.Min(low, p)
	}
	if q == 0 || fan.peak > 0 && low <= f.pressure(q) {
		a, _ := f.system(fan.flow[0])
		b, _ := f.system(fan.flow[fan.peak])
		f.search(0, fan.peak, a, b)
	}
	if q > 0 {
		f.add(fan.pieceAt(q), q)
	}
	if f.count > maxCrossings {
		return fmt.Errorf("%w: the fan and duct curves cross %d times, at most %d are resolved", ErrNoSolution, f.count, maxCrossings)
	}
	return nil
}

// OperatingPoint returns the rightmost point at which fan, driven by drive, gives
// what the system takes when air flows in the ducts, with its powers and the
// warming of the air. A heater between fan and ducts stands in drive.Inlet: the
// fan then moves cold and dense air, the ducts carry the same mass hot and fast.
// All crossings are looked for, and Count says how many there are. The error lists every fault
// of drive and air; it is ErrNoSolution, with the gap at the end of the curve,
// when the curves do not cross within the fan's flows.
func (s System) OperatingPoint(fan Fan, drive FanDrive, air AirProperties) (OperatingPoint, error) {
	if err := s.checkDriven(&fan, drive, air); err != nil {
		return OperatingPoint{}, err
	}
	var f finder
	if err := s.find(&f, &fan, drive, air); err != nil {
		return OperatingPoint{}, err
	}
	return f.point(drive)
}

func noCrossing(flow, fan, system float64) error {
	if fan > system {
		return fmt.Errorf("%w: at the fan curve's last flow, %.6g m³/s, the fan still gives %.6g Pa and the ducts take %.6g Pa; the curve must reach further", ErrNoSolution, flow, fan, system)
	}
	return fmt.Errorf("%w: the fan stays below the pressure the ducts take at each of its flows; at the last, %.6g m³/s, it gives %.6g Pa of %.6g Pa", ErrNoSolution, flow, fan, system)
}

// point is the rightmost crossing with its powers.
func (f *finder) point(drive FanDrive) (OperatingPoint, error) {
	if f.count == 0 || f.found[f.count-1].Flow == 0 {
		n := len(f.fan.flow) - 1
		l, _ := f.system(f.fan.flow[n])
		return OperatingPoint{}, noCrossing(f.speed*f.fan.flow[n], f.scale*f.fan.pressure[n], f.scale*l)
	}
	air := &f.against.air
	p := OperatingPoint{Intersection: f.found[f.count-1], Count: f.count, PeakFlow: drive.Speed * f.fan.flow[f.fan.peak]}
	p.AirPower = p.Flow * p.Pressure
	p.ShaftPower = p.AirPower / drive.FanEfficiency
	p.ElectricPower = p.ShaftPower / drive.MotorEfficiency
	p.HeatToAir = p.ShaftPower
	if drive.MotorInStream {
		p.HeatToAir = p.ElectricPower
	}
	p.DuctFlow = p.Flow * f.against.swell
	p.Rise = p.HeatToAir / (air.Density * p.DuctFlow * air.HeatCapacity)
	p.SpecificFanPower = p.ElectricPower / p.Flow
	return p, nil
}

// FanRise returns the warming, K, of air that a fan lifts by pressure (Pa, 0 to
// 1e6) with the efficiency (fraction: air power over shaft power, or over electric
// power if the motor stands in the stream): Δp/(ρ cp η). NaN for a
// pressure, an efficiency outside 0.01 to 1, or air outside its range.
func FanRise(pressure, efficiency float64, air AirProperties) float64 {
	if !fanEfficiencyRange.Contains(efficiency) || !ductPressureRange.Contains(pressure) || air.check() != nil {
		return math.NaN()
	}
	return pressure / (air.Density * air.HeatCapacity * efficiency)
}

package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

var (
	openingHeightRange = domain.Range{Min: 0, Max: 20, Unit: "m", Source: "vents of protected-cropping houses"}
	flapLengthRange    = domain.Range{Min: 0, Max: 1e5, Unit: "m", Source: "the windows of some hectares, end to end"}
	windowAngleRange   = domain.Range{Min: 0, Max: 44, Unit: "degree", Source: "lee windows of the fit"}
)

// HouseVents are the vents of a house as the published greenhouse equations
// see them: all roof openings as one and all side openings as one.
type HouseVents struct {
	Roof       float64 // m², 0 to 1e5, of all roof openings: the openings themselves, not the flaps
	Side       float64 // m², 0 to 1e5, of all side openings
	RoofHeight float64 // m, 0 to 20, vertical height of one roof opening
	Separation float64 // m, 0 to 50, from the middle of the side openings up to that of the roof openings
	Discharge  float64 // dimensionless, 0 to 1, on the areas of the openings
	WindEffect float64 // dimensionless, 0 to 0.5, Cw
	Inside     float64 // °C, -60 to 80
	Outside    float64 // °C, -60 to 80
	Wind       float64 // m/s, 0 to 45, at the height that Cw was fitted for
}

// HouseVentFlow is the answer of the greenhouse equations.
type HouseVentFlow struct {
	RoofAlone   float64 // m³/s, [BoulardB95], the side openings shut
	RoofAndSide float64 // m³/s, [Kittas97]; with one of the two alone it has the wind and no stack
	Flow        float64 // m³/s, the larger: each leaves out what the other has
}

// Solve returns what the published equations give:
//
//	RoofAlone   = Roof/2 Cd sqrt(g h/2 dT/T + Cw U²)                                       [BoulardB95]
//	RoofAndSide = Cd sqrt((Roof Side)²/(Roof² + Side²) 2 g H dT/T + ((Roof + Side)/2)² Cw U²) [Kittas97]
//
// both as [Vanthoor11] appendix eq. 64 and 65 quote them, dT taken without its
// sign and T the mean of both. The stack of RoofAlone lies 6.07 % above the exact
// two-way flow of a tall opening, so that one pair of coefficients does not serve
// both. Cw holds mean and fluctuating wind together for one site and is no
// pressure coefficient. Neither print could be opened; the measurements behind
// them were not read. The error joins the faults by field.
func (v HouseVents) Solve() (HouseVentFlow, error) {
	if err := errors.Join(
		areaRange.Check("Roof", v.Roof),
		areaRange.Check("Side", v.Side),
		openingHeightRange.Check("RoofHeight", v.RoofHeight),
		handbookHeightRange.Check("Separation", v.Separation),
		dischargeRange.Check("Discharge", v.Discharge),
		windEffectRange.Check("WindEffect", v.WindEffect),
		temperatureRange.Check("Inside", v.Inside),
		temperatureRange.Check("Outside", v.Outside),
		windRange.Check("Wind", v.Wind),
	); err != nil {
		return HouseVentFlow{}, err
	}
	lift := constant.Gravity * math.Abs(v.Inside-v.Outside) / (0.5*(v.Inside+v.Outside) + kelvin)
	wind := v.WindEffect * v.Wind * v.Wind
	f := HouseVentFlow{RoofAlone: 0.5 * v.Roof * v.Discharge * math.Sqrt(0.5*v.RoofHeight*lift+wind)} // eq. 64
	half := 0.5 * (v.Roof + v.Side)
	stack := 0.0
	if v.Roof > 0 && v.Side > 0 {
		in := v.Roof * v.Side
		stack = in * in / (v.Roof*v.Roof + v.Side*v.Side) * 2 * v.Separation * lift
	}
	f.RoofAndSide = v.Discharge * math.Sqrt(stack+half*half*wind) // eq. 65
	f.Flow = math.Max(f.RoofAlone, f.RoofAndSide)
	return f, nil
}

// RoofWindows are the windows in the roof of a large house of many spans.
type RoofWindows struct {
	Lee           float64 // m, 0 to 1e5, length of all windows on lee slopes, end to end
	Windward      float64 // m, 0 to 1e5, on windward slopes
	Chord         float64 // m, 0 to 20, of the flaps from the hinge to the free edge
	Pitch         float64 // degree, slope of the roof, 0 to 80
	LeeAngle      float64 // degree, 0 to 44, to which the lee windows are opened
	WindwardAngle float64 // degree, 0 to 44, to which the windward windows are opened
	Discharge     float64 // dimensionless, 0 to 1, for the stack
	Inside        float64 // °C, -60 to 80
	Outside       float64 // °C, -60 to 80
	Wind          float64 // m/s, 0 to 45
}

// RoofWindowFlow is the air that roof windows exchange.
type RoofWindowFlow struct {
	Wind  float64 // m³/s, by wind alone
	Stack float64 // m³/s, by stack alone
	Flow  float64 // m³/s, root of the sum of the squares
}

// Window functions of [DeJong90] (from memory), on
// the area of the flaps, angles in degrees.
const (
	leeMost    = 2.29e-2
	leeBend    = 21.1 // degree
	windwardBy = 1.2e-3
	windwardUp = 211.0 // degree
)

// Solve returns the exchange by the window functions of large houses:
//
//	Wind  = U (A_lee 2.29e-2 (1 - exp(-a/21.1)) + A_windward 1.2e-3 a exp(a/211))
//	Stack = sum of Cd l/3 sqrt(g dT/T) Hv^1.5, Hv = h (sin psi - sin(psi - a))
//
// [DeJong90], the coefficients from memory. Windows few against hectares of
// roof exchange by turbulence, not by flow through the house: these are three to
// five times below HouseVents and not for a small house by itself. T is the mean
// of both. The error joins the faults by field.
func (w RoofWindows) Solve() (RoofWindowFlow, error) {
	if err := errors.Join(
		flapLengthRange.Check("Lee", w.Lee),
		flapLengthRange.Check("Windward", w.Windward),
		openingHeightRange.Check("Chord", w.Chord),
		pitchRange.Check("Pitch", w.Pitch),
		windowAngleRange.Check("LeeAngle", w.LeeAngle),
		windowAngleRange.Check("WindwardAngle", w.WindwardAngle),
		dischargeRange.Check("Discharge", w.Discharge),
		temperatureRange.Check("Inside", w.Inside),
		temperatureRange.Check("Outside", w.Outside),
		windRange.Check("Wind", w.Wind),
	); err != nil {
		return RoofWindowFlow{}, err
	}
	lee := leeMost * -math.Expm1(-w.LeeAngle/leeBend)
	windward := windwardBy * w.WindwardAngle * math.Exp(w.WindwardAngle/windwardUp)
	f := RoofWindowFlow{Wind: w.Wind * w.Chord * (w.Lee*lee + w.Windward*windward)}
	lift := constant.Gravity * math.Abs(w.Inside-w.Outside) / (0.5*(w.Inside+w.Outside) + kelvin)
	f.Stack = w.Discharge / 3 * math.Sqrt(lift) * (w.Lee*w.tall(w.LeeAngle) + w.Windward*w.tall(w.WindwardAngle))
	f.Flow = math.Hypot(f.Wind, f.Stack)
	return f, nil
}

// tall returns the vertical height, m, of a window opened to angle, degree, to
// the power 1.5.
func (w RoofWindows) tall(angle float64) float64 {
	const rad = math.Pi / 180
	h := w.Chord * (math.Sin(w.Pitch*rad) - math.Sin((w.Pitch-angle)*rad))
	return h * math.Sqrt(h)
}

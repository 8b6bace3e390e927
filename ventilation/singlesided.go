package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// TwoWayFlow is the exchange through one tall opening with nothing else open.
type TwoWayFlow struct {
	Neutral float64 // m above the opening's lower edge
	Flow    float64 // kg/s each way
}

// SingleOpening returns the exchange through v with nothing else open, in calm
// air under c, whose Wind is not used. The height integral is exact with the
// density of each stream: mass balance puts the neutral level at
// h/H = 1/(1 + (rho_low/rho_high)^(1/3)), rho_low the heavier air that passes
// below. ExchangeDischarge is the discharge coefficient of such an opening. The
// error joins every fault by field.
func SingleOpening(v TallVent, c FlowConditions) (TwoWayFlow, error) {
	o, err := v.Opening()
	if err = errors.Join(err, c.check()); err != nil {
		return TwoWayFlow{}, err
	}
	return singleOpening(o, c), nil
}

// singleOpening is SingleOpening for sound input.
func singleOpening(o Opening, c FlowConditions) TwoWayFlow {
	heavy, light := math.Max(c.InsideDensity, c.OutsideDensity), math.Min(c.InsideDensity, c.OutsideDensity)
	h := o.Vertical / (1 + math.Cbrt(heavy/light))
	return TwoWayFlow{
		Neutral: h,
		Flow:    2.0 / 3 * o.Discharge * (o.Area / o.Vertical) * h * math.Sqrt(2*heavy*math.Abs(buoyancy(c))*h),
	}
}

// singleSided names a published correlation for ventilation through openings
// on one face alone.
type singleSided uint8

// The correlations, in the order of SingleSidedBand.
const (
	brownSolvason    singleSided = iota // buoyancy alone, Boussinesq [Brown62], Cd 0.61
	deGidsPhaff                         // [GidsPhaff82] 0.5 A sqrt(0.001 U² + 0.0035 H dT + 0.01)
	en16798                             // [EnVent17] 0.5 A sqrt(max(0.001 U², 0.0035 H dT))
	warrenParkins                       // [Warren84] larger of Cd A/3 sqrt(g H dT/T) and 0.025 A U
	din4108                             // [Din22] root of the squares' sum with 0.05 A U
	larsenHeiselberg                    // [LarsenH08] with the incidence of the wind
	singleSidedCount
)

// OneFace is what the single-sided correlations ask for.
type OneFace struct {
	Area      float64 // m², more than 0, at most 1e5; free area
	Height    float64 // m, more than 0, at most 20; vertical extent of the opening
	Inside    float64 // °C, -60 to 80
	Outside   float64 // °C, -60 to 80
	Wind      float64 // m/s, 0 to 45, at 10 m for most, at the face for EN16798 and DIN4108
	Incidence float64 // degree, of the wind from the face's normal, 0 to 180
}

// Ranges of OneFace.
var incidenceRange = domain.Range{Min: 0, Max: 180, Unit: "degree", Source: "faces are taken as symmetric"}

// check joins every fault of f, by field.
func (f OneFace) check() error {
	return errors.Join(
		openAreaRange.Check("Area", f.Area),
		openVerticalRange.Check("Height", f.Height),
		temperatureRange.Check("Inside", f.Inside),
		temperatureRange.Check("Outside", f.Outside),
		windRange.Check("Wind", f.Wind),
		incidenceRange.Check("Incidence", f.Incidence),
	)
}

// Published coefficients, in the sources' order.
const (
	singleDischarge = 0.61   // [Warren84], [Din22]
	gidsHalf        = 0.5    // [GidsPhaff82], [EnVent17]
	gidsWind        = 0.001  // per (m/s)²
	gidsStack       = 0.0035 // per (m K)
	gidsTurbulence  = 0.01
	warrenWind      = 0.025
	dinWind         = 0.05
	larsenLeastWind = 1.0 // m/s, below it the third term is left out
)

// larsen holds [LarsenH08]'s factor at 0, 45 ... 180 degrees, and the
// coefficients of windward, parallel and lee incidence.
var (
	larsenIncidence = [5]float64{0.2, 0.53, 0.56, 0.28, 0.09}
	larsenWindward  = [3]float64{0.0015, 0.0009, -0.0005}
	larsenParallel  = [3]float64{0.0010, 0.0005, 0.0111}
	larsenLee       = [3]float64{0.0050, 0.0009, 0.0160}
	larsenDelta     = [4]float64{9.1894e-9, -2.626e-6, -2.354e-4, 0.113}
)

// Flow returns the volume flow, m³/s, each way through f. It returns NaN
// for a fault in f and for an unknown name.
func (s singleSided) Flow(f OneFace) float64 {
	if f.check() != nil {
		return math.NaN()
	}
	dt := math.Abs(f.Inside - f.Outside)
	u2 := f.Wind * f.Wind
	stack := func(t float64) float64 {
		return singleDischarge / 3 * f.Area * math.Sqrt(constant.Gravity*f.Height*dt/(t+kelvin))
	}
	mean := 0.5 * (f.Inside + f.Outside)
	switch s {
	case brownSolvason:
		return stack(mean)
	case deGidsPhaff:
		return gidsHalf * f.Area * math.Sqrt(gidsWind*u2+gidsStack*f.Height*dt+gidsTurbulence)
	case en16798:
		return gidsHalf * f.Area * math.Sqrt(math.Max(gidsWind*u2, gidsStack*f.Height*dt))
	case warrenParkins:
		return math.Max(stack(mean), warrenWind*f.Area*f.Wind)
	case din4108:
		return math.Hypot(stack(f.Outside), dinWind*f.Area*f.Wind)
	case larsenHeiselberg:
		return f.Area * math.Sqrt(math.Max(0, larsenSquare(f, dt, u2)))
	}
	return math.NaN()
}

func larsenSquare(f OneFace, dt, u2 float64) float64 {
	k := larsenParallel
	if f.Incidence <= 75 {
		k = larsenWindward
	} else if f.Incidence >= 105 {
		k = larsenLee
	}
	i := min(int(f.Incidence/45), 3)
	part := f.Incidence/45 - float64(i)
	c := larsenIncidence[i] + part*(larsenIncidence[i+1]-larsenIncidence[i])
	sum := k[0]*c*c*u2 + k[1]*dt*f.Height
	if f.Wind > larsenLeastWind {
		d := ((larsenDelta[0]*f.Incidence+larsenDelta[1])*f.Incidence+larsenDelta[2])*f.Incidence + larsenDelta[3]
		sum += k[2] * d * dt / u2
	}
	return sum
}

// SingleSidedBand is the spread of the correlations for one opening, m³/s each
// way. All were fitted to rooms, none to a protected-cropping house.
type SingleSidedBand struct {
	Low              float64 // m³/s, least of the correlations
	High             float64 // m³/s, greatest of the correlations
	BrownSolvason    float64 // m³/s, buoyancy alone, Boussinesq [Brown62], Cd 0.61
	DeGidsPhaff      float64 // m³/s, [GidsPhaff82] 0.5 A sqrt(0.001 U² + 0.0035 H dT + 0.01)
	EN16798          float64 // m³/s, [EnVent17] 0.5 A sqrt(max(0.001 U², 0.0035 H dT))
	WarrenParkins    float64 // m³/s, [Warren84] larger of Cd A/3 sqrt(g H dT/T) and 0.025 A U
	DIN4108          float64 // m³/s, [Din22] root of the squares' sum with 0.05 A U
	LarsenHeiselberg float64 // m³/s, [LarsenH08] with the incidence of the wind
}

// Band returns the flows, m³/s, that the correlations give for f and their
// spread, which is the honest answer of a hand formula. The error joins the
// faults of f.
func (f OneFace) Band() (SingleSidedBand, error) {
	if err := f.check(); err != nil {
		return SingleSidedBand{}, err
	}
	b := SingleSidedBand{Low: math.Inf(1)}
	for s, field := range [singleSidedCount]*float64{&b.BrownSolvason, &b.DeGidsPhaff, &b.EN16798, &b.WarrenParkins, &b.DIN4108, &b.LarsenHeiselberg} {
		*field = singleSided(s).Flow(f)
		b.Low, b.High = math.Min(b.Low, *field), math.Max(b.High, *field)
	}
	return b, nil
}

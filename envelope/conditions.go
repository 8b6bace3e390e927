package envelope

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// HouseAir is the air inside and outside a house with the wind and the sky
// over it: what NewCoverConditions, NewHouseConditions and Leakage.Flow take. The zero
// Hour is midnight, the zero Cloud a clear sky.
type HouseAir struct {
	Inside  psychro.State // air in the house
	Outside psychro.State // air outside, of the same pressure
	Wind    float64       // m/s, 0 to 40, at the cover
	Hour    time.Duration // since midnight in solar time, 0 to 24 h
	Cloud   float64       // fraction, 0 to 1, of the sky under low cloud
}

// NewCoverConditions returns DefaultCoverConditions in the given air: its
// sky is that of SkyTemperature, ground and room are as warm as the air beside
// them, and the inner face is wet where it lies below the dew point. The error
// joins a *RangeError for each fault.
func NewCoverConditions(a HouseAir) (CoverConditions, error) {
	k := DefaultCoverConditions()
	sky, bad := skyTemperature(a.Outside, a.Hour, a.Cloud, skyNames{"Outside", "Hour", "Cloud"})
	p := a.Outside.Pressure()
	same := domain.Range{Min: p * (1 - samePressure), Max: p * (1 + samePressure), Unit: "Pa", Source: "the pressure of Outside"}
	if err := errors.Join(
		bad,
		coverTemperatureRange.Check("temperature of Inside", a.Inside.Temperature()),
		same.Check("pressure of Inside", a.Inside.Pressure()),
		localWindRange.Check("Wind", a.Wind),
	); err != nil {
		return CoverConditions{}, err
	}
	k.Inside, k.InsideHumidity = a.Inside.Temperature(), math.Min(1, a.Inside.RelativeHumidity())
	k.Outside, k.SkyDrop = a.Outside.Temperature(), a.Outside.Temperature()-sky
	k.Wind, k.Pressure, k.InnerFace = a.Wind, p, InnerAuto
	return k, nil
}

// samePressure is the fraction by which two states of one place may differ in
// pressure.
const samePressure = 0.01

// NewHouseConditions returns DefaultHouseConditions in the given air, as
// NewCoverConditions does. The error joins a *RangeError for each fault.
func NewHouseConditions(a HouseAir) (HouseConditions, error) {
	c, err := NewCoverConditions(a)
	if err != nil {
		return HouseConditions{}, err
	}
	k := DefaultHouseConditions()
	k.CoverConditions, k.OutsideHumidity = c, math.Min(1, a.Outside.RelativeHumidity())
	return k, nil
}

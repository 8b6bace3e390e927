package lighting

import (
	"fmt"
	"math"
)

// StandingCautions returns the cautions that go with every lighting plan: none of its figures is a
// safety assessment. [UlHort19] asks for a photobiological assessment of one
// luminaire; a site with many needs its own. [IecEyes06] sorts lamps into
// risk groups by distance.
func StandingCautions() []string {
	return []string{
		"This is not a safety assessment: local codes and licensed practice decide.",
		"Eyes: do not look into lit fixtures; judge the risk group at the nearest working distance, for all fixtures together, and keep risk group 3 away from people.",
		"Wet room: use fixtures, drivers and connectors rated for water and wash-down, on circuits with residual-current protection; isolate before cleaning.",
		"Heat: keep the maker's clearance between fixtures and film, plants and timber, and let drivers breathe.",
		"Weight: hang fixtures from members that may carry them besides crop, wind and snow.",
	}
}

// Common practice, no source: closer than near a fixture is no point to the map,
// and a spot as strong as strongSpot bleaches or burns leaves.
const (
	near       = 0.3   // m
	strongSpot = 1000. // µmol/(m² s)
)

// Cautions returns the standing cautions and what is unusual in the layout
// over the bed: a beam angle outside 80 to 160 degree, as when a half angle was
// taken for the full one, fixtures close to the plane or below it, and light
// strong enough to harm leaves right under a fixture.
func Cautions(layout Layout, bed Bed) []string {
	var out []string
	narrow, close, below, strong := 0, 0, 0, 0
	angle := 0.0
	for _, f := range layout {
		d, ok := f.Light.(CosinePower)
		beam := math.Round(1e6*d.BeamAngle()) / 1e6 // so that an angle given at the limit lies within
		if ok && d.m > 0 && !usualBeamRange.Contains(beam) {
			narrow++
			angle = beam
		}
		a, b := f.ends()
		clearance := min(a.Z, b.Z) - bed.Z
		switch {
		case clearance <= 0:
			below++
		case clearance < near:
			close++
		}
		if ok && f.Length == 0 && clearance > 0 && d.SpotPPFD(clearance, 0) > strongSpot {
			strong++
		}
	}
	if narrow > 0 {
		out = append(out, fmt.Sprintf("%d fixtures have a full beam angle outside %g to %g degree (%.3g): if the data sheet gives the half angle, from the axis to half intensity, give twice as much.", narrow, usualBeamRange.Min, usualBeamRange.Max, angle))
	}
	if below > 0 {
		out = append(out, fmt.Sprintf("%d fixtures hang at or below the plane and give it no light.", below))
	}
	if close > 0 {
		out = append(out, fmt.Sprintf("%d fixtures hang less than %g m above the plane: the map treats each as a point or line, which is right to 1 %% only from five times its largest dimension.", close, near))
	}
	if strong > 0 {
		out = append(out, fmt.Sprintf("%d fixtures give more than %g µmol/(m² s) right below: leaves may bleach or scorch.", strong, strongSpot))
	}
	return append(out, StandingCautions()...)
}

package envelope_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/psychro"
)

// A door of 3 W/(m² K) by hand: dry its face lies 0.39 of the difference below
// the room; wet it closes with psychro's flux at 2.5 W/(m² K).
func TestDoorIsJudgedByItsOwnFace(t *testing.T) {
	k := DefaultHouseConditions() // 15 °C, 0 °C
	face := 15 - 3*0.13*15.0
	k.InsideHumidity = psychro.SaturationPressure(face) / psychro.SaturationPressure(15) * 0.99
	dry := DoorOf(t, k, 3)
	require.Equal(t, 3*15.0, dry.Load)
	require.Zero(t, dry.Condensate)
	k.InsideHumidity = 0.9
	wet := DoorOf(t, k, 3)
	air := airOf(t, 15, 0.9, k.Pressure)
	// The sensible part of the load gives the face.
	face = 15 - 0.13*(wet.Load-wet.Condensate*psychro.LatentHeat(15))
	v, err := air.VapourFlux(face, 2.5)
	require.NoError(t, err)
	require.InEpsilon(t, v.Flux, wet.Condensate, 1e-6)
	require.InDelta(t, face/(1.0/3-0.13), (15-face)/0.13+v.Latent, 1e-5)
	require.Zero(t, wet.Ice)
	// Metal alone: the face stays between outside and inside; U 0 passes nothing.
	require.Less(t, 15-0.13*(DoorOf(t, k, 20).Load), 15.0)
	require.Zero(t, DoorOf(t, k, 0).Load)
	require.Greater(t, DoorOf(t, k, 30).Load, 30*15.0)
}

// Through the freezing point of the face neither heat nor water makes a step.
func TestDoorFreezes(t *testing.T) {
	k := DefaultHouseConditions()
	kinds := map[string]int{}
	last := DoorHeat{}
	const step = 0.01
	for k.Outside = -5; k.Outside > -35; k.Outside -= step {
		x := DoorOf(t, k, 5)
		if last.Load > 0 {
			require.InDelta(t, last.Load, x.Load, 8*step)
			require.InDelta(t, last.Condensate, x.Condensate, 2e-6*step)
		}
		last = x
		switch {
		case x.Ice == 0:
			kinds["water"]++
		case x.Ice == 1:
			kinds["frost"]++
		default:
			kinds["both"]++
		}
	}
	require.Len(t, kinds, 3)
}

// A door of metal has no resistance beside its surfaces: these divide the
// difference as 0.13 to 0.04, and vapour condenses from that face down.
func TestMetalDoorDividesByItsSurfaces(t *testing.T) {
	k := DefaultHouseConditions()
	k.Inside, k.Outside = 25, 5
	face := 25 - 0.13/0.17*20
	for _, x := range []struct {
		dew  float64 // °C, beyond the face
		wets bool
	}{{-0.02, false}, {0.02, true}} {
		k.InsideHumidity = airOf(t, face+x.dew, 1, k.Pressure).VapourPressure() / airOf(t, 25, 1, k.Pressure).VapourPressure()
		require.Equal(t, x.wets, DoorOf(t, k, 20).Condensate > 0, "%+v", x)
	}
}

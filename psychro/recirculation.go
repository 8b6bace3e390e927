package psychro

import (
	"errors"
	"fmt"
)

// RecirculatedRoom is a ventilated room: part of its air is returned and mixed
// with the fresh air before it enters again.
type RecirculatedRoom struct {
	Fresh         Stream  // the fresh air
	Recirculated  float64 // kg/s of dry air led back into the supply, 0 to 1e6
	Heat          float64 // W, that the room gains
	Water         float64 // kg/s, that the room gains
	WaterEnthalpy float64 // J/kg, of that water: SteamEnthalpy for what plants and people evaporate
}

// Recirculation is the steady state of a RecirculatedRoom.
type Recirculation struct {
	Room   Stream  // the room's air: fresh air and all gains; the exhaust has the same state
	Supply Mixture // fresh and recirculated air together, as they enter
}

// Solve returns the steady state of the room. The returned air changes the
// supply, not the room: gains leave with the exhaust alone. An error if an
// input is at fault or if the room's air would hold fog.
func (r RecirculatedRoom) Solve() (Recirculation, error) {
	room, err := r.Fresh.Changed(r.Heat, r.Water, r.WaterEnthalpy)
	if err = errors.Join(err, dryAirsRange.Check("Recirculated", r.Recirculated)); err != nil {
		return Recirculation{}, err
	}
	if fog := room.FogLiquid + room.FogIce; fog > 0 {
		return Recirculation{}, fmt.Errorf("%w: the room's air would hold %.3g kg/s of fog", ErrNoSolution, fog)
	}
	supply, err := Mix(r.Fresh, Stream{State: room.Air.State, DryAir: r.Recirculated})
	return Recirculation{Room: room.Air, Supply: supply}, err
}

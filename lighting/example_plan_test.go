package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// The fewest fixtures for 120 µmol/(m² s) at harvest with U0 of 0.6 on an
// invented bed, and what they draw and give off in a day.
func ExampleNeed_Solve() {
	light, err := lighting.FromBeamAngle(250, 120)
	if err != nil {
		fmt.Println(err)
		return
	}
	need := lighting.Need{PPFD: 120, U0: 0.6, Maintenance: lighting.Maintenance{Flux: 0.92, Survival: 1, Luminaire: 0.95, Surfaces: 1},
		Fixture: lighting.Fixture{Light: light, Power: 92}, Bed: lighting.Bed{Z: 0.8, Length: 5, Width: 1.6}, MinHeight: 0.6, MaxHeight: 1.4, MaxCount: 16}
	plan, err := need.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d by %d fixtures with %.0f W/m², maintenance factor %.2f\n", plan.Columns, plan.Rows, plan.PowerDensity, need.Maintenance.Factor())
	fmt.Println("enough at harvest:", plan.Harvest.Mean >= need.PPFD && plan.Harvest.U0 >= need.U0)
	for _, c := range lighting.StandingCautions()[:1] {
		fmt.Println(c)
	}

	// Output:
	// 4 by 2 fixtures with 92 W/m², maintenance factor 0.87
	// enough at harvest: true
	// This is not a safety assessment: local codes and licensed practice decide.
}

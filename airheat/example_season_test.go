package airheat_test

import (
	"fmt"
	"log"
	"math"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

// One invented year by the methods of the season: hours, bins, degree-hours and
// months, and what a lower set-point at night saves a well insulated light house and a heavy one.
func Example_seasonMethods() {
	season := airheat.HeatingSeason{
		Outside: make([]float64, 8760), Sun: make([]float64, 8760),
		SetPoints: airheat.SetPoints{Day: 16, Night: 12, DayStarts: 7, DayEnds: 19},
		Loss:      400 + airheat.LeakageRule(0.5, 240), // 0.33 n V
		Aperture:  40, Price: 0.38,
		Plants: airheat.Plants{Area: 25, Evaporated: 0.5}, // half of what falls on them becomes vapour
	}
	season.Burner.Rated, season.Burner.Efficiency = 20e3, 0.88
	season.Burner.Standby, season.Burner.Ready = 0.01, 5000
	season.Burner.Fuel, _ = airheat.FindFuel("wood pellets")
	for h := range season.Outside {
		year, day := 2*math.Pi*float64(h)/8760, 2*math.Pi*float64(h%24)/24
		season.Outside[h] = 9 - 10*math.Cos(year) - 4*math.Cos(day)
		season.Sun[h] = math.Max(0, -(180-120*math.Cos(year))*math.Cos(day)*1.8)
	}
	base, err := season.BaseTemperature()
	if err != nil {
		log.Fatal(err)
	}
	months, err := season.MonthlyMeans()
	if err != nil {
		log.Fatal(err)
	}
	hours, e1 := season.Hourly()
	bins, e2 := season.Bins(2)
	degrees, e3 := season.DegreeHours(base)
	monthly, _, e4 := airheat.MonthlyHouse{SetPoint: 14, Aperture: 40, Plants: season.Plants, Storage: 10, Burner: season.Burner, Price: 0.38}.Solve(months)
	for _, err := range []error{e1, e2, e3, e4} {
		if err != nil {
			log.Fatal(err)
		}
	}
	for _, r := range []airheat.SeasonHeat{hours, bins, degrees, monthly} {
		fmt.Printf("%-13s %6.0f kWh, %5.0f kg of pellets, %5.0f currency\n", r.Method, r.Heat/3.6e6, r.FuelMass, r.Cost)
	}
	fmt.Printf("2,500 K d by hand %.0f kWh\n", airheat.DegreeDayEnergy(season.Loss, 2500, 1)/3.6e6)
	for _, structure := range []float64{1e6, 3e7} {
		house, err := airheat.NewTransient(envelope.Nodes{AirCapacity: 3e5, StructureCapacity: structure, SoilCapacity: 2e7, Cover: 100, Leakage: 20, AirStructure: 600, AirSoil: 450, SoilDeep: 60})
		if err != nil {
			log.Fatal(err)
		}
		s, err := house.NightSetBack(envelope.Drive{Outside: -5, Deep: 8}, season.SetPoints, 20e3)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("set-back with %.0f MJ/K of structure saves %.1f %%\n", structure/1e6, 100*s.Saving)
	}
	// Output:
	// hourly         17740 kWh,  4514 kg of pellets,  1715 currency
	// bins           16818 kWh,  4292 kg of pellets,  1631 currency
	// degree-hours   16170 kWh,  4136 kg of pellets,  1572 currency
	// monthly means  16137 kWh,  4128 kg of pellets,  1569 currency
	// 2,500 K d by hand 26376 kWh
	// set-back with 1 MJ/K of structure saves 11.6 %
	// set-back with 30 MJ/K of structure saves 11.5 %
}

// Air through a bed of stones by day.
func Example_rockBed() {
	bed := airheat.DefaultRockBed()
	bed.Area, bed.Depth, bed.DesignFlow = 4, 1.5, 0.5
	air := airheat.DryAir(28, 101325)
	store, err := airheat.NewRockBedStore(bed, 14, air)
	if err != nil {
		log.Fatal(err)
	}
	var in float64
	for range 6 {
		r, err := store.Step(0.5, 28, air, 3600e9, false)
		if err != nil {
			log.Fatal(err)
		}
		in += r.Heat * 3600
	}
	fmt.Printf("%.1f kWh in six hours of 28 °C into stones of %.1f kWh/K\n", in/3.6e6, store.Capacity()/3.6e6)
	// Output:
	// 28.3 kWh in six hours of 28 °C into stones of 2.0 kWh/K
}

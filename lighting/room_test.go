package lighting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func box() Room {
	return Room{Length: 4, Width: 2, Height: 2.5, Floor: 0.3, Ceiling: 0.7, WallX0: 0.5, WallX1: 0.4, WallY0: 0.6, WallY1: 0.2}
}

func everyLight(t *testing.T) map[string]Fixture {
	bar := Fixture{Light: cosine(t, 80, 2.3), At: Point{1.7, 0.9, 1.8}, Length: 1.1, Aim: AimBar(BarAngles{25, 10, 35})}
	return map[string]Fixture{
		"Lambertian down":   {Light: cosine(t, 100, 1), At: Point{1, 0.7, 2}},
		"Lambertian tilted": {Light: cosine(t, 100, 1), At: Point{1, 0.7, 2}, Aim: Aim(AimAngles{33, 71, 0})},
		"even":              {Light: cosine(t, 100, 0), At: Point{1, 0.7, 2}, Aim: Aim(AimAngles{33, 40, 0})},
		"wide":              {Light: cosine(t, 100, 0.37), At: Point{3, 0.7, 1.2}, Aim: Aim(AimAngles{200, 95, 0})},
		"beam":              {Light: cosine(t, 100, 4.8188), At: Point{1, 0.7, 2}, Aim: Aim(AimAngles{10, 30, 0})},
		"upwards":           {Light: cosine(t, 100, 2), At: Point{1, 0.7, 2}, Aim: Aim(AimAngles{0, 180, 0})},
		"narrow":            {Light: cosine(t, 100, 300), At: Point{1, 0.7, 2}, Aim: Aim(AimAngles{310, 60, 0})},
		"bar":               bar,
	}
}

func TestPhotonsOnAClosedBoxEqualPhotonsEmitted(t *testing.T) {
	r := box()
	for name, f := range everyLight(t) {
		t.Run(name, func(t *testing.T) {
			for _, n := range []int{1, 3} {
				sum := 0.0
				for face := range faces {
					for j := range n {
						for i := range n {
							sum += rectangleFlux(f, r.patch(face, n, i, j))
						}
					}
				}
				require.InEpsilon(t, f.ppf(), sum, 1e-9, "%d", n)
			}
		})
	}
	f := Fixture{Light: lopsided(t, TypeC, 19, 13), At: Point{1.3, 0.9, 1.7}, Aim: Aim(AimAngles{20, 40, 60})}
	sum := 0.0
	for face := range faces {
		sum += rectangleFlux(f, r.patch(face, 1, 0, 0))
	}
	require.InEpsilon(t, f.ppf(), sum, 2e-4, "kinks of the table stop the quadrature there")
}

func TestFluxThroughARectangleIsTheIntegralOfTheMap(t *testing.T) {
	bed := Bed{X: 0.4, Y: 0.3, Length: 2, Width: 1.1, Z: 0.6}
	for name, f := range everyLight(t) {
		if name == "upwards" {
			continue
		}
		l, err := NewLights(f)
		require.NoError(t, err)
		p, err := bed.Grid(400, 220)
		require.NoError(t, err)
		ppfd, err := l.MapTo(nil, p)
		require.NoError(t, err)
		s, err := Evenness(ppfd)
		require.NoError(t, err)
		got := rectangleFlux(f, [4]Point{{0.4, 0.3, 0.6}, {2.4, 0.3, 0.6}, {2.4, 1.4, 0.6}, {0.4, 1.4, 0.6}})
		require.InDelta(t, s.Mean*bed.Area(), got, 2e-5*f.ppf(), name)
	}
}

func TestFactorsOfEachPatchSumToOneBothWays(t *testing.T) {
	r := box()
	const n = 5
	x := r.exchange(n)
	one := func(i int) []float64 {
		light := make([]float64, n*n)
		light[i] = 1
		return light
	}
	for f1 := range faces {
		for p1 := range n * n {
			sum := 0.0
			for f2 := range faces {
				if f2 == f1 {
					continue
				}
				for p2 := range n * n {
					a := x.between(f1, p1%n, p1/n, f2, one(p2))
					require.InDelta(t, x.between(f2, p2%n, p2/n, f1, one(p1)), a, 1e-14)
					require.Greater(t, a, 0.0)
					sum += a
				}
			}
			require.InDelta(t, r.faceArea(f1)/(n*n), sum, 1e-12)
		}
	}
}

// chance shoots photons: an independent solution of the same problem.
func chance(r Room, f Fixture, photons int, rnd *rand.Rand) (first, total [faces]float64) {
	side, rho := r.sides(), r.reflectance()
	d := f.Light.(CosinePower)
	turn := f.Aim.matrix()
	for range photons {
		c := math.Pow(1-rnd.Float64(), 1/(d.m+1))
		s, phi := math.Sqrt(1-c*c), 2*math.Pi*rnd.Float64()
		local := [3]float64{s * math.Cos(phi), s * math.Sin(phi), -c}
		var dir [3]float64
		for i := range dir {
			for j := range local {
				dir[i] += turn[i][j] * local[j]
			}
		}
		at := [3]float64{f.At.X, f.At.Y, f.At.Z}
		for bounce := 0; ; bounce++ {
			near, face := math.Inf(1), 0
			for k := range 3 {
				if dir[k] > 0 {
					if t := (side[k] - at[k]) / dir[k]; t < near {
						near, face = t, 2*k+1
					}
				} else if t := -at[k] / dir[k]; dir[k] < 0 && t < near {
					near, face = t, 2*k
				}
			}
			if bounce == 0 {
				first[face]++
			}
			total[face]++
			if rnd.Float64() >= rho[face] {
				break
			}
			k := face / 2
			for i := range at {
				at[i] = math.Min(math.Max(at[i]+near*dir[i], 0), side[i])
			}
			at[k] = side[k] * float64(face%2)
			s2 := rnd.Float64()
			s, phi := math.Sqrt(s2), 2*math.Pi*rnd.Float64()
			a, b := inFace[k][0], inFace[k][1]
			dir[a], dir[b], dir[k] = s*math.Cos(phi), s*math.Sin(phi), math.Sqrt(1-s2)
			if face%2 == 1 {
				dir[k] = -dir[k]
			}
		}
	}
	for face := range faces {
		scale := d.ppf / float64(photons) / r.faceArea(face)
		first[face] *= scale
		total[face] *= scale
	}
	return first, total
}

func TestRadiosityAgreesWithPhotonsShotAtRandom(t *testing.T) {
	r := box()
	f := Fixture{Light: cosine(t, 100, 2.4), At: Point{1.2, 0.8, 1.9}, Aim: Aim(AimAngles{20, 35, 0})}
	const photons = 1_000_000
	_, total := chance(r, f, photons, rand.New(rand.NewPCG(5, 6)))
	s, err := r.Reflect(Layout{f}, 12)
	require.NoError(t, err)
	for face := range faces {
		require.InEpsilon(t, total[face], s.FaceMean(RoomFace(face)), 0.006, "face %d", face)
	}
}

func TestEnergyBalanceOfAnEvenEnclosure(t *testing.T) {
	check.Run(t, []check.Row{
		// What the walls of a sphere of radius 1 add to the first light.
		{Where: "identity/integrating sphere, reflected", In: []float64{1000, 0.8}, Printed: "318.3099"},
	}, func(in ...float64) float64 { return in[1] * EnclosureMean(in[0], 4*math.Pi, in[1]) })
	r := Room{4, 2, 2.5, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8}
	f := Fixture{Light: cosine(t, 1200, 1), At: Point{1, 0.7, 2}}
	const area = 2 * (4*2 + 4*2.5 + 2*2.5)
	mean := func(n int) float64 {
		s, err := r.Reflect(Layout{f}, n)
		require.NoError(t, err)
		sum := 0.0
		for face := range faces {
			sum += s.FaceMean(RoomFace(face)) * r.faceArea(face)
		}
		return sum / area
	}
	check.Run(t, []check.Row{{Where: "identity/box of 4 by 2 by 2.5 m", In: []float64{1200, 0.8}, Printed: "130.4347826"}},
		func(in ...float64) float64 { return EnclosureMean(in[0], area, in[1]) })
	for _, n := range []int{1, 6} {
		check.Run(t, []check.Row{{Where: fmt.Sprintf("identity/box of 4 by 2 by 2.5 m solved with %d patches", n), Printed: "130.4347826"}},
			func(...float64) float64 { return mean(n) })
		require.InEpsilon(t, EnclosureMean(1200, area, 0.8), mean(n), 1e-10)
	}
}

func TestAMapOnAFaceMeetsItsPatches(t *testing.T) {
	r := box()
	f := Fixture{Light: cosine(t, 100, 1), At: Point{1.2, 0.8, 1.9}}
	const n = 8
	s, err := r.Reflect(Layout{f}, n)
	require.NoError(t, err)
	p, err := Bed{Length: 4, Width: 2}.Grid(40, 40)
	require.NoError(t, err)
	got, err := s.Map(p)
	require.NoError(t, err)
	m, err := Evenness(got)
	require.NoError(t, err)
	direct := 0.0
	for _, v := range s.Direct[4*n*n : 5*n*n] {
		direct += v / (n * n)
	}
	require.InEpsilon(t, s.FaceMean(4)-direct, m.Mean, 2e-3)
	one, err := s.MapOneBounce(p)
	require.NoError(t, err)
	for i := range one {
		require.Less(t, one[i], got[i])
	}
}

func TestBadRooms(t *testing.T) {
	r := Room{Length: 0, Width: 2, Height: 2, Floor: 60, Ceiling: math.NaN()}
	_, err := r.Reflect(Layout{{Light: cosine(t, 1, 1), At: Point{1, 1, 1}}}, 0)
	for _, want := range []string{"Room.Length", "Room.Floor", "Room.Ceiling", "n is 0"} {
		require.ErrorContains(t, err, want)
	}
	_, err = box().Reflect(Layout{{Light: cosine(t, 1, 1), At: Point{1, 1, 3}}, {Light: cosine(t, 1, 1), At: Point{0.2, 1, 1}, Length: 1}}, 4)
	require.ErrorContains(t, err, "layout[0].At.Z")
	require.ErrorContains(t, err, "layout[1].At.X")
	_, err = box().Reflect(nil, 4)
	require.ErrorIs(t, err, ErrRange)
}

package ventilation

import "math"

// WindFace is a face of a low-rise building for its pressure coefficient.
type WindFace uint8

// The faces. A roof's angle counts from the eave that the wind meets: 0 is
// the windward slope, 180 the lee slope.
const (
	WindFaceWall      WindFace = iota
	WindFaceLowRoof            // pitch below 10 degrees
	WindFaceMidRoof            // pitch 11 to 30 degrees
	WindFaceSteepRoof          // pitch above 30 degrees
	faceCount
)

var windFaceNames = []string{"wall", "low roof", "mid roof", "steep roof"}

// String names the face.
func (w WindFace) String() string { return enumName("WindFace", windFaceNames, uint8(w)) }

// Shelter is the exposure that a table of pressure coefficients was made for.
type Shelter uint8

// The exposures.
const (
	Exposed       Shelter = iota // nothing around
	SemiSheltered                // country with scattered obstacles as high as half the house
	Sheltered                    // surrounded by obstacles as high as the house
	shelterCount
)

var shelterNames = []string{"exposed", "semi-sheltered", "sheltered"}

// String names the exposure.
func (s Shelter) String() string { return enumName("Shelter", shelterNames, uint8(s)) }

// coefficientTable holds surface-averaged wind pressure coefficients at 0, 45,
// 90, 135 and 180 degrees between wind and the face's normal.
type coefficientTable struct {
	Source    string                // where the values come from
	Reference string                // the height of the wind speed to which they refer
	Values    [faceCount][5]float64 // dimensionless, by WindFace and angle
}

// coefficientTables are those of [Liddament96] for buildings up to three
// storeys with a length equal to the width. The semi-sheltered table was
// read, in a print whose two lower roof rows repeat those of the exposed table, a
// slip of the copy: roofs of 11 to 30 degrees are here those of [PersilyIvy01],
// which agree with the two other tables, and steep ones from memory. The two others
// are from memory, their roofs up to 30 degrees confirmed in the mean of both
// slopes by [PersilyIvy01].
var coefficientTables = [shelterCount]coefficientTable{
	{"[Liddament96] table 2.1, exposed, length to width 1:1 (from memory)", atRoof, [faceCount][5]float64{
		{0.7, 0.35, -0.5, -0.4, -0.2},
		{-0.8, -0.7, -0.6, -0.5, -0.4},
		{-0.4, -0.5, -0.6, -0.5, -0.4},
		{0.3, -0.4, -0.6, -0.4, -0.5},
	}},
	{"[Liddament96] table 2.2, semi-sheltered, length to width 1:1", atRoof, [faceCount][5]float64{
		{0.4, 0.1, -0.3, -0.35, -0.2},
		{-0.6, -0.5, -0.4, -0.5, -0.6},
		{-0.35, -0.45, -0.55, -0.45, -0.35}, // the print that was read repeats the exposed row
		{0.3, -0.5, -0.6, -0.5, -0.5},
	}},
	{"[Liddament96] table 2.3, sheltered, length to width 1:1 (from memory)", atRoof, [faceCount][5]float64{
		{0.2, 0.05, -0.25, -0.3, -0.25},
		{-0.5, -0.5, -0.4, -0.5, -0.5},
		{-0.3, -0.4, -0.5, -0.4, -0.3},
		{0.25, -0.3, -0.5, -0.3, -0.4},
	}},
}

const atRoof = "wind speed at the height of the building, undisturbed"

// coefficients returns the table for s; an unknown exposure gives the zero
// table with an empty Source.
func (s Shelter) coefficients() coefficientTable {
	if s >= shelterCount {
		return coefficientTable{}
	}
	return coefficientTables[s]
}

// Coefficient returns the pressure coefficient (dimensionless) of face at
// angle, degree, 0 to 180, between the wind and the face's normal, linear
// between the tables' values at 0, 45, 90, 135 and 180 degrees. It refers to
// the undisturbed wind at the height of the building. The tables are those of
// [Liddament96] for buildings up to three storeys as long as wide: the
// semi-sheltered one was read, except for its roofs above 10 degrees; the
// others are from memory. NaN outside and for an unknown face or exposure.
func (s Shelter) Coefficient(face WindFace, angle float64) float64 {
	if s >= shelterCount {
		return math.NaN()
	}
	return coefficientTables[s].at(face, angle)
}

// at is Coefficient in one table.
func (t *coefficientTable) at(face WindFace, angle float64) float64 {
	if face >= faceCount || !incidenceRange.Contains(angle) {
		return math.NaN()
	}
	i := min(int(angle/45), 3)
	part := angle/45 - float64(i)
	v := &t.Values[face]
	return v[i] + part*(v[i+1]-v[i])
}

// Incidence returns the angle, degree from 0 to 180, between the wind and a
// face's normal seen from above, as the tables here want it: from, degree, is
// where the wind comes from and azimuth, degree, where the face or the foot of
// the roof's slope looks to, both clockwise from north, any turn counted. NaN
// for infinite angles.
func Incidence(from, azimuth float64) float64 {
	d := math.Abs(math.Mod(from-azimuth, 360))
	return math.Min(d, 360-d)
}

// swami holds the coefficients of [SwaChan87] eq. 2-1 in the source's order.
var swami = [7]float64{1.248, -0.703, -1.175, 0.131, 0.769, 0.071, 0.717}

// WallCoefficient returns the surface-averaged pressure coefficient
// (dimensionless) of a wall of a low-rise building at angle, degree between
// the wind and its normal, 0 to 180, for its length over that of the adjacent
// wall, side (ratio, 0.2 to 5), and normal, its coefficient at 0 degrees
// (dimensionless, 0 to 1, 0.6 in the source):
//
//	Cp = Cp0 ln(1.248 - 0.703 sin(a/2) - 1.175 sin²a + 0.131 sin³(2 a G)
//	     + 0.769 cos(a/2) + 0.071 G² sin²(a/2) + 0.717 cos²(a/2)), G = ln side
//
// [SwaChan87] eq. 2-1 (as [Buildings24] carries it; other prints round 0.071
// to 0.07); it refers to the wind at the height of the eaves. NaN outside.
func WallCoefficient(angle, side, normal float64) float64 {
	if !(incidenceRange.Contains(angle) && side >= 0.2 && side <= 5 && dischargeRange.Contains(normal)) {
		return math.NaN()
	}
	a, g := angle*math.Pi/180, math.Log(side)
	half, sin := math.Sin(a/2), math.Sin(a)
	turn := math.Sin(2 * a * g)
	c := math.Cos(a / 2)
	return normal * math.Log(swami[0]+swami[1]*half+swami[2]*sin*sin+swami[3]*turn*turn*turn+
		swami[4]*c+swami[5]*g*g*half*half+swami[6]*c*c)
}

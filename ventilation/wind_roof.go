package ventilation

import "math"

// roofMeans holds the coefficients averaged over both slopes of a low-rise
// roof with the wind at 0, 45 and 90 degrees to the normal of the eaves, by
// exposure: [PersilyIvy01], after the tables of the Air Infiltration and
// Ventilation Centre for buildings up to three storeys.
var roofMeans = [shelterCount][2][2][3]float64{
	{ // exposed
		{{-0.6, -0.6, -0.6}, {-0.4, -0.5, -0.6}},   // as long as wide: pitch below 10, 11 to 30 degrees
		{{-0.7, -0.7, -0.8}, {-0.6, -0.65, -0.7}}}, // twice as long as wide
	{ // obstacles half as high
		{{-0.6, -0.5, -0.4}, {-0.35, -0.45, -0.55}},
		{{-0.6, -0.6, -0.6}, {-0.5, -0.6, -0.55}}},
	{ // obstacles as high
		{{-0.5, -0.5, -0.4}, {-0.3, -0.4, -0.5}},
		{{-0.49, -0.46, -0.41}, {-0.45, -0.46, -0.41}}},
}

// RoofMean returns the pressure coefficient (dimensionless) averaged over both
// slopes of a roof, WindFaceLowRoof or WindFaceMidRoof, at angle, degree
// between the wind and the normal of the eaves, 0 to 180, linear between 0, 45
// and 90. With long it is that of a house twice as long as wide, else of one as
// long as wide. It serves vents on both slopes that open together, and refers
// to the wind at the height of the building. It is the mean of both slopes of
// Coefficient. NaN for another face, exposure or angle.
func (s Shelter) RoofMean(face WindFace, long bool, angle float64) float64 {
	if s >= shelterCount || (face != WindFaceLowRoof && face != WindFaceMidRoof) || !incidenceRange.Contains(angle) {
		return math.NaN()
	}
	length := 0
	if long {
		length = 1
	}
	v := &roofMeans[s][length][face-WindFaceLowRoof]
	if angle > 90 {
		angle = 180 - angle // the mean of both slopes is the same from either side
	}
	if angle <= 45 {
		return v[0] + angle/45*(v[1]-v[0])
	}
	return v[1] + (angle/45-1)*(v[2]-v[1])
}

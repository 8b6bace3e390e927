package envelope

// allKept is what two facing surfaces must lose of the radiation between them, as a
// fraction: perfect mirrors would keep it for ever.
const allKept = 1e-9

// MaxLayers is the largest number of layers of a cover.
const MaxLayers = 6

const maxFaces = 2 * MaxLayers

// face returns the index of a layer's face: outer faces are even.
func outerFace(layer int) int { return 2 * layer }
func innerFace(layer int) int { return 2*layer + 1 }

// longwave holds what the optical properties of the layers alone decide: the
// irradiance on each face is linear in the black-body emission of all faces
// and in the irradiance from outside and inside. [IsoWin03] eq. 15-17 solved
// once for unit sources.
type longwave struct {
	emittance [maxFaces]float64           // fraction
	transmit  [MaxLayers]float64          // fraction
	face      [maxFaces][maxFaces]float64 // irradiance on face i from unit emission of a black face j
	outside   [maxFaces]float64           // irradiance on face i from unit irradiance outside
	inside    [maxFaces]float64           // irradiance on face i from unit irradiance inside
}

// reflect returns the reflectance of face i.
func (w *longwave) reflect(i int) float64 { return 1 - w.emittance[i] - w.transmit[i/2] }

// radiosity returns what leaves face i: emission, reflection of its own
// irradiance, transmission of the irradiance on the layer's other face.
func (w *longwave) radiosity(i int, emission, own, other float64) float64 {
	return w.emittance[i]*emission + w.reflect(i)*own + w.transmit[i/2]*other // [IsoWin03] eq. 15-16
}

// trace fills the tables for n layers by following each unit source through
// the layers. It returns false when two facing faces are perfect mirrors, which
// leaves the radiation between them undefined.
//
// With d_i the flow down (inward) and u_i the flow up (outward) in the space
// outside layer i, the part of the cover from layer i inward answers d_i with
// u_i = r_i d_i + s_i: a single backward and forward sweep.
func (w *longwave) trace(n int) bool {
	for source := range 2*n + 2 {
		var out, in float64
		var emission [maxFaces]float64
		switch {
		case source < 2*n:
			emission[source] = w.emittance[source]
		case source == 2*n:
			out = 1
		default:
			in = 1
		}
		// Space i lies outside layer i; space n is the house.
		var r, s, keep, lead [MaxLayers + 1]float64
		r[n], s[n] = 0, in
		for i := n - 1; i >= 0; i-- {
			o, f := outerFace(i), innerFace(i)
			t := w.transmit[i]
			loss := 1 - w.reflect(f)*r[i+1]
			if !(loss > allKept) {
				return false
			}
			// In space i+1: d = t d_i + rho_f u + e_f with u = r d + s.
			keep[i] = t / loss
			lead[i] = (w.reflect(f)*s[i+1] + emission[f]) / loss
			// u_i = rho_o d_i + t (r d + s) + e_o.
			r[i] = w.reflect(o) + t*r[i+1]*keep[i]
			s[i] = t*(r[i+1]*lead[i]+s[i+1]) + emission[o]
		}
		down := out
		for i := range n {
			w.set(outerFace(i), source, n, down)
			down = keep[i]*down + lead[i]
			w.set(innerFace(i), source, n, r[i+1]*down+s[i+1])
		}
	}
	return true
}

func (w *longwave) set(face, source, n int, v float64) {
	switch {
	case source < 2*n:
		w.face[face][source] = v
	case source == 2*n:
		w.outside[face] = v
	default:
		w.inside[face] = v
	}
}

// irradiance returns the irradiance on face i for the black emissions of the
// faces and the irradiance from outside and inside.
func (w *longwave) irradiance(i, faces int, black *[maxFaces]float64, out, in float64) float64 {
	g := w.outside[i]*out + w.inside[i]*in
	for j := range faces {
		g += w.face[i][j] * black[j]
	}
	return g
}

// skyView returns the fraction of the half-space before a facet that is sky, for
// its tilt in degree over a level horizon, the remainder being ground: hills,
// trees and neighbouring bays take from it.
func skyView(tilt float64) float64 { return (1 + cosDegree(tilt)) / 2 }

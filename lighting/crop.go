package lighting

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// CropKind says what of a crop is sold.
type CropKind uint8

// The kinds of crops, and classes that are no crop.
const (
	LeafCrop CropKind = iota
	FruitCrop
	RootCrop
	Ornamental
	LightClass // a class of daily light, not a crop
)

// String returns the kind in words.
func (k CropKind) String() string {
	names := [...]string{"leaf crop", "fruit crop", "root crop", "ornamental", "class of light"}
	if int(k) >= len(names) {
		return fmt.Sprintf("CropKind(%d)", uint8(k))
	}
	return names[k]
}

// CropLight is the daily light that a source asks for a crop. A bound that the
// source does not give is NaN.
type CropLight struct {
	Name   string   // plain English
	Kind   CropKind // what is sold
	Least  float64  // mol/(m² d), below it growth or quality falls off
	Target float64  // mol/(m² d), to plan for
	Most   float64  // mol/(m² d), more brings nothing or harm
	Basis  string   // what the figures mean
	Source string   // where they come from
	Read   Reading  // how directly the source was seen
}

// Reading says how directly the source of a figure was seen.
type Reading uint8

// A figure is either read in its source, or known only from another text that
// quotes it.
const (
	SecondHand Reading = iota // quoted by another text, the source itself not seen
	InSource                  // seen in the source itself
	WeakSource                // seen, but on a page of no standing
)

// String returns the words printed beside a figure.
func (r Reading) String() string {
	if r > WeakSource {
		return fmt.Sprintf("Reading(%d)", uint8(r))
	}
	return [...]string{"second-hand", "read in the source", "weak source"}[r]
}

var none = math.NaN()

// crops holds the ranges. Figures are of the daily light on the plants.
var crops = []CropLight{
	{"lettuce", LeafCrop, 12, 17, 17, "least 12 to 14; upper is a limit of tipburn, with air moved down on the plants (12 to 13 in still air)", "E. Runkle, Greenhouse Product News, December 2011 (the least, read); Both et al. and Cornell CEA lettuce handbook 2013 (17, quoted)", SecondHand},
	{"spinach, young", LeafCrop, 14, 17, 20, "range 14 to 20", "Virginia Cooperative Extension SPES-720; Cornell CEA spinach handbook 2013", SecondHand},
	{"basil", LeafCrop, 12.9, 20, 25, "range 15 to 25; 12.9 is the least-cost level indoors", "Dou et al. 2018, HortScience 53:496 (12.9 is the third of five levels tried, read; that it costs least, quoted); Virginia Cooperative Extension SPES-720 (range, quoted)", SecondHand},
	{"cilantro", LeafCrop, 15, 20, 20, "range 15 to 20, still rising at 20", "Virginia Cooperative Extension SPES-720; Currey and Litvin 2019", SecondHand},
	{"parsley", LeafCrop, 10, 15, 15, "range 10 to 15, falls off above 15 to 16", "Virginia Cooperative Extension SPES-720; Currey and Litvin 2019", SecondHand},
	{"kale", LeafCrop, 8, 22, 22, "lowest and highest level tried", "Baumbauer et al. 2019; Currey and Yost 2020", SecondHand},
	{"radish", RootCrop, 12, 13.5, 15, "best from 12 to 15", "Currey and Konjoian 2023", SecondHand},
	{"tomato", FruitCrop, 15, 25, 30, "vine crops at least 15 and rather above 20; range 20 to 30", "E. Runkle, Greenhouse Product News, December 2011 (the least, read); Virginia Cooperative Extension SPES-720 (range, quoted)", SecondHand},
	{"cucumber", FruitCrop, 15, 25, 30, "vine crops at least 15 and rather above 20; range 20 to 30", "E. Runkle, Greenhouse Product News, December 2011 (the least, read); Virginia Cooperative Extension SPES-720 (range, quoted)", SecondHand},
	{"pepper", FruitCrop, 12, 22, none, "least in winter 12, high quality from 22", "Dorais 2003; Purdue Extension HO-238-W table 2", SecondHand},
	{"zucchini", FruitCrop, 20, 25, 30, "range 20 to 30", "Virginia Cooperative Extension SPES-720", SecondHand},
	{"strawberry", FruitCrop, 10, 22.5, 30, "least 10 to 12, best from 20 to 25, stress above 30", "Ohio State University, C. Kubota, page on photosynthetic lighting of strawberry indoors", InSource},
	{"fruiting vegetables", FruitCrop, 20, none, 25, "range 20 to 25", "C. Gómez, report on the Northeast Greenhouse Conference", InSource},
	{"ornamentals", Ornamental, none, 12, none, "most need no more than 12", "C. Gómez, report on the Northeast Greenhouse Conference", InSource},
	{"young plants", Ornamental, 10, none, none, "quality falls off below 10", "Michigan State University Extension, \"How low can you go? Low daily light integrals impact young plant quality and production time\"", InSource},
	{"lavender, finished pot", Ornamental, 8, 18, none, "bands of quality", "Purdue Extension HO-238-W table 2", SecondHand},
	{"African violet", Ornamental, 4, 6, none, "a plant of low light", "an encyclopedic page on the daily light integral", WeakSource},
	{"class low", LightClass, 3, none, 6, "class of the trade in flowers", "Purdue Extension HO-238-W", SecondHand},
	{"class medium", LightClass, 6, none, 12, "class of the trade in flowers", "Purdue Extension HO-238-W", SecondHand},
	{"class high", LightClass, 12, none, 18, "class of the trade in flowers", "Purdue Extension HO-238-W", SecondHand},
	{"class very high", LightClass, 18, none, none, "class of the trade in flowers", "Purdue Extension HO-238-W", SecondHand},
}

// CropLights returns the table of crops, each with its source and how directly
// that was seen. Ranges for a crop differ between authors by several mol/(m²
// d): plan with your own trial's figures where you have them.
func CropLights() []CropLight { return slices.Clone(crops) }

// FindCropLight returns the crop of that name, whatever its case, and whether there
// is one.
func FindCropLight(name string) (CropLight, bool) {
	for _, c := range crops {
		if strings.EqualFold(c.Name, strings.TrimSpace(name)) {
			return c, true
		}
	}
	return CropLight{}, false
}

// Service says how a day's light compares with a crop's range.
type Service uint8

// The results of CropLight.Serves.
const (
	TooDark     Service = iota // below Least
	BelowTarget                // from Least to below Target
	OnTarget                   // from Target to Most
	TooBright                  // above Most
)

// String returns the answer in words.
func (s Service) String() string {
	return [...]string{"too dark", "below the target", "on target", "more than it uses"}[min(s, TooBright)]
}

// Serves compares dli, mol/(m² d), with the crop's range. A bound that the
// source does not give is not tested: without a Target, Least counts as the
// target; without a Least, Target counts as the least.
func (c CropLight) Serves(dli float64) Service {
	least, target := c.Least, c.Target
	if math.IsNaN(least) {
		least = target
	}
	if math.IsNaN(target) {
		target = least
	}
	switch {
	case !(dli >= least):
		return TooDark
	case dli > c.Most:
		return TooBright
	case dli >= target:
		return OnTarget
	}
	return BelowTarget
}

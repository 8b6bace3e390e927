package plan

// names is what a key of the kind Name may hold: fixed names, and those of
// other things in the plan.
type names struct {
	fixed []string
	of    func(p *Plan, at int) []string
}

var (
	covers = names{
		fixed: []string{"single film", "single infrared film", "double film", "double film, infrared inside", "single glass", "double glass",
			"twin-wall sheet 6 mm", "twin-wall sheet 10 mm", "triple-wall sheet 16 mm"},
		of: func(p *Plan, _ int) []string { return ownNames(p.Cover.Own, func(c OwnCover) string { return c.Name }) },
	}
	screens = names{fixed: []string{"aluminised screen", "open aluminised screen", "clear screen", "own"}}
	annexes = names{
		fixed: []string{"none"},
		of: func(p *Plan, _ int) []string {
			return ownNames(p.House.Annexes, func(a Annex) string { return a.Name })
		},
	}
	ducts = names{
		fixed: []string{"fan"},
		of: func(p *Plan, at int) []string {
			return ownNames(p.Ducts[:min(at, len(p.Ducts))], func(d Duct) string { return d.Name })
		},
	}
)

// ownNames gathers the names of a list.
func ownNames[T any](list []T, name func(T) string) []string {
	var all []string
	for _, item := range list {
		all = append(all, name(item))
	}
	return all
}

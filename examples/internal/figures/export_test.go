package figures

// Themes and Also are what the tests see of the links.
func Themes() [][]string { return themes }

func Also(name string) []string { return also(name) }

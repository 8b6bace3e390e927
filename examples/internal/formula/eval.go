package formula

import (
	"fmt"
	"math"
	"strconv"
)

// Value computes what stands behind the last relation sign, or the whole
// formula when it has none, with the values of its names. The error says which
// name has no value.
func (f Formula) Value(values map[string]float64) (float64, error) {
	if f.root == nil {
		return math.NaN(), fmt.Errorf("the formula is empty")
	}
	n := f.root
	if n.kind == relation {
		n = n.kids[len(n.kids)-1]
	}
	return n.value(values)
}

// Names returns the names behind the last relation sign, each once, in the
// order in which they stand.
func (f Formula) Names() []string {
	if f.root == nil {
		return nil
	}
	n := f.root
	if n.kind == relation {
		n = n.kids[len(n.kids)-1]
	}
	var names []string
	seen := map[string]bool{}
	n.walk(func(n *node) {
		if n.kind == name && !seen[n.text] {
			seen[n.text] = true
			names = append(names, n.text)
		}
	})
	return names
}

func (n *node) walk(f func(*node)) {
	f(n)
	for _, k := range n.kids {
		k.walk(f)
	}
}

func (n *node) value(values map[string]float64) (float64, error) {
	switch n.kind {
	case number:
		return strconv.ParseFloat(n.text, 64)
	case name:
		v, ok := values[n.text]
		if !ok && n.text == "π" {
			return math.Pi, nil
		}
		if !ok {
			return math.NaN(), fmt.Errorf("%s has no value", n.text)
		}
		return v, nil
	}
	kids := make([]float64, len(n.kids))
	for i, k := range n.kids {
		v, err := k.value(values)
		if err != nil {
			return math.NaN(), err
		}
		kids[i] = v
	}
	switch n.kind {
	case sum:
		total := kids[0]
		for i, op := range n.ops {
			switch op {
			case "+":
				total += kids[i+1]
			case "-":
				total -= kids[i+1]
			default:
				return math.NaN(), fmt.Errorf("%s has two values", op)
			}
		}
		return total, nil
	case product:
		total := 1.0
		for _, v := range kids {
			total *= v
		}
		return total, nil
	case fraction:
		return kids[0] / kids[1], nil
	case power:
		return math.Pow(kids[0], kids[1]), nil
	case negative:
		return -kids[0], nil
	case group:
		return kids[0], nil
	case call:
		return apply(n.text, kids)
	}
	return math.NaN(), fmt.Errorf("a relation has no value")
}

func apply(function string, v []float64) (float64, error) {
	const degree = math.Pi / 180
	x := v[0]
	switch function {
	case "sqrt":
		return math.Sqrt(x), nil
	case "exp":
		return math.Exp(x), nil
	case "ln":
		return math.Log(x), nil
	case "log":
		return math.Log10(x), nil
	case "sin":
		return math.Sin(x * degree), nil
	case "cos":
		return math.Cos(x * degree), nil
	case "tan":
		return math.Tan(x * degree), nil
	case "asin":
		return math.Asin(x) / degree, nil
	case "acos":
		return math.Acos(x) / degree, nil
	case "atan":
		return math.Atan(x) / degree, nil
	case "abs":
		return math.Abs(x), nil
	}
	for _, y := range v[1:] {
		if function == "min" {
			x = math.Min(x, y)
		} else {
			x = math.Max(x, y)
		}
	}
	return x, nil
}

package plan_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

// suffixes are the ends of keys by the unit they stand for.
var suffixes = map[string]string{
	"°C": "_c", "K": "_k", "degree": "_deg", "m": "_m", "m²": "_m2", "m³": "_m3", "m/s": "_m_s", "m³/s": "_m3_s", "m³/(s m²)": "_m3_s_m2",
	"m³/(s Pa)": "_m3_s_pa", "W": "_w", "W/K": "_w_k", "W/m²": "_w_m2", "W/(m² K)": "_w_m2_k", "W/(m K)": "_w_m_k", "m² K/W": "_m2_k_w",
	"Pa": "_pa", "h": "_h", "s": "_s", "s/m": "_s_m", "1/h": "_per_h", "1/d": "_per_d", "kg/h": "_kg_h", "g/(m² h)": "_g_m2_h", "kJ/K": "_kj_k",
	"MJ/(m² d)": "_mj_m2_d", "MJ/(m³ K)": "_mj_m3_k", "MJ/kg": "_mj_kg", "MJ/m³": "_mj_m3", "MJ/L": "_mj_l", "J/(m³ K)": "_j_m3_k", "V": "_v",
	"µmol/s": "_umol_s", "µmol/J": "_umol_j", "µmol/mol": "_umol_mol", "µmol/(m² s)": "_umol_m2_s", "mol/(m² d)": "_mol_m2_d", "µmol/(s lm)": "_umol_s_lm",
	"fraction": "_fraction", "ratio": "_ratio", "factor": "_factor", "count": "_count", "exponent": "_exponent",
	"currency per kg": "_per_kg", "currency per m³": "_per_m3", "currency per L": "_per_l", "currency per kWh": "_per_kwh", "currency per m²": "_per_m2", "currency per m": "_per_m", "currency per m³/s": "_per_m3_s",
}

// without are the keys whose name says all, by their unit.
var without = map[string]string{
	"relative_humidity": "fraction", "month": "number", "rows": "number", "pressure_coefficient": "ratio", "ridge_return": "currency", "heated_to_c": "°C",
}

func TestEveryKeyCarriesItsUnit(t *testing.T) {
	for _, k := range plan.Keys() {
		if k.Kind != plan.Number && k.Kind != plan.Whole && k.Kind != plan.Numbers {
			require.Empty(t, k.Unit, k.Path)
			continue
		}
		if unit, ok := without[k.Last()]; ok {
			require.Equal(t, unit, k.Unit, k.Path)
			continue
		}
		suffix, ok := suffixes[k.Unit]
		require.True(t, ok, "%s has the unit %q", k.Path, k.Unit)
		require.True(t, strings.HasSuffix(k.Last(), suffix), "%s has the unit %s", k.Path, k.Unit)
	}
}

func TestOneQuantityHasOneKeyWord(t *testing.T) {
	for _, k := range plan.Keys() {
		if strings.Contains(k.Last(), "humid") {
			require.Equal(t, "relative_humidity", k.Last(), k.Path)
		}
		require.NotRegexp(t, `\brh\b|_rh_|cfm|btu|_f$|celsius|percent`, k.Last(), k.Path)
		require.Regexp(t, `^[a-z0-9_]+$`, k.Last(), k.Path)
	}
}

func TestTheTableIsSound(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range plan.Keys() {
		require.False(t, seen[k.Path], "%s stands twice", k.Path)
		seen[k.Path] = true
		require.NotEmpty(t, k.Means, k.Path)
		require.NotRegexp(t, `^[A-Z]|\.$`, k.Means, k.Path)
		require.LessOrEqual(t, len(k.Path), 64)
		switch k.Kind {
		case plan.Number, plan.Whole, plan.Numbers:
			require.Less(t, k.Min, k.Max, k.Path)
			require.False(t, math.IsInf(k.Min, 0) || math.IsInf(k.Max, 0), k.Path)
			if d, ok := k.Default.(float64); ok {
				require.True(t, d >= k.Min && d <= k.Max, k.Path)
			}
			if d, ok := k.Default.([]float64); ok {
				require.True(t, len(d) >= k.Least && len(d) <= k.Most, k.Path)
				for _, v := range d {
					require.True(t, v >= k.Min && v <= k.Max, k.Path)
				}
			}
		case plan.Choice, plan.Name:
			require.Contains(t, k.Choices, k.Default, k.Path)
		}
	}
}

// limit prints an end of a range.
func limit(v float64) string {
	if size := math.Abs(v); size >= 1e-4 && size < 1e7 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strings.NewReplacer("e-0", "e-", "e+0", "e").Replace(strconv.FormatFloat(v, 'g', -1, 64))
}

// TestStructsSayWhatTheTableSays reads the comments of the structs: unit, range
// and meaning are those of the table, in the table's order.
func TestStructsSayWhatTheTableSays(t *testing.T) {
	fields := map[string][]*ast.Field{}
	paths, err := filepath.Glob("plan*.go")
	require.NoError(t, err)
	for _, path := range paths {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if s, ok := n.(*ast.TypeSpec); ok {
				if st, ok := s.Type.(*ast.StructType); ok {
					fields[s.Name.Name] = st.Fields.List
				}
			}
			return true
		})
	}
	byPath := map[string]plan.Key{}
	order := map[string][]string{}
	for _, k := range plan.Keys() {
		byPath[k.Path] = k
		parent := strings.TrimSuffix(strings.TrimSuffix(k.Path, k.Last()), ".")
		order[parent] = append(order[parent], k.Last())
	}
	tag := regexp.MustCompile(`json:"([^"]+)"`)
	var walk func(name, path string)
	walk = func(name, path string) {
		require.NotEmpty(t, fields[name], name)
		var keys []string
		for _, f := range fields[name] {
			key := tag.FindStringSubmatch(f.Tag.Value)[1]
			keys = append(keys, key)
			k := byPath[strings.TrimPrefix(path+"."+key, ".")]
			comment := strings.TrimSpace(f.Comment.Text())
			limits := fmt.Sprintf("%s, %s to %s", k.Unit, limit(k.Min), limit(k.Max))
			_, pointer := f.Type.(*ast.StarExpr)
			want := k.Means
			switch k.Kind {
			case plan.Number, plan.Whole, plan.Numbers:
				if want = limits + "; " + k.Means; pointer {
					want = limits + ", nil when not given; " + k.Means
				}
			case plan.Choice:
				n := len(k.Choices) - 1
				want = strings.Join(k.Choices[:n], ", ") + " or " + k.Choices[n] + "; " + k.Means
			case plan.Optional:
				want = "nil when the house has none"
			}
			require.Equal(t, want, comment, k.Path)
			switch k.Kind {
			case plan.Section:
				walk(f.Type.(*ast.Ident).Name, k.Path)
			case plan.Optional:
				walk(f.Type.(*ast.StarExpr).X.(*ast.Ident).Name, k.Path)
			case plan.List:
				walk(f.Type.(*ast.ArrayType).Elt.(*ast.Ident).Name, k.Path+"[]")
			}
		}
		require.Equal(t, order[path], keys, "order of %s", name)
	}
	walk("Plan", "")
}

func TestExplainCoversEveryKey(t *testing.T) {
	var out strings.Builder
	require.NoError(t, plan.Explain(&out, ""))
	golden.Equal(t, "explain.txt", out.String())
	section, lines := "", map[string]string{}
	for _, line := range strings.Split(out.String(), "\n") {
		switch {
		case line == "the plan itself":
			section = ""
		case line != "" && line[0] != ' ':
			section, _, _ = strings.Cut(line, ":")
			lines[section] = line
		case strings.HasPrefix(line, "  ") && !strings.HasPrefix(line, "   "):
			section := strings.TrimPrefix(section+".", ".")
			lines[section+strings.Fields(line)[0]] = line
		}
	}
	for _, k := range plan.Keys() {
		path := strings.ReplaceAll(k.Path, "[]", "[...]")
		if i := strings.LastIndex(path, "[...]."); k.Kind < plan.Section && i >= 0 && i+len("[...].")+len(k.Last()) == len(path) {
			path = path[:i] + "." + k.Last() // the list's own name heads its keys
		}
		line, ok := lines[path]
		require.True(t, ok, "%s is not explained", k.Path)
		require.Contains(t, line, k.Means)
		if k.Kind == plan.Number || k.Kind == plan.Whole || k.Kind == plan.Numbers {
			require.Contains(t, line, fmt.Sprintf("%s to %s", limit(k.Min), limit(k.Max)), k.Path)
			require.Contains(t, line, k.Unit, k.Path)
		}
		if d, ok := k.Default.(float64); ok {
			require.Contains(t, line, limit(d), k.Path)
		}
	}
}

func TestExplainOfOneSection(t *testing.T) {
	var out strings.Builder
	require.NoError(t, plan.Explain(&out, "screen"))
	require.Contains(t, out.String(), "drawn_below")
	require.NotContains(t, out.String(), "latitude_deg")
	out.Reset()
	require.NoError(t, plan.Explain(&out, "nonsense"))
	require.Contains(t, out.String(), `no key holds "nonsense"`)
}

func TestKindsHaveNames(t *testing.T) {
	require.Equal(t, "whole number", plan.Whole.String())
	require.Equal(t, "optional section", plan.Optional.String())
	require.Equal(t, "list", plan.List.String())
}

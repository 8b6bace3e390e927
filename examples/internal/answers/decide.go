package answers

import (
	"strconv"
	"strings"
)

// Decision is a line that a builder decides by.
type Decision struct {
	Code    string   `json:"code"`
	Verdict string   `json:"verdict"` // holds, fails, or told where nothing is asked for
	Ask     string   `json:"question"`
	Answer  string   `json:"answer"`
	Margin  *float64 `json:"margin_fraction"` // of what there is over what is needed, less 1; null where there is no such ratio
	Cure    string   `json:"cure"`            // empty where nothing needs one
}

// Verdicts.
const (
	holds = "holds"
	fails = "fails"
	told  = "told"
)

// Codes are those of all decisions, in their order.
func Codes() []string {
	return []string{"heater", "supply_air", "drip", "frost", "vents_calm", "vents_wind", "light", "light_even", "ducts", "tube", "water", "electricity", "year", "savings"}
}

func verdict(ok bool) string {
	if ok {
		return holds
	}
	return fails
}

// decide gathers the decisions; what a house does not have is left out.
func (r *Result) decide() {
	for _, d := range []*Decision{r.heaterDecision(), r.supplyDecision(), r.dripDecision(), r.frostDecision(),
		r.ventDecision("vents_calm", "Are the vents enough at a summer noon without wind?", r.Summer.Calm, r.Summer.Needed),
		r.ventDecision("vents_wind", "Are the vents enough at that noon with wind across the house?", r.Summer.Windy, r.Summer.NeededWind),
		r.lightDecision(), r.evenDecision(), r.ductDecision(), r.tubeDecision(), r.waterDecision(), r.powerDecision(), r.yearDecision(), r.savingDecision()} {
		if d != nil {
			r.Decisions = append(r.Decisions, *d)
		}
	}
}

// number prints with so many decimals, and never a negative nothing.
func number(x float64, decimals int) string {
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// kilo prints W as kW.
func kilo(w float64) string { return number(w/1000, 1) + " kW" }

func percent(x float64) string { return number(100*x, 0) + " %" }

// Minutes prints a time in min as a person says it; nil is never.
func Minutes(m *float64, never string) string {
	switch {
	case m == nil:
		return never
	case *m < 120:
		return number(*m, 0) + " min"
	}
	return number(*m/60, 1) + " h"
}

// money prints an amount with the plan's currency.
func (r *Result) money(x float64) string { return number(x, 0) + " " + r.House.Plan.Currency }

// saving finds a change by its code; nil without cures or where it is not
// possible.
func (r *Result) saving(code string) *Saving {
	for i, s := range r.Savings {
		if s.Code == code && s.Possible {
			return &r.Savings[i]
		}
	}
	return nil
}

func either(parts ...string) string {
	var list []string
	for _, p := range parts {
		if p != "" {
			list = append(list, p)
		}
	}
	switch len(list) {
	case 0:
		return ""
	case 1:
		return sentence(list[0])
	}
	return sentence(strings.Join(list[:len(list)-1], ", ") + ", or " + list[len(list)-1])
}

func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}

func ratio(have, need float64) *float64 {
	if need <= 0 {
		return nil
	}
	return some(have/need - 1)
}

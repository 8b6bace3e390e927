package schema

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

type inner struct {
	Word string `json:"word"`
}

type form struct {
	Count int      `json:"count"`
	Size  *float64 `json:"size_m"`
	List  []inner  `json:"list"`
	Left  string   `json:"-"`
	Yes   bool     `json:"yes"`
}

// What the type allows passes, and each departure is named.
func TestCheck(t *testing.T) {
	s := New(form{}, "a form", "of a test")
	s.At("list", "word").Words("a", "b")
	text, err := json.Marshal(s)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &s))
	for given, want := range map[string]string{
		`{"count": 1, "size_m": null, "list": [], "yes": true}`:              "",
		`{"count": 1, "size_m": 2.5, "list": [{"word": "b"}], "yes": true}`:  "",
		`{"count": 1.5, "size_m": null, "list": [], "yes": true}`:            "form.count is 1.5",
		`{"count": 1, "size_m": "x", "list": [], "yes": true}`:               "form.size_m is x",
		`{"count": 1, "size_m": null, "list": [{"word": "c"}], "yes": true}`: "form.list[].word is c",
		`{"count": 1, "size_m": null, "list": [{"word": 1}], "yes": true}`:   "form.list[].word is 1",
		`{"count": 1, "size_m": null, "list": 3, "yes": true}`:               "form.list is 3",
		`{"count": 1, "size_m": null, "list": [], "yes": 0}`:                 "form.yes is 0",
		`{"count": 1, "size_m": null, "list": []}`:                           `form lacks "yes"`,
		`{"count": 1, "size_m": null, "list": [], "yes": true, "no": 1}`:     `a key "no"`,
		`[]`: "form is []",
	} {
		var v any
		require.NoError(t, json.Unmarshal([]byte(given), &v))
		if err := s.Check("form", v); want == "" {
			require.NoError(t, err, given)
		} else {
			require.ErrorContains(t, err, want, given)
		}
	}
}

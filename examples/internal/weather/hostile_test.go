package weather

import (
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/require"
)

// endless yields the same bytes for ever and counts them.
type endless struct {
	text  string
	at    int
	given int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.text[e.at]
		e.at = (e.at + 1) % len(e.text)
	}
	e.given += len(p)
	return len(p), nil
}

func TestHostileFilesEndAtOnce(t *testing.T) {
	header := site + "time,temperature_c,relative_humidity,global_w_m2\n"
	for _, c := range []struct {
		name string
		r    io.Reader
		want string
	}{
		{"a line without an end", &endless{text: "1,2,3,"}, "longer than"},
		{"zeros without an end", &endless{text: "\x00"}, "line 1"},
		{"lines without an end", &endless{text: "a,b,c\n"}, "no weather file known here"},
		{"empty lines without an end", &endless{text: "\n"}, "empty lines"},
		{"binary data", &endless{text: "\x7fELF\x02\x01\x01\x00"}, "line 1"},
		{"a picture", strings.NewReader("\x89PNG\r\n\x1a\n"), "line 1"},
		{"UTF-16 without a mark", strings.NewReader(wide(header)[2:]), "line 1"},
		{"an excerpt without an end", io.MultiReader(strings.NewReader("month,day,hour_ending,dry_bulb_c\n"), &endless{text: "1,1,1,3\n"}), "more than the 8784 hours"},
		{"comments without an end", &endless{text: "# c\n"}, "no line with the names of the columns yet"},
		{"hours without an end", io.MultiReader(strings.NewReader(header), &endless{text: "2001-01-01T00:00,1,0.8,0\n"}), "more than the 8784 hours"},
		{"faults without an end", io.MultiReader(strings.NewReader(header), &endless{text: "1\n"}), "and 9976 more faults"},
		{"a line without an end inside", io.MultiReader(strings.NewReader(header), &endless{text: "1"}), "line 6: the file is longer than 16 MiB"},
		{"names without an end", io.MultiReader(strings.NewReader(site), &endless{text: "temperature_c,"}), "longer than"},
		{"PVGIS notes", io.MultiReader(bytes.NewReader(file(t, "pvgis_week.csv")), &endless{text: "x\n"}), "the notes below the table do not end"},
		{"PVGIS head", io.MultiReader(strings.NewReader("Latitude (decimal degrees): 1\n"), &endless{text: "x\n"}), "no line \"time(UTC),T2m,...\" yet"},
		{"gzip of zeros", packed(&endless{text: "\x00"}), "line 1"},
		{"gzip of lines", packed(&endless{text: "# c\n"}), "no line with the names"},
		{"broken gzip", strings.NewReader("\x1f\x8bnot gzip at all"), "the compressed data cannot be read"},
		{"torn gzip", bytes.NewReader(greensboro[:5000]), "unexpected EOF"},
		{"UTF-16", strings.NewReader(wide(header)), "UTF-16"},
		{"Latin-1", strings.NewReader("# name: K\xf6ln\n" + header), "line 1: the text is not UTF-8"},
		{"control characters", strings.NewReader("# name: \x1b[31mred\n" + header), "line 1: a control character"},
		{"a failing disk", io.MultiReader(strings.NewReader(header), broken{}), "the disk is gone"},
	} {
		t.Run(c.name, func(t *testing.T) {
			start := time.Now()
			s, err := Read(c.r, Options{Fill: true})
			require.Nil(t, s)
			require.ErrorContains(t, err, c.want)
			require.Less(t, time.Since(start), 20*time.Second) // bytes are bounded below; this is for a machine under load
			if e, ok := c.r.(*endless); ok {
				require.LessOrEqual(t, e.given, 2*mostBytes)
			}
		})
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

// packed compresses the first 256 MiB of a reader on the way.
func packed(r io.Reader) io.Reader {
	out, in := io.Pipe()
	go func() {
		z, _ := gzip.NewWriterLevel(in, gzip.BestSpeed)
		_, err := io.CopyN(z, r, 256<<20)
		in.CloseWithError(errors.Join(err, z.Close()))
	}()
	return out
}

func wide(s string) string {
	b := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u), byte(u>>8))
	}
	return string(b)
}

package program

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// torn is a picture that fails half way.
type torn struct{}

func (torn) WriteTo(w io.Writer) (int64, error) {
	_, _ = w.Write([]byte("half"))
	return 4, errors.New("torn")
}

func TestPicture(t *testing.T) {
	for file, want := range map[string]string{"a.svg": "svg", "b.PNG": "png", "/c/d.e.pdf": "pdf"} {
		format, err := PictureFormat(file)
		require.NoError(t, err)
		require.Equal(t, want, format)
	}
	for _, file := range []string{"a.gif", "svg", "", "a."} {
		_, err := PictureFormat(file)
		require.ErrorContains(t, err, "must end in .svg, .png or .pdf", file)
	}
	file := filepath.Join(t.TempDir(), "a.svg")
	require.ErrorContains(t, WritePicture(file, torn{}), "torn")
	require.NoFileExists(t, file)
	require.NoError(t, WritePicture(file, strings.NewReader("whole")))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, "whole", string(text))
}

func TestPDFHasNoDateOfItsOwn(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.pdf")
	for _, date := range []string{"20260102030405", "20270102030405"} {
		require.NoError(t, WritePicture(file, strings.NewReader("<<\n/CreationDate (D:"+date+")\n/ModDate (D:"+date+")\n>>")))
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, "<<\n/CreationDate (D:20000101000000)\n/ModDate (D:20000101000000)\n>>", string(text))
	}
}

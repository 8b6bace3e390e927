package program

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// PictureFormat returns the format that the name of a picture's file ends in:
// svg, png or pdf.
func PictureFormat(file string) (string, error) {
	format := strings.TrimPrefix(strings.ToLower(filepath.Ext(file)), ".")
	if !slices.Contains([]string{"svg", "png", "pdf"}, format) {
		return "", fmt.Errorf("-figure %q: the name must end in .svg, .png or .pdf", file)
	}
	return format, nil
}

// dated is the time of writing in a PDF, which its writer always sets.
var dated = regexp.MustCompile(`/(CreationDate|ModDate) \(D:\d{14}\)`)

// undated gives a PDF the same date in every run: the text keeps its length, since
// the end of the file counts bytes.
func undated(picture []byte) []byte {
	return dated.ReplaceAll(picture, []byte("/$1 (D:20000101000000)"))
}

// WritePicture writes a picture to the file once it is whole: one that cannot
// be drawn leaves no file behind. The same picture gives the same file.
func WritePicture(file string, picture io.WriterTo) error {
	var b bytes.Buffer
	if _, err := picture.WriteTo(&b); err != nil {
		return fmt.Errorf("-figure %q: %w", file, err)
	}
	text := b.Bytes()
	if format, err := PictureFormat(file); err == nil && format == "pdf" {
		text = undated(text)
	}
	return os.WriteFile(file, text, 0o644)
}

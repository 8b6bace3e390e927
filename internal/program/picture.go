package program

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
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

// WritePicture writes a picture to the file once it is whole: one that cannot
// be drawn leaves no file behind.
func WritePicture(file string, picture io.WriterTo) error {
	var b bytes.Buffer
	if _, err := picture.WriteTo(&b); err != nil {
		return fmt.Errorf("-figure %q: %w", file, err)
	}
	return os.WriteFile(file, b.Bytes(), 0o644)
}

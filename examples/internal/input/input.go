// Package input reads the files that people hand to the example programs:
// plans, tables, photometric files, weather. Whatever a file holds, reading it
// ends soon, uses bounded memory, and a fault is one error that names the line.
//
//	text, err := input.Text(name, os.Stdin, 1<<20)
//	for line, err := range input.Lines(file, 1<<16) { ... }
package input

import (
	"fmt"
	"io"
	"os"
)

// Stdin is the name that stands for standard input.
const Stdin = "-"

// Open opens the named file, or hands out in for the name -. Only regular
// files are opened: opening a pipe that nobody writes to would wait for ever,
// and a device may never end. Who has a pipe gives it as standard input.
func Open(name string, in io.Reader) (io.ReadCloser, error) {
	if name == Stdin {
		return io.NopCloser(in), nil
	}
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if info.IsDir() {
		return nil, fmt.Errorf("%s is a folder, not a file", name)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is a pipe or a device, not a file; - reads standard input", name)
	}
	return os.Open(name)
}

// Name is how messages speak of the file.
func Name(name string) string {
	if name == Stdin {
		return "standard input"
	}
	return name
}

// Text reads the named file, or standard input, whole and cleaned as Clean
// does. Files longer than most bytes are refused without being read to their
// end. Errors begin with the file's name.
func Text(name string, in io.Reader, most int) ([]byte, error) {
	file, err := Open(name, in)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	text, err := All(file, most)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", Name(name), err)
	}
	return text, nil
}

// All is Text for a reader.
func All(r io.Reader, most int) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, int64(most)+1))
	if err != nil {
		return nil, err
	}
	long := len(text) > most
	if long {
		text = text[:most]
	}
	if kind := foreign(text); kind != "" {
		return nil, fmt.Errorf("it is %s", kind)
	}
	if long {
		return nil, fmt.Errorf("it is longer than %s", size(most))
	}
	return Clean(text)
}

// size prints a limit in bytes as a person would.
func size(bytes int) string {
	switch {
	case bytes >= 1<<20 && bytes%(1<<20) == 0:
		return fmt.Sprintf("%d MiB", bytes>>20)
	case bytes >= 1<<10 && bytes%(1<<10) == 0:
		return fmt.Sprintf("%d KiB", bytes>>10)
	}
	return fmt.Sprintf("%d bytes", bytes)
}

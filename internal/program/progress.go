package program

import (
	"io"
	"os"
)

// Progress is where a program says how far it is: the error stream where a person
// watches it, which is a terminal, and nowhere else.
func Progress(problems io.Writer) io.Writer {
	if f, ok := problems.(*os.File); ok {
		if i, err := f.Stat(); err == nil && i.Mode()&os.ModeCharDevice != 0 && f.Name() != os.DevNull {
			return f
		}
	}
	return io.Discard
}

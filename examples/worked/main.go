// Command worked shows the worked figures: small problems with each step, its
// formula and its source.
//
//	go run ./examples/worked                     lists them by subject
//	go run ./examples/worked NAME                prints one as a lesson
//	go run ./examples/worked -html DIR           writes all as a small static site
//	go run ./examples/worked -serve 127.0.0.1:0  lets a class change the numbers
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"

	"cloche.example/examples/internal/figures"
	"cloche.example/internal/program"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

func run(ctx context.Context, args []string, out, problems io.Writer) int {
	p := program.New("worked", "worked lists the worked figures; with a name it prints that one as a lesson.")
	p.MostWords = 1
	dir := p.String("html", "", "write all figures as a static site into this `directory`, made if it is not there")
	address := p.String("serve", "", "serve them on this loopback `address`, as 127.0.0.1:8080 (port 0 takes a free one), with forms to change the numbers")
	return p.Run(args, out, problems, func() (io.WriterTo, error) {
		modes := 0
		for _, on := range []bool{p.NArg() > 0, *dir != "", *address != ""} {
			if on {
				modes++
			}
		}
		switch {
		case modes > 1:
			return nil, fmt.Errorf("a name, -html and -serve exclude one another")
		case *dir != "":
			n, err := writeSite(*dir)
			return strings.NewReader(fmt.Sprintf("%d pages written to %s\n", n, *dir)), err
		case *address != "":
			return strings.NewReader(""), serve(ctx, *address, out)
		case p.NArg() == 1:
			f, err := figures.Find(p.Arg(0))
			if err != nil {
				return nil, err
			}
			text, err := f.Text(f.Defaults())
			return strings.NewReader(text), err
		}
		return strings.NewReader(list()), nil
	})
}

// list names every figure under its subject.
func list() string {
	var b strings.Builder
	all := figures.All()
	fmt.Fprintf(&b, "%d worked figures; worked NAME prints one.\n", len(all))
	for _, subject := range figures.Subjects() {
		head := false
		for _, f := range all {
			if f.Subject != subject {
				continue
			}
			if !head {
				fmt.Fprintf(&b, "\n%s\n", subject)
				head = true
			}
			mark := ""
			if f.Source == "" {
				mark = " (invented)"
			}
			fmt.Fprintf(&b, "  %-22s %s%s\n", f.Name, f.Title, mark)
		}
	}
	return b.String()
}

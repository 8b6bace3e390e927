package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"cloche.example/examples/internal/figures"
	"cloche.example/examples/internal/reference"
)

// serve answers on a loopback address until the context ends.
func serve(ctx context.Context, address string, out io.Writer) error {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return fmt.Errorf("-serve %q: %w", address, err)
	}
	if !loopback(host) {
		return fmt.Errorf("-serve %q: only the loopback address is served: 127.0.0.1, [::1] or localhost", address)
	}
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return fmt.Errorf("-serve %q: %w", address, err)
	}
	server := &http.Server{Handler: handler(), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 20 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10}
	fmt.Fprintf(out, "worked figures at http://%s/ (an interrupt ends it)\n", listener.Addr())
	go func() {
		<-ctx.Done()
		end, cancel := context.WithTimeout(context.Background(), 3*time.Second)
		defer cancel()
		server.Shutdown(end)
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

func loopback(host string) bool {
	if host == "localhost" {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}

// handler serves the index and the figures from memory. It opens no file, and
// answers only GET and HEAD for a loopback host, so that another site's page
// cannot reach it by a name of its own.
func handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cache-Control", "no-store")
		host := r.Host
		if name, _, err := net.SplitHostPort(host); err == nil {
			host = name
		}
		if !loopback(strings.Trim(host, "[]")) {
			http.Error(w, "this server answers the loopback address alone", http.StatusForbidden)
			return
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD are answered", http.StatusMethodNotAllowed)
			return
		}
		var b bytes.Buffer
		status, err := http.StatusOK, error(nil)
		switch name := strings.TrimPrefix(r.URL.Path, "/"); {
		case name == "" || name == "index.html":
			err = writeIndex(&b)
		default:
			if g, ok := reference.Find(strings.TrimSuffix(name, ".html")); ok {
				err = g.WriteHTML(&b)
				break
			}
			f, missing := figures.Find(strings.TrimSuffix(name, ".html"))
			if missing != nil {
				http.NotFound(w, r)
				return
			}
			status, err = answer(&b, f, r.URL.RawQuery)
		}
		if err != nil {
			http.Error(w, "the figure cannot be shown: "+err.Error(), http.StatusInternalServerError)
			return
		}
		h.Set("Content-Type", "text/html; charset=utf-8")
		h.Set("Content-Length", strconv.Itoa(b.Len()))
		w.WriteHeader(status)
		if r.Method == http.MethodGet {
			b.WriteTo(w)
		}
	})
}

// answer writes the figure for the values of the query. Values that are
// refused leave the answer for those before, and the page says why.
func answer(w io.Writer, f figures.Figure, query string) (int, error) {
	q, err := url.ParseQuery(query)
	form := figures.Form{On: true}
	if err != nil {
		form.Faults = []string{"the address is not understood"}
		return http.StatusBadRequest, f.WriteHTML(w, f.Defaults(), form)
	}
	before := f.Defaults()
	for i := range before {
		if v, err := number(q.Get(fmt.Sprintf("w%d", i))); err == nil {
			before[i] = v
		}
	}
	if f.Check(before) != nil {
		before = f.Defaults()
	}
	values, wrote := append([]float64(nil), before...), make([]string, len(before))
	for i, g := range f.Given {
		key := fmt.Sprintf("v%d", i)
		if !q.Has(key) {
			wrote[i] = strconv.FormatFloat(before[i], 'g', 12, 64)
			continue
		}
		wrote[i] = q.Get(key)
		if values[i], err = number(wrote[i]); err != nil {
			form.Faults = append(form.Faults, g.Name+": "+err.Error())
			values[i] = before[i]
		}
		if r := []rune(wrote[i]); len(r) > 40 {
			wrote[i] = string(r[:40])
		}
	}
	if len(form.Faults) == 0 {
		err := f.WriteHTML(w, values, form)
		if err == nil {
			return http.StatusOK, nil
		}
		form.Faults = strings.Split(err.Error(), "\n")
	}
	form.Wrote = wrote
	if err := f.WriteHTML(w, before, form); err == nil {
		return http.StatusUnprocessableEntity, nil
	}
	return http.StatusUnprocessableEntity, f.WriteHTML(w, f.Defaults(), form)
}

// number reads what a person writes; a comma may stand for the point.
func number(s string) (float64, error) {
	s = strings.TrimSpace(s)
	if len(s) > 40 {
		return 0, fmt.Errorf("more than 40 characters are no number")
	}
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return v, nil
}

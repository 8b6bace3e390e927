package main

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/figures"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/reference"
)

func output(t *testing.T, args ...string) (int, string, string) {
	t.Helper()
	var out, problems strings.Builder
	status := run(t.Context(), args, &out, &problems)
	return status, out.String(), problems.String()
}

func TestListAndLesson(t *testing.T) {
	status, out, _ := output(t)
	require.Zero(t, status)
	for _, f := range figures.All() {
		require.Contains(t, out, f.Name)
		start := time.Now()
		status, lesson, problems := output(t, f.Name)
		require.Zero(t, status, problems)
		require.Contains(t, lesson, f.Title)
		require.Less(t, time.Since(start), 5*time.Second, f.Name)
	}
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"no-such-figure"}, {"a", "b"}, {"-serve", "0.0.0.0:0"}, {"-serve", "nonsense"}, {"-html", "x", "-serve", "127.0.0.1:0"}, {"-nonsense"}} {
		status, out, problems := output(t, args...)
		require.Equal(t, 2, status, args)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(problems, "\n"), problems)
	}
}

// The site is well formed, refers to nothing outside, and every link leads to
// a page of it.
func TestSite(t *testing.T) {
	dir := t.TempDir()
	status, _, problems := output(t, "-html", dir)
	require.Zero(t, status, problems)
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	require.GreaterOrEqual(t, len(names), len(figures.All())+1)
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		require.NoError(t, page.Check(text, names...), name)
	}
}

func ask(t *testing.T, method, target, host string) (*http.Response, string) {
	t.Helper()
	r := httptest.NewRequest(method, target, nil)
	r.Host = host
	w := httptest.NewRecorder()
	handler().ServeHTTP(w, r)
	body, err := io.ReadAll(w.Result().Body)
	require.NoError(t, err)
	return w.Result(), string(body)
}

func TestServerAnswers(t *testing.T) {
	pages := []string{"index.html"}
	for _, f := range figures.All() {
		pages = append(pages, f.Name+".html")
	}
	for _, f := range figures.All() {
		r, body := ask(t, "GET", "/"+f.Name+".html", "127.0.0.1:8080")
		require.Equal(t, 200, r.StatusCode)
		require.NoError(t, page.Check([]byte(body), pages...), f.Name)
		require.Contains(t, body, `name="v0"`)
	}
	for _, g := range reference.Pages() {
		r, body := ask(t, "GET", "/"+g.Name+".html", "localhost")
		require.Equal(t, 200, r.StatusCode, g.Name)
		require.Contains(t, body, "<h1>"+g.Title)
	}
	r, body := ask(t, "GET", "/", "localhost:1")
	require.Equal(t, 200, r.StatusCode)
	require.Contains(t, body, "Worked figures")
}

func TestServerTakesNewNumbers(t *testing.T) {
	_, before := ask(t, "GET", "/altitude.html", "localhost")
	r, after := ask(t, "GET", "/altitude.html?v0=3000&v1=20&v2=0,5", "localhost")
	require.Equal(t, 200, r.StatusCode)
	require.NotEqual(t, before, after)
	require.Contains(t, after, "at 3000 m")
}

func TestServerRefusesAndKeepsTheOldAnswer(t *testing.T) {
	for _, bad := range []string{"NaN", "-1e9", "1e400", "abc", strings.Repeat("9", 5000), "<script>", "", "%00"} {
		r, body := ask(t, "GET", "/altitude.html?w0=2000&v0="+bad+"&v1=20&v2=0.5", "localhost")
		require.Equal(t, http.StatusUnprocessableEntity, r.StatusCode, bad)
		require.Contains(t, body, "altitude of the site", bad)
		require.Contains(t, body, "Not taken", bad)
		require.Equal(t, 1, strings.Count(body, `aria-invalid="true"`), "the faulty value is marked: %s", bad)
		require.Contains(t, body, "at 2000 m", "the answer before stays: %s", bad)
		require.NotContains(t, body, "<script>")
		require.Less(t, len(body), 200_000)
	}
	r, body := ask(t, "GET", "/altitude.html?w0=NaN&v0=x", "localhost")
	require.Equal(t, http.StatusUnprocessableEntity, r.StatusCode)
	require.Contains(t, body, "at 1500 m", "values that never were fall back on the figure's own")
}

func TestServerRefusesStrangers(t *testing.T) {
	for _, host := range []string{"example.org", "example.org:80", "192.168.1.1:8080", "", "localhost.example.org"} {
		r, _ := ask(t, "GET", "/altitude.html", host)
		require.Equal(t, http.StatusForbidden, r.StatusCode, host)
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "TRACE", "BREW"} {
		r, _ := ask(t, method, "/altitude.html", "localhost")
		require.Equal(t, http.StatusMethodNotAllowed, r.StatusCode, method)
	}
	for _, path := range []string{"/../go.mod", "/%2e%2e/go.mod", "/etc/passwd", "/main.go", "/altitude.html/x", "//altitude.html", "/altitude\x00"} {
		r := httptest.NewRequest("GET", "/", nil)
		r.Host, r.URL.Path = "localhost", path
		w := httptest.NewRecorder()
		handler().ServeHTTP(w, r)
		require.Equal(t, http.StatusNotFound, w.Code, path)
	}
	r, _ := ask(t, "GET", "/altitude.html?v0=%zz", "localhost")
	require.Equal(t, http.StatusBadRequest, r.StatusCode)
}

func TestServeEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	read, write := io.Pipe()
	done := make(chan error, 1)
	go func() { done <- serve(ctx, "127.0.0.1:0", write) }()
	line := make([]byte, 200)
	n, err := read.Read(line)
	require.NoError(t, err)
	at := strings.Fields(string(line[:n]))[3]
	response, err := http.Get(at + "altitude.html")
	require.NoError(t, err)
	response.Body.Close()
	require.Equal(t, 200, response.StatusCode)
	cancel()
	select {
	case err := <-done:
		require.NoError(t, err)
	case <-time.After(10 * time.Second):
		t.Fatal("the server does not end")
	}
}

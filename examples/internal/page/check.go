package page

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Check reports what is wrong with a document: markup that is not well formed,
// a reference to anything outside the file, a script, a picture without title
// and description, an id that stands twice, a link within the page that leads
// nowhere, a missing title or a heading that skips a level. Local files are
// names for links to other pages of the same site; without any, every link
// must stay within the page.
func Check(document []byte, local ...string) error {
	var faults []error
	fault := func(format string, a ...any) { faults = append(faults, fmt.Errorf(format, a...)) }
	d := xml.NewDecoder(bytes.NewReader(document))
	d.Entity = xml.HTMLEntity
	ids, links := map[string]int{}, map[string]bool{}
	var open []string
	title, level, svg := "", 0, svgState{}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return errors.Join(append(faults, fmt.Errorf("not well formed: %w", err))...)
		}
		switch t := token.(type) {
		case xml.StartElement:
			name := t.Name.Local
			open = append(open, name)
			if name == "script" || name == "iframe" || name == "object" || name == "embed" {
				fault("<%s> is not allowed", name)
			}
			if name == "svg" {
				svg = svgState{in: true}
			}
			if len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6' {
				if next := int(name[1] - '0'); next > level+1 {
					fault("heading %s follows h%d", name, level)
					level = next
				} else {
					level = next
				}
			}
			for _, a := range t.Attr {
				switch key := a.Name.Local; {
				case key == "id":
					ids[a.Value]++
				case strings.HasPrefix(strings.ToLower(key), "on"):
					fault("<%s> has a script in %s", name, key)
				case key == "href" && strings.HasPrefix(a.Value, "#"):
					links[a.Value[1:]] = true
				case key == "href" && contains(local, a.Value):
				case key == "href", key == "src", key == "srcset", key == "data", key == "poster":
					fault("<%s> refers to %q", name, a.Value)
				case key == "style" && strings.Contains(a.Value, "url("):
					fault("<%s> has a style with a reference: %q", name, a.Value)
				case key == "aria-labelledby":
					links[a.Value] = true
				}
			}
		case xml.EndElement:
			if t.Name.Local == "svg" {
				if strings.TrimSpace(svg.title) == "" || strings.TrimSpace(svg.desc) == "" {
					fault("a picture lacks its title or description (title %q)", svg.title)
				}
				svg = svgState{}
			}
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) == 0 {
				continue
			}
			switch here := open[len(open)-1]; {
			case here == "title" && svg.in:
				svg.title += string(t)
			case here == "desc" && svg.in:
				svg.desc += string(t)
			case here == "title":
				title += string(t)
			case here == "style" && (bytes.Contains(t, []byte("url(")) || bytes.Contains(t, []byte("@import"))):
				fault("the style sheet refers to something outside")
			}
		}
	}
	if strings.TrimSpace(title) == "" {
		fault("the document has no title")
	}
	for id, n := range ids {
		if n > 1 {
			fault("id %q stands %d times", id, n)
		}
	}
	for l := range links {
		if ids[l] == 0 {
			fault("the link to #%s leads nowhere", l)
		}
	}
	return errors.Join(faults...)
}

type svgState struct {
	in          bool
	title, desc string
}

func contains(names []string, link string) bool {
	file, _, _ := strings.Cut(link, "#")
	for _, n := range names {
		if n == file {
			return true
		}
	}
	return false
}

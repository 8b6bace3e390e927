package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"
)

// maxPlan is the largest plan read: a plan is a page of text, so a file far
// beyond that is a slip and is not read to its end. Its keys nest three deep.
const (
	maxPlan  = 1 << 20 // bytes
	maxDepth = 8       // brackets within brackets
)

// decode reads a plan strictly. The error lists every fault: unknown, missing
// and repeated keys, values of a wrong kind, and values out of range.
func decode(r io.Reader) (plan, error) {
	var p plan
	text, err := io.ReadAll(io.LimitReader(r, maxPlan+1))
	if err != nil {
		return p, err
	}
	if len(text) > maxPlan {
		return p, fmt.Errorf("it is larger than %d bytes, so it is no plan", maxPlan)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return p, errors.New("it is empty; -print-plan writes a plan to start from")
	}
	dec := json.NewDecoder(bytes.NewReader(text))
	var faults []error
	tree, err := value(dec, "", 0, &faults)
	if err == nil {
		if _, more := dec.Token(); more != io.EOF {
			err = errors.New("text follows the plan's closing brace")
		}
	}
	if err != nil {
		line := 1 + bytes.Count(text[:min(len(text), int(dec.InputOffset()))], []byte("\n"))
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			err = errors.New("the text ends before the plan does")
		}
		return p, fmt.Errorf("it is not JSON near line %d: %w", line, err)
	}
	fill("", reflect.ValueOf(&p).Elem(), tree, "", &faults)
	if len(faults) == 0 {
		faults = p.contradictions()
	}
	return p, errors.Join(faults...)
}

// value reads one JSON value as map[string]any, []any, float64, string, bool
// or nil, and notes keys that stand twice in one object.
func value(dec *json.Decoder, path string, depth int, faults *[]error) (any, error) {
	if depth > maxDepth {
		return nil, fmt.Errorf("brackets stand more than %d deep", maxDepth)
	}
	tok, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch tok {
	case json.Delim('{'):
		m := map[string]any{}
		for dec.More() {
			k, err := dec.Token()
			if err != nil {
				return nil, err
			}
			key := k.(string)
			v, err := value(dec, join(path, key), depth+1, faults)
			if err != nil {
				return nil, err
			}
			if _, twice := m[key]; twice {
				*faults = append(*faults, fmt.Errorf("%s stands twice", join(path, key)))
			}
			m[key] = v
		}
		_, err = dec.Token()
		return m, err
	case json.Delim('['):
		list := []any{}
		for dec.More() {
			v, err := value(dec, path+"["+strconv.Itoa(len(list))+"]", depth+1, faults)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err = dec.Token()
		return list, err
	}
	return tok, nil
}

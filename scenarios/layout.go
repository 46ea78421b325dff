// This file lays a scenario file out in canonical order and form, for rouleau fmt.

package scenarios

import "rouleau/scenarios/yamlread"

// Format gives the file with its keys in the order of the format and its comments kept. With faults there is no result.
func Format(name string, data []byte) ([]byte, yamlread.Faults) {
	if _, faults := Parse(name, data); len(faults) > 0 {
		return nil, faults
	}
	return yamlread.Format(name, data, new(File))
}

package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scenarios/yamlread"
)

// Computing with one part of the model: many cases from a file, or one by hand.

func (s *session) calcCommand() *cobra.Command {
	var cases string
	c := &cobra.Command{
		Use:   "calc (MODULE | --cases FILE)",
		Short: words.Say("cli.calc_short"),
		Long:  words.Say("cli.calc_long"),
		Args:  cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			switch {
			case len(args) > 0:
				return unknownCommand(c, args[0])
			case cases == "":
				return wrong(words.Say("cli.calc_what"))
			}
			return s.calcCases(cases)
		},
	}
	c.Flags().StringVar(&cases, "cases", "", words.Say("cli.calc_cases"))
	for i := range modules {
		c.AddCommand(s.moduleCommand(&modules[i]))
	}
	return c
}

// calcCases computes every case of a file, or names every fault of it.
func (s *session) calcCases(path string) error {
	data, err := s.read(path)
	if err != nil {
		return err
	}
	cases, faults := readCases(data)
	if len(faults) > 0 {
		name := path
		if path == "-" {
			name = words.Say("cli.stdin")
		}
		for i := range faults {
			faults[i] = name + ": " + faults[i]
		}
		return notRight(strings.Join(faults, "\n"))
	}
	writeCases(&s.out, cases)
	return nil
}

// maxCases is the size over which a file of cases is refused.
const maxCases = 16 << 20

// read gives a file, or the input for -.
func (s *session) read(path string) ([]byte, error) {
	from := s.stdin
	if path != "-" {
		f, err := os.Open(path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil, wrong(words.Say("cli.no_file", path))
		}
		if err != nil {
			return nil, trouble(words.Say("cli.unreadable", path, cause(err)))
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return nil, wrong(words.Say("cli.folder", path))
		}
		from = f
	}
	data, err := io.ReadAll(io.LimitReader(from, maxCases+1))
	switch {
	case err != nil:
		return nil, trouble(words.Say("cli.unreadable", path, cause(err)))
	case len(data) > maxCases:
		return nil, notRight(words.Say("cli.too_large", path, maxCases>>20))
	}
	return bytes.TrimPrefix(data, []byte("\ufeff")), nil // some editors put this mark before what they save
}

// cause is what the machine says, without the path that the message has already.
func cause(err error) error {
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		return inner.Err
	}
	return err
}

// moduleCommand is one module with a flag for each field.
func (s *session) moduleCommand(m *module) *cobra.Command {
	texts := make([]string, len(m.fields))
	var asJSON bool
	c := &cobra.Command{
		Use:   m.name,
		Short: words.Say(m.doc),
		Args:  exactly(0, ""),
	}
	for i, f := range m.fields {
		c.Flags().Var((*plain)(&texts[i]), f.flag(), f.usage())
	}
	c.Flags().BoolVar(&asJSON, "json", false, words.Say("cli.json"))
	c.Flags().SortFlags = false
	c.RunE = func(c *cobra.Command, _ []string) error {
		given := map[string]string{}
		for i, f := range m.fields {
			if c.Flags().Changed(f.flag()) {
				given[f.path] = texts[i]
			}
		}
		in, faults := m.byHand(given)
		if len(faults) > 0 {
			return wrong(strings.Join(faults, "\n"))
		}
		one := computed{m, in, m.compute(in)}
		if asJSON {
			s.out.Write(indented(&one))
		} else {
			one.writeTable(&s.out)
		}
		return nil
	}
	return c
}

// plain is a flag that keeps what was typed; the field reads it and says what is wrong with it.
type plain string

func (p *plain) String() string     { return string(*p) }
func (p *plain) Set(s string) error { *p = plain(s); return nil }
func (p *plain) Type() string       { return "" }

// computed is a case with its result.
type computed struct {
	module *module
	input  values
	result []result
}

// writeTable prints what went in and what came out, with units.
func (c *computed) writeTable(w io.Writer) {
	fmt.Fprintf(w, "%s\n\n%s\n", wrap(words.Say(c.module.doc), "", ""), words.Say("cli.input"))
	for _, f := range c.module.fields {
		if text := c.input.show(f); text != "" {
			writeRow(w, f.flag(), text, f.unit, f.doc)
		}
	}
	fmt.Fprintf(w, "\n%s\n", words.Say("cli.result"))
	for _, r := range c.result {
		writeRow(w, r.name, digits(r.value), r.unit, r.doc)
	}
	fmt.Fprintf(w, "\n%s\n", wrap(words.Say("cli.caution"), "", ""))
}

// writeRow prints a value with its unit and what it means.
func writeRow(w io.Writer, name, value, unit, doc string) {
	row := "  %-24s %12s %-9s "
	fmt.Fprintln(w, wrap(words.Say(doc), fmt.Sprintf(row, name, value, unit), fmt.Sprintf(row, "", "", "")))
}

// moduleNamed finds a module; without one the nearest name is given.
func moduleNamed(name string) (m *module, nearest string) {
	i := slices.IndexFunc(modules, func(m module) bool { return m.name == name })
	if i >= 0 {
		return &modules[i], ""
	}
	return nil, yamlread.Nearest(name, moduleNames())
}

func moduleNames() []string {
	names := make([]string, len(modules))
	for i := range modules {
		names[i] = modules[i].name
	}
	return names
}

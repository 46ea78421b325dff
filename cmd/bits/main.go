// Command bits prints, as hexadecimal digits, results whose every bit must be the same on every
// processor. The tests build it for several of them and compare what it prints byte for byte.
package main

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"math"
	"os"

	"rouleau/sim/guarded"
)

// points on each grid: enough to meet every branch of a function, few enough for an emulated processor.
const points = 20000

func main() {
	out := bufio.NewWriter(os.Stdout)
	tell := func(name string, bits uint64) { fmt.Fprintf(out, "%s %016x\n", name, bits) }
	guardedFunctions(tell)
	wholeCases(tell)
	if err := out.Flush(); err != nil {
		fmt.Fprintf(os.Stderr, "bits: could not print the results: %v\n", err)
		os.Exit(3)
	}
}

// guardedFunctions tells one hash for each function of sim/guarded over the range the models use it on,
// and one value by itself, so that a difference shows whether it is one of size or of the last bit.
func guardedFunctions(tell func(name string, bits uint64)) {
	grids := []struct {
		name     string
		from, to float64
		f        func(float64) float64
	}{
		{"exp", -40, 10, guarded.Exp},
		{"log", 1e-9, 5000, guarded.Log},
		{"pow-richardson-zaki", 0, 1, func(x float64) float64 { return guarded.Pow(x, 4.65) }},
		{"pow-base", 1e-6, 1000, func(x float64) float64 { return guarded.Pow(x, 1.765) }},
		{"pow-exponent", -5, 5, func(x float64) float64 { return guarded.Pow(2.5, x) }},
		{"erf", -6, 6, guarded.Erf},
		{"normal-cdf", -9, 9, guarded.NormalCDF},
	}
	for _, g := range grids {
		hash := fnv.New64a()
		step := (g.to - g.from) / points
		for i := range points + 1 {
			x := g.from + float64(step*float64(i))
			hash.Write(binary.LittleEndian.AppendUint64(nil, math.Float64bits(g.f(x))))
		}
		tell("guarded "+g.name+" hash", hash.Sum64())
		tell("guarded "+g.name+" one value", math.Float64bits(g.f(g.from+float64(step*(points/3)))))
	}
}

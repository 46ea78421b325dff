package study

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// This file reads which seeds are played, and which share of them.

const mostSeeds = 100000

// Seeds reads a list such as 1..200 or 1,5,9..12.
func Seeds(text string) ([]uint64, error) {
	var seeds []uint64
	for part := range strings.SplitSeq(text, ",") {
		first, last, isRange := strings.Cut(strings.TrimSpace(part), "..")
		if !isRange {
			last = first
		}
		from, bad := strconv.ParseUint(first, 10, 64)
		to, worse := strconv.ParseUint(last, 10, 64)
		if bad != nil || worse != nil || to < from {
			return nil, fmt.Errorf("%q is no list of seeds: write 1..200, or 1,5,9..12", text)
		}
		if to-from >= mostSeeds || uint64(len(seeds))+to-from >= mostSeeds {
			return nil, fmt.Errorf("%q are more than %d seeds: play them as several studies, such as 1..100000 and 100001..200000", text, mostSeeds)
		}
		for k := uint64(0); k <= to-from; k++ {
			seeds = append(seeds, from+k)
		}
	}
	slices.Sort(seeds)
	return slices.Compact(seeds), nil
}

// Shard takes every n-th seed: of 2/8 the second, the tenth and so on.
func Shard(seeds []uint64, text string) ([]uint64, error) {
	if text == "" {
		return seeds, nil
	}
	a, b, _ := strings.Cut(text, "/")
	which, bad := strconv.Atoi(a)
	of, worse := strconv.Atoi(b)
	if bad != nil || worse != nil || which < 1 || of < which {
		return nil, fmt.Errorf("%q is no share of the seeds: write 2/8 for the second of eight", text)
	}
	var mine []uint64
	for i, s := range seeds {
		if i%of == which-1 {
			mine = append(mine, s)
		}
	}
	return mine, nil
}

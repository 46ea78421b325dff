#!/bin/sh
# The long measurements, which the tests leave out: nanoseconds and allocations of the Go benchmarks, the frames of a
# recorded case against their bounds and the memory of sixteen in a row (some fifteen minutes), 200 killed and resumed
# cases (some two minutes), planted faults over 100 seeds, the competency book (every bit of it flipped, 500 kills while it is written to, a
# thousand records verified), and the whole spine case played in the window on a virtual display with pointer and keys (some ten
# minutes), with its grade and the cost of its frames.
#
#     sh cmd/measure.sh [flags for go test, such as -benchtime 5s or -count 10]
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/cmd/install.sh"
cd "$root"
need_go "$root"
# shellcheck disable=SC2086 # words on purpose: a list
need_packages $packages_build $packages_run $packages_test

failed=""

# benchmarks TITLE PACKAGES [flags]: one section; a failing one does not stop the next.
benchmarks() {
	title=$1
	packages=$2
	shift 2
	printf '\n== %s\n' "$title"
	go test -run '^$' -bench . -benchmem "$@" "$packages" || failed="$failed  $title
"
}

benchmarks "the core: one tick, one part at a time" ./sim/... "$@"
benchmarks "scoring: a whole case and its grades" ./scoring/... "$@"
benchmarks "debriefs: every decision of a case put right, and what 40 of them take" ./cmd/forks "$@"
benchmarks "the window: one frame without a display" ./cmd/rouleau-desk/bench "$@"
benchmarks "the window: triangles and letters" ./cmd/rouleau-desk/mesh "$@"

printf '\n== %s\n' "what the cases of the library show: every operator over 200 seeds (a minute a case on two cores)"
if go run ./cmd/rouleau study --table >"$root/scenarios/STUDY.md.new"; then
	mv "$root/scenarios/STUDY.md.new" "$root/scenarios/STUDY.md"
else
	rm -f "$root/scenarios/STUDY.md.new"
	failed="$failed  the table of all cases
"
fi

printf '\n== %s\n' "the window: frames of a recorded case beside a bare window, software rendering"
go run ./cmd/rouleau-desk/windowtest/frames || failed="$failed  frames of a recorded case
"

printf '\n== %s\n' "never lose a case: the program is killed 200 times and each case gone on with"
go test -count=1 -v ./cmd/rouleau-desk/windowtest/kills -kills 200 || failed="$failed  a case after a kill
"

printf '\n== %s\n' "what decisions cost: every planted fault over 100 seeds, and every case played by many (some forty minutes on two cores)"
go test -count=1 -timeout 12h -v -run 'PlantedFaultComesFirst|LaterActsFit|ChangesNothing' ./scoring/debrief -seeds 100 -every-case || failed="$failed  planted faults
"

printf '\n== %s\n' "the competency book: every bit of a book flipped, one at a time"
go test -count=1 -timeout 12h -v -run EveryFlippedBit ./scoring/book -flips 0 || failed="$failed  flipped bits
"

printf '\n== %s\n' "the competency book: the program is killed 500 times while it writes (some three minutes)"
go test -count=1 -timeout 2h -v -run NoKillLosesARecord ./cmd/rouleau/ledger -kills 500 || failed="$failed  a book after a kill
"

printf '\n== %s\n' "the competency book: a thousand records verified, each with a whole case played again (some five minutes; 3 at most of it for verifying)"
go test -count=1 -timeout 2h -v -run VerifyingManyRecords ./cmd/rouleau/ledger -records 1000 || failed="$failed  verifying a thousand records
"

printf '\n== %s\n' "the window: the spine case played by hand, software rendering"
LIBGL_ALWAYS_SOFTWARE=1 go run ./cmd/rouleau-desk/windowtest/wholecase || failed="$failed  the whole case by hand
"

if [ -n "$failed" ]; then
	printf '\nfailed:\n%s' "$failed"
	exit 1
fi

#!/bin/sh
# Every check of the house, in order, with its time: formatting, vet, builds for other systems, all tests
# (those of the window under a virtual display), race detector, no fused multiply-add, same bits everywhere.
# Installs what is missing first. A step that fails does not stop the next; the end lists them.
#
#     sh cmd/test.sh            all of it
#     sh cmd/test.sh vet bits   only the steps of these names: formatting vet build build_windows build_wasm
#                               tests race fused bits
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/cmd/install.sh"
cd "$root"

tmp=$(mktemp -d)
tidy() {
	# Xvfb leaves its lock and socket behind when it is killed outright: ask it to end, and wait.
	if [ -s "$tmp/xvfb.pid" ]; then
		kill -TERM "$(cat "$tmp/xvfb.pid")" 2>/dev/null || :
		tries=0
		while kill -0 "$(cat "$tmp/xvfb.pid")" 2>/dev/null && [ "$tries" -lt 25 ]; do
			sleep 0.2
			tries=$((tries + 1))
		done
	fi
	rm -rf "$tmp"
}
trap tidy EXIT
trap 'exit 130' INT
trap 'exit 143' TERM HUP

wanted="$*"
passed=0
failed=0
failures=""

# step TITLE FUNCTION: one check. It runs in a shell of its own, which ends at its first error. A step that
# counts by itself leaves "passed failed" in the file counts; any other is one.
step() {
	case " $wanted " in
	"  " | *" $2 "*) ;;
	*) return 0 ;;
	esac
	printf '\n== %s\n' "$1"
	began=$(date +%s)
	rm -f "$tmp/counts"
	set +e
	(
		set -e
		"$2"
	)
	code=$?
	set -e
	took=$(($(date +%s) - began))
	good=1 bad=0
	[ "$code" -eq 0 ] || good=0 bad=1
	if [ -s "$tmp/counts" ]; then
		read -r good bad <"$tmp/counts"
		# Gone wrong without a failing test, for example because none ran: that is one failure.
		[ "$code" -eq 0 ] || [ "$bad" -gt 0 ] || bad=1
	fi
	passed=$((passed + good))
	failed=$((failed + bad))
	if [ "$code" -eq 0 ]; then
		printf '   done in %d s\n' "$took"
	else
		failures="$failures  $1 ($2)
"
		printf '   FAILED in %d s\n' "$took"
	fi
}

formatting() {
	unformatted=$("$(go env GOROOT)/bin/gofmt" -l cmd sim scenarios scoring assets)
	[ -z "$unformatted" ] || {
		say "not formatted, run gofmt -w on:" "$unformatted"
		return 1
	}
}

vet() { go vet ./...; }

build() { go build ./...; }

build_windows() { GOOS=windows GOARCH=amd64 go build ./...; }

build_wasm() {
	for program in rouleau rouleau-desk; do
		GOOS=js GOARCH=wasm go build -o "$tmp/$program.wasm" "./cmd/$program"
	done
}

# A display that nobody sees, with a free number that Xvfb finds by itself.
virtual_display() {
	Xvfb -displayfd 3 -screen 0 1920x1200x24 -nolisten tcp 3>"$tmp/display" >"$tmp/xvfb.log" 2>&1 &
	say $! >"$tmp/xvfb.pid"
	tries=0
	until [ -s "$tmp/display" ]; do
		if ! kill -0 "$(cat "$tmp/xvfb.pid")" 2>/dev/null || [ "$tries" -ge 100 ]; then
			say "the virtual display did not start:"
			cat "$tmp/xvfb.log"
			return 1
		fi
		sleep 0.1
		tries=$((tries + 1))
	done
	say "display :$(cat "$tmp/display")"
}

# read_tests: turns the events of go test -json into a line for each package and the whole output of each
# test that failed, and writes the counts to the file named. A skipped test counts as a failed one.
read_tests() {
	awk -v counts="$1" '
	function field(name,    text) {
		if (!match($0, "\"" name "\":\"([^\"\\\\]|\\\\.)*\"")) return ""
		text = substr($0, RSTART + length(name) + 4, RLENGTH - length(name) - 5)
		gsub(/\\u003c/, "<", text); gsub(/\\u003e/, ">", text); gsub(/\\u0026/, "\\&", text)
		gsub(/\\\\/, "\001", text); gsub(/\\n/, "\n", text); gsub(/\\t/, "\t", text)
		gsub(/\\r/, "\r", text); gsub(/\\"/, "\"", text); gsub(/\001/, "\\", text)
		return text
	}
	{
		action = field("Action"); package = field("Package"); test = field("Test"); key = package " " test
	}
	action == "build-output" { printf "%s", field("Output"); next }
	action == "output" && test != "" { seen[key] = seen[key] field("Output"); next }
	action == "output" {
		line = field("Output")
		if (line != "PASS\n" && line != "FAIL\n") printf "%s", line
		next
	}
	test != "" && action == "pass" { passed++; delete seen[key] }
	test != "" && action == "fail" { failed++; broken[package] = 1; printf "%s", seen[key]; delete seen[key] }
	test != "" && action == "skip" { failed++; printf "%sSKIPPED, which counts as failed: %s\n", seen[key], key; delete seen[key] }
	test == "" && action == "fail" && !(package in broken) { failed++; printf "FAILED as a whole: %s\n", package }
	{ fflush() }
	END { printf "%d %d\n", passed, failed > counts }
	'
}

tests() {
	broken=0
	if virtual_display; then
		DISPLAY=":$(cat "$tmp/display")"
		export DISPLAY LIBGL_ALWAYS_SOFTWARE=1
		unset WAYLAND_DISPLAY XAUTHORITY
	else
		broken=1
	fi
	{
		code=0
		go test -json -count=1 -timeout 10m ./... || code=$?
		say "$code" >"$tmp/tests.code"
	} | read_tests "$tmp/counts"
	read -r good bad <"$tmp/counts"
	say "tests: $good passed, $bad failed or skipped"
	[ "$good" -gt 0 ] || say "no test ran at all: that is a failure too"
	[ "$broken" -eq 0 ] && [ "$(cat "$tmp/tests.code")" -eq 0 ] && [ "$bad" -eq 0 ] && [ "$good" -gt 0 ]
}

# The race detector is some ten times slower. Left out are the packages that drive the real window, whose
# program is not built with it, the tests of the house rules, which run nothing, and the own tests of the core and
# the screens, in which those rules forbid goroutines; the tests of app and command line play whole cases through
# them all the same. Left out too are whole sessions of the command line, the library played by all operators, and the pages and
# books that play whole debriefs, but for one test of each pool in them; of the window the library, sixteen cases in a row, and
# signing by pointer, which does by pointer what is done by keys beside it. Where several cases are played at once in cmd/forks and
# study the core is watched too; elsewhere it is left unwatched for speed.
race() {
	pooled=""
	others=""
	for package in $(go list -f '{{if or .TestGoFiles .XTestGoFiles}}{{.ImportPath}}{{end}}' ./...); do
		case "$package" in
		rouleau/sim* | rouleau/scenarios* | rouleau/scoring* | rouleau/cmd/house | rouleau/cmd/rouleau-desk/bench | rouleau/cmd/rouleau | rouleau/cmd/rouleau/report | \
			rouleau/cmd/rouleau/group | rouleau/cmd/rouleau/ledger) ;;
		rouleau/cmd/forks | rouleau/cmd/rouleau/study) pooled="$pooled $package" ;;
		*) grep -q xdotool "$root/${package#rouleau/}"/*_test.go || others="$others $package" ;;
		esac
	done
	[ -n "$pooled" ] && [ -n "$others" ] || {
		say "there is no package with tests"
		return 1
	}
	# shellcheck disable=SC2086 # words on purpose: lists
	timeout -k 10 600 go test -race -count=1 -timeout 10m -skip '^TestLibraryKeepsTheRules$' $pooled &&
		timeout -k 10 600 go test -race -gcflags='rouleau/sim/...=-race=false' -count=1 -timeout 10m -skip '^(TestEveryCaseOfTheLibraryIsDebriefedInTheWindow|TestSixteenCasesInARowStayBounded|TestAnAssessmentIsSignedByPointer)$' $others &&
		timeout -k 10 600 go test -race -gcflags='rouleau/sim/...=-race=false' -count=1 -timeout 10m -run '^(TestEveryVerdictIsTold|TestOneAttemptDoesNotTakeTheOthersWithIt)$' \
			./cmd/rouleau/ledger ./cmd/rouleau/group || {
		[ $? -ne 124 ] || say "ended after 600 s: the tests above take too long under the race detector"
		return 1
	}
}

# A product that goes straight into a sum may be computed in one rounding on some processors, and in two on
# others. The compiler says where it did so. First it must catch one that is put there for it.
fused() {
	mkdir "$tmp/bait"
	printf 'module bait\n\ngo 1.26\n' >"$tmp/bait/go.mod"
	printf 'package bait\n\nfunc F(x, y, z float64) float64 { return x*y + z }\n' >"$tmp/bait/bait.go"
	(cd "$tmp/bait" && GOARCH=arm64 go build -gcflags=-d=fmahash=vy .) >"$tmp/bait.out" 2>&1 || cat "$tmp/bait.out"
	grep -q "fmahash triggered" "$tmp/bait.out" || {
		say "this compiler does not report a fused multiply-add that is surely there, so the check says nothing"
		return 1
	}
	found=0
	for target in GOARCH=arm64 "GOARCH=amd64 GOAMD64=v3"; do
		# shellcheck disable=SC2086 # words on purpose: settings
		env $target go build -a -gcflags=-d=fmahash=vy ./sim/... ./scenarios/... ./scoring/... >"$tmp/fused.out" 2>&1 || {
			cat "$tmp/fused.out"
			return 1
		}
		if grep "fmahash triggered" "$tmp/fused.out"; then
			say "with $target: write float64(x*y) in the places above, before the product enters a sum"
			found=1
		else
			say "$target: none"
		fi
	done
	return "$found"
}

# same_bits NAME: compares what one build printed with what the default one did.
same_bits() {
	if cmp -s "$tmp/bits.default" "$tmp/bits.$1"; then
		say "$1: the same"
	else
		say "$1: DIFFERENT from the default build (< default, > $1)"
		diff "$tmp/bits.default" "$tmp/bits.$1" | head -20
		return 1
	fi
}

bits() {
	go_root=$(go env GOROOT)
	[ "$(go env GOHOSTARCH)" = amd64 ] || {
		say "this check compares amd64 builds with others and needs such a machine"
		return 1
	}
	for flag in avx2 fma bmi2; do
		grep -qw "$flag" /proc/cpuinfo || {
			say "this processor has no $flag, so a GOAMD64=v3 build cannot run here: use another machine"
			return 1
		}
	done
	emulator=$(command -v qemu-aarch64-static || command -v qemu-aarch64) || {
		say "there is no qemu-aarch64-static: install qemu-user-static"
		return 1
	}
	node_version=$(node --version | sed 's/^v\([0-9]*\).*/\1/')
	[ "$node_version" -ge 18 ] || {
		say "node 18 or newer is needed for the WebAssembly build, and this is $node_version"
		return 1
	}
	glue="$go_root/lib/wasm/wasm_exec_node.js"
	[ -f "$glue" ] || glue="$go_root/misc/wasm/wasm_exec_node.js"

	export CGO_ENABLED=0
	GOAMD64=v1 go build -o "$tmp/bits-v1" ./cmd/bits
	GOAMD64=v3 go build -o "$tmp/bits-v3" ./cmd/bits
	GOARCH=arm64 go build -o "$tmp/bits-arm64" ./cmd/bits
	GOOS=js GOARCH=wasm go build -o "$tmp/bits-wasm" ./cmd/bits

	"$tmp/bits-v1" >"$tmp/bits.default"
	say "default: $(wc -l <"$tmp/bits.default") results, $(cksum <"$tmp/bits.default" | cut -d' ' -f1)"
	[ -s "$tmp/bits.default" ]
	"$tmp/bits-v3" >"$tmp/bits.v3"
	GODEBUG=cpu.fma=off "$tmp/bits-v1" >"$tmp/bits.fma-off"
	"$emulator" "$tmp/bits-arm64" >"$tmp/bits.arm64"
	# The glue refuses a large environment, and the program needs none.
	env -i PATH="$PATH" node --stack-size=8192 "$glue" "$tmp/bits-wasm" >"$tmp/bits.wasm"
	# The comparison must be able to fail: here is an output in which one last digit has changed.
	sed '$s/.$/x/' "$tmp/bits.default" >"$tmp/bits.altered"
	if same_bits altered >/dev/null; then
		say "the comparison does not notice a changed digit"
		return 1
	fi

	different=0
	for name in v3 fma-off arm64 wasm; do
		same_bits "$name" || different=1
	done
	return "$different"
}

say "== what is needed"
need_go "$root"
# shellcheck disable=SC2086 # words on purpose: a list
need_packages $packages_build $packages_run $packages_test

step "formatting" formatting
step "vet" vet
step "build" build
step "build for Windows" build_windows
step "build for WebAssembly" build_wasm
step "tests" tests
step "race detector" race
step "no fused multiply-add" fused
step "the same bits on every processor" bits

if [ "$((passed + failed))" -eq 0 ]; then
	say "there is no step of that name: $wanted"
fi

if [ -n "$failures" ]; then
	printf '\nfailed:\n%s' "$failures"
fi
# Each test counts as one, and so does each of the other steps.
printf '\n%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]

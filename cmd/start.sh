#!/bin/sh
# Installs what is missing, builds, and opens the window at its home screen, or at a case that is named; where there
# is no display the case is played by itself and its grade printed.
#
#     sh cmd/start.sh [SCENARIO] [flags passed on to the program]     the case first, flags after it
set -eu

# Found also when it is called through a link.
me=$(readlink -f -- "$0" 2>/dev/null) || me=$0
root=$(CDPATH='' cd -- "$(dirname -- "$me")/.." && pwd)
. "$root/cmd/install.sh"

say "rouleau is a teaching model with simulated patients. It is not for treating anyone, and no substitute"
say "for the manufacturer's instructions, local protocol or licensed practice."
say ""

need_go "$root"
# shellcheck disable=SC2086 # words on purpose: a list
need_packages $packages_build $packages_run

say "building: both programs into $root/build (the first time also fetches the pinned Go modules)"
mkdir -p "$root/build"
(cd "$root" && go build -o build/rouleau ./cmd/rouleau && go build -o build/rouleau-desk ./cmd/rouleau-desk) ||
	stop "the build failed: the lines above say where"

# A display that is named and does not answer would leave the window waiting for ever.
if [ -z "${DISPLAY:-}" ] || ! timeout 10 xdpyinfo >/dev/null 2>&1; then
	if [ -n "${DISPLAY:-}" ]; then
		say "display: $DISPLAY does not answer, so no window can open."
	elif [ -n "${WAYLAND_DISPLAY:-}" ]; then
		say "display: this Wayland session has no XWayland (DISPLAY is empty), which the window needs, so it cannot open."
	else
		say "display: there is none here (DISPLAY and WAYLAND_DISPLAY are empty), so no window can open."
	fi
	case ${1:-} in # without a scenario of the caller's own, one of the library
	"" | -*) set -- steady-oozing-spine "$@" ;;
	esac
	say "playing: $1, by the operator named steady, without a window"
	say ""
	exec "$root/build/rouleau" run --operator steady "$@"
fi

say "opening: the window"
exec "$root/build/rouleau-desk" "$@"

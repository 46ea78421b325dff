# shellcheck shell=sh disable=SC2034 # the lists below are for those that read this file in

# Shared by start.sh, test.sh and measure.sh, which read it in with a dot: it says what it does,
# finds Go, and installs the Debian or Ubuntu packages that are missing. POSIX sh.

go_wanted=26 # the minor version: 1.26

# An entry is a package, or command:package where the command may also have come from elsewhere.
packages_build="gcc:gcc libc6-dev libxcursor-dev libxrandr-dev libxinerama-dev libxi-dev libxxf86vm-dev libgl-dev"
packages_run="x11-utils libgl1 libxcursor1 libxi6 libxinerama1 libxrandr2 libxxf86vm1"
packages_test="Xvfb:xvfb xdotool:xdotool convert:imagemagick qemu-aarch64-static:qemu-user-static node:nodejs libgl1-mesa-dri aplay:alsa-utils postgresql npm:npm pdftoppm:poppler-utils"

say() { printf '%s\n' "$*"; }

stop() {
	printf 'stopped: %s\n' "$*" >&2
	exit 1
}

# A checkout owned by somebody else must still build: no version stamp is asked of git.
export GOFLAGS="${GOFLAGS:+$GOFLAGS }-buildvcs=false"

# need_go ROOT: finds Go on the path or where its own installer puts it, and checks its version.
need_go() {
	if ! command -v go >/dev/null 2>&1 && [ -x /usr/local/go/bin/go ]; then
		PATH="$PATH:/usr/local/go/bin"
		export PATH
	fi
	if ! command -v go >/dev/null 2>&1; then
		stop "go is not installed, or not on the path. Install Go 1.$go_wanted or newer (https://go.dev/doc/install), then run this again."
	fi
	# Asked inside the module, so that a Go that fetches the wanted version by itself may do so.
	go_version=$(cd "$1" && go env GOVERSION 2>/dev/null) || go_version=""
	go_minor=$(say "$go_version" | sed -n 's/^go1\.\([0-9][0-9]*\).*/\1/p')
	if [ -z "$go_minor" ] || [ "$go_minor" -lt "$go_wanted" ]; then
		stop "Go 1.$go_wanted or newer is needed, and this is $(go version 2>/dev/null || say 'an older one'). Install it (https://go.dev/doc/install), then run this again."
	fi
	say "Go: $go_version"
}

# missing_packages ENTRY...: prints the packages that are not there.
missing_packages() {
	for entry in "$@"; do
		package=${entry#*:}
		if [ "$package" != "$entry" ] && command -v "${entry%%:*}" >/dev/null 2>&1; then
			continue
		fi
		case $(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || :) in
		*" installed") ;;
		*) printf '%s ' "$package" ;;
		esac
	done
}

# need_packages ENTRY...: installs what is missing, or says which line does and stops.
need_packages() {
	if ! command -v apt-get >/dev/null 2>&1 || ! command -v dpkg-query >/dev/null 2>&1; then
		say "packages: this is not Debian or Ubuntu, so none are installed here; these would be: $*"
		return 0
	fi
	missing=$(missing_packages "$@")
	missing=${missing% }
	if [ -z "$missing" ]; then
		say "packages: nothing is missing"
		return 0
	fi
	line="apt-get update && apt-get install -y --no-install-recommends $missing"
	if [ "$(id -u)" -eq 0 ]; then
		as_root=""
	elif command -v sudo >/dev/null 2>&1 && sudo -n true 2>/dev/null; then
		as_root="sudo -n"
		line="sudo sh -c '$line'"
	else
		say "packages: missing $missing"
		say "installing them needs an administrator. Run this line, then start again:"
		say "    sudo sh -c '$line'"
		stop "packages are missing and this user may not install them"
	fi
	say "packages: installing $missing"
	# An update may fail for one source of many; whether the packages came is what counts.
	$as_root apt-get -qq update || say "packages: the package lists could not all be refreshed; going on with those there are"
	# shellcheck disable=SC2086 # words on purpose: as_root and missing are lists
	$as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends $missing ||
		stop "the packages could not be installed. Run this line, read what it says, then start again: $line"
}

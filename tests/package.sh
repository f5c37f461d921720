#!/bin/sh
# Tries the Debian package in a clean Debian 12: tests/package.sh [--profile NAME] [--package FILE.deb] [--previous FILE.deb] [--arm64 FILE.deb]
#
# Builds the package (minutes to half an hour; --profile dev is quicker), unless --package names one. Then, in a root of its own and
# without a network: install the version before, lead a practice, upgrade, read the same record, remove, and find the record untouched.
# --previous names the package of an earlier version; without it, the same program under a lower version stands for it.
# --arm64 also runs that package's program under qemu-user, as far as that goes.
# Needs root, mmdebstrap and a Debian mirror; says "skipped" without them.
set -eu
cd "$(dirname "$0")/.."
checkout=$PWD

say() { printf 'package test: %s\n' "$*"; }
fail() { printf 'package test: FAILED: %s\n' "$*" >&2; exit 1; }
skip() { printf 'package test: skipped: %s\n' "$*"; exit 0; }

profile=dist
package=
previous=
arm64=
while [ $# -gt 0 ]; do
    [ $# -ge 2 ] || fail "$1 needs a value; see the first lines of this file"
    case $1 in
    --profile) profile=$2 ;;
    --package) package=$(realpath "$2") ;;
    --previous) previous=$(realpath "$2") ;;
    --arm64) arm64=$(realpath "$2") ;;
    *) fail "there is no option $1; see the first lines of this file" ;;
    esac
    shift 2
done
[ "$(id -u)" = 0 ] || skip "only root can make a clean system"
command -v mmdebstrap >/dev/null || skip "mmdebstrap is missing: ./setup.sh --package"
command -v unshare >/dev/null || skip "unshare is missing"

work=$(mktemp -d)
root=$work/root
# Nothing is mounted where this process can see it, so there is nothing to unmount.
trap 'rm -rf "$work"' EXIT
trap 'exit 1' INT TERM HUP

if [ -z "$package" ]; then
    ./package.sh --profile "$profile" --out "$work/made"
    package=$(ls "$work"/made/*.deb)
fi

# --- the package itself ----------------------------------------------------------------------------------------------
mkdir "$work/look"
dpkg-deb -x "$package" "$work/look"
for file in usr/bin/tidecount usr/lib/tidecount/libvosk.so usr/share/tidecount/models/en/am/final.mdl \
    usr/share/tidecount/models/second-ear/network.onnx usr/share/tidecount/models/second-ear/de/network.onnx \
    usr/share/tidecount/models/second-ear/es/network.onnx usr/share/man/man1/tidecount.1.gz usr/share/man/man1/tidecount-attend.1.gz \
    usr/share/bash-completion/completions/tidecount usr/share/zsh/vendor-completions/_tidecount \
    usr/share/fish/vendor_completions.d/tidecount.fish usr/share/applications/tidecount.desktop \
    usr/lib/systemd/user/tidecount-attend.service usr/share/doc/tidecount/copyright usr/share/doc/tidecount/THIRD-PARTY.md; do
    [ -s "$work/look/$file" ] || fail "the package lacks $file"
done
if [ -e "$work/look/home" ] || [ -e "$work/look/var" ]; then fail "the package holds data"; fi
[ -z "$(find "$work/look" -name '*.wants')" ] || fail "the package switches the unit on by itself"
bash -n "$work/look/usr/share/bash-completion/completions/tidecount" || fail "the completions are no bash"
if command -v desktop-file-validate >/dev/null; then
    desktop-file-validate "$work/look/usr/share/applications/tidecount.desktop" || fail "the desktop entry is not valid"
fi
if command -v systemd-analyze >/dev/null; then
    # It complains that the program is not installed here; of its settings it must not complain.
    mkdir "$work/runtime"
    told=$(XDG_RUNTIME_DIR=$work/runtime systemd-analyze verify --user "$work/look/usr/lib/systemd/user/tidecount-attend.service" 2>&1 || true)
    ! printf '%s' "$told" | grep -iE "unknown|failed to parse|invalid|ignoring" || fail "the unit has faults"
fi
say "the package holds what it should"

# --- a clean system --------------------------------------------------------------------------------------------------
if [ -z "$previous" ]; then
    dpkg-deb -R "$package" "$work/before"
    sed -i 's/^Version: .*/&~before/' "$work/before/DEBIAN/control"
    previous=$work/before.deb
    dpkg-deb --root-owner-group -Zgzip -z1 -b "$work/before" "$previous" >/dev/null
    rm -rf "$work/before"
fi
# What the package depends on comes from the mirror with the root itself; later there is no network.
needs=$(dpkg-deb -f "$package" Depends | sed 's/([^)]*)//g; s/ *, */,/g; s/ //g')
say "making a clean Debian 12 with: $needs"
mmdebstrap --quiet --variant=minbase --include="$needs,flite" bookworm "$root" || skip "a clean Debian 12 could not be made; is there a mirror?"
cp "$package" "$root/new.deb"
cp "$previous" "$root/before.deb"
if [ "$profile" = dev ]; then
    # A development program reads its words from the checkout that it was built in.
    for folder in src/speak/words src/routine/packs src/pages/web/assets src/typeface/fonts; do
        mkdir -p "$root$checkout/$folder"
        cp -r "$folder/." "$root$checkout/$folder/"
    done
fi

# Runs a command in there, with a fresh /proc and without a network.
# shellcheck disable=SC2016 # the inner shell's words
inside() {
    unshare --mount --net --pid --fork sh -c '
        mount -t proc proc "$1/proc" && mount -t tmpfs tmpfs "$1/dev/shm" 2>/dev/null || mount -t tmpfs tmpfs "$1/tmp"
        root=$1; shift
        exec chroot "$root" "$@"' sh "$root" "$@"
}
as_client() { inside runuser -u client -- env -C /home/client HOME=/home/client LC_ALL=C.UTF-8 "$@"; }
data=$root/home/client/.local/share/tidecount

inside useradd --create-home client
inside env DEBIAN_FRONTEND=noninteractive dpkg -i /before.deb >"$work/dpkg.log" 2>&1 || { cat "$work/dpkg.log"; fail "the version before cannot be installed"; }
as_client tidecount --version
# shellcheck disable=SC2016
before=$(inside dpkg-query -W -f='${Version}' tidecount)
say "installed $before"

# --- doctor, and a practice to its end ---------------------------------------------------------------------------------
# A room: half a minute of faint noise.
inside sh -c 'espeak-ng -w /tmp/room.wav -a 2 "one two three four five six seven eight nine ten" && chmod 644 /tmp/room.wav && cp /tmp/room.wav /home/client/'
as_client tidecount doctor --mic /home/client/room.wav --speaker none --report /home/client/report.txt || fail "doctor finds something wrong"
grep -q "All is well" "$root/home/client/report.txt" || fail "the report does not say that all is well"
! grep -E "/home|client|\.wav" "$root/home/client/report.txt" || fail "the report names a folder or a person"

say "a simulated client practises, closed loop"
as_client tidecount demo --routine /usr/share/doc/tidecount/examples/voice-short.toml --out /home/client/demo >"$work/demo.log" 2>&1 ||
    { tail -n 30 "$work/demo.log"; fail "the practice of the simulated client was not led to its end"; }
say "a recording practises, into the usual data folder"
as_client tidecount practise /usr/share/doc/tidecount/examples/voice-short.toml --mic /home/client/demo/both-sides.wav --fast >"$work/practise.log" 2>&1 ||
    { tail -n 30 "$work/practise.log"; fail "the practice of the recording was not led"; }
[ -s "$data/practice.sqlite" ] || fail "there is no record in the usual data folder"
as_client tidecount history >"$work/history.before"
grep -q . "$work/history.before" || fail "the history is empty"

# --- upgrade ---------------------------------------------------------------------------------------------------------
inside env DEBIAN_FRONTEND=noninteractive dpkg -i /new.deb >"$work/dpkg.log" 2>&1 || { cat "$work/dpkg.log"; fail "the upgrade failed"; }
# shellcheck disable=SC2016
after=$(inside dpkg-query -W -f='${Version}' tidecount)
[ "$before" != "$after" ] || fail "nothing was upgraded"
as_client tidecount record check || fail "the record is not whole after the upgrade"
as_client tidecount history >"$work/history.after"
cmp "$work/history.before" "$work/history.after" || fail "the history is another one after the upgrade"
say "upgraded to $after; the record is whole and the same"

# --- remove ----------------------------------------------------------------------------------------------------------
sum() { (cd "$root/home/client" && find . -type f -exec sha256sum {} + | sort -k 2); }
sum >"$work/data.before"
inside env DEBIAN_FRONTEND=noninteractive dpkg --purge tidecount >"$work/dpkg.log" 2>&1 || { cat "$work/dpkg.log"; fail "it cannot be removed"; }
sum >"$work/data.after"
cmp "$work/data.before" "$work/data.after" || fail "removing touched the user's data"
left=$(find "$root/usr" "$root/etc" "$root/var/lib" -name '*tidecount*' ! -path '*/var/lib/dpkg/*')
[ -z "$left" ] || fail "left behind: $left"
say "removed cleanly; the data is untouched"

# --- arm64, as far as an emulator goes -----------------------------------------------------------------------------------
if [ -n "$arm64" ]; then
    command -v qemu-aarch64-static >/dev/null || skip "qemu-aarch64-static is missing: ./setup.sh --package-arm64 (all before this passed)"
    needs=$(dpkg-deb -f "$arm64" Depends | sed 's/([^)]*)//g; s/ *, */,/g; s/ //g')
    arm_root=$work/arm64
    mmdebstrap --quiet --arch=arm64 --variant=minbase --include="$needs" bookworm "$arm_root" ||
        skip "an arm64 system could not be made; is binfmt there? (all before this passed)"
    cp "$arm64" "$arm_root/new.deb"
    root=$arm_root
    inside dpkg -i /new.deb >"$work/dpkg.log" 2>&1 || { cat "$work/dpkg.log"; fail "the arm64 package cannot be installed"; }
    inside tidecount --version
    inside tidecount routine check /usr/share/doc/tidecount/examples/evening.toml || fail "arm64: a good routine is refused"
    inside sh -c 'espeak-ng -w /tmp/room.wav -a 2 "one two three"; HOME=/root tidecount doctor --mic /tmp/room.wav --speaker none' ||
        fail "arm64: doctor finds something wrong"
    say "arm64: version, doctor and the check of a routine work under qemu-user"
fi
say "passed"

#!/bin/sh
# Fetches the Vosk speech recognition library for one processor: packaging/vosk.sh x86_64|aarch64 DIR puts DIR/libvosk.so there.
#
# Downloads one wheel, which is checked by its hash before it is opened. Does nothing where the right library is there already.
set -eu
machine=${1:?x86_64 or aarch64}
to=${2:?a folder}
VERSION=0.3.45

say() { printf 'vosk: %s\n' "$*"; }
fail() { printf 'vosk: %s\n' "$*" >&2; exit 1; }

# The hash of the wheel, and that of the library in it.
case $machine in
x86_64)
    PLATFORM=manylinux2010_x86_64
    WHEEL=25e025093c4399d7278f543568ed8cc5460ac3a4bf48c23673ace1e25d26619f
    LIBRARY=85c4654de3acdeb99abab86eeb2a6e603927d37089597c0fcc33d8638dc2ccaf
    ;;
aarch64)
    PLATFORM=manylinux2014_aarch64
    WHEEL=54efb47dd890e544e9e20f0316413acec7f8680d04ec095c6140ab4e70262704
    LIBRARY=0e9df29f060a93cf3df3263a4d3635e1b75688a5fd84e86ade1599372e3c9597
    ;;
*) fail "the hash of the Vosk $VERSION wheel is known here for x86_64 and aarch64 only, not for $machine; put libvosk.so into a folder and name it in VOSK_LIB_DIR" ;;
esac

has_sha256() { printf '%s  %s\n' "$2" "$1" | sha256sum --check --status 2>/dev/null; }

if [ -f "$to/libvosk.so" ] && has_sha256 "$to/libvosk.so" "$LIBRARY"; then
    say "the library for $machine is there ($to/libvosk.so)"
    exit 0
fi
python=
for one in python3 /usr/bin/python3; do
    if "$one" -m pip --version >/dev/null 2>&1; then
        python=$one
        break
    fi
done
[ -n "$python" ] || fail "python3 with pip is missing, which fetches the Vosk wheel; on Debian: apt-get install python3-pip"

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 1' INT TERM HUP
say "fetching the Vosk $VERSION wheel for $machine"
echo "vosk==$VERSION --hash=sha256:$WHEEL" >"$work/wheel.txt"
"$python" -m pip download --quiet --disable-pip-version-check --no-cache-dir --no-deps --only-binary=:all: --platform "$PLATFORM" \
    --require-hashes --dest "$work" --requirement "$work/wheel.txt" ||
    fail "the Vosk wheel could not be fetched; is there a network? Nothing was changed"
mkdir -p "$to"
"$python" - "$work" <<'PYTHON'
import glob, sys, zipfile
work = sys.argv[1]
(wheel,) = glob.glob(work + "/vosk-*.whl")
with zipfile.ZipFile(wheel) as archive, open(work + "/libvosk.so", "wb") as out:
    out.write(archive.read("vosk/libvosk.so"))
PYTHON
has_sha256 "$work/libvosk.so" "$LIBRARY" || fail "the library in the wheel is not the expected one; nothing was changed"
# Beside its place first, so that a run cut short leaves no half library.
cp "$work/libvosk.so" "$to/libvosk.so.new"
chmod 755 "$to/libvosk.so.new"
mv "$to/libvosk.so.new" "$to/libvosk.so"
say "unpacked $to/libvosk.so"

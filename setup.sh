#!/bin/sh
# Brings in what tidecount needs besides Rust: Debian packages and the Vosk speech recognition library.
#
# Installs only what is missing, so a second run does nothing and needs neither root nor a network. With --tests also what only the
# tests need.
# Downloads nothing but those packages and one wheel, which is checked by its hash before it is opened.
set -eu
cd "$(dirname "$0")"

# To build: linker and C compiler, pkg-config, ALSA, SpeexDSP, Speech Dispatcher, the library that reads its headers, and OpenSSL
# (for the encrypted record and for PostgreSQL over a network).
# To speak: eSpeak NG; Speech Dispatcher with its eSpeak module for "--voice system"; Flite as the rehearsed client.
# To test without a sound card: PulseAudio and its small programs.
PACKAGES="build-essential pkg-config libasound2-dev libspeexdsp-dev libspeechd-dev libclang-dev libssl-dev
espeak-ng flite speech-dispatcher speech-dispatcher-espeak-ng
pulseaudio pulseaudio-utils libasound2-plugins"

# Only with --tests: a browser with its driver for the pages, a PostgreSQL server for the clinic's database and the openssl program for
# its certificates.
if [ "${1:-}" = --tests ]; then
    PACKAGES="$PACKAGES chromium chromium-driver postgresql openssl"
fi

VOSK_VERSION=0.3.45
WHEEL_SHA256=25e025093c4399d7278f543568ed8cc5460ac3a4bf48c23673ace1e25d26619f
LIBRARY_SHA256=85c4654de3acdeb99abab86eeb2a6e603927d37089597c0fcc33d8638dc2ccaf
LIBRARY=lib/libvosk.so

say() { printf 'setup: %s\n' "$*"; }
fail() { printf 'setup: %s\n' "$*" >&2; exit 1; }

installed() { [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null || true)" = installed ]; }
has_sha256() { printf '%s  %s\n' "$2" "$1" | sha256sum --check --status 2>/dev/null; }
python_with_pip() {
    for python in python3 /usr/bin/python3; do
        if "$python" -m pip --version >/dev/null 2>&1; then echo "$python"; return 0; fi
    done
    return 1
}

# --- what is missing -------------------------------------------------------------------------------------------------
if [ -n "${VOSK_LIB_DIR:-}" ] && [ -f "$VOSK_LIB_DIR/libvosk.so" ]; then
    need_vosk=no
    say "using the Vosk library in $VOSK_LIB_DIR (VOSK_LIB_DIR)"
elif [ -f "$LIBRARY" ] && has_sha256 "$LIBRARY" "$LIBRARY_SHA256"; then
    need_vosk=no
    say "the Vosk library is there ($LIBRARY)"
else
    need_vosk=yes
fi

if command -v dpkg-query >/dev/null 2>&1; then
    missing=
    for package in $PACKAGES; do
        installed "$package" || missing="$missing $package"
    done
    if [ "$need_vosk" = yes ] && ! python_with_pip >/dev/null; then
        missing="$missing python3-pip"
    fi
    missing=${missing# }
    if [ -z "$missing" ]; then
        say "all Debian packages are there"
    else
        if [ "$(id -u)" = 0 ]; then
            as_root=
        elif command -v sudo >/dev/null 2>&1 && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
            as_root=sudo
        else
            fail "these Debian packages are missing and only the administrator can install them; ask for: apt-get install $missing"
        fi
        say "installing Debian packages: $missing"
        $as_root apt-get update -qq || say "the package lists could not be renewed; trying with those there are"
        # shellcheck disable=SC2086 # a list of names
        $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing ||
            fail "apt-get could not install: $missing; see its message above"
    fi
else
    say "this is no Debian system; make sure that the equivalents of these are installed:" $PACKAGES
fi

# --- the Vosk library ------------------------------------------------------------------------------------------------
if [ "$need_vosk" = yes ]; then
    machine=$(uname -m)
    [ "$(uname -s) $machine" = "Linux x86_64" ] ||
        fail "the hash of the Vosk $VOSK_VERSION wheel is known here for Linux on x86_64 only, and this is $(uname -s) on $machine; put libvosk.so into a folder, name it in VOSK_LIB_DIR and run this again"
    python=$(python_with_pip) || fail "python3 with pip is missing, which fetches the Vosk wheel; on Debian: apt-get install python3-pip"
    work=$(mktemp -d)
    trap 'rm -rf "$work"' EXIT
    trap 'exit 1' INT TERM HUP
    say "fetching the Vosk $VOSK_VERSION wheel (7 MB)"
    echo "vosk==$VOSK_VERSION --hash=sha256:$WHEEL_SHA256" >"$work/wheel.txt"
    "$python" -m pip download --quiet --disable-pip-version-check --no-cache-dir --no-deps --only-binary=:all: \
        --require-hashes --dest "$work" --requirement "$work/wheel.txt" ||
        fail "the Vosk wheel could not be fetched; is there a network? Nothing was changed"
    mkdir -p lib
    "$python" - "$work" <<'PYTHON'
import glob, sys, zipfile
work = sys.argv[1]
(wheel,) = glob.glob(work + "/vosk-*.whl")
with zipfile.ZipFile(wheel) as archive, open(work + "/libvosk.so", "wb") as out:
    out.write(archive.read("vosk/libvosk.so"))
PYTHON
    has_sha256 "$work/libvosk.so" "$LIBRARY_SHA256" || fail "the library in the wheel is not the expected one; nothing was changed"
    # Beside its place first, so that a run cut short leaves no half library.
    cp "$work/libvosk.so" "$LIBRARY.new"
    chmod 755 "$LIBRARY.new"
    mv "$LIBRARY.new" "$LIBRARY"
    say "unpacked $LIBRARY"
fi

command -v cargo >/dev/null 2>&1 || fail "Rust is missing: install a current toolchain (cargo and rustc 1.94 or newer), then build"
say "ready"

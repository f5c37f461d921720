#!/bin/sh
# Brings in what tidecount needs besides Rust: Debian packages and the Vosk speech recognition library.
#
# Installs only what is missing, so a second run does nothing and needs neither root nor a network. With --tests also what only the
# tests need, with --package what makes and tries a Debian package, with --package-arm64 also what builds one for arm64.
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

# Only with --tests: a browser with its driver for the pages, a PostgreSQL server for the clinic's database, the openssl program for its
# certificates, and strace to cut the power after any write.
if [ "${1:-}" = --tests ]; then
    PACKAGES="$PACKAGES chromium chromium-driver postgresql openssl strace"
fi

# Only with --package: Debian's own tools, what sets the run path, and a clean system to try the package in.
case ${1:-} in --package*) PACKAGES="$PACKAGES debhelper dpkg-dev patchelf mmdebstrap" ;; esac
# Only with --package-arm64: the compiler for that processor, the libraries it links with, and what runs the result here.
if [ "${1:-}" = --package-arm64 ]; then
    PACKAGES="$PACKAGES gcc-aarch64-linux-gnu g++-aarch64-linux-gnu qemu-user-static binfmt-support arch-test
libasound2-dev:arm64 libspeexdsp-dev:arm64 libspeechd-dev:arm64 libssl-dev:arm64 libstdc++6:arm64 libatomic1:arm64"
fi

say() { printf 'setup: %s\n' "$*"; }
fail() { printf 'setup: %s\n' "$*" >&2; exit 1; }

# A package that is there for two processors gives two lines.
installed() { dpkg-query -W -f='${db:Status-Status}\n' "$1" 2>/dev/null | grep -qx installed; }
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
else
    need_vosk=yes
fi

if command -v dpkg-query >/dev/null 2>&1; then
    missing=
    for package in $PACKAGES; do
        installed "$package" || missing="$missing $package"
    done
    if [ "$need_vosk" = yes ] && [ ! -f lib/libvosk.so ] && ! python_with_pip >/dev/null; then
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
        case $missing in *:arm64*) $as_root dpkg --add-architecture arm64 ;; esac
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
    [ "$(uname -s)" = Linux ] ||
        fail "the Vosk library is fetched for Linux only, and this is $(uname -s); put libvosk into a folder, name it in VOSK_LIB_DIR and run this again"
    packaging/vosk.sh "$(uname -m)" lib
fi

# --- the other processor's standard library --------------------------------------------------------------------------
if [ "${1:-}" = --package-arm64 ]; then
    if command -v rustup >/dev/null 2>&1; then
        rustup target add aarch64-unknown-linux-gnu || fail "rustup could not fetch Rust's library for arm64; see its message above"
    else
        say "make sure that Rust has its library for aarch64-unknown-linux-gnu"
    fi
fi

command -v cargo >/dev/null 2>&1 || fail "Rust is missing: install a current toolchain (cargo and rustc 1.94 or newer), then build"
say "ready"

#!/bin/sh
# Makes a Debian package: ./package.sh [--arch amd64|arm64] [--profile NAME] [--program FILE] [--out DIR]
#
# For this computer's processor by default; `--arch arm64` on amd64 builds for the other one (./setup.sh --package-arm64 first).
# --profile dev is quick, to try the package itself; such a program still reads its words from this checkout.
# --program takes one that was built before, with its libvosk.so in VOSK_LIB_DIR or lib/.
# Leaves DIR/tidecount_VERSION_ARCH.deb; DIR is target/package by default. Nothing is installed, and no root is needed.
set -eu
cd "$(dirname "$0")"

say() { printf 'package: %s\n' "$*"; }
fail() { printf 'package: %s\n' "$*" >&2; exit 1; }

here=$(dpkg --print-architecture 2>/dev/null) || fail "dpkg is missing: this makes Debian packages, on Debian or Ubuntu"
arch=$here
profile=dist
program=
out=
while [ $# -gt 0 ]; do
    [ $# -ge 2 ] || fail "$1 needs a value; see the first lines of this file"
    case $1 in
    --arch) arch=$2 ;;
    --profile) profile=$2 ;;
    --program) program=$2 ;;
    --out) out=$2 ;;
    *) fail "there is no option $1; see the first lines of this file" ;;
    esac
    shift 2
done
case $arch in
amd64 | arm64) ;;
*) fail "packages are made for amd64 and arm64, not for $arch" ;;
esac
for tool in dh patchelf dpkg-buildpackage; do
    command -v "$tool" >/dev/null || fail "$tool is missing: run ./setup.sh --package"
done
target_dir=${CARGO_TARGET_DIR:-target}
out=${out:-$target_dir/package}
version=$(sed -n '/^\[workspace\.package\]/,/^\[/s/^version = "\(.*\)"/\1/p' Cargo.toml)
[ -n "$version" ] || fail "Cargo.toml names no version"
mkdir -p "$out"
out=$(cd "$out" && pwd)

# --- the program -----------------------------------------------------------------------------------------------------
folder=$profile
[ "$profile" != dev ] || folder=debug
if [ -n "$program" ]; then
    [ -x "$program" ] || fail "$program is no program"
    library=${VOSK_LIB_DIR:-lib}/libvosk.so
elif [ "$arch" = "$here" ]; then
    library=${VOSK_LIB_DIR:-lib}/libvosk.so
    cargo build --locked --package tidecount --bin tidecount --profile "$profile"
    program=$target_dir/$folder/tidecount
else
    [ "$here $arch" = "amd64 arm64" ] || fail "from $here only packages for $here are made"
    command -v aarch64-linux-gnu-gcc >/dev/null || fail "the compiler for arm64 is missing: run ./setup.sh --package-arm64"
    triple=aarch64-unknown-linux-gnu
    packaging/vosk.sh aarch64 "$target_dir/vosk-aarch64"
    VOSK_LIB_DIR=$(cd "$target_dir/vosk-aarch64" && pwd)
    library=$VOSK_LIB_DIR/libvosk.so
    export VOSK_LIB_DIR PKG_CONFIG_ALLOW_CROSS=1
    export PKG_CONFIG_LIBDIR=/usr/lib/aarch64-linux-gnu/pkgconfig:/usr/share/pkgconfig
    export CARGO_TARGET_AARCH64_UNKNOWN_LINUX_GNU_LINKER=aarch64-linux-gnu-gcc
    export BINDGEN_EXTRA_CLANG_ARGS_aarch64_unknown_linux_gnu="--target=aarch64-linux-gnu"
    cargo build --locked --package tidecount --bin tidecount --profile "$profile" --target "$triple"
    program=$target_dir/$triple/$folder/tidecount
fi
[ -f "$library" ] || fail "$library is missing: run ./setup.sh"

# --- the tree --------------------------------------------------------------------------------------------------------
stage=$out/stage-$arch
rm -rf "$stage"
usr=$stage/tree/usr
mkdir -p "$usr/bin" "$usr/lib/tidecount" "$usr/lib/systemd/user" "$usr/share/tidecount/models" "$usr/share/doc/tidecount" \
    "$usr/share/icons/hicolor/scalable/apps"
cp -r packaging/debian "$stage/debian"
install -m 755 "$program" "$usr/bin/tidecount"
# Only where the package puts it: no folder of this computer, and nothing that somebody else may write to.
# shellcheck disable=SC2016 # the loader's word, not the shell's
patchelf --set-rpath '$ORIGIN/../lib/tidecount' "$usr/bin/tidecount"
install -m 644 "$library" "$usr/lib/tidecount/libvosk.so"
install -m 644 packaging/tidecount-attend.service "$usr/lib/systemd/user/"
install -m 644 packaging/tidecount.svg "$usr/share/icons/hicolor/scalable/apps/"
cp -r models/en models/second-ear "$usr/share/tidecount/models/"
cp README.md CHANGELOG.md SECURITY.md THIRD-PARTY.md "$usr/share/doc/tidecount/"
mkdir -p "$usr/share/doc/tidecount/docs" "$usr/share/doc/tidecount/examples"
cp docs/*.md docs/*.png docs/*.csv docs/*.schema.json "$usr/share/doc/tidecount/docs/"
cp demo/*.toml "$usr/share/doc/tidecount/examples/"

# --- man pages, completions, desktop entry: the program writes them from its own definition ---------------------------
run() { LD_LIBRARY_PATH=$usr/lib/tidecount "$usr/bin/tidecount" "$@"; }
if [ "$arch" != "$here" ]; then
    command -v qemu-aarch64-static >/dev/null || fail "qemu-aarch64-static is missing: run ./setup.sh --package-arm64"
    run() { LD_LIBRARY_PATH=$usr/lib/tidecount qemu-aarch64-static "$usr/bin/tidecount" "$@"; }
fi
run __papers "$stage/papers"
install -D -m 644 -t "$usr/share/man/man1" "$stage"/papers/*.1
install -D -m 644 "$stage/papers/tidecount.bash" "$usr/share/bash-completion/completions/tidecount"
install -D -m 644 "$stage/papers/_tidecount" "$usr/share/zsh/vendor-completions/_tidecount"
install -D -m 644 "$stage/papers/tidecount.fish" "$usr/share/fish/vendor_completions.d/tidecount.fish"
install -D -m 644 "$stage/papers/tidecount.desktop" "$usr/share/applications/tidecount.desktop"
find "$stage/tree" -type d -exec chmod 755 {} +
find "$stage/tree" -type f ! -path '*/bin/*' -exec chmod 644 {} +

# --- the package -----------------------------------------------------------------------------------------------------
# The same sources give the same package: the time is that of the last commit, where there is one.
SOURCE_DATE_EPOCH=${SOURCE_DATE_EPOCH:-$(git log -1 --format=%ct 2>/dev/null || date +%s)}
export SOURCE_DATE_EPOCH
{
    printf 'tidecount (%s) unstable; urgency=medium\n\n  * See CHANGELOG.md.\n\n' "$version"
    printf ' -- The tidecount project <tidecount@project.invalid>  %s\n' "$(LC_ALL=C date -u -R -d "@$SOURCE_DATE_EPOCH")"
} >"$stage/debian/changelog"
[ "$profile" != dev ] || export QUICK=yes
say "packing; the log is $out/packing-$arch.log"
(cd "$stage" && dpkg-buildpackage --build=binary --host-arch="$arch" --no-check-builddeps --unsigned-changes) >"$out/packing-$arch.log" 2>&1 ||
    { tail -n 20 "$out/packing-$arch.log" >&2; fail "dpkg-buildpackage failed"; }
say "made $out/tidecount_${version}_$arch.deb"

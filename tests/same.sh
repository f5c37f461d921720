#!/bin/bash
# Shows that the program does what an older one did: builds both, leads the same practices with both and compares every byte that they
# leave: journals, sound, what the simulated client did, the record's exports and the reports.
#
#     tests/same.sh OLD-REVISION
#
# Wording changed on purpose would change how long sentences last, and so every time in a journal. So the newer program is built with
# the older one's sentences and exercises' notes wherever both have the message; what only one of them has stays as it is.
# SAME_BUILDS names a folder in which the builds are kept for the next time.
set -euo pipefail
cd "$(dirname "$0")/.."
old=${1:?name the older revision}
here=$PWD
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
builds=${SAME_BUILDS:-$work}
export CARGO_INCREMENTAL=0 CARGO_PROFILE_RELEASE_DEBUG=false

git worktree list --porcelain >/dev/null
git clone -q --no-hardlinks . "$work/new"
git clone -q --no-hardlinks . "$work/old"
git -C "$work/old" checkout -q "$old"
for side in old new; do cp -r lib "$work/$side/lib"; done

# Old sentences under the new program.
python3 - "$work" <<'PYTHON'
import pathlib, re, sys
work = pathlib.Path(sys.argv[1])
folder = "src/speak/words/en"

def messages(text):
    """Message by key, each with its comment lines left out."""
    found, key = {}, None
    for line in text.splitlines():
        start = re.match(r"(-?[a-z][\w-]*)\s*=", line)
        if start:
            key = start.group(1)
            found[key] = [line]
        elif key and (line.startswith(" ") or not line.strip()):
            found[key].append(line)
        else:
            key = None
    return {key: "\n".join(lines).rstrip() for key, lines in found.items()}

for path in sorted((work / "new" / folder).glob("*.ftl")):
    before = work / "old" / folder / path.name
    if not before.exists():
        continue
    old, new = messages(before.read_text()), messages(path.read_text())
    path.write_text("\n\n".join(old.get(key, text) for key, text in new.items()) + "\n")
for kind in ("src/routine/catalogue", "src/routine/packs", "src/routine/templates"):
    for path in sorted((work / "new" / kind).glob("*.toml")):
        before = work / "old" / kind / path.name
        if before.exists():
            path.write_text(before.read_text())
PYTHON

for side in old new; do
    cargo build --release --locked --quiet --manifest-path "$work/$side/Cargo.toml" --bin tidecount --target-dir "$builds/target-$side"
done

lead() { # SIDE
    local program="$builds/target-$1/release/tidecount" out="$work/out-$1"
    mkdir -p "$out"
    cd "$work/old"
    # One routine and one client for both.
    "$program" demo --out "$out/demo" >"$out/demo.txt" 2>&1
    "$program" practise demo/voice-short.toml --mic "$out/demo/both-sides.wav" --speaker none --fast --data "$out/record" \
        --journal "$out/replay.jsonl" >"$out/replay.txt" 2>&1 || true
    "$program" exercises >"$out/exercises.txt"
    "$program" routine schema >"$out/schema.json"
    "$program" export dictionary >"$out/dictionary.csv"
    for table in practices trials steps events; do
        "$program" export csv --data "$out/demo/record" --table "$table" --source rehearsal >"$out/$table.csv" 2>>"$out/export.txt" || true
    done
    "$program" export json --data "$out/demo/record" --source rehearsal >"$out/practices.jsonl" 2>>"$out/export.txt" || true
    "$program" export fhir --data "$out/demo/record" --source rehearsal >"$out/bundle.json" 2>>"$out/export.txt" || true
    cd "$here"
}
lead old
lead new

# Times of day, days, ids and folders differ between any two runs, of the same program too.
plain() {
    sed -E "s/[0-9]{4}-[0-9]{2}-[0-9]{2}[T ][0-9:.]+[^\",]*/TIME/g; s/[0-9]{4}-[0-9]{2}-[0-9]{2}/DAY/g; s/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]*/ID/g; s/\b[0-9a-f]{32,}\b/HASH/g; s#$work/out-(old|new)#OUT#g" "$1"
}
differing=0
compared=0
while IFS= read -r file; do
    compared=$((compared + 1))
    case $file in
        *.sqlite* | *.lock) continue ;;
        *.wav) cmp -s "$work/out-old/$file" "$work/out-new/$file" ;;
        *) cmp -s <(plain "$work/out-old/$file") <(plain "$work/out-new/$file") ;;
    esac || { echo "differs: $file"; differing=$((differing + 1)); }
done < <(cd "$work" && { cd out-old && find . -type f; cd ../out-new && find . -type f; } | sort -u)
echo "$compared files compared, $differing differ"
[ "$differing" = 0 ]

#!/bin/sh
# Learns the second ear and compares ways of weighing it with a recogniser: one command for a new recogniser.
# usage: learn.sh WORK_DIR PROGRAM RECOGNISERS      RECOGNISERS may hold {fold}. WORK_DIR holds sound.pack (sound.py), start.npz (net.py) and
# lists/ (../judge.py lists); DATA names the folder of recordings, SECONDS_DRAWN how long windows are drawn (default 2400).
set -eu
work=$1 program=$2 recognisers=$3 here=$(cd "$(dirname "$0")" && pwd)
[ -d "$work/embeddings" ] || python3 "$here/embed.py" "$work/sound.pack" "$work/start.npz" "$work/embeddings" 1 "${SECONDS_DRAWN:-2400}"
[ -d "$work/ears" ] || python3 "$here/head.py" "$work/sound.pack" "$work/start.npz" "$work/embeddings" "$work/ears"
mkdir -p "$work/traces"
rm -f "$work/traces"/* "$work/judged.jsonl"
JUDGE_TRACES=$work/traces python3 "$here/../judge.py" run "$program" "$DATA" "$work/lists" "$work/judged.jsonl" 2 quiet,10db,talk "ears=$recognisers+$work/ears/{fold}"
python3 "$here/../judge.py" table "$work/judged.jsonl"
python3 "$here/fuse.py" "$work/judged.jsonl" "$work/traces" ears quiet,10db,talk

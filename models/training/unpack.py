"""Decode a pack into one int16 array audio.npy and items.json.

An item is [kind, source, speaker, start, length, target]; target is a list of words, each a list of pronunciations (pdf lists);
for vowels it is the letter. Kinds: speech, vowel, empty (coughs, breath), noise, own (what our own voice leaves), unlabelled,
dev (held out, for watching).

Kind crowd: four to eight readers at once, made here, as babble.

usage: unpack.py PACK_DIR OUT_DIR"""
import gzip
import io
import json
import os
import shutil
import sys
from concurrent.futures import ProcessPoolExecutor

import numpy as np
import soundfile as sf

GAP = 800      # zeros between clips, samples
CROWDS, CROWD_S = 60, 24      # tracks of babble and their length


def decode(data):
    x, rate = sf.read(io.BytesIO(data), dtype="int16")
    assert rate == 16000, rate
    return x


def unpack(pack):
    entries, blob = json.load(gzip.open(f"{pack}/index.json.gz", "rt")), open(f"{pack}/blob.bin", "rb").read()
    parts, at = [], 0
    for e in entries:
        parts.append(blob[at:at + e[0]])
        at += e[0]
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        for (_, kind, source, speaker, text, aim), x in zip(entries, pool.map(decode, parts, chunksize=20)):
            yield kind, source, speaker, text if kind == "vowel" else aim, x


def with_crowds(clips):
    """The clips, and then tracks of babble made of the sentences of read speech that are trained on."""
    readers = {}
    for clip in clips:
        if clip[:2] == ("speech", "librispeech"):
            readers.setdefault(clip[2], []).append(clip[4])
        yield clip
    rng = np.random.default_rng(5)
    for n in range(CROWDS if len(readers) >= 8 else 0):
        sound = np.zeros(CROWD_S * 16000)
        for reader in rng.choice(sorted(readers), (4, 4, 6, 8)[n % 4], replace=False):
            voice = np.concatenate([readers[reader][i] for i in rng.integers(len(readers[reader]), size=CROWD_S)])[8000:][:len(sound)].astype(float)
            sound[:len(voice)] += voice / voice.std() * rng.uniform(.6, 1)
        yield "crowd", "librispeech", "", [], np.rint(sound / np.abs(sound).max() * 20000).astype(np.int16)


def write(clips, out):
    os.makedirs(out, exist_ok=True)
    items, sound, at, hours = [], [], 0, {}
    for kind, source, speaker, aim, x in clips:
        items.append([kind, source, speaker, at, len(x), aim])
        sound += [x, np.zeros(GAP, np.int16)]
        at += len(x) + GAP
        n = hours.setdefault(f"{kind} {source}", [0, 0.0])
        n[0] += 1
        n[1] += len(x) / 16000 / 3600
    np.save(f"{out}/audio.npy", np.concatenate(sound))
    json.dump(items, open(f"{out}/items.json", "w"))
    print({k: (n, round(h, 2)) for k, (n, h) in hours.items()}, flush=True)


if __name__ == "__main__":
    write(with_crowds(unpack(sys.argv[1])), sys.argv[2])
    if os.path.exists(f"{sys.argv[1]}/folds.json"):
        shutil.copy(f"{sys.argv[1]}/folds.json", sys.argv[2])

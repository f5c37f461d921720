"""The second ear's training sound: what was said, by whom, in one file of Opus clips, and its decoding.

usage: sound.py PACK_DIR SPANS.json OUT.pack READER_CLIPS

PACK_DIR is made by ../pack.py, SPANS.json by ../spans.py. Held-out voices and readers are left out, and what is said over our own voice:
the second ear is not asked then. A clip is {source, speaker, fold, text, length, spans}: `fold` is that of its speaker, -1 where no test has them;
`text` "" is speech or sound that is nobody's command; `spans` of a reader are [from, to, wording] in samples."""
import io
import json
import os
import sys
import zipfile
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import soundfile as sf

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))

RATE, GAP = 16000, 800
HELD_VOICES = ("af_nova", "am_puck", "bf_lily", "bm_fable", "slt")
# Words of people that are nobody's command here; each is a class of its own, so that what sounds like a command has its own name.
NEAR = ("go on off up down left right zero one two three four five six seven eight nine ten back bed bird cat dog happy house tree wow "
        "how long repeat thanks please not yet now wait").split()


def wordings():
    """Every wording of a command, once."""
    import phrases
    return list(dict.fromkeys(phrases.wordings(classes=True)))


def classes():
    """What the head tells apart; the last is anything else."""
    import phrases
    found = wordings()
    return found + phrases.near_misses() + [w for w in NEAR if w not in found] + ["(other)"]


def decode(data):
    return sf.read(io.BytesIO(data), dtype="int16")[0]


def main(pack, spans_file, out, reader_clips):
    import gzip
    from phones import target
    known, plan = set(classes()), json.load(open(f"{pack}/folds.json"))
    aims = {json.dumps(target(w)): w for w in wordings() if target(w)}
    entries, blob = json.load(gzip.open(f"{pack}/index.json.gz", "rt")), open(f"{pack}/blob.bin", "rb").read()
    clips, data = [], []

    def add(source, speaker, text, piece, length, spans=()):
        clips.append({"source": source, "speaker": speaker, "fold": plan.get(speaker, -1), "text": text if text in known else "",
                      "length": length, "spans": list(spans)})
        data.append(piece)
    pieces, at = [], 0
    for e in entries:
        pieces.append(blob[at:at + e[0]])
        at += e[0]
    with ThreadPoolExecutor(2) as pool:
        lengths = list(pool.map(lambda piece: len(decode(piece)), pieces))
    begins = np.concatenate([[0], np.cumsum(np.array(lengths) + GAP)])
    wanted = {}
    for start, length, aim, _ in json.load(open(spans_file)):
        text = aims.get(json.dumps(aim))
        clip = int(np.searchsorted(begins, start, "right")) - 1
        if text and clip < len(entries) and entries[clip][2] == "librispeech":
            wanted.setdefault(clip, set()).add((start - int(begins[clip]), start - int(begins[clip]) + length, text))
    readers = [i for i, e in enumerate(entries) if e[1:3] == ["speech", "librispeech"]]
    taken = set(readers[::max(1, len(readers) // int(reader_clips))]) | set(wanted)
    for i, (e, piece, n) in enumerate(zip(entries, pieces, lengths)):
        _, kind, source, speaker, text, _ = e
        if source == "librispeech":
            if i in taken and kind == "speech":
                add("reader", speaker, "", piece, n, sorted(wanted.get(i, ())))
        elif source == "coswara":
            add("body" if kind in ("vowel", "empty") else "counting", speaker, "", piece, n)
        elif kind in ("noise", "empty"):
            add("noise", "", "", piece, n)
        elif kind == "speech" and source != "over" and speaker not in HELD_VOICES:
            add(source, speaker, text.lower(), piece, n)
    with zipfile.ZipFile(out, "w") as z:
        z.writestr("clips.json", json.dumps({"classes": classes(), "clips": clips, "bytes": [len(d) for d in data]}))
        z.writestr("sound", b"".join(data))
    count = {}
    for c in clips:
        n = count.setdefault(c["source"], [0, 0, 0.0])
        n[0] += 1
        n[1] += bool(c["text"]) + len(c["spans"])
        n[2] += c["length"] / RATE / 3600
    print({k: (n, t, round(h, 2)) for k, (n, t, h) in count.items()}, len(classes()), "classes", round(os.path.getsize(out) / 2 ** 20, 1), "MiB")


def shares(path):
    """The shares of a batch that the pack asks for; None for those of worse.py."""
    with zipfile.ZipFile(path) as z:
        return json.loads(z.read("clips.json")).get("shares")


def load(path):
    """-> classes, clips (with `begin` in the sound), sound as one int16 array. Decoded once, and kept beside the pack."""
    kept = path + ".npy"
    with zipfile.ZipFile(path) as z:
        index = json.loads(z.read("clips.json"))
        if not os.path.exists(kept):
            pieces, at, blob = [], 0, z.read("sound")
            for n in index["bytes"]:
                pieces.append(blob[at:at + n])
                at += n
            with ThreadPoolExecutor(os.cpu_count()) as pool:
                sounds = list(pool.map(decode, pieces))
            np.save(path + ".part.npy", np.concatenate(sounds))
            json.dump([len(x) for x in sounds], open(path + ".lengths", "w"))
            os.replace(path + ".part.npy", kept)
    at = 0
    for clip, n in zip(index["clips"], json.load(open(path + ".lengths"))):
        clip["begin"], clip["length"] = at, n
        at += n
    return index["classes"], index["clips"], np.load(kept)


if __name__ == "__main__":
    main(*sys.argv[1:])

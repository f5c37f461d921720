"""Collect the training sound into one folder that fits a small upload: blob.bin (Opus files end to end) and index.json.gz.

Recordings that are Opus already are taken as they are; the rest is made mono, 16 kHz, and encoded. What is left out, and why, is
in README.md: the held-out readers go only into kind "dev"; share-alike sets are not taken.

A folder of `cargo bench --bench own_voice -- left=…` is packed as noise of kind "own" where it has no list.tsv, and as speech of source
"over" where it has one.

usage: pack.py SETS_DIR PEOPLE_DIR|- COSWARA_DIR ESC_DIR CUSTOM_DIR FORMANT_DIR NEURAL_DIR OUT_DIR [LEFT_DIR...]"""
import csv
import gzip
import io
import json
import math
import os
import sys

import numpy as np
import soundfile as sf
from scipy.signal import resample_poly

import folds
from phones import target
from synth_neural import HELD_OUT

HELD_READERS = ("19", "5789", "2136", "3242")
COUNTED = os.path.join(os.path.dirname(os.path.abspath(__file__)), "counted.tsv")
COUNTING = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty"
MAX_S, MAX_NOISE_S, MAX_SAME_TEXT = 16.0, 60.0, 60
# A noise is brought to a level as a whole, and what our voice leaves is loud until the canceller has learnt the room.
OWN_S = 8.0
CUSTOM = {"archie": "archie", "dracarys": "dracarys", "fenrir": "fenrir", "goodnight": "good night", "hadouken": "hadouken",
          "hey_archie": "hey archie", "hey_fenrir": "hey fenrir", "how_are_you": "how are you", "joke": "joke", "trick_or_treat": "trick or treat"}


def load(path):
    """Mono, 16 kHz."""
    x, rate = sf.read(path, dtype="float32", always_2d=True)
    x = x.mean(1)
    g = math.gcd(16000, rate)
    return x if rate == 16000 else resample_poly(x, 16000 // g, rate // g).astype(np.float32)


def opus(x):
    out = io.BytesIO()
    sf.write(out, np.clip(x, -1, 1), 16000, format="OGG", subtype="OPUS")
    return out.getvalue()


class Pack:
    """Gathers clips: entries are [bytes, kind, source, speaker, text, target]."""

    def __init__(self):
        self.entries, self.blob = [], []

    def add(self, data, kind, source, speaker, text, aim):
        self.blob.append(data)
        self.entries.append([len(data), kind, source, speaker, text, aim])

    def speech(self, data, source, speaker, text, kind="speech"):
        aim = target(text)
        if aim is None:
            print("no pronunciation:", source, text)
        else:
            self.add(data, kind, source, speaker, text, aim)

    def write(self, out):
        os.makedirs(out, exist_ok=True)
        open(f"{out}/blob.bin", "wb").write(b"".join(self.blob))
        json.dump(self.entries, gzip.open(f"{out}/index.json.gz", "wt"))
        for source in sorted({(e[1], e[2]) for e in self.entries}):
            chosen = [e for e in self.entries if (e[1], e[2]) == source]
            print(*source, len(chosen), "clips,", sum(e[0] for e in chosen) // 1000, "kB")


def recorded_sets(pack, folder, index):
    """LibriSpeech train-clean-5, AN4 train, the Speech Commands sample, community wake words."""
    same, dev = {}, {}
    for r in csv.DictReader(open(index), delimiter="\t"):
        name, speaker, text = r["set"], r["speaker"], r["text"]
        if name in ("fsdd", "asterisk_prompts_en") or float(r["duration_s"]) > MAX_S + .5:
            continue
        kind, source = "speech", name.split("_")[0]
        if source == "speech":
            source = "words"
            if "noise" in text:
                continue
        if source == "librispeech" and speaker in HELD_READERS:
            dev[speaker] = dev.get(speaker, 0) + 1
            if dev[speaker] % 8 or dev[speaker] > 64:
                continue
            kind = "dev"
        if source == "mycroft":
            same[text.lower()] = same.get(text.lower(), 0) + 1
            if same[text.lower()] > MAX_SAME_TEXT or any(w in text.lower() for w in ("silence", "noise")):
                continue
        path = f"{folder}/{r['file']}"
        pack.speech(open(path, "rb").read() if path.endswith(".opus") else opus(load(path)), source, speaker, text.replace("_", " "), kind)


def words_and_spelling(pack, folder):
    """Speech Commands' test part (people saying single words, commands and others) and AN4's. They were tests until run 9; settings are
    now chosen in folds by speaker (folds.py), whose plan is written too."""
    speakers = []
    for r in csv.DictReader(open(f"{folder}/index.tsv"), delimiter="\t", quoting=csv.QUOTE_NONE):
        source = {"speech_commands_test_v002": "words", "an4": "an4"}.get(r["set"])
        if source and r["label"] != "(noise)" and os.path.exists(f"{folder}/{r['file']}"):
            pack.speech(opus(load(f"{folder}/{r['file']}")), source, r["speaker"], r["label"].lower())
            speakers.append(r["speaker"])
    return folds.assign(speakers)


def coswara(pack, folder):
    """Speakers that are in no test: counting, held vowels, coughs, breath. Of the counting those recordings that COUNTED names, which says
    how far each goes; the others are cut off, or have other words in them."""
    far = {name: int(n) for name, n in csv.reader(open(COUNTED), delimiter="\t")}
    for name in sorted(os.listdir(folder)):
        speaker, what = name.rsplit(".", 1)[0].split("_", 1)
        x = load(f"{folder}/{name}")
        if len(x) < 8000 or np.abs(x).max() < 1e-3:
            continue
        if name in far:
            pack.speech(opus(x), "coswara", speaker, " ".join(COUNTING.split()[:far[name]]))
        elif what.startswith("counting"):
            pack.add(opus(x[:int(MAX_S * 16000)]), "unlabelled", "coswara", speaker, what, [])
        elif what.startswith("vowel"):
            pack.add(opus(x[:int(MAX_S * 16000)]), "vowel", "coswara", speaker, what[-1], [])
        elif what.startswith(("cough", "breathing")):
            pack.add(opus(x[:int(MAX_S * 16000)]), "empty", "coswara", speaker, what, [])


def listed(pack, folder, source):
    """The clips of a folder with list.tsv: name, speaker, text."""
    for line in open(f"{folder}/list.tsv"):
        name, speaker, text = line.rstrip("\n").split("\t")
        if os.path.exists(f"{folder}/{name}") and os.path.getsize(f"{folder}/{name}") > 2000:
            pack.speech(opus(load(f"{folder}/{name}")), source, speaker, text)


def neural(pack, folder):
    """Clips of synth_neural.py; voices held out become "dev"."""
    for name in sorted(f for f in os.listdir(folder) if f.endswith(".npy")):
        sound = np.load(f"{folder}/{name}", mmap_mode="r")
        for clip in json.load(open(f"{folder}/{name[:-4]}.json")):
            x = sound[clip["start"]:clip["start"] + clip["length"]].astype(np.float32) / 32768
            pack.speech(opus(x), "neural", clip["speaker"], clip["text"], "dev" if clip["speaker"] in HELD_OUT else "speech")


def main(sets, people, coswara_dir, esc, custom, formant, neural_dir, out, *left):
    pack = Pack()
    recorded_sets(pack, sets, os.path.join(sets, "index.tsv"))
    plan = words_and_spelling(pack, people) if people != "-" else {}
    coswara(pack, coswara_dir)
    for name in sorted(os.listdir(custom)):
        x = load(f"{custom}/{name}")
        pack.speech(opus(x), "custom", "", CUSTOM[name.split("__")[0]])
    listed(pack, formant, "formant")
    neural(pack, neural_dir)
    for folder in left:
        if os.path.exists(f"{folder}/list.tsv"):
            listed(pack, folder, "over")
        else:
            for name in sorted(os.listdir(folder)):
                x = load(f"{folder}/{name}")
                for at in range(0, len(x) - 16000, int(OWN_S * 16000)):
                    pack.add(opus(x[at:at + int(OWN_S * 16000)]), "own", "own", "", name, [])
    for name in sorted(os.listdir(esc)):
        kind = "empty" if "sneeze" in name else "noise"
        pack.add(opus(load(f"{esc}/{name}")[:int(MAX_NOISE_S * 16000)]), kind, "esc10", "", name, [])
    pack.write(out)
    json.dump(plan, open(f"{out}/folds.json", "w"))


if __name__ == "__main__":
    main(*sys.argv[1:])

"""Collect the test sound: tests.npy (int16, 16 kHz), tests.json, rooms.npz. None of it is trained on.

Odd and even count the files of one set and label in the order of the index, as benches/command_ear/people.rs does.

usage: collect_tests.py DATA_DIR READERS_DIR NEURAL_DIR|- OUT_DIR

DATA_DIR: the recordings with index.tsv; READERS_DIR: unpacked training tars with index.tsv (only the held-out readers are taken);
NEURAL_DIR: clips of synth_neural.py (only the held-out voices)."""
import csv
import glob
import json
import os
import subprocess
import sys
import tempfile

import numpy as np

import phrases
from evaluate import STATE
from pack import HELD_READERS, load
from synth_neural import HELD_OUT

COSWARA = {"/a/ sustained": "vowel", "/e/ sustained": "vowel", "/o/ sustained": "vowel", "breathing deep": "breath",
           "cough heavy": "cough", "cough shallow": "cough"}


class Tests:
    def __init__(self):
        self.index, self.sound, self.at, self.seen = [], [], 0, {}

    def add(self, name, label, x):
        """x: float, -1 to 1."""
        number = self.seen[name, label] = self.seen.get((name, label), 0) + 1
        x = np.rint(np.clip(x, -1, 1) * 32767).astype(np.int16)
        self.index.append([name, label, self.at, len(x), "odd" if number % 2 else "even"])
        self.sound.append(x)
        self.at += len(x)


def recordings(tests, data):
    for r in csv.DictReader(open(f"{data}/index.tsv"), delimiter="\t"):
        path, label, source = f"{data}/{r['file']}", r["label"].lower(), r["set"]
        if not os.path.exists(path):
            continue
        if source == "speech_commands_test_v002":
            name = "people" if label in ("yes", "no", "stop") else "goon" if label in ("go", "on") else "clicks" if label == "(noise)" else "other"
        elif source == "an4":
            name = "an4" if label in STATE else "spelling"
        elif source == "coswara_subset":
            name = COSWARA.get(label, "counting")
        elif source == "picovoice_wakewords":
            name = "wake"
        else:
            name = "babble" if "babble" in r["file"] else "noise"
        tests.add(name, label, load(path))
    for path in sorted(glob.glob(f"{data}/noise/babble/*")):
        tests.add("babble", os.path.basename(path).rsplit("_", 1)[0], load(path))


def readers(tests, folder):
    for r in csv.DictReader(open(f"{folder}/index.tsv"), delimiter="\t"):
        if r["set"].startswith("librispeech") and r["speaker"] in HELD_READERS:
            tests.add("readers", r["speaker"], load(f"{folder}/{r['file']}"))


def neural(tests, folder):
    for path in sorted(glob.glob(f"{folder}/*.json")):
        sound = np.load(path[:-4] + "npy")
        for clip in json.load(open(path)):
            if clip["speaker"] in HELD_OUT and clip["text"] in phrases.commands():
                tests.add("neural", clip["text"], sound[clip["start"]:clip["start"] + clip["length"]] / 32768)


def slt(tests):
    with tempfile.TemporaryDirectory() as tmp:
        for text in phrases.commands():
            subprocess.run(["flite", "-voice", "slt", "-t", text, "-o", f"{tmp}/x.wav"], check=True)
            tests.add("slt", text, load(f"{tmp}/x.wav"))


def main(data, reader_folder, neural_folder, out):
    os.makedirs(out, exist_ok=True)
    tests = Tests()
    recordings(tests, data)
    readers(tests, reader_folder)
    if neural_folder != "-":
        neural(tests, neural_folder)
    slt(tests)
    np.save(f"{out}/tests.npy", np.concatenate(tests.sound))
    json.dump(tests.index, open(f"{out}/tests.json", "w"))
    rooms = sorted(p for p in glob.glob(f"{data}/rooms/*.wav") if "0.4m" not in p)
    np.savez(f"{out}/rooms.npz", **{os.path.basename(p): load(p) for p in rooms})
    total = {}
    for name, _, _, length, _ in tests.index:
        n = total.setdefault(name, [0, 0.0])
        n[0] += 1
        n[1] += length / 16000 / 60
    print({k: (n, f"{m:.1f} min") for k, (n, m) in total.items()})


if __name__ == "__main__":
    main(*sys.argv[1:5])

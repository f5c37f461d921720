"""The clips that `cargo bench --bench own_voice -- left=FOLDER said=LIST` says over our own voice: lines of path, speaker, text. People's
single words (Speech Commands' test part and AN4's, each once), all of a folder of synth_formant.py, and of synth_neural.py what a person
in trouble says, written as WAV files into WORK_DIR.

usage: over_list.py PEOPLE_DIR FORMANT_DIR NEURAL_DIR WORK_DIR LIST.tsv"""
import csv
import json
import os
import random
import sys

import numpy as np
import soundfile as sf

import phrases
from synth_neural import HELD_OUT


def people(folder):
    for r in csv.DictReader(open(f"{folder}/index.tsv"), delimiter="\t", quoting=csv.QUOTE_NONE):
        if r["set"] in ("speech_commands_test_v002", "an4") and r["label"] != "(noise)" and " " not in r["label"]:
            path = f"{folder}/{r['file']}"
            if os.path.exists(path):
                yield path, r["speaker"], r["label"].lower()


def formant(folder):
    for line in open(f"{folder}/list.tsv"):
        name, speaker, text = line.rstrip("\n").split("\t")
        yield f"{folder}/{name}", speaker, text


def neural(folder, work):
    wanted = set(phrases.safety()) | set(phrases.harmless()) | set(phrases.CORE)
    for name in sorted(f for f in os.listdir(folder) if f.endswith(".npy")):
        sound = np.load(f"{folder}/{name}", mmap_mode="r")
        for n, clip in enumerate(json.load(open(f"{folder}/{name[:-4]}.json"))):
            if clip["text"] in wanted and clip["speaker"] not in HELD_OUT:
                path = f"{work}/{name[:-4]}_{n:05d}.wav"
                sf.write(path, sound[clip["start"]:clip["start"] + clip["length"]], 16000)
                yield path, clip["speaker"], clip["text"]


def main(people_dir, formant_dir, neural_dir, work, out):
    os.makedirs(work, exist_ok=True)
    clips = [*people(people_dir), *formant(formant_dir), *neural(neural_dir, work)]
    random.Random(7).shuffle(clips)
    with open(out, "w") as file:
        file.writelines("\t".join(os.path.abspath(part) if n == 0 else part for n, part in enumerate(clip)) + "\n" for clip in clips)
    print(len(clips), "clips")


if __name__ == "__main__":
    main(*sys.argv[1:])

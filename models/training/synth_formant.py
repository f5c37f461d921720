"""Phrases by formant and diphone synthesisers (espeak-ng with its voice variants, flite). flite's slt is held out for tests.

usage: synth_formant.py OUT_DIR COUNT TRANSCRIPTS.txt"""
import os
import random
import subprocess
import sys

import phrases

LANGUAGES = ["en-us", "en-gb", "en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029"]
VARIANTS = ["", *(f"+m{i}" for i in range(1, 9)), *(f"+f{i}" for i in range(1, 6)), "+croak", "+whisper", "+whisperf", "+klatt",
            "+klatt2", "+klatt3", "+klatt4"]
FLITE = ["awb", "kal16", "rms"]


def say(text, rnd, path):
    """Writes a WAV file; gives the voice's name."""
    if rnd.random() < .2:
        voice = rnd.choice(FLITE)
        command = ["flite", "-voice", voice, "--setf", f"duration_stretch={rnd.uniform(.85, 1.5):.2f}", "-t", text, "-o", path]
    else:
        voice = rnd.choice(LANGUAGES) + rnd.choice(VARIANTS)
        command = ["espeak-ng", "-v", voice, "-s", str(rnd.randint(95, 175)), "-p", str(rnd.randint(20, 75)), "-w", path, text]
    subprocess.run(command, check=True, stderr=subprocess.DEVNULL)
    return voice


def main(out, count, transcripts):
    os.makedirs(out, exist_ok=True)
    rnd = random.Random(3)
    texts = phrases.draw(count, [line.strip() for line in open(transcripts)], seed=11)
    with open(f"{out}/list.tsv", "w") as index:
        for i, text in enumerate(texts):
            name = f"{i:05d}.wav"
            voice = say(text, rnd, f"{out}/{name}")
            index.write(f"{name}\t{voice}\t{text}\n")


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), sys.argv[3])

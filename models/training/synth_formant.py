"""Phrases by formant and diphone synthesisers (espeak-ng with its voice variants, flite). flite's slt is held out for tests; of
another language than English (espeak-ng alone) the voices HELD_OUT.

usage: synth_formant.py OUT_DIR COUNT TRANSCRIPTS.txt [over]     over: what is to be said over our own voice
       synth_formant.py OUT_DIR COUNT language=de|es [held-out]"""
import os
import random
import subprocess
import sys

import phrases

LANGUAGES = ["en-us", "en-gb", "en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029"]
VARIANTS = ["", *(f"+m{i}" for i in range(1, 9)), *(f"+f{i}" for i in range(1, 6)), "+croak", "+whisper", "+whisperf", "+klatt",
            "+klatt2", "+klatt3", "+klatt4"]
OTHER = {"de": ["de"], "es": ["es", "es-419"]}
HELD_OUT = ("+m3", "+f2", "+klatt4")
FLITE = ["awb", "kal16", "rms"]


def espeak(text, voice, rnd, path):
    command = ["espeak-ng", "-v", voice, "-s", str(rnd.randint(95, 175)), "-p", str(rnd.randint(20, 75)), "-w", path, text]
    subprocess.run(command, check=True, stderr=subprocess.DEVNULL)
    return voice


def say(text, rnd, path):
    """Writes a WAV file; gives the voice's name."""
    if rnd.random() >= .2:
        return espeak(text, rnd.choice(LANGUAGES) + rnd.choice(VARIANTS), rnd, path)
    voice = rnd.choice(FLITE)
    command = ["flite", "-voice", voice, "--setf", f"duration_stretch={rnd.uniform(.85, 1.5):.2f}", "-t", text, "-o", path]
    subprocess.run(command, check=True, stderr=subprocess.DEVNULL)
    return voice


def english(count, transcripts, over):
    """(text, how to say it) of each clip."""
    lines = [line.strip() for line in open(transcripts)]
    drawn = phrases.draw(count, lines, seed=12, shares=phrases.OVER_SHARES) if over else phrases.draw(count, lines, seed=11)
    return [(text, say) for text in drawn]


def other(count, language, held_out):
    """The same in another language; by the voices held out every phrase that is listened for six times, and what is not, `count` in all."""
    variants = HELD_OUT if held_out else [v for v in VARIANTS if v not in HELD_OUT]

    def of_language(text, rnd, path):
        return espeak(text, rnd.choice(OTHER[language]) + rnd.choice(variants), rnd, path)
    if held_out:
        listened, near, words = phrases.of_language(language)
        texts = (6 * listened + near + words + phrases.said_by_us(language))[:count]
    else:
        texts = phrases.draw_of_language(language, count, seed=11)
    return [(text, of_language) for text in texts]


def main(out, count, what, which=None):
    os.makedirs(out, exist_ok=True)
    rnd = random.Random(4 if which else 3)
    language = what.removeprefix("language=") if what.startswith("language=") else None
    texts = other(int(count), language, which == "held-out") if language else english(int(count), what, which == "over")
    with open(f"{out}/list.tsv", "w") as index:
        for i, (text, spoken) in enumerate(texts):
            name = f"{i:05d}.wav"
            voice = spoken(text, rnd, f"{out}/{name}")
            index.write(f"{name}\t{voice}\t{text}\n")


if __name__ == "__main__":
    main(*sys.argv[1:])

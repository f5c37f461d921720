"""Draws training windows, makes them worse and keeps their embeddings, 2,000 to a file.

usage: embed.py SOUND.pack START.npz OUT_DIR SEED SECONDS [WINDOWS]"""
import os
import sys
import time

import numpy as np
import torch

import net
import sound
import worse


def main(pack, start, out, seed, seconds, windows="1000000"):
    torch.set_num_threads(1)
    os.makedirs(out, exist_ok=True)
    classes, clips, samples = sound.load(pack)
    weights = np.load(start)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    embedding = net.Embedding(weights).eval().to(device)
    draw = worse.Worse(worse.kinds(classes, clips, samples), samples, device, net.Mel(weights).to(device), int(seed), sound.shares(pack))
    begun, files = time.time(), 0
    while time.time() - begun < float(seconds) and files * 2000 < int(windows):
        rows = []
        with torch.no_grad():
            for _ in range(20):
                mel, label, fold = draw.batch(100)
                rows.append((embedding(mel).half().cpu().numpy(), label.cpu().numpy().astype(np.int16), fold.cpu().numpy().astype(np.int8)))
        np.savez(f"{out}/{seed}_{files}.npz", **{k: np.concatenate(v) for k, v in zip("eyf", zip(*rows))})
        files += 1
        print(files * 2000, "windows", round(time.time() - begun), "s", flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:7])

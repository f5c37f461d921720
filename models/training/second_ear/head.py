"""Trains the head on kept embeddings and writes the second ear as one network: for each fold without its speakers, and once with everybody.

usage: head.py SOUND.pack START.npz EMBEDDINGS_DIR OUT_DIR [STEPS]     writes OUT_DIR/{0..4,all}/network.onnx and classes.txt"""
import glob
import json
import os
import sys
import zipfile

import numpy as np
import torch
import torch.nn.functional as F

import net

BATCH, RATE, NOISE, SMOOTHING, DECAY = 512, 2e-3, .5, .03, .02


def train(e, y, keep, classes, steps, seed=1):
    """A head from the rows `keep` of the embeddings; the average of its weights over the last few hundred steps."""
    torch.manual_seed(seed)
    draw, head = np.random.default_rng(seed), net.Head(classes).to(e.device)
    adam = torch.optim.AdamW(head.parameters(), lr=RATE, weight_decay=DECAY)
    mean = {k: v.clone() for k, v in head.state_dict().items()}
    for step in range(steps):
        for group in adam.param_groups:
            group["lr"] = RATE * min(1, step / 100 + .01) * .5 * (1 + np.cos(np.pi * step / steps))
        i = torch.tensor(draw.choice(keep, BATCH), device=e.device)
        x = e[i].float()
        loss = F.cross_entropy(head(x + torch.randn_like(x) * NOISE), y[i], label_smoothing=SMOOTHING)
        adam.zero_grad()
        loss.backward()
        adam.step()
        share = min(.995, step / (step + 10))
        for k, v in head.state_dict().items():
            if v.dtype.is_floating_point:
                mean[k].mul_(share).add_(v.detach(), alpha=1 - share)
            else:
                mean[k].copy_(v)
    head.load_state_dict(mean)
    return head.eval().cpu()


def main(pack, start, embeddings, out, steps="1500"):
    torch.set_num_threads(1)
    with zipfile.ZipFile(pack) as z:
        classes = json.loads(z.read("clips.json"))["classes"]
    parts = [np.load(f) for f in sorted(glob.glob(f"{embeddings}/*.npz"))]
    e, y, fold = torch.tensor(np.concatenate([p["e"] for p in parts])), torch.tensor(np.concatenate([p["y"] for p in parts]).astype(np.int64)), np.concatenate([p["f"] for p in parts])
    if torch.cuda.is_available():
        e, y = e.cuda(), y.cuda()
    for k in (-1, *sorted(set(fold.tolist()) - {-1})):
        head = train(e, y, np.nonzero((fold != k) | (k < 0))[0], len(classes), int(steps))
        left_out = np.nonzero((fold == k) & (k >= 0))[0]
        if len(left_out):
            with torch.no_grad():
                best = torch.cat([head(e[left_out[a:a + 4096]].float().cpu()) for a in range(0, len(left_out), 4096)]).argmax(1)
            print(f"fold {k}: {(best == y[left_out].cpu()).float().mean():.3f} of {len(left_out)} windows of its speakers right", flush=True)
        ear = net.Ear(np.load(start), len(classes))
        ear.head = head
        folder = f"{out}/{k if k >= 0 else 'all'}"
        os.makedirs(folder, exist_ok=True)
        net.export(ear, f"{folder}/network.onnx")
        with open(f"{folder}/classes.txt", "w") as f:
            f.write("".join(c + "\n" for c in classes))


if __name__ == "__main__":
    main(*sys.argv[1:])

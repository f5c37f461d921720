"""Train the phone network with CTC; sound and augmentation on the GPU, example plans by other processes.

usage: train.py --data DIR --out DIR --seconds N [--init net.pt | --warm final.mdl] [--spans spans.json] [--lr 1e-3] ..."""
import argparse
import json
import math
import os
import time

import numpy as np
import torch
import torch.multiprocessing as mp

import ctc
import examples
import read_model
from augment import Augment
from mfcc import Mfcc
from net import Net, grow


def arguments():
    p = argparse.ArgumentParser()
    p.add_argument("--data", required=True, help="folder with audio.npy and items.json (unpack.py)")
    p.add_argument("--out", required=True)
    p.add_argument("--seconds", type=float, required=True, help="wall-clock time to train")
    p.add_argument("--init", help="weights to go on from; those of a smaller net are grown")
    p.add_argument("--warm", help="final.mdl to go on from")
    p.add_argument("--spans", help="spans.json of spans.py")
    p.add_argument("--lr", type=float, default=1e-3, help="highest learning rate")
    p.add_argument("--end", type=float, default=0.0, help="learning rate at the end, as a share of the highest")
    p.add_argument("--drop", type=float, default=.08)
    p.add_argument("--clean", type=float, default=.28, help="share of examples without room and colour")
    p.add_argument("--short", type=float, default=.6, help="share of batches with short clips")
    p.add_argument("--scale", type=float, default=1.0, help="batch size multiplier")
    p.add_argument("--processes", type=int, default=2)
    p.add_argument("--seed", type=int, default=1)
    p.add_argument("--steps", type=int, default=10 ** 9, help="stop after this many steps (the learning rate then follows them)")
    p.add_argument("--average", type=float, default=.9995, help="of the weights")
    return p.parse_args()


def producer(queue, items, spans, a, seed):
    corpus = examples.Corpus(items, spans, seed)
    while True:
        queue.put(examples.batch(corpus, corpus.rnd.random() < a.short, a.clean, a.scale))


NOISY_DB = 10.0      # SNR at which the held-out items are heard a second time


@torch.no_grad()
def phone_error(net, mfcc, sound, dev, noise=()):
    """Phone error in % of the held-out items, by source; with noise items also at 10 dB SNR, the noise the same each time."""
    net.eval()
    got, device = {}, next(net.parameters()).device
    for number, item in enumerate(dev):
        x = sound[item[3]:item[3] + item[4]].float()
        ref = [p for w in item[5] for p in w[0]]
        heard = [("", x)]
        if noise:
            other = noise[number * 7 % len(noise)]
            y = sound[other[3]:other[3] + other[4]].float()
            y = y.repeat(len(x) // len(y) + 1)[:len(x)]
            gain = (x.square().mean() / y.square().mean().clamp_min(1.0)).sqrt() * 10 ** (-NOISY_DB / 20)
            heard.append((" at 10 dB", x + gain * y))
        for kind, wave in heard:
            e = got.setdefault(item[1] + kind, [0, 0])
            e[0] += ctc.edit_distance(ctc.greedy(net(mfcc(wave[None].to(device)))[0]), ref)
            e[1] += len(ref)
    return {k: round(100 * a / b, 2) for k, (a, b) in got.items()}


def start(a, device, first):
    """The network to train: new (features normalised by `first` [B, T, 40]), from weights, or from a shipped model."""
    net = Net(a.drop)
    if a.warm:
        net = read_model.calibrate(read_model.load(a.warm), first.cpu())
        net.drop.p = a.drop
    elif a.init:
        net = grow(net, torch.load(a.init, map_location="cpu"))
    else:
        flat = first.cpu().reshape(-1, 40)
        net.mean.copy_(flat.mean(0))
        net.std.copy_(flat.std(0))
    return net.to(device)


def main():
    a = arguments()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(a.seed)
    os.makedirs(a.out, exist_ok=True)
    items, spans = json.load(open(f"{a.data}/items.json")), json.load(open(a.spans)) if a.spans else []
    sound = torch.from_numpy(np.load(f"{a.data}/audio.npy"))
    dev, items = [i for i in items if i[0] == "dev"], [i for i in items if i[0] != "dev"]
    noise = [i for i in items if i[0] == "noise"]
    dev = [i for i in dev if i[1] != "neural"] + [i for i in dev if i[1] == "neural"][::8]      # enough to watch by
    context = mp.get_context("spawn")
    queue = context.Queue(24)
    crew = [context.Process(target=producer, args=(queue, items, spans, a, a.seed * 100 + k), daemon=True) for k in range(a.processes)]
    for p in crew:
        p.start()
    augment, plain = Augment(sound, device), Mfcc().to(device)
    net = start(a, device, torch.cat([augment(*queue.get())[0].reshape(1, -1, 40) for _ in range(4)], 1))
    average = Net().to(device)
    average.load_state_dict(net.state_dict())
    opt = torch.optim.AdamW(net.parameters(), lr=a.lr, weight_decay=.02, betas=(.9, .98), fused=device == "cuda")
    ours = [t for t in average.state_dict().values() if t.dtype.is_floating_point]
    theirs = [t for t in net.state_dict().values() if t.dtype.is_floating_point]
    print("before", phone_error(average, plain, sound, dev, noise), flush=True)
    begun = told = time.time()
    step, hours, losses = 0, 0.0, []
    while True:
        done = max((time.time() - begun) / a.seconds, step / a.steps)
        if done >= 1:
            break
        cosine = .5 * (1 + math.cos(math.pi * done))
        lr = a.lr * min(1, (step + 1) / 300) * (a.end + (1 - a.end) * cosine) + 1e-6
        for group in opt.param_groups:
            group["lr"] = lr
        batch = queue.get()
        x, rows, targets = augment(*batch)
        net.train()
        with torch.autocast(device, dtype=torch.bfloat16, enabled=device == "cuda"):
            logp, mid = net(x)
        loss = ctc.loss(logp, rows, targets, len(x)) + .3 * ctc.loss(mid, rows, targets, len(x))
        opt.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 2.0)
        opt.step()
        step += 1
        hours += x.shape[0] * x.shape[1] / 360000
        losses.append(loss.detach())
        with torch.no_grad():
            torch._foreach_lerp_(ours, theirs, 1 - min(a.average, (1 + step) / (20 + step)))
        if time.time() - told > 60:
            told = time.time()
            mean = torch.stack(losses).mean().item()
            print(f"{told - begun:.0f} s, step {step}, {hours:.0f} h, lr {lr:.1e}, loss {mean:.3f}, phone error {phone_error(average, plain, sound, dev, noise)}", flush=True)
            losses = []
            torch.save(average.state_dict(), f"{a.out}/net.pt")
    for p in crew:
        p.terminate()
    print(f"end: step {step}, {hours:.0f} h, loss {torch.stack(losses).mean().item() if losses else 0:.3f}, phone error {phone_error(average, plain, sound, dev, noise)}", flush=True)
    torch.save(average.state_dict(), f"{a.out}/net.pt")


if __name__ == "__main__":
    main()

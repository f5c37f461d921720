"""Train the phone network with CTC; sound and augmentation on the GPU, example plans by other processes.

With --pupils smaller networks learn beside it, from the same sound: each by its own CTC loss and by the phone probabilities of the
weight-averaged large one. With --only-pupils the large one only teaches.

usage: train.py --data DIR --out DIR --seconds N [--init net.pt | --warm final.mdl] [--spans spans.json] [--pupils 128x320x96[=net.pt],...]
                [--fold N] [--lr 1e-3] ...

Writes OUT/net.pt, and OUT/128x320x96.pt for each pupil."""
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
from folds import FOLDS
from mfcc import Mfcc
from net import Net, grow, load_weights


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
    p.add_argument("--pupils", default="", help="shapes of smaller networks, with weights to go on from: 128x320x96=net.pt,...")
    p.add_argument("--only-pupils", action="store_true", help="the large network is not trained")
    p.add_argument("--pupil-lr", type=float, default=0.0, help="highest learning rate of the pupils; 0: as --lr")
    p.add_argument("--teaching", type=float, default=1.0, help="weight of the teacher's probabilities beside CTC")
    p.add_argument("--fold", type=int, default=-1, help="leave this fold of speakers (folds.json) out, and watch by it; 5: all folds")
    p.add_argument("--tell", type=float, default=60, help="seconds between reports")
    p.add_argument("--shares", default="", help="of the sources of short clips, where not as in examples.py: words=.3,neural=.2")
    p.add_argument("--fit", default="coswara", help="sources whose long recordings are played faster until they fit")
    return p.parse_args()


def producer(queue, items, spans, a, seed):
    corpus = examples.Corpus(items, spans, seed, {name: float(share) for name, _, share in (s.partition("=") for s in a.shares.split(",") if s)},
                             a.fit.split(","))
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


class Learner:
    """A network, its running average and its optimiser."""

    def __init__(self, name, net, lr, device):
        self.name, self.net, self.lr = name, net.to(device), lr
        self.average = Net(shape=net.shape).to(device).eval()
        self.average.load_state_dict(net.state_dict())
        self.opt = torch.optim.AdamW(net.parameters(), lr=lr, weight_decay=.02, betas=(.9, .98), fused=device == "cuda")
        self.ours = [t for t in self.average.state_dict().values() if t.dtype.is_floating_point]
        self.theirs = [t for t in net.state_dict().values() if t.dtype.is_floating_point]

    def learn(self, x, goals, rate, taught=None, weight=1.0):
        """One step. `taught`: log-probabilities to come near to. Gives the loss."""
        for group in self.opt.param_groups:
            group["lr"] = self.lr * rate + 1e-6
        self.net.train()
        with torch.autocast(x.device.type, dtype=torch.bfloat16, enabled=x.device.type == "cuda"):
            logp, mid = self.net(x)
        loss = ctc.loss(logp, goals) + .3 * ctc.loss(mid, goals)
        if taught is not None:
            phones = max(1, int(goals[2].sum()))
            loss = loss + weight * (taught.exp() * (taught - logp)).sum() / phones
        self.opt.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(self.net.parameters(), 2.0)
        self.opt.step()
        return loss.detach()

    @torch.no_grad()
    def follow(self, keep):
        torch._foreach_lerp_(self.ours, self.theirs, 1 - keep)


def start(a, device, first):
    """The network to train: new (features normalised by `first` [B, T, 40]), from weights, or from a shipped model."""
    if a.warm:
        net = read_model.calibrate(read_model.load(a.warm), first.cpu())
        net.drop.p = a.drop
        return net
    net = Net(a.drop)
    if a.init:
        return grow(net, torch.load(a.init, map_location="cpu"))
    return fresh(net, first)


def fresh(net, first):
    flat = first.cpu().reshape(-1, 40)
    net.mean.copy_(flat.mean(0))
    net.std.copy_(flat.std(0))
    return net


def pupils(a, device, first):
    for part in filter(None, a.pupils.split(",")):
        name, _, weights = part.partition("=")
        net = load_weights(weights, a.drop / 2) if weights else fresh(Net(a.drop / 2, map(int, name.split("x"))), first)
        yield Learner(name, net, a.pupil_lr or a.lr, device)


def split(items, spans, a):
    """(to train on, spans, to watch by, noise). The fold's speakers are left out, their spans too; a sample of what they say is watched."""
    noise = [i for i in items if i[0] == "noise"]
    dev = [i for i in items if i[0] == "dev"]
    dev = [i for i in dev if i[1] != "neural"] + [i for i in dev if i[1] == "neural"][::4]      # enough to watch by
    train = [i for i in items if i[0] != "dev"]
    if a.fold >= 0:
        plan = json.load(open(f"{a.data}/folds.json"))
        gone = {speaker for speaker, fold in plan.items() if a.fold in (fold, FOLDS)}
        out = [i for i in train if i[1] in ("words", "an4", "over") and i[2] in gone]
        train = [i for i in train if not (i[1] in ("words", "an4", "over") and i[2] in gone)]
        dev += out[::6]
        spans = [s for s in spans if not any(i[3] <= s[0] < i[3] + i[4] for i in out if i[1] == "an4")]
    return train, spans, dev, noise


def main():
    a = arguments()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(a.seed)
    os.makedirs(a.out, exist_ok=True)
    spans = json.load(open(a.spans)) if a.spans else []
    items, spans, dev, noise = split(json.load(open(f"{a.data}/items.json")), spans, a)
    sound = torch.from_numpy(np.load(f"{a.data}/audio.npy"))
    context = mp.get_context("spawn")
    queue = context.Queue(24)
    crew = [context.Process(target=producer, args=(queue, items, spans, a, a.seed * 100 + k), daemon=True) for k in range(a.processes)]
    for p in crew:
        p.start()
    augment, plain = Augment(sound, device), Mfcc().to(device)
    first = torch.cat([augment(*queue.get())[0].reshape(1, -1, 40) for _ in range(4)], 1)
    large = Learner("net", start(a, device, first), a.lr, device)
    small = list(pupils(a, device, first))
    learners = small if a.only_pupils else [large, *small]

    def tell(when, losses):
        for i, one in enumerate([large] if not losses else learners):
            loss = torch.stack([step[i] for step in losses]).mean().item() if losses else 0
            print(f"{when}, {one.name}: loss {loss:.3f}, phone error {phone_error(one.average, plain, sound, dev, noise)}", flush=True)
        for one in learners:
            torch.save(one.average.state_dict(), f"{a.out}/{one.name}.pt")

    tell("before", [])
    begun = told = time.time()
    step, hours, losses = 0, 0.0, []
    while True:
        done = max((time.time() - begun) / a.seconds, step / a.steps)
        if done >= 1:
            break
        rate = min(1, (step + 1) / 100) * (a.end + (1 - a.end) * .5 * (1 + math.cos(math.pi * done)))
        x, rows, targets = augment(*queue.get())
        goals = ctc.goals(rows, targets, device)
        each = [] if a.only_pupils else [large.learn(x, goals, rate)]
        if small:
            with torch.no_grad(), torch.autocast(x.device.type, dtype=torch.bfloat16, enabled=device == "cuda"):
                taught = large.average.eval()(x).float()
            each += [one.learn(x, goals, rate, taught, a.teaching) for one in small]
        losses.append(each)
        step += 1
        hours += x.shape[0] * x.shape[1] / 360000
        for one in learners:
            one.follow(min(a.average, (1 + step) / (20 + step)))
        if time.time() - told > a.tell:
            told = time.time()
            tell(f"{told - begun:.0f} s, step {step}, {hours:.0f} h, rate {rate:.2f}", losses)
            losses = []
    for p in crew:
        p.terminate()
    tell(f"end: step {step}, {hours:.0f} h", losses)


if __name__ == "__main__":
    main()

"""Draws training windows and makes them worse, a whole batch at a time on whatever device the sound lies on.

A window is what the program will cut: it ends `AFTER_S` after the sound last stood out from the room, and holds nothing from more than
`BEFORE_S` before it first did."""
import numpy as np
import torch

from net import BINS, FRAMES, HOP, LOUDEST, RANGE_DB, RATE, normalised

AFTER_S, BEFORE_S = .12, .36
LENGTH = int(3.0 * RATE)                     # drawn, so that a slower window still is full
END = int(2.72 * RATE)                       # where the word ends in it
LEVELS = (8, 12, 17, 22, 28, 34)             # dB under the loudest 20 ms at which a clip's first and last moments are known
# Share of a batch.
SHARES = {"people": .17, "neural": .10, "formant": .13, "spans": .07, "near": .15, "reader": .20, "spelling": .05, "counting": .05, "custom": .05, "noise": .03}


def spans_at_levels(x):
    """First and last sample at each level of LEVELS."""
    n = max(1, len(x) // 160)
    p = np.pad(x[:n * 160].astype(np.float32), (0, max(0, 160 - len(x)))).reshape(-1, 160) ** 2
    p = np.convolve(p.mean(1), [.5, .5], "same")
    out = []
    for db in LEVELS:
        at = np.nonzero(p >= p.max() * 10 ** (-db / 10))[0]
        out += [int(at[0]) * 160, int(at[-1] + 1) * 160]
    return out


class Draw:
    """Items of one kind: where they begin in the sound, their length, class and moments."""

    def __init__(self, rows, device):
        self.n = len(rows)
        t = lambda v, d: torch.tensor(np.array(v), dtype=d, device=device)
        self.begin, self.length = t([r[0] for r in rows], torch.long), t([r[1] for r in rows], torch.long)
        self.label, self.weight = t([r[2] for r in rows], torch.long), t([r[4] for r in rows], torch.float)
        self.fold = t([r[5] for r in rows], torch.long)
        self.moments = t([r[3] for r in rows], torch.long)


def kinds(classes, clips, sound):
    """kind -> rows (begin, length, class, moments, weight, fold of the speaker)."""
    number, rows = {c: i for i, c in enumerate(classes)}, {k: [] for k in SHARES}
    commands = set(classes[:classes.index("go")] if "go" in classes else classes)
    for c in clips:
        a, n, text = c["begin"], c["length"], c["text"]
        x = sound[a:a + n]
        whole = lambda: (a, n, number[text] if text else len(classes) - 1, spans_at_levels(x), 1.0, c["fold"])
        if c["source"] == "reader":
            rows["reader"].append((a, n, len(classes) - 1, [0] * 12, float(n), c["fold"]))
            for s, e, w in c["spans"]:
                s, e = max(0, s - 400), min(n, e + 800)
                if e - s > 1600:
                    rows["spans"].append((a + s, e - s, number[w], [0, e - s] * 6, 1.0, c["fold"]))
        elif c["source"] in ("counting",):
            rows["counting"].append((a, n, len(classes) - 1, [0] * 12, float(n), c["fold"]))
        elif c["source"] in ("noise", "body"):
            rows["noise"].append((a, n, len(classes) - 1, [0] * 12, 1.0, c["fold"]))
        elif c["source"] == "an4" and not (text and n < 2.5 * RATE):
            rows["spelling"].append((a, n, len(classes) - 1, [0] * 12, float(n), c["fold"]))
        elif n < 800 or n > 3 * RATE and not text:
            continue
        elif c["source"] in ("neural", "formant"):
            rows[c["source"]].append(whole())
        elif text in commands:
            rows["people"].append(whole())
        elif text:
            rows["near"].append(whole())
        else:
            rows["custom"].append(whole())
    # Every class as often as another, but for the square root of its number of clips.
    for kind in ("people", "neural", "formant", "near", "spans"):
        count = {}
        for r in rows[kind]:
            count[r[2]] = count.get(r[2], 0) + 1
        rows[kind] = [(*r[:4], count[r[2]] ** -.5, r[5]) for r in rows[kind]]
    return {k: v for k, v in rows.items() if v}


class Worse:
    def __init__(self, rows, sound, device, mel, seed, shares=None):
        self.device, self.mel, shares = device, mel, shares or SHARES
        self.sound = torch.tensor(sound, device=device)
        self.draws = {k: Draw(v, device) for k, v in rows.items()}
        total = sum(shares[k] for k in self.draws)
        self.shares = {k: shares[k] / total for k in self.draws}
        self.g = torch.Generator(device=device).manual_seed(seed)

    def u(self, n, lo=0.0, hi=1.0):
        return lo + (hi - lo) * torch.rand(n, generator=self.g, device=self.device)

    def cut(self, begin, length, first, n, speed=None):
        """`n` samples of each clip from its sample `first` on (may be negative), zeros outside, at a speed."""
        at = torch.arange(n, device=self.device)[None].float()
        at = first[:, None] + (at * speed[:, None] if speed is not None else at)
        low = at.floor()
        inside = (low >= 0) & (low < length[:, None] - 1)
        i = (begin[:, None] + low.long()).clamp(0, len(self.sound) - 2)
        x = self.sound[i].float() * (1 - (at - low)) + self.sound[i + 1].float() * (at - low)
        return x * inside

    def run(self, n, draw, at_least_s=0.0):
        """Stretches of sound of LENGTH from clips of a kind, wherever."""
        i = torch.multinomial(draw.weight, n, replacement=True, generator=self.g)
        room = (draw.length[i] - LENGTH).clamp(min=0).float()
        return self.cut(draw.begin[i], draw.length[i], (self.u(n) * room).floor(), LENGTH)

    def batch(self, size):
        """-> mel frames [size, FRAMES, BINS], classes, folds of the speakers"""
        xs, labels, firsts, folds = [], [], [], []
        for kind, draw in self.draws.items():
            n = max(1, round(size * self.shares[kind]))
            i = torch.multinomial(draw.weight, n, replacement=True, generator=self.g)
            begin, length, label = draw.begin[i], draw.length[i], draw.label[i]
            speed = self.u(n, .82, 1.2)
            speed = torch.where(self.u(n) < .35, torch.ones_like(speed), speed)
            if kind in ("reader", "spelling", "counting", "noise"):
                # A stretch that ends anywhere and seems to have begun anywhere: 0.2 to 2 s, or all of the window.
                loud = self.u(n, .2, 2.6) * RATE
                end = self.u(n) * (length.float() - .3 * RATE).clamp(min=1) + .3 * RATE
                first = END - loud
            else:
                m = draw.moments[i]
                pick = torch.randint(0, len(LEVELS), (n,), generator=self.g, device=self.device)
                on, end = m.gather(1, 2 * pick[:, None])[:, 0].float(), m.gather(1, 2 * pick[:, None] + 1)[:, 0].float()
                end = end + self.u(n, -.05, .06) * RATE
                first = END - (end - on) / speed - self.u(n, -.05, .10) * RATE
            x = self.cut(begin, length, end - END * speed, LENGTH, speed)
            if kind in ("reader", "spelling", "counting"):
                # Half of them begin out of quiet.
                t = torch.arange(LENGTH, device=self.device)[None]
                x = x * ~((t < first[:, None]) & (self.u(n) < .7)[:, None])
            xs.append(x), labels.append(label), firsts.append(first), folds.append(draw.fold[i])
        x, label, first = torch.cat(xs), torch.cat(labels), torch.cat(firsts)
        return self.worse(x, first), label, torch.cat(folds)

    def worse(self, x, first):
        n = len(x)
        x = x / (x.square().mean(1, keepdim=True).sqrt() + 1e-3) * 500
        # Rooms.
        k = n // 3
        rt, taps = self.u(k, .15, .8), RATE // 2
        t = torch.arange(taps, device=self.device)[None] / RATE
        h = torch.randn(k, taps, generator=self.g, device=self.device) * torch.exp(-6.9 * t / rt[:, None]) * (t > self.u(k, .001, .008)[:, None])
        h = h * (10 ** (self.u(k, -12, 4) / 20) / (h.square().sum(1).sqrt() + 1e-9))[:, None]
        h[:, 0] = 1
        which = torch.randperm(n, generator=self.g, device=self.device)[:k]
        size = LENGTH + taps
        x[which] = torch.fft.irfft(torch.fft.rfft(x[which], size) * torch.fft.rfft(h, size), size)[:, :LENGTH]
        # Noise: recorded, coloured, babble.
        level = x.square().mean(1).sqrt() * (LENGTH / (END - first).clamp(.3 * RATE, LENGTH)).sqrt()
        noise = torch.zeros_like(x)
        kind = self.u(n)
        a, b = (kind < .30).nonzero()[:, 0], ((kind >= .30) & (kind < .5)).nonzero()[:, 0]
        c = ((kind >= .5) & (kind < .75)).nonzero()[:, 0]
        noise[a] = self.run(len(a), self.draws["noise"])
        spectrum = torch.fft.rfft(torch.randn(len(b), LENGTH, generator=self.g, device=self.device))
        f = torch.arange(spectrum.shape[1], device=self.device).clamp(min=90)[None]
        noise[b] = torch.fft.irfft(spectrum / f ** self.u(len(b), 0, 1.1)[:, None], LENGTH)
        for voice in range(6):
            some = c[self.u(len(c)) < (1.0 if voice < 2 else .6)]
            y = self.run(len(some), self.draws["reader"])
            noise[some] += y / (y.square().mean(1, keepdim=True).sqrt() + 1e-3)
        noise = noise / (noise.square().mean(1, keepdim=True).sqrt() + 1e-6)
        snr = self.u(n, 2, 30) + torch.where(kind >= .5, 3.0, 0.0)
        x = x + noise * (level / 10 ** (snr / 20))[:, None] * (kind < .75)[:, None]
        # The microphone's own noise, and 16 bits at a level down to -55 dB.
        x = x + torch.randn(x.shape, generator=self.g, device=self.device) * (level * 10 ** (-self.u(n, 25, 60) / 20))[:, None]
        mel = self.mel(x)
        # Other tempo, other vocal tract, other microphone: on the mel frames.
        last = (END + AFTER_S * RATE - 512 + self.u(n, -.05, .05) * RATE) / HOP
        rate = torch.where(self.u(n) < .5, torch.ones(n, device=self.device), self.u(n, .72, 1.2))
        at = last[:, None] - (FRAMES - 1 - torch.arange(FRAMES, device=self.device)[None]) * rate[:, None]
        low = at.floor().clamp(0, mel.shape[1] - 2)
        part = (at - low).clamp(0, 1)[..., None]
        i = low.long()[..., None].expand(-1, -1, BINS)
        out = mel.gather(1, i) * (1 - part) + mel.gather(1, i + 1) * part
        warp = torch.where(self.u(n) < .4, torch.ones(n, device=self.device), self.u(n, .88, 1.14))
        bin_ = (torch.arange(BINS, device=self.device)[None] * warp[:, None]).clamp(0, BINS - 1.001)
        low = bin_.floor()
        part = (bin_ - low)[:, None]
        i = low.long()[:, None].expand(-1, FRAMES, -1)
        out = out.gather(2, i) * (1 - part) + out.gather(2, i + 1) * part
        knots = torch.randn(n, 1, 5, generator=self.g, device=self.device) * self.u(n, 0, .5)[:, None, None]
        out = out + torch.nn.functional.interpolate(knots, BINS, mode="linear", align_corners=True)
        # What the program has not kept.
        before = ((first - BEFORE_S * RATE) / HOP)[:, None]
        out = torch.where((at < before)[..., None], torch.full_like(out, -10.0), out)
        return normalised(out)

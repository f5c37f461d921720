"""CTC: loss over alternative targets, greedy decoding, edit distance, alignment."""
import numpy as np
import torch
import torch.nn.functional as F


def goals(rows, targets, device):
    """What `loss` needs of the targets, made once for several networks: targets[i] is a pdf list for row rows[i]."""
    lengths = torch.tensor([len(t) for t in targets])
    padded = torch.ones(len(targets), max(1, int(lengths.max())), dtype=torch.long)
    for i, t in enumerate(targets):
        padded[i, :len(t)] = torch.tensor(t, dtype=torch.long)
    return torch.tensor(rows).to(device), padded.to(device), lengths


def loss(logp, goals):
    """Mean CTC loss per phone. logp [B, T, K]; of several targets of one row the cheapest counts."""
    rows, padded, lengths = goals
    each = F.ctc_loss(logp[rows].transpose(0, 1), padded, torch.full((len(rows),), logp.shape[1]), lengths, reduction="none", zero_infinity=True)
    best = torch.full((len(logp),), 1e9, device=logp.device).scatter_reduce(0, rows, each, "amin")
    return best.sum() / max(1, int(lengths.sum()))


def greedy(logp):
    """Best phone string of logp [T, K], repeats and blanks taken out."""
    out, last = [], 0
    for i in logp.argmax(-1).tolist():
        if i not in (last, 0):
            out.append(i)
        last = i
    return out


def edit_distance(a, b):
    row = list(range(len(b) + 1))
    for i, x in enumerate(a):
        corner, row[0] = row[0], i + 1
        for j, y in enumerate(b):
            corner, row[j + 1] = row[j + 1], min(row[j + 1] + 1, row[j] + 1, corner + (x != y))
    return row[-1]


def align(logp, phones):
    """Best CTC path of a known phone string through logp [T, K] (numpy). Gives (log score per phone, first and last step of
    each phone)."""
    states, steps = 2 * len(phones) + 1, len(logp)
    label = np.zeros(states, int)
    label[1::2] = phones
    emit = logp[:, label]
    may_skip = np.zeros(states, bool)
    may_skip[3::2] = label[3::2] != label[1:-2:2]
    score = np.full(states, -1e9)
    score[:2] = emit[0, :2]
    back = np.zeros((steps, states), np.int8)
    for t in range(1, steps):
        one = np.concatenate([[-1e9], score[:-1]])
        two = np.where(may_skip, np.concatenate([[-1e9, -1e9], score[:-2]]), -1e9)
        choices = np.stack([score, one, two])
        back[t] = choices.argmax(0)
        score = np.take_along_axis(choices, back[t][None].astype(int), 0)[0] + emit[t]
    s = states - 1 if score[-1] > score[-2] else states - 2
    total, first, last = float(score[s]) / len(phones), [0] * len(phones), [-1] * len(phones)
    for t in range(steps - 1, -1, -1):
        if s % 2:
            first[s // 2] = t
            last[s // 2] = max(last[s // 2], t)
        s -= int(back[t][s])
    return total, list(zip(first, last))

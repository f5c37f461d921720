"""Compares ways of weighing the two ears together, from what the program considered (its trace), in five folds by speaker.

usage: fuse.py JUDGED.jsonl TRACES_DIR NAME CONDITION[,...] [COST]

JUDGED.jsonl and TRACES_DIR are `judge.py run`'s; NAME is the name the models had there, and must have been judged with a second ear. The
rules: the recogniser alone; the rule of `Cues::sureness`, with other limits and with a veto too; a logistic rule, whose figures of each fold come from
weights learnt on the four others. COST: what a false action costs there, in missed commands."""
import json
import sys
from collections import defaultdict

import numpy as np

ACT = 0.8
# `WEIGHTS` of cues.rs: constant, first, second, both, rival, elsewhere, talk, above.
RECOGNISER = np.array([-3.0, 3.6, 3.6, 1.6, -1.5, -1.0, -2.0, 0.0])
SAID = ("people", "an4", "voice")
# Other sound in the utterance, talk before it, level: as set by hand before. Too few of the recordings say anything of them to learn from.
GIVEN = {5: -1.0, 6: -2.0, 7: 0.0}
COMMANDS = {}


def logit(p):
    p = np.clip(p, 1e-3, 1 - 1e-3)
    return np.log(p / (1 - p))


def features(c):
    """As `Cues::features` and what the second ear adds (`cues.rs`): constant first."""
    f, (this, rival, _) = c["features"], c["second_ear"]
    lone = float(alone(c))
    sure = logit(this) / 3
    return np.array([1.0, *f, sure, rival, lone, lone * sure])


NAMES = ("constant", "first", "second", "both", "rival", "elsewhere", "talk", "above", "ear", "ear's rival", "ear alone", "ear alone, sure")


def read(judged, traces, name, conditions):
    """-> recordings: condition, fold, group, said, path, candidates"""
    rows = defaultdict(list)
    for r in map(json.loads, open(judged)):
        if r["model"] == name and r["condition"] in conditions:
            rows[r["condition"], r["fold"]].append(r)
    out = []
    for (condition, fold), recordings in rows.items():
        now, k = [], 0
        for t in map(json.loads, open(f"{traces}/{name}-{condition}-{fold}.jsonl")):
            if t.get("finish"):
                r = recordings[k]
                group = "go, on" if r["said"] in ("go", "on") and r["group"].startswith("other") else r["group"].split(":")[0]
                out.append({"condition": condition, "fold": fold % 5, "group": group, "said": r["said"], "path": r["path"], "heard": r["heard"], "found": now})
                now, k = [], k + 1
            else:
                now.append(t)
        assert k == len(recordings), (condition, fold, k, len(recordings))
    return out


def same(text, said):
    return text == said or COMMANDS.get(text, text) == COMMANDS.get(said, said)


def recogniser(c):
    return 1 / (1 + np.exp(-float(RECOGNISER @ np.r_[1, c["features"]])))


def alone(c):
    return c["features"][0] == 0 and c["features"][1] == 0


def rule(limit, confirms=.8, doubt=.25, veto=0.0):
    """As `Cues::sureness`; with `veto`, what the second ear gives less than that is not acted upon."""
    def decide(r):
        for c in r["found"]:
            sure, ear = recogniser(c), c["second_ear"]
            if ear is not None and not c["fast"]:
                if alone(c):
                    sure = float(ear[0] >= limit and " " not in c["text"])
                elif sure >= doubt and ear[0] >= confirms:
                    sure = 1.0
                elif ear[0] < veto:
                    continue
            if sure >= ACT:
                return c["text"]
        return None
    return decide


def sureness(c, w):
    """Of the fast path, and of a phrase that the second ear does not know, as before."""
    if c["fast"] or c["second_ear"] is None:
        return recogniser(c)
    return 1 / (1 + np.exp(-float(w @ features(c))))


def acted(r, w):
    """The first phrase that is sure enough."""
    return next((c["text"] for c in r["found"] if sureness(c, w) >= ACT), None)


def learn(recordings, cost, ridge=3e-3):
    X, Y, W = [], [], []
    for r in recordings:
        meant = r["group"] in SAID
        for c in r["found"]:
            if not c["fast"] and c["second_ear"] is not None:
                X.append(features(c))
                Y.append(meant and same(c["text"], r["said"]))
                W.append((1.0 if Y[-1] else cost) * (4.0 if r["condition"] == "talk" else 1.0))
    X, Y, W = np.array(X), np.array(Y, float), np.array(W)
    free = [i for i in range(X.shape[1]) if i not in GIVEN]
    given = sum(X[:, i] * w for i, w in GIVEN.items())
    scale = X[:, free].std(0) + 1e-6
    scale[0] = 1
    Z, w = X[:, free] / scale, np.zeros(len(free))
    for _ in range(60):                                     # Newton's method
        p = 1 / (1 + np.exp(-Z @ w - given))
        g = Z.T @ (W * (p - Y)) / W.sum() + ridge * np.r_[0, w[1:]]
        H = (Z * (W * p * (1 - p))[:, None]).T @ Z / W.sum() + ridge * np.diag(np.r_[0, np.ones(len(w) - 1)]) + 1e-9 * np.eye(len(w))
        w -= np.linalg.solve(H, g)
    found, w = w / scale, np.zeros(X.shape[1])
    w[free] = found
    for i, v in GIVEN.items():
        w[i] = v
    # Acting at ACT is made the best trade of hits against false actions.
    best = None
    for t in np.arange(-2, 3.01, .1):
        v = w.copy()
        v[0] -= t - logit(ACT)
        gain = 0.0
        for r in recordings:
            got = acted(r, v)
            if got is not None:
                gain += 1 if r["group"] in SAID and same(got, r["said"]) else -cost * (4 if r["condition"] == "talk" else 1)
        if best is None or gain > best[0]:
            best = gain, v
    return best[1]


def table(recordings, decide):
    n = defaultdict(lambda: [0, 0, 0])
    for r in recordings:
        got, d = decide(r), n[r["condition"], r["group"] if r["group"] not in ("people", "an4") else "people"]
        d[0] += 1
        d[1] += got is not None and (r["group"] not in SAID or same(got, r["said"]))
        d[2] += got is not None and r["group"] in SAID and not same(got, r["said"])
        if r["group"] in ("people", "an4") and r["said"] == "stop":
            s = n[r["condition"], "stop"]
            s[0] += 1
            s[1] += got == "stop"
    return n


def show(recordings, rules):
    tables = {name: table(recordings, rule) for name, rule in rules.items()}
    keys = sorted({k for t in tables.values() for k in t}, key=str)
    for condition in dict.fromkeys(k[0] for k in keys):
        for name, t in tables.items():
            print(f"{condition:10} {name:22}", "; ".join(f"{g} {t[condition, g][1]}/{t[condition, g][0]}" + (f" wrong {t[condition, g][2]}" if g in SAID else "")
                                                  for c, g in keys if c == condition))


def main(judged, traces, name, conditions, cost="3"):
    recordings = read(judged, traces, name, conditions.split(","))
    cost, by_fold = float(cost), {}
    for k in range(5):
        by_fold[k] = learn([r for r in recordings if r["fold"] != k], cost)
    rules = {"recogniser": lambda r: next((c["text"] for c in r["found"] if recogniser(c) >= ACT), None)}
    rules |= {f"or alone {limit}": rule(limit) for limit in (.75, .8, .85, .9, .95)}
    rules |= {"only alone .85": rule(.85, confirms=2), "only confirming": rule(2)}
    rules |= {f".85, veto {veto}": rule(.85, veto=veto) for veto in (.02, .05, .1, .2)}
    show(recordings, rules | {"logistic, in folds": lambda r: acted(r, by_fold[r["fold"]])})
    print("logistic, spread over folds:", {n: [round(float(by_fold[k][i]), 1) for k in range(5)] for i, n in enumerate(NAMES)})


if __name__ == "__main__":
    sys.path.insert(0, __file__.rsplit("/", 2)[0])
    import phrases
    COMMANDS.update(phrases.wordings(classes=False))
    main(*sys.argv[1:])

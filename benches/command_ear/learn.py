#!/usr/bin/env python3
"""Learns how the command ear weighs its cues (WEIGHTS in src/hear/commands/cues.rs). Needs numpy.

    TIDECOUNT_COMMAND_TRACE=words.trace tidecount hear --commands "…" --labels words.tsv --half odd --details > words.jsonl
    learn.py [--false-cost 3] words.jsonl words.trace [talk.jsonl talk.trace …]

Each phrase that the ear considered is an example, true where it is what the list says was said. Logistic regression with a small ridge;
what speaks for a phrase may not get a negative weight, nor what speaks against it a positive one, so that a scarce kind of example cannot turn
a cue around. A false example counts --false-cost times: a needless action is worse than a command said again.
"""
import json
import sys

import numpy as np

NAMES = ["constant", "first", "second", "both", "rival", "elsewhere", "talk", "level"]
SIGNS = [0, 1, 1, 1, -1, -1, -1, 1]
RIDGE = 0.02


def examples(details, trace):
    """Features, truth and the recording's number of each candidate; the trace's n-th stretch belongs to the n-th recording."""
    recordings = [json.loads(line) for line in open(details, encoding="utf-8") if line.startswith("{")]
    recordings = [r for r in recordings if r["kind"] == "recording"]
    stretches, stretch = [], []
    for line in open(trace, encoding="utf-8"):
        entry = json.loads(line)
        if entry.get("finish"):
            stretches.append(stretch)
            stretch = []
        else:
            stretch.append(entry)
    if len(stretches) != len(recordings):
        sys.exit(f"{trace}: tells of {len(stretches)} recordings and {details} of {len(recordings)}; write both anew in one run")
    for recording, stretch in zip(recordings, stretches):
        for entry in stretch:
            yield [1.0, *entry["features"]], entry["text"] == recording["said"], recording, entry


def learn(x, y, cost):
    weights = np.zeros(x.shape[1])
    worth = np.where(y, 1.0, cost)
    worth /= worth.sum()
    step = 4.0 / np.linalg.eigvalsh((x * worth[:, None]).T @ x).max()
    ridge = RIDGE * np.r_[0.0, np.ones(x.shape[1] - 1)] / len(y)
    for _ in range(200_000):
        chance = 1.0 / (1.0 + np.exp(-(x @ weights)))
        weights -= step * (x.T @ (worth * (chance - y)) + ridge * weights)
        for i, sign in enumerate(SIGNS):
            if sign * weights[i] < 0:
                weights[i] = 0.0
    return weights


def main():
    arguments, cost = sys.argv[1:], 3.0
    if "--false-cost" in arguments:
        at = arguments.index("--false-cost")
        cost = float(arguments[at + 1])
        del arguments[at:at + 2]
    if not arguments or len(arguments) % 2:
        sys.exit(__doc__)
    rows = [row for pair in zip(arguments[::2], arguments[1::2]) for row in examples(*pair)]
    x, y = np.array([r[0] for r in rows]), np.array([r[1] for r in rows])
    weights = learn(x, y, cost)
    chance = 1.0 / (1.0 + np.exp(-(x @ weights)))
    for name, weight in zip(NAMES, weights):
        print(f"  {name:<10} {weight:7.2f}")
    for threshold in (0.5, 0.8):
        # A recording counts once for the right phrase and once for a wrong one, by the surest candidate.
        right = {r[2]["path"] for r, c in zip(rows, chance) if r[1] and c >= threshold}
        wrong = {r[2]["path"] for r, c in zip(rows, chance) if not r[1] and c >= threshold}
        said = {r[2]["path"] for r in rows if r[1]}
        print(f"  from {threshold}: right in {len(right)} of the {len(said)} recordings where it was considered, wrong in {len(wrong)}")
    print("const WEIGHTS: [f64; FEATURES + 1] = [" + ", ".join(f"{w:.2f}" for w in weights) + "];")


if __name__ == "__main__":
    main()

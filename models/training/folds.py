"""Five folds by speaker, for choosing settings: a speaker's recordings are all in one fold, and a fold's networks never train on them."""
from collections import Counter

FOLDS = 5


def assign(speakers):
    """speaker -> fold, of a list that names a speaker once for each recording. Whoever has most recordings is placed first, always in the
    fold that has fewest."""
    counts, size, out = Counter(speakers), [0] * FOLDS, {}
    for speaker in sorted(counts, key=lambda s: (-counts[s], s)):
        fold = min(range(FOLDS), key=lambda k: (size[k], k))
        out[speaker], size[fold] = fold, size[fold] + counts[speaker]
    return out

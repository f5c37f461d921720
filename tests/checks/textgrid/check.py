#!/usr/bin/env python3
"""Opens a TextGrid and its sound with Praat (pip install praat-parselmouth) and looks whether they belong together.

    check.py FILE.TextGrid FILE.wav [LOUDER_DB]

Checks that Praat reads both, that they are equally long, and that the intervals of each tier leave no gap. With LOUDER_DB, for a sound in
which nothing else is heard, also that it is louder by that much in every labelled interval of the tiers "holds" and "discarded" than
between them, which it would not be if the times were those of another clock. Prints what it read.
"""
import math
import sys

import parselmouth
from parselmouth.praat import call


def level(sound, start, end):
    part = call(sound, "Extract part", start, end, "rectangular", 1, "no")
    return 20 * math.log10(max(call(part, "Get root-mean-square", 0, 0), 1e-9))


def main():
    grid, sound = parselmouth.read(sys.argv[1]), parselmouth.Sound(sys.argv[2])
    assert grid.class_name == "TextGrid", grid.class_name
    assert abs(grid.xmax - sound.xmax) < 1e-3, (grid.xmax, sound.xmax)
    held, quiet = [], []
    for tier in range(1, call(grid, "Get number of tiers") + 1):
        name = call(grid, "Get tier name", tier)
        if not call(grid, "Is interval tier", tier):
            for point in range(1, call(grid, "Get number of points", tier) + 1):
                print(name, call(grid, "Get time of point", tier, point), call(grid, "Get label of point", tier, point))
            continue
        reached = 0.0
        for interval in range(1, call(grid, "Get number of intervals", tier) + 1):
            start, end = call(grid, "Get start time of interval", tier, interval), call(grid, "Get end time of interval", tier, interval)
            label = call(grid, "Get label of interval", tier, interval)
            assert abs(start - reached) < 1e-9 and end > start, (name, start, end)
            reached = end
            if label:
                print(name, start, end, label)
            if label and name in ("holds", "discarded"):
                held.append((start, end))
        assert abs(reached - grid.xmax) < 1e-9, (name, reached)
    assert held, "no trial stands in it"
    edge = 0.05
    held.sort()
    ends = [0.0] + [end for _, end in held]
    starts = [start for start, _ in held] + [sound.xmax]
    quiet = [(end, start) for end, start in zip(ends, starts) if start - end > 4 * edge]
    loudest_quiet = max(level(sound, start + edge, end - edge) for start, end in quiet)
    softest_held = min(level(sound, start + edge, end - edge) for start, end in held)
    print(f"softest trial {softest_held:.1f} dB, loudest between {loudest_quiet:.1f} dB re 1 Pa")
    if len(sys.argv) > 3:
        assert softest_held > loudest_quiet + float(sys.argv[3]), "the trials are not where the sound is"


main()

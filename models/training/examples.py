"""What the training examples are made of: plans only (numbers), so that several processes can make them cheaply.

An example is a row of segments laid out in time, with one or several target phone strings. The sound itself is gathered on
the GPU by augment.py."""
import random
from dataclasses import dataclass, field

from phones import PDF

RATE_HZ = 16000
# Playing speed as k/20: pitch and formants move together. 20 is the recording as it is.
SPEEDS = (17, 18, 19, 20, 21, 22, 23, 24)
# The phones a held vowel of Coswara may be; the cheapest counts.
VOWELS = {"a": ("AA", "EY", "AE", "AH"), "e": ("IY", "EY", "EH"), "o": ("OW", "UW", "AO")}
# Shares of the sources of short clips.
# "over": said over what our own voice leaves.
SHORT = {"words": .28, "neural": .24, "spans": .17, "formant": .13, "over": .11, "an4": .09, "numbers": .08, "custom": .03, "mycroft": .02}
OWN = .07           # share of examples with what our own voice leaves as noise
OWN_ALONE = .06     # and with nothing else: without these, run 14 took such sound for "stop"
LONG = {"librispeech": .90, "coswara": .10}


@dataclass
class Segment:
    """`length` samples from `start` of the sound at speed `speed`/20, put at `at`, scaled by `gain`."""
    speed: int
    start: int
    length: int
    at: int
    gain: float = 1.0


@dataclass
class Example:
    segments: list = field(default_factory=list)
    targets: list = field(default_factory=lambda: [[]])   # alternatives
    noise: list = field(default_factory=list)             # segments of recorded noise
    kind: str = "none"                                    # noise kind: recorded, own, babble, crowd, coloured, none
    snr_db: float = 60.0
    talkers: int = 0
    clean: bool = False


class Corpus:
    """The items of unpack.py by source, and spans: [start, length, words, source] cut out of sentences, and out of counting ("numbers")."""

    def __init__(self, items, spans=(), seed=0, shares=None, fit=("coswara",)):
        self.rnd, self.fit = random.Random(seed), fit
        self.by = {}
        for item in items:
            self.by.setdefault(item[1] if item[0] == "speech" else item[0], []).append(item)
        self.cut = {"spans": [s for s in spans if s[3] != "coswara"], "numbers": [s for s in spans if s[3] == "coswara"]}
        self.short = {s: p for s, p in {**SHORT, **(shares or {})}.items() if self.by.get(s) or self.cut.get(s)}
        self.long = {s: (shares or {}).get(s, p) for s, p in LONG.items() if s in self.by}
        self.speakers = {}
        for item in self.by.get("words", []):          # few clips each, so draw the speaker first
            self.speakers.setdefault(item[2], []).append(item)

    def pick_words(self, words):
        """One pronunciation of each word: the first half the time, else any."""
        return [p for w in words for p in (w[0] if self.rnd.random() < .5 else self.rnd.choice(w))]

    def _speed(self):
        return SPEEDS[min(len(SPEEDS) - 1, max(0, round(self.rnd.gauss(3.0, 1.7))))]

    def _clip(self):
        """start, length, target of one short clip."""
        source = self.rnd.choices(list(self.short), list(self.short.values()))[0]
        if source in self.cut:
            start, length, words = self.rnd.choice(self.cut[source])[:3]
        else:
            item = self.rnd.choice(self.rnd.choice(list(self.speakers.values())) if source == "words" else self.by[source])
            start, length, words = item[3:6]
        return start, length, self.pick_words(words)

    def example(self, short, samples, clean_share):
        """One example that fits into `samples`."""
        rnd, ex = self.rnd, Example()
        if "own" in self.by and rnd.random() < OWN_ALONE:
            ex.kind, ex.snr_db = "own", 0.0
            self._fill(ex, "own", samples)
            return ex
        if short or not self.long:
            self._short(ex, samples)
        else:
            item = rnd.choice(self.by[rnd.choices(list(self.long), list(self.long.values()))[0]])
            speed = self._speed()
            while item[1] in self.fit and item[4] * 20 // speed > samples and speed < SPEEDS[-1]:
                speed += 1                              # what does not fit is taught as silence
            length = min(item[4] * 20 // speed, samples)
            ex.segments.append(Segment(speed, item[3] * 20 // speed, length, rnd.randint(0, min(16000, samples - length))))
            ex.targets = [self.pick_words(item[5])] if item[4] * 20 // speed <= samples else [[]]
        self._noise(ex, samples, clean_share)
        return ex

    def _short(self, ex, samples):
        rnd, r, speed = self.rnd, self.rnd.random(), self._speed()
        if r < .05 and "vowel" in self.by:
            item = rnd.choice(self.by["vowel"])
            at = rnd.randint(0, 12000)
            ex.segments.append(Segment(speed, item[3] * 20 // speed, min(item[4] * 20 // speed, samples - at), at))
            ex.targets = [[PDF[p]] for p in VOWELS[item[5]]]
            return
        if r < .08:                                     # silence or noise alone
            return
        at, target = int(RATE_HZ * abs(rnd.gauss(.25, .35))), []
        for _ in range(rnd.choice([1, 1, 1, 1, 2, 2, 3, 4, 6])):
            if rnd.random() < .09 and "empty" in self.by:
                item = rnd.choice(self.by["empty"])
                length = min(item[4], rnd.randint(6000, 60000))
                start, phones = item[3] + rnd.randint(0, item[4] - length), []
            else:
                start, length, phones = self._clip()
            length = length * 20 // speed
            if at + length > samples:
                break
            ex.segments.append(Segment(speed, start * 20 // speed, length, at, rnd.uniform(-6, 6)))
            target += phones
            at += length + int(RATE_HZ * min(2, rnd.expovariate(4)))
        ex.targets = [target]

    def _snr(self, low, middle, high):
        """dB: three in five from the noisy part."""
        return self.rnd.uniform(low, middle) if self.rnd.random() < .6 else self.rnd.uniform(middle, high)

    def _fill(self, ex, source, samples):
        """Recorded noise from beginning to end, sometimes with gaps."""
        rnd, at = self.rnd, 0
        while at < samples:
            item, speed = rnd.choice(self.by[source]), rnd.choice(SPEEDS)
            start = rnd.randrange(item[4] // 2) if source in ("crowd", "own") else 0
            length = min((item[4] - start) * 20 // speed, samples - at)
            ex.noise.append(Segment(speed, (item[3] + start) * 20 // speed, length, at))
            at += length + (rnd.randint(0, 16000) if source == "noise" and rnd.random() < .4 else 0)

    def _noise(self, ex, samples, clean_share):
        rnd, r = self.rnd, self.rnd.random()
        ex.clean = rnd.random() < clean_share
        if "own" in self.by and rnd.random() < OWN:
            ex.kind, ex.snr_db = "own", rnd.uniform(3, 25)
            self._fill(ex, "own", samples)
        elif r < .34 and "noise" in self.by:
            ex.kind, ex.snr_db = "recorded", self._snr(4, 16, 28)
            self._fill(ex, "noise", samples)
        elif r < .70 and ex.segments:
            # One or two voices that are to be overheard must be well below the speaker: nearer ones make the network deaf.
            ex.kind, ex.talkers = "babble", rnd.choices([1, 2, 4, 6, 8], [.12, .12, .34, .2, .22])[0]
            ex.snr_db = rnd.uniform(16, 30) if ex.talkers == 1 else rnd.uniform(12, 28) if ex.talkers == 2 else self._snr(5, 15, 28)
            # The other rows of a batch of short clips are mostly silence: no babble as people make it. So more than half are readers.
            if ex.talkers >= 4 and "crowd" in self.by and rnd.random() < .6:
                ex.kind = "crowd"
                self._fill(ex, "crowd", samples)
        elif r < .92:
            ex.kind, ex.snr_db = "coloured", self._snr(3, 16, 33)
        if ex.clean:
            ex.snr_db = max(ex.snr_db, 22.0)


def batch(corpus, short, clean_share, scale=1.0):
    """Examples of one batch and their length in frames of 10 ms. `scale` multiplies the batch size."""
    frames = corpus.rnd.choice([300, 420, 600]) if short else 1620
    rows = max(1, int(scale * (160 * 600 // frames if short else 96)))
    return [corpus.example(short, frames * 160, clean_share) for _ in range(rows)], frames

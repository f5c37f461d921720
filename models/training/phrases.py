"""What the synthetic voices say: all command wordings, words easily taken for them, and pieces of read sentences."""
import random
import re
from pathlib import Path

HERE = Path(__file__).resolve().parent
FTL = HERE / "../../src/speak/words/en/commands.ftl"
CORE = "yes no stop go ready done help again skip pause continue louder softer slower faster rest finish next repeat back".split()


def wordings(classes=True):
    """wording -> command, of the program's own list of commands; those for a class too, if wanted."""
    lines = [re.match(rf"{'(?:class-)?' if classes else ''}cmd-(\S+) =(.*)", line) for line in FTL.read_text().splitlines()]
    return {wording.strip(): line[1] for line in lines if line for wording in line[2].split("|")}


def commands():
    """Every wording."""
    return sorted(wordings())


def negatives():
    """Everyday words and phrases that must not pass for a command, and answers, names and numbers."""
    return [line.strip() for line in (HERE / "negatives.txt").read_text().splitlines() if line.strip()]


def pieces(transcripts, count, seed=0):
    """`count` runs of two to four words from read sentences."""
    draw, out = random.Random(seed), []
    while len(out) < count:
        words = draw.choice(transcripts).lower().split()
        n = draw.randint(2, 4)
        if len(words) > n:
            at = draw.randrange(len(words) - n)
            out.append(" ".join(words[at:at + n]))
    return out


def draw(count, transcripts, seed=0):
    """`count` phrases: wordings of several words 50 %, of one 10 %, negatives 24 %, pieces of sentences 16 %. The people in training
    say single words only; without phrases of several words from here these are heard less well in noise (RUNS.md, runs 11 and 12)."""
    several = [wording for wording in commands() if " " in wording]
    rnd, groups = random.Random(seed), (several, CORE, negatives(), pieces(transcripts, max(1, count // 5), seed))
    return [rnd.choice(rnd.choices(groups, (50, 10, 24, 16))[0]) for _ in range(count)]

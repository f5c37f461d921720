"""What the synthetic voices say: all command wordings, words easily taken for them, and pieces of read sentences."""
import random
import re
from pathlib import Path

HERE = Path(__file__).resolve().parent
FTL = HERE / "../../src/speak/words/en/commands.ftl"
CORE = "yes no stop go ready done help again skip pause continue louder softer slower faster rest finish next repeat back".split()


def commands():
    """Every wording in the program's own list of commands."""
    lines = [line.split("=", 1)[1] for line in FTL.read_text().splitlines() if re.match(r"cmd-\S+ =", line)]
    return sorted({wording.strip() for line in lines for wording in line.split("|")})


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
    """`count` phrases: wordings 45 %, bare command words 15 %, negatives 22 %, pieces of sentences 18 %."""
    rnd, groups = random.Random(seed), (commands(), CORE, negatives(), pieces(transcripts, max(1, count // 5), seed))
    return [rnd.choice(rnd.choices(groups, (45, 15, 22, 18))[0]) for _ in range(count)]

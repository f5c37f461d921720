"""What the synthetic voices say: all command wordings, words easily taken for them, and pieces of read sentences."""
import random
import re
from pathlib import Path

HERE = Path(__file__).resolve().parent
WORDS = HERE / "../../src/speak/words"
FTL = WORDS / "en/commands.ftl"
# As `SAFETY` of src/session/listening.rs.
SAFETY = "help dizzy hurts chest-pain cant-breathe choking feel-sick".split()
CORE = "yes no stop go ready done help again skip pause continue louder softer slower faster rest finish next repeat back".split()


def wordings(classes=True):
    """wording -> command, of the program's own list of commands; those for a class too, if wanted."""
    lines = [re.match(rf"{'(?:class-)?' if classes else ''}cmd-(\S+) =(.*)", line) for line in FTL.read_text().splitlines()]
    return {wording.strip(): line[1] for line in lines if line for wording in line[2].split("|")}


def commands():
    """Every wording."""
    return sorted(wordings())


def safety():
    """What a person in trouble says, every wording."""
    return [wording for wording, command in wordings(classes=False).items() if command in SAFETY]


def lines_of(name):
    return [line.strip() for line in (HERE / name).read_text().splitlines() if line.strip()]


def negatives():
    """Everyday words and phrases that must not pass for a command, and answers, names and numbers."""
    return lines_of("negatives.txt")


def harmless():
    """What sounds like a safety phrase, or has its words, and is none: the program's own near-misses and more. The sentences of
    benches/command_ear/near.txt, by which this is judged, are not among them, but for those that are near-misses too."""
    return near_misses() + lines_of("harmless.txt")


def near_misses():
    """What the program listens for so as not to take it for a command."""
    line = next(line for line in FTL.read_text().splitlines() if line.startswith("near-misses ="))
    return [part.strip() for part in line.partition("=")[2].split("|")]


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


def of_language(language):
    """(what is listened for, what sounds like it and is nobody's command, everyday words and phrases) of another language than English:
    all wordings of commands and answers, the program's near-misses, and languages/LANGUAGE.txt."""
    lines = [line.partition(" = ") for line in (WORDS / language / "commands.ftl").read_text().splitlines()]
    parts = lambda text: [part.strip() for part in text.split("|")]
    listened = [w for key, _, text in lines if re.match("(class-)?cmd-|answer-", key) for w in parts(text)]
    near = [w for key, _, text in lines if key == "near-misses" for w in parts(text)]
    listened = [w for w in dict.fromkeys(listened) if "{" not in w]
    return listened, near, [w for w in lines_of(f"languages/{language}.txt") if w not in listened]


def said_by_us(language):
    """The sentences that the program says in a language, in pieces of up to seven words: nobody's command."""
    out, listened = [], of_language(language)[0]
    for name in ("session", "exercises"):
        for line in (WORDS / language / f"{name}.ftl").read_text().splitlines():
            key, _, text = line.partition(" = ")
            if re.match("[a-z]", key) and not key.endswith("-shown") and text and "{" not in text:
                out += [part.strip().lower() for part in re.split("[.,;:!?¿¡»«„“–]+", text) if part.strip()]
    return [w for w in dict.fromkeys(out) if len(w.split()) <= 7 and w not in listened]


def draw_of_language(language, count, seed=0):
    """`count` phrases: what is listened for 62 %, near-misses 4 %, everyday words and phrases 22 %, what the program says 12 %."""
    rnd = random.Random(seed)
    groups = (*of_language(language), said_by_us(language))
    return [rnd.choice(rnd.choices([g for g in groups if g], [w for g, w in zip(groups, (62, 4, 22, 12)) if g])[0]) for _ in range(count)]


SHARES = (34, 20, 12, 8, 14, 12)
# Of what is said over our own voice: mostly what is listened for there.
OVER_SHARES = (12, 56, 14, 10, 4, 4)


def draw(count, transcripts, seed=0, shares=SHARES):
    """`count` phrases by these shares of wordings of several words, safety phrases, what only sounds like them, wordings of one word,
    negatives, pieces of sentences. The people in training say single words only; without phrases of several words from here
    these are heard less well in noise (RUNS.md, runs 11 and 12)."""
    several = [wording for wording in commands() if " " in wording]
    # Run 15 heard "help" worst over our voice.
    trouble = [wording for wording in safety() for _ in range(4 if "help" in wording.split() else 1)]
    rnd, groups = random.Random(seed), (several, trouble, harmless(), CORE, negatives(), pieces(transcripts, max(1, count // 5), seed))
    return [rnd.choice(rnd.choices(groups, shares)[0]) for _ in range(count)]

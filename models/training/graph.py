"""Build the graph of a Vosk model: HCLr.fst, Gr.fst, words.txt. FST text is written here, OpenFst's command-line tools compile it
(Debian: libfst-tools).

usage: graph.py WORDS.txt OUT_DIR [UNK_ENTER 2] [UNK_PHONE 1.5] [IN_WORD_BLANK 0.1]

WORDS.txt has one word a line, or is the words.txt of another model. Costs are natural-log units."""
import glob
import math
import os
import subprocess
import sys
import tempfile

from export import forward, self_loop
from phones import PHONES, prons

UNK = "[unk]"


def _shell(command, folder):
    subprocess.run(["bash", "-c", "set -o pipefail; " + command], check=True, cwd=folder,
                   env=dict(os.environ, LD_LIBRARY_PATH=folder))


class Writer:
    """Arcs as text: transition-ids in, word numbers out."""

    def __init__(self, blank_cost):
        self.lines, self.states, self.blank_cost = [], 0, blank_cost

    def state(self):
        self.states += 1
        return self.states - 1

    def arc(self, a, b, ilabel=0, olabel=0, cost=0.0):
        self.lines.append(f"{a} {b} {ilabel} {olabel} {cost:g}")

    def phone(self, sources, name, olabel=0, cost=0.0):
        """A new state for a phone, entered from each source."""
        n = self.state()
        for s in sources:
            self.arc(s, n, forward(name), olabel, cost)
        self.arc(n, n, self_loop(name))
        return n

    def blank(self, n):
        """A new state for the blank inside a word. It costs a little, else an unfinished word can outlast the silence after it."""
        b = self.state()
        self.arc(n, b, forward("BLK_I"), 0, self.blank_cost)
        self.arc(b, b, self_loop("BLK_I"), 0, self.blank_cost)
        return b


def _names(phones):
    return [phones[0] + "_S"] if len(phones) == 1 else [phones[0] + "_B", *(p + "_I" for p in phones[1:-1]), phones[-1] + "_E"]


def hcl(lexicon, number, unk_enter, unk_phone, blank_cost):
    """The word tree with blanks, and a loop over all phones for unknown speech. The label stands where the word is unique; since the
    last phone has a form of its own no word begins another, so neither disambiguation nor determinisation is needed."""
    w = Writer(blank_cost)
    after, silence, before = w.state(), w.state(), w.state()
    w.arc(after, silence, forward("SIL"))
    w.arc(silence, silence, self_loop("SIL"))
    w.arc(after, before)
    w.arc(silence, before)
    tree = {}
    for word, phones in lexicon:
        node = tree
        for name in _names(phones):
            node = node.setdefault(name, {})
        node.setdefault(None, []).append(number[word])

    def below(node):
        return [i for key, sub in node.items() for i in (sub if key is None else below(sub))]

    def grow(node, any_source, blank_source, last, labelled):
        for name, sub in node.items():
            if name is None:
                continue
            ids = sorted(set(below(sub)))
            label = ids[0] if not labelled and len(ids) == 1 else 0
            source = blank_source if last == name[:-2] else any_source        # equal phones need a blank between
            if name[-1] in "ES":
                for i in ([0] if labelled else ids):                          # homophones: an arc each
                    w.arc(w.phone(source, name, i), after)
            else:
                n = w.phone(source, name, label)
                b, join = w.blank(n), w.state()
                w.arc(n, join)
                w.arc(b, join)
                grow(sub, [join], [b], name[:-2], labelled or label != 0)
    grow(tree, [before], [before], None, False)
    join = w.state()
    for p in PHONES:
        for source, form, label, cost in ((before, "_B", number[UNK], unk_enter + unk_phone), (join, "_I", 0, unk_phone)):
            n = w.phone([source], p + form, label, cost)
            w.arc(n, join)
            w.arc(w.blank(n), join)
        w.arc(w.phone([join], p + "_E", 0, unk_phone), after)
        w.arc(w.phone([before], p + "_S", number[UNK], unk_enter + unk_phone), after)
    return "\n".join(w.lines + [f"{after} 0", f"{silence} 0"]) + "\n"


def build(words, out, unk_enter=2.0, unk_phone=1.5, blank_cost=0.1):
    graph = os.path.abspath(f"{out}/graph")
    os.makedirs(graph, exist_ok=True)
    lexicon = [(w, p) for w in words for p in prons(w, guess=True)]
    vocabulary = ["<eps>", UNK] + sorted(set(words))
    number = {w: i for i, w in enumerate(vocabulary)}
    sys.setrecursionlimit(10000)
    with tempfile.TemporaryDirectory() as tmp:
        # Debian has no plug-in file for the look-ahead type: a link by the name that OpenFst looks for
        os.symlink(glob.glob("/usr/lib/*/libfstlookahead.so.*")[0], f"{tmp}/olabel_lookahead-fst.so")
        open(f"{tmp}/hcl.txt", "w").write(hcl(lexicon, number, unk_enter, unk_phone, blank_cost))
        cost = math.log(len(vocabulary))
        open(f"{tmp}/g.txt", "w").write("".join(f"0 0 {i} {i} {cost:g}\n" for i in range(1, len(vocabulary))) + f"0 {cost:g}\n")
        _shell("fstcompile hcl.txt | fstconnect | fstarcsort --sort_type=olabel > HCL.fst", tmp)
        _shell(f"fstconvert --fst_type=olabel_lookahead --save_relabel_opairs=relabel HCL.fst > {graph}/HCLr.fst", tmp)
        # the conversion renumbers words: the same pairs go to G, and to words.txt
        _shell("fstcompile g.txt | fstrelabel --relabel_ipairs=relabel --relabel_opairs=relabel | fstarcsort --sort_type=ilabel"
               f" | fstconvert --fst_type=const > {graph}/Gr.fst", tmp)
        pairs = dict(map(int, line.split()) for line in open(f"{tmp}/relabel"))
    renumbered = {w: pairs.get(i, i) for w, i in number.items()}
    assert len(set(renumbered.values())) == len(renumbered) and renumbered["<eps>"] == 0
    open(f"{graph}/disambig_tid.int", "w").close()
    with open(f"{graph}/words.txt", "w") as f:
        for w, i in sorted(renumbered.items(), key=lambda t: t[1]):
            f.write(f"{w} {i}\n")


def read_words(path):
    return [w for w in (line.split()[0] for line in open(path) if line.strip()) if w not in ("<eps>", UNK)]


if __name__ == "__main__":
    build(read_words(sys.argv[1]), sys.argv[2], *map(float, sys.argv[3:6]))

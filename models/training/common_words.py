"""The words of the word graph: those of an earlier graph, and the commonest of English.

usage: common_words.py OLD/graph/words.txt [COUNT 20000] > WORDS.txt

The order of frequency is wordfreq's (Speer 2022, doi 10.5281/zenodo.7199437; package Apache 2.0, its data CC BY-SA 4.0). Only words of
letters, with one apostrophe at most, count. A word that CMUdict lacks gets its pronunciation by rule (`phones.py`)."""
import re
import sys

from graph import read_words

WORD = re.compile(r"[a-z]+('[a-z]+)?")


def commonest(count):
    from wordfreq import iter_wordlist
    words = (word for word in iter_wordlist("en") if WORD.fullmatch(word))
    return [word for word, _ in zip(words, range(count))]


if __name__ == "__main__":
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 20000
    print("\n".join(sorted(set(read_words(sys.argv[1])) | set(commonest(count)))))

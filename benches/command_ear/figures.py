#!/usr/bin/env python3
"""Turns the rows of `tidecount hear --labels … --json --details` (standard input; of several runs one after the other) into figures.

    figures.py CONDITION [--talk FILE]    CONDITION is the middle of each id; --talk adds false actions and hours to FILE
    figures.py --talk FILE                the false actions an hour of all talk in FILE
"""
import json
import math
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent))
from figure import figure, share  # noqa: E402

# Phrases whose hits and delay go on record, by condition.
PHRASES = {"quiet": ["stop", "yes", "no"], "10db": ["yes", "no"]}


COUNTS = ("said", "hits", "asked", "substituted", "other", "other_taken", "other_hours", "false_actions", "false_questions")


def merged(lines):
    """The rows of all runs, those of one group and phrase added up, with the delays of their hits."""
    rows, delays = {}, {}
    for line in lines:
        if line["kind"] == "evaluation":
            row = rows.setdefault((line["group"], line.get("phrase")), {"group": line["group"], "phrase": line.get("phrase"), **dict.fromkeys(COUNTS, 0)})
            for count in COUNTS:
                row[count] += line[count]
        elif line["outcome"] == "hit":
            found = [heard["decided_s"] for heard in line["heard"] if heard["text"] == line["said"]]
            for phrase in (line["said"], None):
                delays.setdefault((line["group"], phrase), []).extend(at - line["word_end_s"] for at in found[:1])
    for key, row in rows.items():
        found = sorted(delays.get(key, []))
        row["delay_median_s"], row["delay_95_s"] = (round(found[max(0, math.ceil(p * len(found)) - 1)], 3) if found else None for p in (.5, .95))
    return list(rows.values())


def tell(row):
    """All of a row, for people."""
    what = f"{row['group']}, {row['phrase']}" if row.get("phrase") else row["group"]
    if row["said"]:
        print(f"{what}: {100 * row['hits'] / row['said']:.1f} % ({row['hits']} of {row['said']}), asked {row['asked']}, "
              f"another {row['substituted']}, delay {row['delay_median_s']} s, 95 % {row['delay_95_s']} s")
    if row["other"]:
        print(f"{what}: {row['false_actions'] / row['other_hours']:.2f} an hour: "
              f"{row['false_actions']} in {row['other_hours']:.2f} h, {row['other_taken']} of {row['other']} recordings; asked {row['false_questions']}")


def one_phrase(condition, row):
    name, phrase = f"command.{condition}", row["phrase"]
    if condition == "quiet":
        share(f"{name}.{phrase}.hit", row["hits"], row["said"])
    figure(f"{name}.{phrase}.median", row["delay_median_s"])
    if (condition, phrase) == ("quiet", "stop"):
        figure(f"{name}.{phrase}.p95", row["delay_95_s"])


def groups(condition, rows):
    """Figures of whole groups; the ids say which."""
    name = f"command.{condition}"

    def sums(start, *fields):
        found = [row for row in rows if row["group"].startswith(start)]
        return [sum(row[field] or 0 for row in found) for field in fields]

    if condition == "voices":
        share(f"{name}.hit", *sums("voices", "hits", "said"))
    elif condition.startswith("safety"):
        # Asked about, help comes too: silence is a yes.
        hits, asked, said = sums("voices", "hits", "asked", "said")
        share(f"{name}.hit", hits + asked, said)
    elif condition == "near":
        share(f"{name}.taken", *sums("", "other_taken", "other"))
    elif condition == "sounds":
        figure(f"{name}.false", *sums("", "other_taken", "other"))
    elif condition not in ("talk", "resting"):
        hits, said, another = sums("people: one word", "hits", "said", "substituted")
        share(f"{name}.hit", hits, said)
        figure(f"{name}.other", *sums("people:", "other_taken", "other"))
        if condition == "babble":
            share(f"{name}.another", another, said)
        if condition == "quiet":
            figure(f"{name}.wake", *sums("wake words", "other_taken", "other"))


def main():
    arguments, talk = sys.argv[1:], None
    if "--talk" in arguments:
        at = arguments.index("--talk")
        talk = pathlib.Path(arguments[at + 1])
        del arguments[at:at + 2]
    if not arguments:
        lines = [line.split("\t") for line in talk.read_text(encoding="utf-8").splitlines()] if talk.is_file() else []
        hours = sum(float(hours) for _, hours in lines)
        print(f"{hours:.2f} h of talk")
        return figure("command.talk.false", sum(int(false) for false, _ in lines) / hours if hours else None)
    condition = arguments[0]
    rows = merged(map(json.loads, sys.stdin))
    for row in rows:
        tell(row)
        if row.get("phrase") in PHRASES.get(condition, []) and row["said"] and row["group"].startswith("people"):
            one_phrase(condition, row)
    whole = [row for row in rows if row.get("phrase") is None]
    groups(condition, whole)
    if talk:
        with open(talk, "a", encoding="utf-8") as file:
            file.writelines(f"{row['false_actions']}\t{row['other_hours']}\n" for row in whole if row["other"])


if __name__ == "__main__":
    main()

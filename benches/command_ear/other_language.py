#!/usr/bin/env python3
"""For other_language.sh: other_language.py LANGUAGE CLIPS DATA OUT writes the list and the phrases; other_language.py tell reads the rows of
`tidecount hear --labels … --json --details` and shows them by group, and each phrase that was not always heard."""
import csv
import json
import pathlib
import re
import sys

import figures

ROOT = pathlib.Path(__file__).resolve().parents[2]
# As in evaluate.sh, and `SAFETY` of src/session/listening.rs.
STATE = "yes no stop ready again pause skip how-long help finish".split()
SAFETY = "dizzy hurts chest-pain cant-breathe choking feel-sick".split()
# The same words of English would count.
SAME = {"de": ("stop", "pause"), "es": ("no",)}


def main(language, clips, data, out):
    lines = [line.partition(" = ") for line in (ROOT / f"src/speak/words/{language}/commands.ftl").read_text().splitlines()]
    wordings = {key.removeprefix("cmd-"): [w.strip() for w in text.split("|")] for key, _, text in lines if key.startswith("cmd-")}
    wanted = [wordings[command] for command in SAFETY + STATE]
    (pathlib.Path(out) / "phrases").write_text(",".join("|".join(choice) for choice in wanted))
    safety = {w for command in SAFETY for w in wordings[command]}
    listened, known = {w for choice in wanted for w in choice}, {w for choice in wordings.values() for w in choice}
    rows = []
    for line in open(f"{clips}/list.tsv"):
        name, _, text = line.rstrip("\n").split("\t")
        if text in listened:
            rows.append((f"{clips}/{name}", text, "safety" if text in safety else "commands"))
        elif text not in known and not re.match("[0-9]", text):
            rows.append((f"{clips}/{name}", "", "other words and sentences"))
    index = pathlib.Path(data) / "index.tsv"
    if index.exists():
        for row in csv.DictReader(open(index), delimiter="\t", quoting=csv.QUOTE_NONE):
            spelt = row["set"] == "an4" and not any(word in row["label"].lower().split() for word in SAME[language])
            if spelt or row["set"] == "coswara_subset" and "counting" in row["label"]:
                rows.append((f"{data}/{row['file']}", "", "English: " + ("spelling" if spelt else "counting")))
    with open(f"{out}/list.tsv", "w") as file:
        file.write("path\tlabel\tgroup\n")
        file.writelines("\t".join(row) + "\n" for row in rows)
    print({group: sum(row[2] == group for row in rows) for group in sorted({row[2] for row in rows})})


def tell(lines):
    for row in figures.merged(json.loads(line) for line in lines):
        if not row["phrase"] or row["hits"] < row["said"]:
            figures.tell(row)


if __name__ == "__main__":
    tell(sys.stdin) if sys.argv[1:] == ["tell"] else main(*sys.argv[1:])

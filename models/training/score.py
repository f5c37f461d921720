"""Tables from the lines of evaluate.py.

usage: score.py FILE.jsonl [CONFIDENCE 0.8]"""
import json
import sys
from collections import defaultdict

SPOKEN = ("people", "an4", "neural", "slt")          # sets whose label is said and wanted


def table(records, confidence):
    """Rows (condition, set, model) -> counts: clips, hours, heard, asked (0.5 to the confidence), taken for another."""
    rows = defaultdict(lambda: defaultdict(float))
    for r in records:
        name = f"{r['set']} {r['label']}" if r["set"] == "people" else r["set"]
        if r["grammar"] == "fast":
            name = "fast path: " + name
        row = rows[r["condition"], name, r["model"]]
        right = [c for p, c in r["heard"] if p == r["label"] and r["set"] in SPOKEN]
        wrong = [c for p, c in r["heard"] if p != r["label"] or r["set"] not in SPOKEN]
        row["clips"] += 1
        row["hours"] += r["s"] / 3600
        row["heard"] += any(c >= confidence for c in right)
        row["asked"] += any(c >= .5 for c in right) and not any(c >= confidence for c in right)
        row["taken"] += sum(c >= confidence for c in wrong)
        row["cpu"] += r["cpu"]
        if r["first"] and r["first"][0] == r["label"]:
            row.setdefault("delays", []) if isinstance(row.get("delays"), list) else row.update(delays=[])
            row["delays"].append(r["first"][1] - r["end_s"])
    return rows


def main(path, confidence=.8):
    rows = table([json.loads(line) for line in open(path)], confidence)
    print("| condition | set | model | clips | heard | asked | taken | per hour | partial stays after the word's end, median, 90 % | RTF |")
    print("|---|---|---|---|---|---|---|---|---|---|")
    for (condition, name, model), r in sorted(rows.items()):
        d = sorted(r.get("delays") or [])
        delay = f"{d[len(d) // 2]:.2f}, {d[int(.9 * (len(d) - 1))]:.2f} s" if d else ""
        print(f"| {condition} | {name} | {model} | {r['clips']:.0f} | {r['heard']:.0f} | {r['asked']:.0f} | {r['taken']:.0f} "
              f"| {r['taken'] / r['hours']:.0f} | {delay} | {r['cpu'] / r['clips']:.3f} |")


if __name__ == "__main__":
    main(sys.argv[1], *map(float, sys.argv[2:3]))

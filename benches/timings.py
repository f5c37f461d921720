#!/usr/bin/env python3
"""What `cargo build --timings` says: the crates that take longest, and all added up.

    benches/timings.py target/cargo-timings/cargo-timing.html [--sum]     --sum: the sum alone, s
"""
import collections
import json
import re
import sys


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    page = open(sys.argv[1], encoding="utf-8").read()
    found = re.search(r"const UNIT_DATA = (\[.*?\]);", page, re.DOTALL)
    if not found:
        sys.exit(f"{sys.argv[1]}: no page of cargo build --timings")
    units = json.loads(found.group(1))
    total = sum(unit["duration"] for unit in units)
    if "--sum" in sys.argv:
        print(f"{total:.1f}")
        return
    took = collections.Counter()
    for unit in units:
        took[unit["name"]] += unit["duration"]
    typst = sum(seconds for name, seconds in took.items() if name.startswith("typst"))
    print(f"{total:.0f} s in all; {max(unit['start'] + unit['duration'] for unit in units):.0f} s by the clock; crates named typst… {typst:.0f} s")
    for name, seconds in took.most_common(15):
        print(f"{seconds:7.1f} s  {name}")


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Writes THIRD-PARTY.md: every library, model, font and data set that is not the project's own, with licence and credit.

    docs/third-party.py             writes the page
    docs/third-party.py --check     changes nothing; fails and says what differs if the page is out of date
    docs/third-party.py --texts DIR also copies each Rust library's licence files into DIR, to ship beside a built program

Rust libraries come from `cargo metadata`, offline: run `cargo fetch` once on a new machine. Everything else comes from
third-party.toml beside this script, which is kept by hand.
"""

import difflib
import json
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent
PAGE = ROOT / "THIRD-PARTY.md"
# The system that setup.sh sets up. What Cargo takes only for other systems gets a table of its own.
LINUX = "x86_64-unknown-linux-gnu"
MISSING = "no licence named: look at it before you use it"


def metadata(*more):
    command = ["cargo", "metadata", "--format-version", "1", "--all-features", "--offline", "--locked", *more]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{done.stderr.strip()}\nthird-party: cargo metadata failed; run `cargo fetch --locked` once, then try again")
    return json.loads(done.stdout)


def reached(found, with_tests):
    """Ids of the packages that the workspace needs: to build and run, or also to test."""
    nodes = {node["id"]: node for node in found["resolve"]["nodes"]}
    members = set(found["workspace_members"])
    seen, waiting = set(), list(members)
    while waiting:
        id_ = waiting.pop()
        if id_ in seen:
            continue
        seen.add(id_)
        for dependency in nodes[id_]["deps"]:
            kinds = {kind["kind"] for kind in dependency["dep_kinds"]}
            if kinds - {"dev"} or (with_tests and id_ in members):
                waiting.append(dependency["pkg"])
    return seen - members


def licence_files(package):
    folder = Path(package["manifest_path"]).parent
    names = ("licen", "copying", "copyright", "notice", "unlicense")
    return sorted(path for path in folder.iterdir() if path.is_file() and path.name.lower().startswith(names))


def without_addresses(names):
    named = (re.sub(r"\s*<[^>]*>|\s*\([^)]*@[^)]*\)", "", name).strip() for name in names)
    return [re.sub(r"@\S+", "", name) for name in named]


def credit(package):
    """Who made it: the authors it names, else the first copyright line of its licence, else where it comes from."""
    names = [name for name in without_addresses(package["authors"]) if name]
    if names:
        return ", ".join(names[:4]) + (" and others" if len(names) > 4 else "")
    for path in licence_files(package):
        for line in path.read_text(errors="replace").splitlines():
            line = line.strip(" #/*\t")
            if re.match(r"copyright\b.*\d{4}", line, re.I) and "yyyy" not in line and "name of" not in line:
                return re.sub(r"\s*<[^>]*>", "", line).rstrip(".")
    return f"its authors, {package['repository']}" if package["repository"] else "its authors"


def licence(package):
    named = package["license"] or BY_HAND.get(package["name"])
    return named.replace("/", " OR ").replace("  ", " ") if named else MISSING


def cell(text):
    return " ".join(text.split()).replace("|", "\\|")


def rust_table(packages):
    lines = ["| library | version | licence | credit |", "| --- | --- | --- | --- |"]
    for package in sorted(packages, key=lambda p: (p["name"], [int(n) for n in re.findall(r"\d+", p["version"])])):
        lines.append(f"| {package['name']} | {package['version']} | {cell(licence(package))} | {cell(credit(package))} |")
    return lines


def hand_kept(entries):
    lines = ["| what | version | licence | credit | where and what for |", "| --- | --- | --- | --- | --- |"]
    for entry in entries:
        lines.append("| " + " | ".join(cell(entry[key]) for key in ("name", "version", "licence", "credit", "use")) + " |")
    return lines


def page(by_id, linked, elsewhere, tests):
    parts = [
        "# Third-party work",
        "",
        "Made by `docs/third-party.py` from `Cargo.lock` and `docs/third-party.toml`. Do not edit it; run that command again.",
        "`docs/third-party.py --check` fails if this page is out of date. Where several licences are named with OR, each may be chosen.",
        "[deny.toml](deny.toml) says which licences are allowed, and why. The licence of the project itself is its owner's to choose.",
    ]
    for section in KEPT["section"]:
        parts += ["", f"## {section['title']}", "", *section.get("note", "").strip().splitlines()]
        parts += [""] * bool(section.get("note")) + hand_kept(section["entry"])
    for title, ids in [
        ("Rust libraries in the program, or used to build it", linked),
        ("Rust libraries for other systems than Linux on x86-64", elsewhere),
        ("Rust libraries that only tests and benchmarks use", tests),
    ]:
        parts += ["", f"## {title}", "", f"{len(ids)} libraries.", ""] + rust_table(by_id[id_] for id_ in ids)
    return "\n".join(parts) + "\n"


def main(arguments):
    everywhere, here = metadata(), metadata("--filter-platform", LINUX)
    by_id = {package["id"]: package for package in everywhere["packages"]}
    linked = reached(here, with_tests=False)
    tests = reached(here, with_tests=True) - linked
    elsewhere = reached(everywhere, with_tests=True) - linked - tests
    unnamed = sorted(by_id[id_]["name"] for id_ in linked | tests | elsewhere if licence(by_id[id_]) == MISSING)
    if unnamed:
        sys.exit(f"third-party: no licence named for {', '.join(unnamed)}; read it and add it to docs/third-party.toml")
    new = page(by_id, linked, elsewhere, tests)
    if arguments[:1] == ["--texts"] and len(arguments) == 2:
        for id_ in linked:
            folder = Path(arguments[1]) / f"{by_id[id_]['name']}-{by_id[id_]['version']}"
            for path in licence_files(by_id[id_]):
                folder.mkdir(parents=True, exist_ok=True)
                shutil.copy(path, folder / path.name)
    elif arguments == ["--check"]:
        old = PAGE.read_text() if PAGE.exists() else ""
        if old != new:
            sys.stdout.writelines(difflib.unified_diff(old.splitlines(True), new.splitlines(True), "THIRD-PARTY.md", "as it should be", n=0))
            sys.exit("third-party: THIRD-PARTY.md is out of date; run docs/third-party.py")
        return
    elif arguments:
        sys.exit(__doc__)
    PAGE.write_text(new)


KEPT = tomllib.loads((HERE / "third-party.toml").read_text())
BY_HAND = KEPT["licence_of_crate"]

if __name__ == "__main__":
    main(sys.argv[1:])

#!/usr/bin/env python3
"""Draws the crates and who depends on whom (docs/crates.svg), and looks for circles between files.

    docs/architecture.py           draws the picture
    docs/architecture.py --check   draws nothing; fails where the picture is stale, a circle stands between files, or a pure crate
                                   depends on a device, a file, a clock or a runtime

Needs Python 3.11 and nothing else. What it reads are the Cargo.toml files and the `use` lines of the sources: tests are left out.
"""

import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PICTURE = ROOT / "docs" / "crates.svg"

# Crates that only work out what they are given, and all that they may depend on besides each other.
PURE = {"model", "statistics", "routine", "session", "attend", "progress", "typeface", "pictures", "report", "export", "handover"}
HARMLESS = {
    "chrono", "csv", "ed25519-dalek", "icalendar", "jiff", "maud", "miette", "plotters", "rust-embed", "schemars", "serde", "serde_json",
    "sha2", "statrs", "strsim", "textwrap", "thiserror", "toml", "toml_edit",
}


def crates():
    """Every crate with its folder and the names of its dependencies."""
    found = {}
    for manifest in [ROOT / "Cargo.toml", *sorted((ROOT / "src").glob("*/Cargo.toml"))]:
        table = tomllib.loads(manifest.read_text())
        name = table["package"]["name"]
        folder = ROOT / "src" / "tidecount" if manifest.parent == ROOT else manifest.parent
        found[name] = (folder, set(table.get("dependencies", {})))
    return found


def layers(found):
    """Puts each crate one floor above the highest one that it depends on."""
    floor = {}

    def of(name):
        if name not in floor:
            below = [of(d) for d in found[name][1] if d in found]
            floor[name] = 1 + max(below, default=0)
        return floor[name]

    for name in found:
        of(name)
    return floor


def direct(found):
    """Dependencies without those that another dependency brings anyway."""

    def all_below(name):
        below = {d for d in found[name][1] if d in found}
        return below.union(*(all_below(d) for d in below))

    arrows = {}
    for name, (_, deps) in found.items():
        own = {d for d in deps if d in found}
        brought = set().union(*(all_below(d) for d in own))
        arrows[name] = sorted(own - brought)
    return arrows


def picture(found):
    floor, arrows = layers(found), direct(found)
    rows = {}
    for name in sorted(found):
        rows.setdefault(floor[name], []).append(name)
    width, box_w, box_h, step = 1200, 118, 34, 92
    height = step * len(rows) + 20
    place = {}
    for row, names in rows.items():
        gap = width / (len(names) + 1)
        for n, name in enumerate(names):
            place[name] = (gap * (n + 1), height - step * row + 30)
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" role="img" aria-labelledby="t">',
        '<title id="t">The crates; an arrow points from a crate to one that it depends on. Pure crates have a double border.</title>',
        '<defs><marker id="a" viewBox="0 0 8 8" refX="8" refY="4" markerWidth="7" markerHeight="7" orient="auto">'
        '<path d="M0 0 8 4 0 8z" fill="#555"/></marker></defs>',
        f'<rect width="{width}" height="{height}" fill="#fff"/>',
    ]
    for name, below in sorted(arrows.items()):
        x, y = place[name]
        for other in below:
            u, v = place[other]
            out.append(
                f'<path d="M{x:.0f} {y + box_h / 2:.0f} L{u:.0f} {v - box_h / 2:.0f}" stroke="#555" fill="none" marker-end="url(#a)"/>'
            )
    for name, (x, y) in sorted(place.items()):
        left, top = x - box_w / 2, y - box_h / 2
        out.append(f'<rect x="{left:.0f}" y="{top:.0f}" width="{box_w}" height="{box_h}" rx="5" fill="#f4f4ee" stroke="#333"/>')
        if name in PURE:
            out.append(
                f'<rect x="{left + 3:.0f}" y="{top + 3:.0f}" width="{box_w - 6}" height="{box_h - 6}" rx="3" fill="none" stroke="#333"/>'
            )
        out.append(f'<text x="{x:.0f}" y="{y + 5:.0f}" font-family="sans-serif" font-size="15" text-anchor="middle">{name}</text>')
    out.append("</svg>")
    return "\n".join(out) + "\n"


def module_of(folder, path):
    parts = list(path.relative_to(folder).with_suffix("").parts)
    if parts[-1] in ("mod", "lib", "main"):
        parts.pop()
    return tuple(parts)


def imports(folder):
    """Which file of a crate takes names from which other file of it."""
    files = {}
    for path in folder.rglob("*.rs"):
        parts = path.relative_to(folder).parts
        if "tests" in parts or path.name in ("tests.rs", "build.rs", "main.rs"):
            continue
        files[module_of(folder, path)] = path
    arrows = {}
    for module, path in files.items():
        text = re.split(r"\n#\[cfg\(test\)\]\nmod ", path.read_text())[0]
        text = re.sub(r"//[^\n]*", "", text)
        wanted = set()
        for use in re.findall(r"\buse\s+((?:crate|super)::[^;]+);", text):
            use = re.sub(r"\sas\s+\w+", "", use)
            wanted.update(spelt_out(re.sub(r"\s+", "", use)))
        wanted.update(re.findall(r"\b((?:crate|super)(?:::[a-z_0-9]+)+)::", text))
        # A folder that was imported by name, and what is taken from a file in it: `use crate::demo; … demo::command::DemoArgs`.
        for path_of_use in list(wanted):
            last = path_of_use.rsplit("::", 1)[-1]
            wanted.update(f"{path_of_use}::{inner}" for inner in re.findall(rf"(?<![\w:]){last}::([a-z_0-9]+)::", text))
        found = set()
        for path_of_use in wanted:
            names = path_of_use.split("::")
            if names[0] == "crate":
                base, names = (), names[1:]
            else:
                base = module
                while names and names[0] == "super":
                    base, names = base[:-1], names[1:]
            full = base + tuple(names)
            while full and full not in files:
                full = full[:-1]
            # A name that a lib.rs or mod.rs hands on belongs to no file of its own here.
            if full and full != module and full[: len(module)] != module:
                found.add(full)
        arrows[module] = found
    return arrows


def spelt_out(use):
    """`a::{b,c::d}` as `a::b` and `a::c::d`."""
    begin = use.find("{")
    if begin < 0:
        return [use]
    head, inner, depth, part, out = use[:begin], use[begin + 1 : -1], 0, "", []
    for letter in inner + ",":
        depth += {"{": 1, "}": -1}.get(letter, 0)
        if letter == "," and depth == 0:
            if part:
                out += spelt_out(head + part)
            part = ""
        else:
            part += letter
    return out


def circles(arrows):
    """Groups of files that can each be reached from the other (Tarjan's strongly connected components)."""
    index, low, stack, on, out = {}, {}, [], set(), []

    def visit(node):
        index[node] = low[node] = len(index)
        stack.append(node)
        on.add(node)
        for other in arrows.get(node, ()):
            if other not in index:
                visit(other)
                low[node] = min(low[node], low[other])
            elif other in on:
                low[node] = min(low[node], index[other])
        if low[node] == index[node]:
            group = []
            while True:
                last = stack.pop()
                on.discard(last)
                group.append(last)
                if last == node:
                    break
            if len(group) > 1:
                out.append(sorted("/".join(g) for g in group))

    for node in list(arrows):
        if node not in index:
            visit(node)
    return out


def main():
    found = crates()
    drawn = picture(found)
    if "--check" not in sys.argv:
        PICTURE.write_text(drawn)
        return 0
    faults = []
    if not PICTURE.exists() or PICTURE.read_text() != drawn:
        faults.append("docs/crates.svg is stale: run docs/architecture.py")
    for name, (folder, deps) in found.items():
        for group in circles(imports(folder)):
            faults.append(f"{name}: a circle of files: {', '.join(group)}")
        if name in PURE:
            for other in sorted(deps - PURE - HARMLESS):
                faults.append(f"{name} is pure, but depends on {other}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())

"""Puts down a figure from Python, as the crate `figures` does from Rust: prints it and adds it to the file that TIDECOUNT_FIGURES names."""
import os


def figure(name, value, sample=None):
    """`name`: its id in figures.toml. No value: nothing was measured."""
    value = float("nan") if value is None else value
    print(f"= {name} | {value}" + ("" if sample is None else f" (of {sample})"), flush=True)
    path = os.environ.get("TIDECOUNT_FIGURES")
    if path:
        with open(path, "a", encoding="utf-8") as file:
            file.write(f"{name}\t{value}" + ("" if sample is None else f"\t{sample}") + "\n")


def share(name, part, whole):
    """`part` of `whole` in percent."""
    figure(name, 100 * part / whole if whole else None, whole)

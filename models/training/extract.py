"""Take the recordings of three public repositories out of their git histories, laid out as pack.py reads them: Coswara's (commit c06e422
and before: SPEAKER_what.flac), custom-speech-commands-dataset's (word__file) and ESC-10's (kind_file). What stands in the index of the
tests is left out; of Coswara, whoever has a recording there.

usage: extract.py COSWARA_GIT CUSTOM_GIT ESC_GIT TESTS_INDEX.tsv OUT_DIR"""
import csv
import io
import os
import re
import subprocess
import sys

import soundfile as sf


def git(folder, *args):
    return subprocess.run(["git", "-C", folder, *args], capture_output=True, check=True).stdout


def fullest(folder):
    """The commit with the most files: the sound was taken out of the newest ones."""
    commits = git(folder, "log", "--all", "--format=%H").decode().split()
    return max(commits, key=lambda c: len(files(folder, c)))


def files(folder, commit):
    return git(folder, "ls-tree", "-r", "-z", "--name-only", commit).decode().rstrip("\0").split("\0")


def read(folder, commit, path):
    """A file's bytes, or nothing where the copy of the repository lacks it."""
    try:
        return git(folder, "cat-file", "blob", f"{commit}:{path}")
    except subprocess.CalledProcessError:
        return None


def coswara(folder, tested, out):
    commit = fullest(folder)
    speakers = {path.split("/")[-2] for path in tested if "Extracted_data" in path}
    for path in files(folder, commit):
        parts = path.split("/")
        if not path.endswith(".wav") or parts[-2] in speakers or not re.match("counting|vowel|cough|breathing", parts[-1]):
            continue
        data = read(folder, commit, path)
        try:
            x, rate = sf.read(io.BytesIO(data or b""))
        except sf.LibsndfileError:
            print("not readable:", path)
            continue
        if len(x):
            sf.write(f"{out}/{parts[-2]}_{parts[-1][:-4]}.flac", x, rate)


def plain(folder, tested, out, name_of):
    commit = fullest(folder)
    for path in files(folder, commit):
        if path.endswith((".wav", ".ogg")) and path not in tested and (data := read(folder, commit, path)):
            with open(f"{out}/{name_of(path.split('/'))}", "wb") as file:
                file.write(data)


def main(coswara_git, custom_git, esc_git, tests, out):
    rows = list(csv.DictReader(open(tests), delimiter="\t", quoting=csv.QUOTE_NONE))
    tested = {r["path_in_repository"] for r in rows}
    for name in ("coswara", "custom", "esc"):
        os.makedirs(f"{out}/{name}", exist_ok=True)
    coswara(coswara_git, tested, f"{out}/coswara")
    plain(custom_git, tested, f"{out}/custom", lambda parts: f"{parts[-2]}__{parts[-1]}")
    plain(esc_git, tested, f"{out}/esc", lambda parts: f"{parts[-2].split(' - ')[-1].replace(' ', '_')}_{parts[-1]}")
    for name in ("coswara", "custom", "esc"):
        print(name, len(os.listdir(f"{out}/{name}")))


if __name__ == "__main__":
    main(*sys.argv[1:])

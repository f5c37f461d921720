"""Judge models by the program itself (`tidecount hear --labels`), its whole rule, over people's words in five folds by speaker.

usage: judge.py lists DATA_DIR FOLDS.json READERS_DIR LISTS_DIR [VOICES_DIR]
       judge.py run PROGRAM DATA_DIR LISTS_DIR OUT.jsonl PROCESSES CONDITION[,...] NAME=MODEL_DIR...
       judge.py table OUT.jsonl FOLDS.json

A folder of a model may hold {fold}: each fold's recordings are then heard with the model that never met their speakers. NAME=MODEL_DIR+EAR_DIR
names a second ear too (likewise; `none` for none). With JUDGE_TRACES=DIR set, what the ears considered goes to DIR/NAME-CONDITION-FOLD.jsonl. Recordings that
are in no fold (other-words, counting, readers) are dealt to the folds in turn. READERS_DIR holds the held-out readers' sentences, VOICES_DIR
all wordings by synthetic voices (VOICE-how_long.wav), and phrases near to them (VOICE-not-how_strong.wav). These are heard in conditions
"phrases", "phrases10db", "phrasesbabble", with all that a session listens for where the wording may be said."""
import csv
import json
import os
import subprocess
import sys
import tempfile
import time
from collections import Counter, defaultdict
from concurrent.futures import ThreadPoolExecutor

import phrases
from folds import FOLDS

STATE = "yes,no,stop,ready,again,pause,skip,how long,help,finish"
PHRASES = STATE.split(",")
# As src/session/listening.rs has them, each command in the first that lists it; stop and pause are listened for in every state.
STATES = {"ready": "stop pause ready again skip go-back how-long how-did why help rest slower louder softer dizzy hurts",
          "repeated": "stop pause done ready again skip how-long why help rest louder softer dizzy hurts",
          "paced": "stop pause slower faster again skip go-back how-long help rest louder softer dizzy hurts",
          "halted": "stop pause go-on ready again skip go-back finish how-long how-did why help louder softer dizzy hurts",
          "yes-no": "stop pause yes no again help louder softer dizzy hurts", "question": "stop pause hint again skip help rest hurts dizzy"}
COMMANDS = phrases.wordings(classes=False)


def state_of(wording):
    return next(state for state, commands in STATES.items() if COMMANDS[wording] in commands.split())


def grammar(state):
    return ",".join(wording for wording, command in COMMANDS.items() if command in STATES[state].split())


def conditions(data):
    long, at10 = f"{data}/noise/long", ["--snr", "10", "--noise"]
    return {"quiet": [], "still": [], "talk": [], "10db": [*at10, long], "tap": [*at10, f"{long}/wav16k_running_tap.flac"],
            "dishes": [*at10, f"{long}/wav16k_doing_the_dishes.flac"], "babble": [*at10, f"{data}/noise/babble/babble_4talkers.flac"],
            "room": ["--room", f"{data}/rooms"], "soft": ["--level", "-40"], "slow": ["--slow", "0.75"],
            "phrases": [], "phrases10db": [*at10, long], "phrasesbabble": [*at10, f"{data}/noise/babble/babble_4talkers.flac"]}


def lists(data, folds, readers, out, voices=None):
    os.makedirs(out, exist_ok=True)
    plan, words, talk, turn = json.load(open(folds)), defaultdict(list), defaultdict(list), Counter()

    def fold(speaker, group):
        turn[group] += 1
        return plan.get(speaker, turn[group] % FOLDS)
    for r in csv.DictReader(open(f"{data}/index.tsv"), delimiter="\t", quoting=csv.QUOTE_NONE):
        path, label, kind = f"{data}/{r['file']}", r["label"].lower(), r["set"]
        if not os.path.exists(path) or label == "(noise)":
            continue
        if kind == "speech_commands_test_v002":
            words[fold(r["speaker"], kind)].append((path, label, f"{'people' if label in PHRASES else 'other'}:{r['speaker']}"))
        elif kind == "an4":
            known = label in PHRASES
            (words if known else talk)[fold(r["speaker"], kind)].append((path, label if known else "", f"{'an4' if known else 'spelling'}:{r['speaker']}"))
        elif kind == "picovoice_wakewords":
            words[fold("", kind)].append((path, label, "wake:"))
        elif kind == "coswara_subset" and "counting" in label:
            talk[fold("", kind)].append((path, "", "counting:"))
    for name in sorted(os.listdir(readers)):
        talk[fold("", "readers")].append((f"{readers}/{name}", "", "readers:"))
    said = defaultdict(list)
    for name in sorted(os.listdir(voices)) if voices else ():
        voice, text = name[:-4].rsplit("-", 1)[0], name[:-4].rsplit("-", 1)[1].replace("_", " ")
        if voice.endswith("-not"):
            said["ready"].append((f"{voices}/{name}", text, f"near:{voice[:-4]}"))
        elif text in COMMANDS:
            said[state_of(text)].append((f"{voices}/{name}", text, f"voice:{voice}"))
    for k, state in enumerate(STATES):
        with open(f"{out}/said_{k}.tsv", "w") as f:
            f.write("path\tlabel\tgroup\n" + "".join("\t".join(row) + "\n" for row in said[state]))
    few = {k: [row for row in words[k] if not row[2].startswith("wake")] for k in words}
    for name, groups in (("words", words), ("few", few), ("talk", talk)):
        for k in range(FOLDS):
            with open(f"{out}/{name}_{k}.tsv", "w") as f:
                f.write("path\tlabel\tgroup\n" + "".join("\t".join(row) + "\n" for row in groups[k]))


def hear(job):
    program, options, folder, name, model, condition, k = job
    path, _, ear = model.replace("{fold}", str(k % FOLDS)).partition("+")
    spoken = condition.startswith("phrases")
    list_of = f"{folder}/{'said' if spoken else 'talk' if condition == 'talk' else 'words' if condition == 'quiet' else 'few'}_{k}.tsv"
    if not os.path.exists(f"{path}/graph/phones/word_boundary.int"):
        # Without it libvosk tells other times of the words, which the rule weighs: in babble nearly all words are lost.
        raise SystemExit(f"{path}/graph/phones/word_boundary.int is missing")
    begun = time.time()
    with tempfile.TemporaryDirectory() as home:
        surroundings = dict(os.environ, HOME=home, **({"TIDECOUNT_SECOND_EAR": ear} if ear else {}))
        if traces := os.environ.get("JUDGE_TRACES"):
            surroundings["TIDECOUNT_COMMAND_TRACE"] = f"{traces}/{name}-{condition}-{k}.jsonl"
        listened_for = grammar(list(STATES)[k]) if spoken else STATE
        got = subprocess.run([program, "hear", "--commands", listened_for, "--model", path, "--labels", list_of, "--json", "--details", *options],
                             capture_output=True, text=True, env=surroundings)
    out = []
    for line in got.stdout.splitlines():
        r = json.loads(line)
        if r.get("kind") == "recording":
            out.append({"model": name, "condition": condition, "fold": k, "path": os.path.basename(r["path"]), "group": r["group"], "said": r.get("said"),
                        "outcome": r["outcome"], "heard": [h["text"] for h in r["heard"] if h.get("acted", True)]})
    if not out:
        print(name, condition, k, got.stderr[-500:], flush=True)
    return out, time.time() - begun


def run(program, data, folder, out, processes, wanted, models):
    options = conditions(data)
    jobs = [(program, options[c], folder, *m.split("=", 1), c, k) for c in wanted.split(",") for m in models
            for k in range(len(STATES) if c.startswith("phrases") else FOLDS)]
    jobs.sort(key=lambda j: j[5] != "talk")           # the longest first
    begun, spent = time.time(), 0.0
    with ThreadPoolExecutor(int(processes)) as pool, open(out, "a") as f:
        for records, took in pool.map(hear, jobs):
            spent += took
            f.writelines(json.dumps(r) + "\n" for r in records)
            f.flush()
    print(f"{len(jobs)} runs in {time.time() - begun:.0f} s, {spent:.0f} s of programs", flush=True)


def table(path):
    rows, hard, taken, hours = defaultdict(Counter), defaultdict(Counter), defaultdict(Counter), defaultdict(float)
    spoken, missed, models = defaultdict(Counter), defaultdict(Counter), []
    for r in map(json.loads, open(path)):
        name, c, (group, speaker), outcome = r["model"], r["condition"], r["group"].split(":"), r["outcome"]
        if c.startswith("phrases"):
            # Another wording of the same command is as good.
            meant, got = COMMANDS.get(r["said"]), {COMMANDS[h] for h in r["heard"]}
            row, kind = spoken[c, name], "near" if group == "near" else "several" if " " in r["said"] else "one"
            for key in (kind, f"{speaker} {kind}"):
                row[f"{key} of"] += 1
                row[f"{key} hit"] += group == "voice" and got == {meant}
                row[f"{key} wrong"] += bool(got - {meant})
            if group == "voice" and got != {meant}:
                missed[c, name][r["said"]] += 1
            if name not in models:
                models.append(name)
            continue
        if name not in models:
            models.append(name)
        row = rows[c, name]
        false = "action" in outcome
        if group in ("people", "an4"):
            row[f"{r['said']} of"] += 1
            row[f"{r['said']} hit"] += outcome == "hit"
            row["of"] += 1
            row["hit"] += outcome == "hit"
            row["asked"] += outcome == "asked"
            row["wrong"] += outcome == "substituted"
            if c == "quiet" and r["said"] == "no":
                hard[speaker][name, "of"] += 1
                hard[speaker][name, "hit"] += outcome == "hit"
        else:
            key = "go, on" if r["said"] in ("go", "on") else group
            row[f"{key} of"] += 1
            row[f"{key} taken"] += false
            if false and group == "other":
                taken[c, name][f"{r['said']} as {'/'.join(r['heard'])}"] += 1
    print("| condition | model | yes | no | stop | all | asked | wrong | other words taken | go, on | wake |\n|---|---|---|---|---|---|---|---|---|---|---|")
    for (c, name), r in sorted(rows.items(), key=lambda t: (t[0][0], models.index(t[0][1]))):
        if c != "talk":
            print(f"| {c} | {name} | " + " | ".join(f"{r[w + ' hit']}/{r[w + ' of']}" for w in ("yes", "no", "stop"))
                  + f" | {r['hit']}/{r['of']} = {100 * r['hit'] / max(1, r['of']):.1f} % | {r['asked']} | {r['wrong']} | "
                  + " | ".join(f"{r[g + ' taken']}/{r[g + ' of']}" for g in ("other", "go, on", "wake")) + " |")
    for (c, name), r in rows.items():
        if c == "talk":
            print(f"talk, {name}: recordings with a false action: " + ", ".join(f"{g} {r[g + ' taken']}/{r[g + ' of']}" for g in ("spelling", "counting", "readers")))
    if spoken:
        voices = sorted({key[:-11] for row in spoken.values() for key in row if key.endswith(" several of") and key != "several of"})
        print("| condition | model | wordings of several words | of one | wrong | near phrases taken | several words: " + " | ".join(voices)
              + " |\n" + "|---" * (6 + len(voices)) + "|")
        for (c, name), r in sorted(spoken.items(), key=lambda t: (t[0][0], models.index(t[0][1]))):
            print(f"| {c} | {name} | {r['several hit']}/{r['several of']} | {r['one hit']}/{r['one of']} | {r['several wrong'] + r['one wrong']} | "
                  f"{r['near wrong']}/{r['near of']} | " + " | ".join(f"{r[v + ' several hit']}/{r[v + ' several of']}" for v in voices) + " |")
        for (c, name), n in missed.items():
            print(f"missed, {c}, {name}:", ", ".join(f"{k} {v}" for k, v in n.most_common(25)))
    base = models[0]
    worst = [s for s in hard if hard[s][base, "of"] >= 2 and hard[s][base, "hit"] * 2 <= hard[s][base, "of"]]
    for name in models:
        if any(hard[s][name, "of"] for s in worst):
            print(f"no of the {len(worst)} speakers of whom {base} hears at most half (of two or more), {name}: "
                  f"{sum(hard[s][name, 'hit'] for s in worst)}/{sum(hard[s][name, 'of'] for s in worst)}")
    for (c, name), n in taken.items():
        if c in ("quiet", "10db"):
            print(f"taken, {c}, {name}:", ", ".join(f"{k} {v}" for k, v in n.most_common(12)))


if __name__ == "__main__":
    if sys.argv[1] == "lists":
        lists(*sys.argv[2:7])
    elif sys.argv[1] == "run":
        run(*sys.argv[2:8], sys.argv[8:])
    else:
        table(sys.argv[2])

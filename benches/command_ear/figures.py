#!/usr/bin/env python3
"""Turns the rows of `tidecount hear --labels … --json` (standard input) into lines "= figure | value | aim | met"; the argument names the run."""
import json
import sys


def line(what, value, aim="", met=None):
    print(f"= {what} | {value} | {aim} | {'' if met is None else 'yes' if met else 'MISSED'}", flush=True)


def main():
    name = sys.argv[1] if len(sys.argv) > 1 else ""
    aims = {"quiet": 96.0, "10 dB SNR, household noise": 92.0}
    for row in map(json.loads, sys.stdin):
        if row["kind"] != "evaluation":
            continue
        phrase, group = row.get("phrase"), row["group"]
        people = group.startswith("people")
        if row["said"] and (phrase is None or (people and phrase)):
            rate, stop = row["hit_rate"], phrase == "stop"
            aim = 98.0 if stop and name == "quiet" else aims.get(name) if phrase is None and people else None
            value = (f"{rate['percent']:.1f} % ({row['hits']} of {row['said']}; {rate['low_percent']:.0f} to {rate['high_percent']:.0f}), asked {row['asked']}, "
                     f"another {row['substituted']}, delay {row['delay_median_s']} s, 95 % {row['delay_95_s']} s")
            line(f"{name}: {phrase or group}", value, f"≥ {aim:.0f} %" if aim else "", rate["percent"] >= aim if aim else None)
            if stop and name == "quiet":
                delay = row["delay_median_s"]
                line(f"{name}: stop, median delay", f"{delay} s", "< 0.3 s", delay is not None and delay < 0.3)
        if row["other"] and phrase is None:
            talk = group.startswith(("AN4", "counting", "babble", "reading"))
            value = (f"{row['false_actions_per_hour']:.2f} an hour ({row['false_actions_per_hour_low']:.2f} to {row['false_actions_per_hour_high']:.2f}): "
                     f"{row['false_actions']} in {row['other_hours']:.2f} h, {row['other_taken']} of {row['other']} recordings; asked {row['false_questions']}")
            line(f"{name}: {group}", value, "< 1 an hour" if talk else "", row["false_actions_per_hour"] < 1 if talk else None)


if __name__ == "__main__":
    main()

"""Sounds of a home in which nobody holds a vowel: music, conversation, appliances, chewing, chairs, beeps.

Music is rendered by FluidSynth from melodies made here, if the program and a General MIDI sound font are there (Debian:
fluidsynth, fluid-soundfont-gs). Conversation is LibriSpeech, two speakers taking turns and interrupting. The rest is
simulated and called so.

Writes negatives/*.wav and negatives/list.tsv: file, kind, group.
"""
import shutil
import subprocess
from pathlib import Path

import mido
import numpy as np
from scipy.signal import butter, lfilter, sosfilt

from common import OUT, RATE, db, librispeech, load_any, rms, save

FONTS = ["/usr/share/sounds/sf2/FluidR3_GM.sf2", "/usr/share/sounds/sf2/FluidR3_GS.sf2", "/usr/share/sounds/sf2/TimGM6mb.sf2"]
# General MIDI programs: piano, music box, church organ, accordion, guitar, violin, cello, strings, trumpet, saxophone,
# clarinet, flute, synthesiser lead.
PROGRAMS = {0: "piano", 10: "musicbox", 19: "organ", 21: "accordion", 24: "guitar", 40: "violin", 42: "cello", 48: "strings",
            56: "trumpet", 65: "saxophone", 71: "clarinet", 73: "flute", 80: "synthesiser"}
SCALE = [0, 2, 4, 5, 7, 9, 11, 12]


def melody(program, seed, seconds=14.0):
    """A tune with chords under it; quarter notes at 80 to 120 a minute, now and then a half note or a whole one."""
    rng = np.random.default_rng(seed)
    file = mido.MidiFile(ticks_per_beat=480)
    track = mido.MidiTrack()
    file.tracks.append(track)
    bpm = rng.uniform(80, 120)
    track.append(mido.MetaMessage("set_tempo", tempo=mido.bpm2tempo(bpm)))
    track.append(mido.Message("program_change", program=program))
    track.append(mido.Message("program_change", program=0 if program in (0, 24) else 48, channel=1))
    tonic, place, beats = int(rng.integers(53, 65)), 0, 0.0
    while beats * 60 / bpm < seconds:
        length = rng.choice([0.5, 1, 1, 1, 2, 4], p=[0.2, 0.2, 0.2, 0.15, 0.17, 0.08])
        place = int(np.clip(place + rng.integers(-2, 3), 0, 7))
        note = tonic + SCALE[place]
        chord = [tonic - 12 + SCALE[(place // 2 * 2 + i) % 7] for i in (0, 2, 4)] if seed % 3 else []
        track.append(mido.Message("note_on", note=note, velocity=90))
        for c in chord:
            track.append(mido.Message("note_on", note=c, velocity=55, channel=1))
        track.append(mido.Message("note_off", note=note, time=int(480 * length)))
        for c in chord:
            track.append(mido.Message("note_off", note=c, channel=1))
        beats += length
    return file


def music():
    font = next((f for f in FONTS if Path(f).exists()), None)
    if not font or not shutil.which("fluidsynth"):
        print("no music: fluidsynth or a sound font is missing")
        return
    work = OUT / "midi"
    work.mkdir(parents=True, exist_ok=True)
    for program, name in PROGRAMS.items():
        for seed in range(3):
            mid, wav = work / f"{name}{seed}.mid", work / f"{name}{seed}.wav"
            melody(program, 100 * program + seed).save(mid)
            subprocess.run(["fluidsynth", "-ni", "-q", "-r", "48000", "-F", wav, font, mid], check=True, stdout=subprocess.DEVNULL)
            x = load_any(wav)
            yield f"{name}{seed}", x * (db(-28) / rms(x))


def conversation():
    rng = np.random.default_rng(5)
    people = list(librispeech(1, 1))
    for k in range(0, len(people) - 1, 2):
        out = np.zeros(24 * RATE)
        voices = [np.concatenate([load_any(f) for f in files[5:8]]) for _, files in people[k : k + 2]]
        at, who, used = 0.3, 0, [0, 0]
        while at < 22:
            length = rng.uniform(0.8, 4.0)
            part = voices[who][used[who] : used[who] + int(length * RATE)]
            used[who] += len(part)
            part = part * (db(-28 - 6 * who) / rms(part))
            a = int(at * RATE)
            part = part[: len(out) - a]
            out[a : a + len(part)] += part
            at += length + rng.uniform(-0.4, 0.6)
            who = 1 - who
        yield f"conversation{k // 2}", out + db(-70) * rng.standard_normal(len(out))


def band(x, low, high):
    return sosfilt(butter(2, [low, high], "band", fs=RATE, output="sos"), x)


def simulated():
    rng = np.random.default_rng(6)
    t = np.arange(12 * RATE) / RATE
    hiss = lambda: rng.standard_normal(len(t))
    for k in range(4):
        # Chewing: soft wet bursts at 1 to 2 a second, each of several clicks through the head.
        x = np.zeros(len(t))
        for beat in np.arange(0.5, 11, 1 / rng.uniform(1.0, 1.8)):
            for _ in range(rng.integers(3, 9)):
                a = int((beat + rng.uniform(0, 0.25)) * RATE)
                n = int(rng.uniform(0.005, 0.03) * RATE)
                x[a : a + n] += rng.standard_normal(n) * np.hanning(n) * rng.uniform(0.2, 1)
        yield f"chewing{k}", "chewing", band(x, 200, 3000)
    for k in range(6):
        # A chair's legs: stick and slip, pulses whose rate wanders, through the resonances of wood.
        x, at = np.zeros(len(t)), 0.5
        while at < 10.5:
            end, rate = at + rng.uniform(0.4, 1.6), rng.uniform(60, 350)
            while at < end:
                x[int(at * RATE)] += rng.uniform(0.5, 1)
                rate *= np.exp(0.05 * rng.standard_normal())
                rate = np.clip(rate, 40, 500)
                at += 1 / rate * rng.uniform(0.85, 1.15)
            at += rng.uniform(0.5, 2)
        for f in rng.uniform(200, 1800, 3):
            r = np.exp(-np.pi * 60 / RATE)
            x = lfilter([1], [1, -2 * r * np.cos(2 * np.pi * f / RATE), r * r], x)
        yield f"chair{k}", "chair", x
    for k, f in enumerate([350.0, 440.0, 600.0, 700.0, 1000.0, 2000.0]):
        on = (t % 2.4 > 1.0) if k % 2 else (t > 1)
        yield f"beep{int(f)}", "tone", np.sin(2 * np.pi * f * t) * on
    yield "telephone", "tone", (np.sin(2 * np.pi * 440 * t) + np.sin(2 * np.pi * 480 * t)) * (t % 4 < 2)
    yield "dialtone", "tone", (np.sin(2 * np.pi * 350 * t) + np.sin(2 * np.pi * 440 * t)) * (t > 1)
    square = np.sign(np.sin(2 * np.pi * 523.25 * t)) * (t % 1.7 < 1.1)
    yield "alarm", "tone", band(square, 300, 6000)
    whistle = 700 + 60 * np.sin(2 * np.pi * 0.5 * t) + 10 * band(hiss(), 1, 10)
    yield "whistling", "tone", np.sin(2 * np.pi * np.cumsum(whistle) / RATE) + 0.05 * band(hiss(), 500, 3000)
    for k, (hum_hz, share) in enumerate([(100, 1.0), (120, 0.5), (50, 1.0), (290, 0.3)]):
        # Machines: overtones of the mains or the motor in air noise; they begin while somebody listens.
        x = sum(np.sin(2 * np.pi * hum_hz * h * t + h) / h for h in range(1, 8)) * share + 0.5 * band(hiss(), 150, 5000)
        yield f"machine{k}", "machine", x * np.clip((t - 2.0) * 4, 0, 1)
    yield "engine", "machine", band(np.sin(2 * np.pi * np.cumsum(90 + 3 * np.sin(7 * t)) / RATE) ** 15, 60, 4000) * (t > 2) + 0.1 * hiss()
    yield "tapfills", "water", band(hiss(), 300, 6000) * (1 + 0.5 * np.sin(2 * np.pi * 3 * t)) + 0.5 * band(hiss(), 400 , 700) * (t / 12)


def main():
    rows = []

    def keep(name, kind, x):
        lead = 1.0
        x = np.concatenate([np.zeros(int(lead * RATE)), x, np.zeros(RATE // 2)])
        x = x * (db(-28) / rms(x)) + db(-72) * np.random.default_rng(len(rows)).standard_normal(len(x))
        save(f"negatives/{name}.wav", x)
        rows.append(f"negatives/{name}.wav\t{kind}\t{'odd' if len(rows) % 2 else 'even'}")

    for name, x in music() or []:
        keep(name, "music", x)
    for name, x in conversation():
        keep(name, "conversation", x)
    for name, kind, x in simulated():
        keep(name, kind, x)
    (OUT / "negatives" / "list.tsv").write_text("file\tkind\tgroup\n" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()

#!/bin/sh
# How well commands are heard, over the recordings of ../shared/data: hits, substitutions, false actions per hour, delay, in each condition,
# and general recognisers on the same files. Prints tables and figures (../figures.toml). The model is trained on the people of these
# recordings, so each is heard by one of five networks, and with one of five second ears (models/training/folds), that have not met the
# speaker; the networks are trained as the model is, for a third as long. Synthetic voices and other sounds: the model itself, and
# even-numbered recordings, since the thresholds are chosen on odd ones. The figures on record are those of --all. Without it, a sample, and
# an hour of reading by readers that the model was trained on.
#
#   benches/command_ear/evaluate.sh [--all] [--model DIR] [--data DIR] [--program TIDECOUNT] [--half odd|even|all] [--references] [--whisper DIR]
#                                    [--only CONDITION[,CONDITION…]]
#
# --references also runs pocketsphinx, and a Whisper model where --whisper names its folder (Python packages: reference/hear_reference.py).
# With --model, that model hears all. --only takes some of the conditions: those named behind "run" below. PYTHON chooses the interpreter.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
python=${PYTHON:-python3}
data=$root/../shared/data program=${CARGO_TARGET_DIR:-$root/target}/debug/tidecount model=$root/models/en half=even whisper= references= only= sample=1 folds=$root/models/training/folds
while [ $# -gt 0 ]; do
    case $1 in
        --all) sample=; shift ;;
        --references) references=1; shift ;;
        --only) only=,$2,; shift 2 ;;
        --model) model=$2 folds=; shift 2 ;;
        --data) data=$2; shift 2 ;;
        --program) program=$2; shift 2 ;;
        --half) half=$2; shift 2 ;;
        --whisper) whisper=$2 references=1; shift 2 ;;
        *) sed -n '2,14s/^# \{0,1\}//p' "$0" >&2; exit 2 ;;
    esac
done
if [ ! -f "$data/index.tsv" ]; then
    echo "skipped: no recordings in $data (see --data)"
    exit 0
fi
[ -x "$program" ] || { echo "$program is not built: cargo build" >&2; exit 2; }
lists=$(mktemp -d)
trap 'rm -rf "$lists"' EXIT
# shellcheck disable=SC2086 # options, parted by spaces
"$python" "$here/make_lists.py" "$data" "$lists" ${sample:---training} ${folds:+--folds "$folds/speakers.json"} > "$lists/said"
for network in ${folds:+"$folds"/*.mdl}; do
    fold=$lists/model_$(basename "$network" .mdl)
    mkdir -p "$fold/am"
    ln -s "$network" "$fold/am/final.mdl"
    ln -s "$model/conf" "$model/graph" "$fold"
done

# The states of a practice, ten phrases each; all ten-phrase figures but the voices' are for the first.
state="yes,no,stop,ready,again,pause,skip,how long,help,finish"
# What a person in trouble says is heard in every state.
safety=$(cat "$lists/safety.txt")
resting="go on,ready,again,skip,go back,finish,help,stop,louder,it hurts"

# run CONDITION LIST EVERY PHRASES [options]: tables and figures to the terminal. EVERY counts for the sample only.
run() {
    condition=$1 list=$lists/$2 every=$3 phrases=$4 talk=
    case $only in '' | *,"$1",*) ;; *) return 0 ;; esac
    case $condition in talk|babble-talk|reading) talk=$lists/false-actions condition=talk ;; esac
    shift 4
    [ -n "$sample" ] || every=1
    [ -f "$list" ] || return 0
    : > "$lists/rows"
    if [ -f "${list%.tsv}_0.tsv" ]; then
        for part in "${list%.tsv}"_?.tsv; do
            fold=${part%.tsv} fold=${fold##*_}
            TIDECOUNT_SECOND_EAR=$folds/ears/$fold \
                "$program" hear --commands "$phrases" --model "$lists/model_$fold" --labels "$part" --every "$every" --json --details "$@" >> "$lists/rows" || [ -s "$lists/rows" ]
        done
    else
        # A recording that cannot be heard is named on standard error; the others count.
        "$program" hear --commands "$phrases" --model "$model" --labels "$list" --every "$every" --json --details "$@" > "$lists/rows" || [ -s "$lists/rows" ]
    fi
    printf '\n## %s\n' "$condition"
    "$python" "$here/figures.py" "$condition" ${talk:+--talk "$talk"} < "$lists/rows"
}

noise=$data/noise/long
# Where folds guard against having met the speaker, all recordings count.
people=${folds:+all}
people=${people:-$half}
run quiet words.tsv 3 "$state" --half "$people"
for snr in 20 10 5; do
    run "${snr}db" words.tsv 8 "$state" --half "$people" --snr $snr --noise "$noise"
done
if [ -f "$lists/babble-of-readers.wav" ]; then
    run babble words.tsv 12 "$state" --half "$people" --snr 10 --noise "$lists/babble-of-readers.wav"
fi
run room words.tsv 8 "$state" --half "$people" --room "$data/rooms"
run soft words.tsv 8 "$state" --half "$people" --level -40
run slow words.tsv 8 "$state" --half "$people" --slow 0.75
run voices voices.tsv 1 "$state" --half "$half"
run resting voices.tsv 1 "$resting" --half "$half"
run talk talk.tsv 2 "$safety,$state"
run babble-talk babble.tsv 1 "$safety,$state"
run safety.quiet safety.tsv 2 "$safety,$state"
run safety.10db safety.tsv 2 "$safety,$state" --snr 10 --noise "$noise"
run safety.room safety.tsv 2 "$safety,$state" --room "$data/rooms"
run near near.tsv 2 "$safety,$state"
run sounds sounds.tsv 4 "$state" --half "$half"
run reading reading.tsv 1 "$safety,$state"
# Not of the sample: some of its readers are known to the model.
[ -n "$sample" ] || [ ! -f "$lists/false-actions" ] || "$python" "$here/figures.py" --talk "$lists/false-actions"

[ -n "$references" ] || exit 0
every=6
[ -n "$sample" ] || every=1
for recogniser in pocketsphinx ${whisper:+"whisper:$whisper"}; do
    printf '\nreference: %s\n' "$recogniser"
    # A general recogniser that is not installed is no fault of this one's.
    "$python" "$here/reference/hear_reference.py" "$recogniser" "$lists/words.tsv" "$state" --half "$half" --every $every --figures quiet || continue
    "$python" "$here/reference/hear_reference.py" "$recogniser" "$lists/words.tsv" "$state" --half "$half" --every $every --figures 10db --snr 10 --noise "$noise/wav16k_running_tap.flac"
    "$python" "$here/reference/hear_reference.py" "$recogniser" "$lists/talk.tsv" "$state" --half "$half" --every 2
done

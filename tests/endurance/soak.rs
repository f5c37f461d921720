//! Promise: what waits in a living room for days does not grow: memory, file handles, threads and delay stay flat, every practice that is
//! asked for is led and kept, and faults in between change nothing.
//!
//! Hours in simulated time from a made recording, and hours by the clock over a private sound server with the faults of `devices`. Both take
//! long: `tests/endurance/run.sh soak`.

use super::devices::{Faulty, House, Run, Where, setting};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use rehearse::Speaker;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const RATE_HZ: u32 = 16_000;
const HOUSEHOLD: &str = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\ncalled = [\"evening routine\"]\n";
const ROUTINE: &str = "title = \"Shoulders\"\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 1\nnext_cue_after_s = 4\n";
/// Growth that is none: of memory, kB, over what the quarter after the beginning takes.
const MEMORY_KB: u64 = 12_000;
/// Of file handles and threads: a practice may be under way when one looks.
const FEW: u64 = 3;
/// What a practice may add to the record once that holds some, bytes; pages of it are of 4 kB.
const A_PRACTICE_BYTES: u64 = 64_000;
/// The sample clock and the one on the wall stay together, s.
const DRIFT_S: f64 = 1.0;

/// What the program holds at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Held {
    memory_kb: u64,
    handles: u64,
    threads: u64,
    record_bytes: u64,
}

fn held(pid: u32, data: &Path) -> Option<Held> {
    let status = std::fs::read_to_string(format!("/proc/{pid}/status")).ok()?;
    let number = |name: &str| status.lines().find(|line| line.starts_with(name))?.split_whitespace().nth(1)?.parse().ok();
    let record_bytes = std::fs::metadata(data.join(record::DATABASE_NAME)).map_or(0, |file| file.len());
    let handles = std::fs::read_dir(format!("/proc/{pid}/fd")).ok()?.count() as u64;
    Some(Held { memory_kb: number("VmRSS:")?, handles, threads: number("Threads:")?, record_bytes })
}

fn median(of: &[Held], what: impl Fn(&Held) -> u64) -> u64 {
    let mut all: Vec<u64> = of.iter().map(what).collect();
    all.sort_unstable();
    all.get(all.len() / 2).copied().unwrap_or_default()
}

/// Compares the second quarter (it has warmed up by then) with the last one.
fn is_flat(seen: &[Held]) -> String {
    let quarter = seen.len() / 4;
    assert!(quarter >= 5, "too short to say anything: {} looks", seen.len());
    let (before, after) = (&seen[quarter..2 * quarter], &seen[3 * quarter..]);
    let of = |what: fn(&Held) -> u64| (median(before, what), median(after, what));
    let (memory, handles, threads) = (of(|held| held.memory_kb), of(|held| held.handles), of(|held| held.threads));
    assert!(memory.1 <= memory.0 + MEMORY_KB, "memory grows: {memory:?} kB");
    assert!(handles.1 <= handles.0 + FEW, "file handles grow: {handles:?}");
    assert!(threads.1 <= threads.0 + FEW, "threads grow: {threads:?}");
    format!(
        "memory {} to {} MB, file handles {} to {}, threads {} to {}",
        memory.0 / 1000,
        memory.1 / 1000,
        handles.0,
        handles.1,
        threads.0,
        threads.1
    )
}

fn place(folder: &Path) {
    std::fs::write(folder.join("evening.toml"), ROUTINE).expect("writes");
    std::fs::write(folder.join("household.toml"), HOUSEHOLD).expect("writes");
}

/// Practices in the record, each led to its end, and its entries; the record is whole.
fn practices(data: &Path) -> (usize, u64) {
    let checked = record::Store::check(data, &jiff::ZonedDateTime::now()).expect("checks").expect("a record");
    assert_eq!(checked.faults, Vec::<String>::new());
    let store = record::Store::open_existing(data).expect("opens").expect("a record");
    let all = store.history(None, 100_000).expect("lists");
    assert!(all.iter().all(|practice| practice.end_reason.is_some()), "none is left open");
    (all.len(), checked.entries)
}

/// An hour of a living room: talk, a practice that is asked for, a microphone that is switched off for a minute, and quiet.
fn hour(speaker: &mut Speaker, seed: u64) -> Vec<i16> {
    let mut state = seed as u32 | 1;
    let mut samples: Vec<f32> = (0..3600 * RATE_HZ)
        .map(|_| {
            // Numerical Recipes' "quick and dirty" generator; constants from memory.
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (f64::from(state >> 8) / f64::from(1 << 24) - 0.5) as f32 * 0.001
        })
        .collect();
    let mut random = StdRng::seed_from_u64(seed);
    let mut put = |at_s: f64, words: &str| {
        let sound = speaker.say(words).expect("flite speaks");
        let from = (at_s * f64::from(RATE_HZ)) as usize;
        samples.iter_mut().skip(from).zip(sound.iter()).for_each(|(to, x)| *to += x * 0.5);
    };
    let talk_s = random.random_range(200.0..600.0);
    for n in 0..12 {
        put(talk_s + f64::from(n) * 6.0, "she put the kettle on and looked for the blue cup");
    }
    let start_s = random.random_range(1_000.0..1_500.0);
    put(start_s, "start my practice");
    for n in 0..40 {
        put(start_s + 12.0 + f64::from(n) * 4.3, "ready");
    }
    let mute_s = random.random_range(2_400.0..3_000.0);
    let (from, to) = ((mute_s * f64::from(RATE_HZ)) as usize, ((mute_s + 60.0) * f64::from(RATE_HZ)) as usize);
    samples[from..to].fill(0.0);
    samples.iter().map(|x| (x * 32_767.0).clamp(-32_768.0, 32_767.0) as i16).collect()
}

fn recording(path: &Path, hours: u64, seed: u64) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).expect("a WAV file");
    let mut speaker = Speaker::new("rms", 0.9, RATE_HZ).expect("flite with its voice rms");
    for number in 0..hours {
        hour(&mut speaker, seed + number).into_iter().for_each(|x| writer.write_sample(x).expect("writes"));
    }
    writer.finalize().expect("writes");
}

fn attend(folder: &Path, wav: &Path) -> Child {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tidecount"));
    command.arg("attend").arg(folder.join("household.toml")).arg("--mic").arg(wav);
    command.args(["--fast", "--at", "2026-11-25 00:00", "--voice", "espeak-ng", "--data"]).arg(folder.join("data"));
    let told = std::fs::File::create(folder.join("told")).expect("creates");
    command.stdin(Stdio::null()).stdout(told).stderr(Stdio::inherit()).spawn().expect("starts")
}

#[test]
#[ignore = "hours: tests/endurance/run.sh soak"]
fn a_day_in_simulated_time_leaves_everything_flat() {
    let (hours, seed) = (setting("TIDECOUNT_SOAK_HOURS", 24), setting("TIDECOUNT_SEED", 1));
    let folder = tempfile::tempdir().expect("a folder");
    place(folder.path());
    let wav = folder.path().join("day.wav");
    recording(&wav, hours, seed);
    let data = folder.path().join("data");
    let mut child = attend(folder.path(), &wav);
    let began = Instant::now();
    let mut seen = Vec::new();
    let status = loop {
        if let Some(status) = child.try_wait().expect("the child") {
            break status;
        }
        seen.extend(held(child.id(), &data));
        std::thread::sleep(Duration::from_millis(500));
    };
    let told = std::fs::read_to_string(folder.path().join("told")).expect("reads");
    assert!(status.success(), "{told}");
    let flat = is_flat(&seen);
    let (led, entries) = practices(&data);
    assert_eq!(led as u64, hours, "one practice an hour was asked for: {told}");
    let (deaf, hears) = (told.matches("T  I can't hear anybody").count() as u64, told.matches("T  I can hear again").count() as u64);
    assert_eq!(hears, hours, "{told}");
    assert!(deaf >= hours, "{told}");
    let at = |place: usize| seen.get(place).map_or(0, |held| held.record_bytes);
    // The record is as large as its tables at first; from the middle on what it gains is practices.
    let grown = (at(seen.len() - 1) - at(seen.len() / 2)) / (hours / 2).max(1);
    assert!(grown <= A_PRACTICE_BYTES, "the record grows by {grown} bytes a practice");
    println!(
        "soak, simulated: {hours} h in {:.0} s, {led} practices, {deaf} notices of a switched-off microphone; {flat}; record {} kB, {grown} bytes more a practice, {entries} entries",
        began.elapsed().as_secs_f64(),
        at(seen.len() - 1) / 1000
    );
}

/// What the client says over the sound server.
fn said(folder: &Path, name: &str, words: &str) -> PathBuf {
    let mut speaker = Speaker::new("rms", 0.9, super::RATE as u32).expect("flite with its voice rms");
    let path = folder.join(name);
    let samples: Vec<i16> = speaker.say(words).expect("flite speaks").iter().map(|x| (x * 16_000.0) as i16).collect();
    super::write_wav(&path, &samples);
    path
}

#[test]
#[ignore = "hours: tests/endurance/run.sh soak"]
fn hours_by_the_clock_leave_everything_flat() {
    let (minutes, seed) = (setting("TIDECOUNT_SOAK_CLOCK_MINUTES", 120), setting("TIDECOUNT_SEED", 1));
    let _turn = super::one_at_a_time();
    let Some(mut house) = House::new() else { return };
    let folder = tempfile::tempdir().expect("a folder");
    let start = said(folder.path(), "start.wav", "start my practice");
    let ready = said(folder.path(), "ready.wav", "ready");
    let mut random = StdRng::seed_from_u64(seed);
    let mut run = Run::start(&house, Where::Attend, folder.path());
    let data = folder.path().join("data");
    let (began, mut seen, mut lags) = (Instant::now(), Vec::new(), Vec::new());
    let (mut faults, mut asked) = (0, 0);
    let mut next_practice = Instant::now();
    while began.elapsed() < Duration::from_secs(60 * minutes) {
        house.see_to_noise();
        if Instant::now() >= next_practice {
            let from = run.mark();
            let mut player = house.server.play(&start);
            player.wait().expect("plays");
            asked += 1;
            assert!(run.until("One moment", from, Duration::from_secs(20)).is_some(), "a start goes unheard: {}", run.told());
            let ends = (0..60).any(|_| {
                house.server.play(&ready).wait().expect("plays");
                run.until("exercises done", from, Duration::from_secs(4)).is_some()
            });
            assert!(ends, "{}", run.told());
            run.look(Duration::from_secs(10));
            next_practice = Instant::now() + Duration::from_secs(900);
        }
        let kinds = Faulty::OF_WAITING;
        let kind = kinds[random.random_range(0..kinds.len())];
        run.suffer(&mut house, kind, Duration::from_millis(random.random_range(2_200..9_000)));
        faults += 1;
        for _ in 0..4 {
            run.look(Duration::from_secs(5));
            seen.extend(held(run.pid(), &data));
        }
        lags.extend(run.lag_s());
    }
    let flat = is_flat(&seen);
    let drift_s = lags.last().copied().unwrap_or_default() - lags.first().copied().unwrap_or_default();
    assert!(drift_s.abs() < DRIFT_S, "the sample clock runs away: {lags:?}");
    run.end(folder.path());
    let (led, _) = practices(&data);
    assert_eq!(led, asked, "every practice that was asked for");
    println!("soak, by the clock: {minutes} min, {faults} faults, {led} practices; {flat}; delay changed by {drift_s:.2} s");
}

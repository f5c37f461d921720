//! Promise: whatever happens to microphone and loudspeaker in a practice or while it waits, it is noticed within 2 s, told once, and heals
//! by itself; the practice goes on, and its record is whole.
//!
//! By the clock, over a private sound server: a few faults here, as many as wanted by `tests/endurance/run.sh devices`. In simulated time
//! `src/audio/tests/` does thousands to the two devices alone.

use super::one_at_a_time;
use super::support::sound_server::{SoundServer, stop};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::time::{Duration, Instant};

/// What is promised.
const NOTICED: Duration = Duration::from_secs(2);
/// Until a line has come through pipe and scheduler of a busy machine.
const LATE: Duration = Duration::from_millis(400);
/// What is told at the end of a fault comes no later; a sentence that is under way is said to its end before.
const HEALED: Duration = Duration::from_secs(20);
/// The one fault that is done with the tests.
const SHORTEST: Duration = Duration::from_millis(1_800);
/// Faults done to one run of the program.
const AT_ONCE: usize = 20;

const LOST: &str = "s of sound were lost";
const ROUTINE: &str = "title = \"Shoulders\"\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 20\nnext_cue_after_s = 4\n";
const HOUSEHOLD: &str = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\ncalled = [\"evening routine\"]\n";

pub fn setting(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|value| value.parse().ok()).unwrap_or(usual)
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Faulty {
    MicPulled,
    /// It has another name for a while, and can be known by its description.
    MicRenamed,
    /// Another rate and two channels, from one moment to the next.
    MicChanged,
    SpeakerPulled,
    SpeakerChanged,
    ServerRestarted,
    /// The program and the sound server stand still.
    Suspended,
}

impl Faulty {
    /// Those that matter to whoever waits: its loudspeaker is open only while it speaks.
    pub const OF_WAITING: [Self; 5] = [Self::MicPulled, Self::ServerRestarted, Self::MicRenamed, Self::Suspended, Self::MicChanged];
}

/// Where the program is, and what it tells there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Where {
    Practice,
    Attend,
}

impl Where {
    fn deaf(self) -> &'static str {
        match self {
            Self::Practice => "-  I hear nothing at all",
            Self::Attend => "T  I can't hear anybody",
        }
    }

    fn hears(self) -> &'static str {
        match self {
            Self::Practice => "-  I can hear you now",
            Self::Attend => "T  I can hear again",
        }
    }

    fn kinds(self) -> &'static [Faulty] {
        use Faulty::{MicChanged, MicPulled, MicRenamed, ServerRestarted, SpeakerChanged, SpeakerPulled, Suspended};
        match self {
            Self::Practice => &[MicPulled, SpeakerPulled, ServerRestarted, MicRenamed, Suspended, MicChanged, SpeakerChanged],
            Self::Attend => &Faulty::OF_WAITING,
        }
    }
}

/// The virtual devices and the room's noise.
pub struct House {
    pub server: SoundServer,
    noise: Child,
}

impl House {
    pub fn new() -> Option<Self> {
        let server = SoundServer::start(None)?;
        let wav = server.path("room.wav");
        let soft: Vec<i16> = super::noise(300 * super::RATE).into_iter().map(|x| x / 128).collect();
        super::write_wav(&wav, &soft);
        let noise = server.play(&wav);
        Some(Self { server, noise })
    }

    /// The room is never silent.
    pub fn see_to_noise(&mut self) {
        if self.noise.try_wait().expect("the player").is_some() {
            self.noise = self.server.play(&self.server.path("room.wav"));
        }
    }

    fn unload(&self, holding: &str) {
        let modules = self.server.pactl(&["list", "short", "modules"]);
        let line = modules.lines().find(|line| line.contains(holding)).unwrap_or_else(|| panic!("{holding} is not in {modules}"));
        self.server.pactl(&["unload-module", line.split('\t').next().unwrap_or_default()]);
    }

    /// The names of the sources that programs hear.
    fn heard(&self) -> Vec<String> {
        let sources = self.server.pactl(&["list", "short", "sources"]);
        let name = |index: &str| sources.lines().find_map(|line| line.strip_prefix(index)?.strip_prefix('\t')?.split('\t').next());
        let outputs = self.server.pactl(&["list", "short", "source-outputs"]);
        let of_programs = outputs.lines().filter(|line| line.contains("protocol-native.c"));
        of_programs.map(|line| name(line.split('\t').nth(1).unwrap_or_default()).unwrap_or_default().to_owned()).collect()
    }

    fn load_mic(&self, name: &str, changed: bool) {
        let source = format!("source_name={name}");
        let format: &[&str] = if changed { &["rate=44100", "channels=2"] } else { &["channels=1", "channel_map=mono"] };
        let mut args =
            vec!["load-module", "module-remap-source", &source, "master=room.monitor", "source_properties=device.description=mic"];
        args.extend(format);
        self.server.pactl(&args);
    }

    fn load_speaker(&self, changed: bool) {
        let rate = if changed { "rate=44100" } else { "rate=48000" };
        self.server.pactl(&["load-module", "module-null-sink", "sink_name=speaker", "norewinds=1", rate, "channels=1", "format=s16le"]);
        self.server.pactl(&["set-default-sink", "speaker"]);
    }
}

impl Drop for House {
    fn drop(&mut self) {
        stop(&mut self.noise);
    }
}

/// The program, and each line that it prints with the moment in which it came.
pub struct Run {
    child: Child,
    lines: Receiver<(Instant, String)>,
    seen: Vec<(Instant, String)>,
    place: Where,
    /// It has heard another microphone for a while.
    renamed: bool,
}

impl Run {
    pub fn start(house: &House, place: Where, folder: &Path) -> Self {
        std::fs::write(folder.join("evening.toml"), ROUTINE).expect("writes");
        std::fs::write(folder.join("household.toml"), HOUSEHOLD).expect("writes");
        let mut command = Command::new(env!("CARGO_BIN_EXE_tidecount"));
        match place {
            Where::Practice => command.arg("practise").arg(folder.join("evening.toml")).arg("--journal").arg(folder.join("journal.jsonl")),
            Where::Attend => command.arg("attend").arg(folder.join("household.toml")),
        };
        command.args(["--mic", "mic", "--speaker", "speaker", "--voice", "espeak-ng", "--data"]).arg(folder.join("data"));
        let mut child =
            command.envs(house.server.env()).stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
        let output = child.stdout.take().expect("piped");
        let (send, lines) = channel();
        std::thread::spawn(move || {
            for line in BufReader::new(output).lines().map_while(Result::ok) {
                if send.send((Instant::now(), line)).is_err() {
                    return;
                }
            }
        });
        let mut run = Self { child, lines, seen: Vec::new(), place, renamed: false };
        // Its ears and its voice are ready when it says its first words, and a device has run for a second then.
        match place {
            Where::Practice => run.until("  T  ", 0, Duration::from_secs(60)).expect("it begins"),
            Where::Attend => run.look(Duration::from_secs(6)),
        };
        run.look(Duration::from_secs(2));
        run
    }

    /// Takes in what is printed during `time`.
    pub fn look(&mut self, time: Duration) -> Instant {
        let until = Instant::now() + time;
        while let Some(left) = until.checked_duration_since(Instant::now()) {
            match self.lines.recv_timeout(left) {
                Ok(line) => self.seen.push(line),
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => panic!("it ended: {}", self.told()),
            }
        }
        until
    }

    /// When a line with `what` came, at or after line number `from`; none within `time`.
    pub fn until(&mut self, what: &str, from: usize, time: Duration) -> Option<Instant> {
        let until = Instant::now() + time;
        loop {
            if let Some((at, _)) = self.seen.iter().skip(from).find(|(_, line)| line.contains(what)) {
                return Some(*at);
            }
            let left = until.checked_duration_since(Instant::now())?;
            match self.lines.recv_timeout(left) {
                Ok(line) => self.seen.push(line),
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => panic!("it ended: {}", self.told()),
            }
        }
    }

    pub fn told(&mut self) -> String {
        let mut complaints = String::new();
        if self.child.try_wait().is_ok_and(|ended| ended.is_some())
            && let Some(err) = &mut self.child.stderr
        {
            let _ = err.read_to_string(&mut complaints);
        }
        self.seen.iter().map(|(_, line)| format!("{line}\n")).collect::<String>() + &complaints
    }

    pub fn pid(&self) -> u32 {
        self.child.id()
    }

    /// The number of the next line.
    pub fn mark(&self) -> usize {
        self.seen.len()
    }

    /// How far the clock on the wall is ahead of the second that stands before the last notice of its ear, s.
    pub fn lag_s(&self) -> Option<f64> {
        let (first_at, _) = self.seen.first()?;
        // A practice has a clock of its own, and what is said of the ear stands on that of the waiting.
        let (at, at_s) = self.seen.iter().rev().find_map(|(at, line)| {
            let (at_s, _) = line.trim_start().split_once("  ").filter(|_| line.contains(self.place.deaf()))?;
            Some((at, at_s.parse::<f64>().ok()?))
        })?;
        Some((*at - *first_at).as_secs_f64() - at_s)
    }

    fn count(&self, what: &str, from: usize) -> usize {
        self.seen.iter().skip(from).filter(|(_, line)| line.contains(what)).count()
    }

    fn signal(&self, name: &str) {
        let sent = Command::new("kill").arg(format!("-{name}")).arg(self.child.id().to_string()).status();
        assert!(sent.is_ok_and(|status| status.success()), "{name}");
    }

    /// Does it, and gives how long it took until it was told; none where it healed before anybody had to be told.
    pub fn suffer(&mut self, house: &mut House, kind: Faulty, length: Duration) -> Option<Duration> {
        self.look(Duration::from_millis(10));
        let from = self.seen.len();
        let practice = self.place == Where::Practice;
        let (gone, back) = match kind {
            Faulty::SpeakerPulled | Faulty::SpeakerChanged => ("-  My loudspeaker is gone", "-  My loudspeaker is back"),
            _ => (self.place.deaf(), self.place.hears()),
        };
        let began = Instant::now();
        match kind {
            Faulty::MicPulled => house.unload("source_name=mic"),
            Faulty::MicRenamed => {
                house.unload("source_name=mic");
                house.load_mic("another", false);
                self.renamed = true;
            }
            Faulty::MicChanged => {
                house.unload("source_name=mic");
                house.load_mic("mic", true);
            }
            Faulty::SpeakerPulled => house.unload("sink_name=speaker"),
            Faulty::SpeakerChanged => {
                house.unload("sink_name=speaker");
                house.load_speaker(true);
            }
            Faulty::ServerRestarted => house.server.stop(),
            Faulty::Suspended => {
                self.signal("STOP");
                house.server.signal("STOP");
                std::thread::sleep(length);
                house.server.signal("CONT");
                self.signal("CONT");
            }
        }
        let mut noticed = None;
        let context = |run: &mut Self| format!("{kind:?} for {length:?}: {}", run.told());
        match kind {
            Faulty::MicPulled | Faulty::SpeakerPulled | Faulty::ServerRestarted => {
                let told = self.until(gone, from, NOTICED + LATE);
                noticed = Some(told.unwrap_or_else(|| panic!("not told within {NOTICED:?}: {}", context(self))) - began);
                self.look(length.saturating_sub(began.elapsed()));
                match kind {
                    Faulty::MicPulled => house.load_mic("mic", false),
                    Faulty::SpeakerPulled => house.load_speaker(false),
                    _ => house.server.start_again(),
                }
                house.see_to_noise();
                assert!(self.until(back, from, HEALED).is_some(), "does not heal: {}", context(self));
            }
            // Back before anybody could do anything: what was lost of the sound is told.
            Faulty::MicChanged | Faulty::MicRenamed | Faulty::Suspended if practice => {
                let from_when = if kind == Faulty::Suspended { began + length } else { began };
                let told = self.until(LOST, from, NOTICED + LATE);
                noticed = Some(told.unwrap_or_else(|| panic!("not told: {}", context(self))).saturating_duration_since(from_when));
            }
            _ => {
                self.look(NOTICED);
            }
        }
        // A fault that follows is one of its own; where none does, nobody needs to wait.
        self.look(Duration::from_millis(if length == SHORTEST { 300 } else { 2_500 }));
        // It hears the microphone and not what the server may have put in its place.
        let heard = house.heard();
        assert!(heard.iter().all(|source| source == "mic" || source == "another"), "hears {heard:?}: {}", context(self));
        let times = self.count(gone, from);
        let allowed = usize::from(matches!(kind, Faulty::MicPulled | Faulty::SpeakerPulled | Faulty::ServerRestarted));
        assert!(times <= 1 && times >= allowed, "told {times} times: {}", context(self));
        // Back to how it was, which is no fault to be counted.
        match kind {
            Faulty::SpeakerChanged => {
                house.unload("sink_name=speaker");
                house.load_speaker(false);
            }
            Faulty::MicRenamed => {
                house.unload("source_name=another");
                house.load_mic("mic", false);
            }
            _ => return noticed,
        }
        self.look(NOTICED);
        noticed
    }

    /// Ends it as Ctrl-C does, and looks at what was kept.
    pub fn end(mut self, folder: &Path) {
        self.signal("INT");
        let until = Instant::now() + Duration::from_secs(20);
        while self.child.try_wait().expect("the child").is_none() {
            assert!(Instant::now() < until, "it does not end");
            std::thread::sleep(Duration::from_millis(20));
        }
        assert_eq!(self.child.wait().expect("ends").code(), Some(0), "{}", self.told());
        if self.place == Where::Attend {
            return;
        }
        let text = std::fs::read_to_string(folder.join("journal.jsonl")).expect("the journal");
        let entries: Vec<serde_json::Value> = text.lines().map(|line| serde_json::from_str(line).expect("whole lines")).collect();
        let last = entries.last().expect("entries");
        assert_eq!((last["kind"].as_str(), last["reason"].as_str()), (Some("session_ended"), Some("interrupted")));
        // What was heard with another microphone is not compared with the rest.
        let used: Vec<&str> =
            entries.iter().filter(|entry| entry["kind"] == "microphone_used").filter_map(|entry| entry["name"].as_str()).collect();
        let expected: &[&str] = if self.renamed { &["mic", "another", "mic"] } else { &["mic"] };
        assert!(used.starts_with(expected) && used.contains(&"another") == self.renamed, "{used:?}");
        let times: Vec<f64> = entries.iter().filter_map(|entry| entry["at_s"].as_f64()).collect();
        assert!(times.windows(2).all(|pair| pair[0] <= pair[1]), "time never runs back");
        let mut check = Command::new(env!("CARGO_BIN_EXE_tidecount"));
        let checked = check.args(["record", "check", "--data"]).arg(folder.join("data")).output().expect("runs");
        assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stdout));
    }
}

/// Does so many faults, and prints what came of them.
fn endure(place: Where, count: usize, seed: u64) {
    if count == 0 {
        return;
    }
    let _turn = one_at_a_time();
    let Some(mut house) = House::new() else { return };
    let mut random = StdRng::seed_from_u64(seed);
    let mut noticed = Vec::new();
    let mut done = 0;
    while done < count {
        let folder = tempfile::tempdir().expect("a folder");
        let mut run = Run::start(&house, place, folder.path());
        for _ in 0..AT_ONCE.min(count - done) {
            // All kinds in turn, so that few faults are of many kinds; only their lengths are left to chance.
            let kind = place.kinds()[done % place.kinds().len()];
            let length = if count == 1 { SHORTEST } else { Duration::from_millis(random.random_range(2_200..7_000)) };
            house.see_to_noise();
            noticed.extend(run.suffer(&mut house, kind, length));
            done += 1;
        }
        run.end(folder.path());
    }
    noticed.sort();
    let at = |share: f64| noticed.get((share * (noticed.len().max(1) - 1) as f64) as usize).map_or(0.0, Duration::as_secs_f64);
    println!(
        "devices, {place:?}: {count} faults, {} told, after {:.2} s (median) to {:.2} s; all healed, nothing lost",
        noticed.len(),
        at(0.5),
        at(1.0)
    );
}

#[test]
fn a_practice_outlasts_the_faults_of_its_devices() {
    endure(Where::Practice, setting("TIDECOUNT_DEVICE_FAULTS", 1).div_ceil(2) as usize, setting("TIDECOUNT_SEED", 1));
}

#[test]
fn waiting_outlasts_the_faults_of_its_devices() {
    endure(Where::Attend, (setting("TIDECOUNT_DEVICE_FAULTS", 1) / 2) as usize, setting("TIDECOUNT_SEED", 1));
}

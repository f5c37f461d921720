//! One speaker before and after enrolling.

use super::sound::{between_pauses, word_end_s};
use command_ear::templates::{EnrolledVoice, Found, OwnWord, TakeFinder};
use command_ear::{ACT_CONFIDENCE, ChildRecogniser, Choice, CommandEvent, CommandRecogniser, Grammar, Mode, Options};
use figures::{figure_of, share};
use session::{Command, listening};
use speak::Words;
use std::path::Path;

/// Takes to enrol on.
pub const TAKES: usize = 3;

/// Somebody's recordings, mono, 16 kHz.
pub struct Speaker {
    pub name: String,
    /// Command and its takes, the first three to enrol on, the others to test with.
    pub words: Vec<(Command, Vec<Vec<f32>>)>,
    /// Words beside the commands that the speaker enrols, too, as a client has twenty; they are tested with nothing.
    pub fillers: Vec<Vec<Vec<f32>>>,
    /// The same speaker's other words.
    pub others: Vec<Vec<f32>>,
    /// Other people's words that are no command.
    pub strangers: Vec<Vec<f32>>,
    /// Other people's commands: they must be heard as ever.
    pub guests: Vec<(Command, Vec<f32>)>,
}

/// Counts of one condition.
#[derive(Default, Clone, Copy)]
pub struct Count {
    pub said: usize,
    pub acted: usize,
    pub asked: usize,
    /// Another command was acted upon.
    pub wrong: usize,
    pub other_clips: usize,
    pub false_acted: usize,
    pub false_asked: usize,
    pub guests: usize,
    pub guests_acted: usize,
}

impl Count {
    fn add(&mut self, other: Self) {
        self.said += other.said;
        self.acted += other.acted;
        self.asked += other.asked;
        self.wrong += other.wrong;
        self.other_clips += other.other_clips;
        self.false_acted += other.false_acted;
        self.false_asked += other.false_asked;
        self.guests += other.guests;
        self.guests_acted += other.guests_acted;
    }

    fn hit_rate(&self) -> f64 {
        self.acted as f64 / self.said.max(1) as f64
    }

    fn row(&self) -> String {
        format!(
            "heard {:>3}/{:<3} asked {:>2} wrong {:>2} | of {:>3} other acted {:>2} asked {:>2} | guests {:>3}/{:<3}",
            self.acted,
            self.said,
            self.asked,
            self.wrong,
            self.other_clips,
            self.false_acted,
            self.false_asked,
            self.guests_acted,
            self.guests
        )
    }
}

pub struct Bench {
    ear: ChildRecogniser,
    words: Words,
}

/// The states that a command is tested in.
const STATES: [&[Command]; 7] = [
    listening::READY,
    listening::YES_NO,
    listening::HALTED,
    listening::PACED,
    listening::REPEATED,
    listening::FINISHING,
    listening::ALWAYS,
];

impl Bench {
    pub fn new() -> Self {
        let words = Words::english().expect("the catalogue");
        let fast = grammar(&words, listening::ALWAYS);
        let model = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en");
        let options = Options { model: model.into(), program: Some(env!("CARGO_BIN_EXE_tidecount").into()), fast, mode: Mode::Offline };
        Self { ear: ChildRecogniser::start(&options).unwrap_or_else(|why| panic!("{why}")), words }
    }

    pub fn run(&mut self, set: &str, speakers: Vec<Speaker>) {
        let (mut all, mut hard) = ([Count::default(); 2], [Count::default(); 2]);
        let mut hard_names = Vec::new();
        for speaker in &speakers {
            let own = self.enrol(speaker);
            self.ear.weigh_in(&EnrolledVoice::default());
            let before = self.count(speaker);
            self.ear.weigh_in(&own);
            let after = self.count(speaker);
            println!("{:<24} before {}\n{:<24} after  {}", speaker.name, before.row(), "", after.row());
            for (count, new) in all.iter_mut().zip([before, after]) {
                count.add(new);
            }
            if before.hit_rate() < 0.7 {
                hard_names.push(speaker.name.clone());
                for (count, new) in hard.iter_mut().zip([before, after]) {
                    count.add(new);
                }
            }
        }
        println!("hard: {}", hard_names.join(" "));
        for (group, who, [before, after]) in [("hard", "speakers that the model finds hard", hard), ("all", "all speakers", all)] {
            if before.said == 0 {
                println!("skipped: {set}: no {who}");
                continue;
            }
            println!("{set}, {who}:\n  before {}\n  after  {}", before.row(), after.row());
            let id = format!("enrol.{set}.{group}");
            share(&format!("{id}.before"), before.acted, before.said);
            share(&format!("{id}.after"), after.acted, after.said);
            let wrong = |c: &Count| (c.wrong + c.false_acted) as f64;
            figure_of(&format!("{id}.more_wrong"), wrong(&after) - wrong(&before), before.said + before.other_clips);
            let fewer = before.guests_acted as f64 - after.guests_acted as f64;
            figure_of(&format!("{id}.fewer_guests"), fewer, before.guests);
        }
    }

    /// The first takes of each word, found by level as `tidecount enrol` finds them.
    fn enrol(&mut self, speaker: &Speaker) -> EnrolledVoice {
        let takes = |clips: &[Vec<f32>]| clips.iter().take(TAKES).filter_map(|clip| find(clip)?.said.ok()).map(|cut| cut.take).collect();
        let words = speaker.words.iter().map(|(command, clips)| {
            let wording = self.words.wordings(*command).first().cloned().unwrap_or_default();
            OwnWord { wording, costly: command.is_costly(), takes: takes(clips) }
        });
        let fillers = speaker.fillers.iter().enumerate().map(|(i, clips)| OwnWord {
            wording: format!("filler {i}"),
            costly: false,
            takes: takes(clips),
        });
        EnrolledVoice { words: words.chain(fillers).collect() }
    }

    fn count(&mut self, speaker: &Speaker) -> Count {
        let mut count = Count::default();
        for (command, clips) in &speaker.words {
            self.listen(*command);
            for clip in clips.iter().skip(TAKES) {
                count.said += 1;
                let heard = self.hear(clip);
                let best = |wanted: bool| heard.iter().filter(|h| (h.0 == command.name()) == wanted).map(|h| h.1).fold(0.0, f64::max);
                let (right, wrong) = (best(true), best(false));
                // A costly command is asked back at less: that is as it should be.
                let enough = if command.is_costly() { 0.5 } else { ACT_CONFIDENCE };
                count.acted += usize::from(right >= enough);
                count.asked += usize::from(right > 0.0 && right < enough);
                count.wrong += usize::from(wrong >= ACT_CONFIDENCE);
            }
        }
        for (i, clip) in speaker.others.iter().chain(&speaker.strangers).enumerate() {
            self.ear.listen_for(&grammar(&self.words, &listening::with_safety(STATES[i % 5]))).expect("known words");
            count.other_clips += 1;
            let heard = self.hear(clip);
            let most = heard.iter().map(|h| h.1).fold(0.0, f64::max);
            count.false_acted += usize::from(most >= ACT_CONFIDENCE);
            count.false_asked += usize::from(most > 0.0 && most < ACT_CONFIDENCE);
        }
        for (command, clip) in &speaker.guests {
            self.listen(*command);
            count.guests += 1;
            let heard = self.hear(clip);
            count.guests_acted += usize::from(heard.iter().any(|h| h.0 == command.name() && h.1 >= ACT_CONFIDENCE));
        }
        count
    }

    fn listen(&mut self, command: Command) {
        // What is heard in none of these is heard somewhere: every command is.
        let others = listening::ALL.iter().map(|(_, commands)| *commands);
        let state = STATES.into_iter().chain(others).map(listening::with_safety).find(|state| state.contains(&command)).expect("a state");
        self.ear.listen_for(&grammar(&self.words, &state)).expect("known words");
    }

    fn hear(&mut self, clip: &[f32]) -> Vec<(String, f64)> {
        self.ear.push(0.0, &between_pauses(clip, 0.5, 1.2), true);
        let events = self.ear.finish();
        events.into_iter().filter_map(|e| if let CommandEvent::Heard(h) = e { Some((h.tag, h.confidence)) } else { None }).collect()
    }
}

pub fn find(clip: &[f32]) -> Option<Found> {
    let mut finder = TakeFinder::default();
    let sound = between_pauses(clip, 0.8, 1.2);
    let end_s = 0.8 + word_end_s(clip);
    let found = sound.chunks(160).enumerate().find_map(|(i, block)| finder.push(i as f64 * 0.01, block, true));
    found.filter(|f| f.start_s < end_s)
}

fn grammar(words: &Words, commands: &[Command]) -> Grammar {
    let choice = |&command: &Command| Choice { tag: command.name().to_owned(), wordings: words.wordings(command) };
    Grammar { choices: commands.iter().map(choice).collect(), ..Grammar::default() }
}

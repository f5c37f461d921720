//! The live page as a follower of the session: what the engine says, does and hears becomes what stands on the page.
//!
//! Called by the sound thread: everything here puts a value down in the hub and waits for nobody.

use std::collections::BTreeMap;

use crate::follow::bar::LiveBar;
use crate::follow::captions::Captions;
use crate::follow::done::Gathered;
use crate::follow::figure::figure;
use crate::follow::picture::picture_of;
use crate::web::live_page::{
    Asked, BarKind, ByPage, Doing, LiveHub, Mood, MoodName, Note, Offer, Offers, Phase, Picture, Section, Stage, Who,
};
use hear::{VoiceFrame, VoiceTask};
use live::levels::LevelScale;
use live::observe::{Beginning, Observer};
use record::UsualVoice;
use routine::{Step, Work, find};
use screen::ShownView;
use session::{Arg, Command, Entry, Fact, Line, Listening, View, listening};
use speak::Words;

/// Messages that are kept for whoever looks after the program.
const NOTES: usize = 6;
/// The exercise whose pitch is this person's usual voice: a comfortable held vowel.
const COMFORTABLE: &str = "long-ah";
/// What stands there while nothing goes on until it is said.
const STILL: [&str; 5] = ["stopped-shown", "paused-shown", "help-shown", "unwell-shown", "resting-shown"];

/// Follows one practice, or one stretch of waiting for one.
pub struct WebFollower {
    hub: LiveHub,
    words: Words,
    phase: Phase,
    steps: Vec<Step>,
    usual: BTreeMap<String, UsualVoice>,
    class: bool,
    /// The page alone leads; what stands there then.
    by_page: ByPage,
    /// The large figure.
    counted: String,
    /// What the rest under way began with, s.
    rests_from: Option<f64>,
    captions: Captions,
    stage: Stage,
    /// Key of the prompt.
    prompt: String,
    /// Which step the heading names or, between steps, named last; from 0.
    step: Option<usize>,
    /// The heading names no step now.
    between: bool,
    bar: Option<LiveBar>,
    /// It is the client's turn to use the voice.
    turn: bool,
    listens: bool,
    holds: bool,
    /// Our lines under way that are no counts.
    speaking: u32,
    offers: Offers,
    may_say: Vec<Offer>,
    /// What is offered first, answers aside.
    can_say: Vec<Offer>,
    gathered: Gathered,
    notes: Vec<Note>,
}

impl WebFollower {
    /// Follows a practice.
    #[must_use]
    pub fn new(hub: LiveHub, words: Words) -> Self {
        let follower = Self::in_phase(hub, words, Phase::Starting);
        follower.hub.set(Section::Done, &Vec::<Note>::new());
        follower.publish_stage(&Stage { phase: Phase::Starting, prompt: follower.named("page-starting-shown"), ..Stage::default() });
        follower
    }

    /// Follows the waiting for a practice; what was done in the last one stays on the page.
    #[must_use]
    pub fn waiting(hub: LiveHub, words: Words) -> Self {
        Self::in_phase(hub, words, Phase::Waiting)
    }

    fn in_phase(hub: LiveHub, words: Words, phase: Phase) -> Self {
        let mut follower = Self {
            hub,
            words,
            phase,
            steps: Vec::new(),
            usual: BTreeMap::new(),
            class: false,
            by_page: ByPage::default(),
            counted: String::new(),
            rests_from: None,
            captions: Captions::default(),
            stage: Stage { phase, ..Stage::default() },
            prompt: String::new(),
            step: None,
            between: true,
            bar: None,
            turn: false,
            listens: phase == Phase::Waiting,
            holds: false,
            speaking: 0,
            offers: Offers::default(),
            may_say: Vec::new(),
            can_say: Vec::new(),
            gathered: Gathered::default(),
            notes: Vec::new(),
        };
        let stop = follower.command(Command::Stop);
        follower.offers.always = match phase {
            Phase::Waiting => vec![stop],
            _ => vec![stop, follower.command(Command::Pause)],
        };
        if phase != Phase::Waiting {
            follower.offers.keys = Command::ALL.iter().map(|command| command.name().to_owned()).collect();
        }
        follower.publish_offers();
        follower.publish_captions();
        follower.publish_figure("");
        follower.publish_picture(None);
        follower.publish_bar();
        follower.publish_mood();
        follower
    }

    fn text(&self, line: &Line) -> String {
        self.words.text(line).unwrap_or_else(|_| line.key.clone())
    }

    fn named(&self, key: &str) -> String {
        self.text(&Line { key: key.to_owned(), args: Vec::new() })
    }

    fn command(&self, command: Command) -> Offer {
        Offer { name: command.name().to_owned(), label: self.named(&command.name_key()) }
    }

    fn with_number(&self, key: &str, numbers: &[(&'static str, f64)]) -> String {
        self.text(&Line { key: key.to_owned(), args: numbers.iter().map(|(name, number)| (*name, Arg::Number(*number))).collect() })
    }

    // What is put down.

    fn publish_stage(&self, stage: &Stage) {
        self.hub.set(Section::Stage, stage);
    }

    fn publish_figure(&self, shown: &str) {
        let step = self.step.and_then(|index| self.steps.get(index));
        let mut figure = figure(shown, &self.prompt, step, &|line| self.text(line));
        // What is left of a rest gets shorter before the eye, where no voice tells that it is over.
        if let Some(from_s) = self.rests_from.filter(|_| self.by_page.leads) {
            figure.share = figure.text.parse().ok().map(|left_s: f64| (left_s / from_s).clamp(0.0, 1.0));
        }
        self.hub.set(Section::Figure, &figure);
    }

    /// Takes the figure, and notices where a rest begins.
    fn take_figure(&mut self, shown: &str) {
        self.counted = shown.to_owned();
        let left_s = shown.parse::<f64>().ok().filter(|left_s| *left_s > 0.0 && self.rests());
        self.rests_from = match (left_s, self.rests_from) {
            (Some(left_s), Some(from_s)) => Some(from_s.max(left_s)),
            (left_s, _) => left_s.or(self.rests_from.filter(|_| self.rests())),
        };
    }

    /// The figure is what is left of a rest; a result that stands there alone has tenths.
    fn rests(&self) -> bool {
        self.prompt == "resting-shown" && !self.counted.is_empty() && !self.counted.contains('.')
    }

    /// What the client is to do now, and how it is called.
    fn doing(&self) -> (Doing, Option<&'static str>) {
        let still = STILL.contains(&self.prompt.as_str());
        match () {
            () if self.phase != Phase::Practice => (Doing::Nothing, None),
            () if self.rests() => (Doing::Rest, Some("page-rest-shown")),
            () if still && self.speaking == 0 => (Doing::Still, Some("page-paused-shown")),
            () if !still && !self.counted.is_empty() => (Doing::Go, Some("page-go-shown")),
            () if self.speaking > 0 => (Doing::Read, Some("page-read-shown")),
            () if self.holds || self.turn => (Doing::Go, Some("page-go-shown")),
            () if self.listens => (Doing::Turn, Some("page-turn-shown")),
            () => (Doing::Nothing, None),
        }
    }

    /// Nothing of it is sent where a voice leads.
    fn publish_by_page(&self) {
        let (doing, key) = self.doing();
        let words = key.map(|key| self.named(key)).unwrap_or_default();
        self.hub
            .set(Section::ByPage, &if self.by_page.leads { ByPage { doing, words, ..self.by_page.clone() } } else { ByPage::default() });
    }

    fn publish_picture(&self, picture: Option<pictures::Picture>) {
        let shown = picture.map(|picture| Picture { name: picture.name.to_owned(), described: self.named(&picture.described()) });
        self.hub.set(Section::Picture, &shown.unwrap_or_default());
    }

    fn publish_bar(&self) {
        let text = |line: &Line| self.text(line);
        self.hub.set(Section::Bar, &self.bar.as_ref().map(|bar| bar.bar(self.turn, &text)).unwrap_or_default());
        self.publish_meter();
    }

    fn publish_meter(&self) {
        let text = |line: &Line| self.text(line);
        let meter = self.bar.as_ref().filter(|_| self.turn).map(|bar| bar.meter(&text));
        self.hub.set(Section::Meter, &meter.unwrap_or_default());
    }

    fn publish_captions(&self) {
        self.hub.set(Section::Rows, &self.captions.rows());
        self.hub.set(Section::Said, &self.captions.said());
    }

    fn publish_offers(&mut self) {
        // Answers stand before everything that can be said besides.
        let is_answer = |offer: &&Offer| offer.name.starts_with("answer-");
        self.offers.now = self.may_say.iter().filter(is_answer).chain(&self.can_say).cloned().collect();
        let shown = |offer: &&Offer| !has_label(&self.offers.now, offer) && !has_label(&self.offers.always, offer);
        self.offers.more = self.may_say.iter().filter(shown).cloned().collect();
        self.hub.offer(&self.offers);
    }

    fn publish_mood(&self) {
        let still = STILL.contains(&self.prompt.as_str());
        let (name, key) = match () {
            () if self.phase == Phase::Over => (MoodName::Idle, None),
            () if self.speaking > 0 => (MoodName::Speaking, Some("page-speaking-shown")),
            () if self.holds => (MoodName::Holding, Some("page-holding-shown")),
            () if self.listens => (MoodName::Listening, Some("page-listening-shown")),
            () if still => (MoodName::Still, Some("page-still-shown")),
            () => (MoodName::Idle, None),
        };
        self.hub.set(Section::Mood, &Mood { name, words: key.map(|key| self.named(key)).unwrap_or_default() });
        self.publish_by_page();
    }

    /// The step that the heading names: the next of its exercise from where we were, for an exercise may come twice.
    fn find_step(&mut self, view: &View) {
        let Some(heading) = view.heading.as_ref().filter(|heading| heading.key != "heading-session") else {
            self.take_step(None);
            return;
        };
        let id = heading.args.iter().find_map(|(name, arg)| match arg {
            Arg::Message(key) if *name == "name" => key.strip_prefix("ex-").and_then(|key| key.strip_suffix("-name")),
            _ => None,
        });
        let is = |index: &usize| self.steps.get(*index).is_some_and(|step| Some(step.exercise.id.as_str()) == id);
        let from = self.step.unwrap_or(0);
        let found = (from..self.steps.len()).chain(0..from).find(is);
        self.take_step(found);
    }

    fn take_step(&mut self, step: Option<usize>) {
        // Between steps the place is kept, so that the next of two equal exercises is found behind it.
        if step.is_some() && step == self.step && self.bar.is_some() {
            self.between = false;
            return;
        }
        let bar = step.and_then(|index| self.steps.get(index)).and_then(|step| self.bar_of(step));
        self.between = step.is_none();
        if step.is_some() {
            self.step = step;
        }
        if bar.is_some() || self.bar.is_some() {
            self.bar = bar;
            self.publish_bar();
        }
    }

    /// Loudness where the voice is to be strong, pitch where it is to be high or to move.
    fn bar_of(&self, step: &Step) -> Option<LiveBar> {
        if self.class {
            return None;
        }
        let id = &step.exercise.id;
        let usual = self.usual.get(id).copied().unwrap_or_default();
        let voice_hz = self.usual.get(COMFORTABLE).and_then(|usual| usual.f0_hz);
        match step.work {
            Work::Voiced { glide, .. }
                if glide || find(id).is_some_and(|entry| entry.high || entry.climbs == Some(session::Climbs::Pitch)) =>
            {
                Some(LiveBar::new(BarKind::Pitch, usual, voice_hz, glide))
            }
            Work::Voiced { .. } => Some(LiveBar::new(BarKind::Level, usual, None, false)),
            Work::ReadAloud { .. } | Work::Talk { .. } => Some(LiveBar::new(BarKind::Level, usual, None, false).without_time()),
            _ => None,
        }
    }

    fn is_turn(&self, listening: &Listening) -> bool {
        let speaks = match self.step.and_then(|index| self.steps.get(index)).map(|step| &step.work) {
            Some(Work::ReadAloud { .. }) => listening.commands == listening::with_safety(listening::READING),
            Some(Work::Talk { .. }) => {
                matches!(listening.voice, VoiceTask::Speech { .. })
                    && [listening::TALKING, listening::MOMENT].map(listening::with_safety).contains(&listening.commands)
            }
            _ => false,
        };
        speaks || matches!(listening.voice, VoiceTask::Hold(_))
    }

    fn finish(&mut self, prompt: String) {
        self.phase = Phase::Over;
        self.stage = Stage { phase: Phase::Over, part: String::new(), aside: String::new(), prompt, ..self.stage.clone() };
        self.offers = Offers::default();
        (self.bar, self.turn, self.holds, self.listens) = (None, false, false, false);
        self.may_say.clear();
        self.can_say.clear();
        self.by_page.sentence.clear();
        (self.counted, self.rests_from) = (String::new(), None);
        self.publish_stage(&self.stage);
        self.publish_figure("");
        self.publish_picture(None);
        self.publish_bar();
        self.publish_offers();
        self.publish_mood();
        self.hub.set(Section::Done, &self.gathered.rows(&|line| self.text(line)));
    }
}

/// The same words never stand on two buttons.
fn has_label(offers: &[Offer], offer: &Offer) -> bool {
    offers.iter().any(|other| other.label == offer.label)
}

impl Observer for WebFollower {
    fn begins(&mut self, beginning: &Beginning<'_>) {
        self.steps = beginning.routine.steps.clone();
        self.usual = beginning.usual.clone();
        self.class = beginning.class;
        self.by_page.leads = beginning.by_page;
        self.stage.heading = beginning.routine.title.clone();
        self.publish_stage(&Stage { prompt: self.named("page-starting-shown"), ..self.stage.clone() });
    }

    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        // A count stands as the figure, and a screen reader need not say after us what we say ourselves each second.
        if line.key == "count" {
            return;
        }
        // While a part of getting up is told, its prompt does not stand there yet.
        if line.key.starts_with("rise-") {
            self.publish_picture(picture_of(&line.key, None));
        }
        self.speaking += 1;
        self.by_page.sentence = text.to_owned();
        self.captions.began(at_s, text);
        self.publish_captions();
        self.publish_mood();
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, _text: &str) {
        if line.key == "count" {
            return;
        }
        self.speaking = self.speaking.saturating_sub(1);
        self.captions.ended(at_s);
        self.publish_captions();
        self.publish_mood();
    }

    fn hushed(&mut self) {
        self.speaking = 0;
        self.by_page.sentence.clear();
        self.captions.hushed();
        self.publish_mood();
    }

    fn heard(&mut self, _at_s: f64, text: &str) {
        let words = self.text(&Line { key: "page-heard-shown".into(), args: vec![("words", Arg::Text(text.to_owned()))] });
        self.captions.note(Who::Client, &words);
        self.publish_captions();
    }

    fn viewed(&mut self, _at_s: f64, view: &View) {
        self.prompt = view.prompt.as_ref().map(|line| line.key.clone()).unwrap_or_default();
        self.find_step(view);
        let step = self.step.filter(|_| !self.between).and_then(|index| self.steps.get(index));
        self.publish_picture(picture_of(&self.prompt, step));
    }

    fn shown(&mut self, _at_s: f64, view: &ShownView) {
        if self.phase == Phase::Starting {
            self.phase = Phase::Practice;
        }
        let (heading, part) = view.heading.split_once(" · ").unwrap_or((&view.heading, ""));
        let heading = if heading.is_empty() { self.stage.heading.clone() } else { heading.to_owned() };
        self.stage = Stage { phase: self.phase, heading, part: part.to_owned(), prompt: view.prompt.clone(), aside: view.aside.clone() };
        self.publish_stage(&self.stage);
        self.take_figure(&view.figure);
        self.publish_figure(&view.figure);
        let now: Vec<Offer> = view.can_say.iter().filter(|offer| !has_label(&self.offers.always, offer)).cloned().collect();
        if now != self.can_say {
            self.can_say = now;
            self.publish_offers();
        }
        self.publish_mood();
    }

    fn listens(&mut self, _at_s: f64, listening: &Listening, may_say: &[Offer]) {
        self.listens = !(listening.commands.is_empty() && listening.answers.is_empty() && listening.worded.is_empty());
        let holds = matches!(listening.voice, VoiceTask::Hold(_));
        self.holds = holds && !self.listens;
        let turn = self.is_turn(listening);
        if turn != self.turn {
            self.turn = turn;
            if let Some(bar) = self.bar.as_mut().filter(|_| turn) {
                bar.again();
            }
            self.publish_bar();
        }
        if self.may_say != may_say {
            self.may_say = may_say.to_vec();
            self.publish_offers();
        }
        self.publish_mood();
    }

    fn passes(&mut self, now_s: f64) {
        if self.captions.tick(now_s) {
            self.publish_captions();
        }
    }

    fn voice(&mut self, frame: &VoiceFrame, scale: LevelScale) {
        let Some(bar) = self.bar.as_mut().filter(|_| self.turn) else { return };
        let goal_moves = bar.takes_scale(scale);
        if bar.hear(frame) {
            self.publish_meter();
        }
        if goal_moves {
            self.publish_bar();
        }
    }

    fn kept(&mut self, entry: &Entry) {
        self.gathered.take(entry);
        match &entry.fact {
            Fact::HoldMeasured { duration_s, complete: true, .. } => {
                let held = self.with_number("page-held-shown", &[("seconds", (duration_s * 10.0).round() / 10.0)]);
                self.captions.whole(Who::Note, &held);
                self.publish_captions();
            }
            Fact::SessionEnded { steps_done, steps_prescribed, .. } => {
                let done = [("done", f64::from(*steps_done)), ("all", f64::from(*steps_prescribed))];
                self.finish(self.with_number("page-exercises-shown", &done));
            }
            _ => {}
        }
    }

    fn told(&mut self, _at_s: f64, warning: &str) {
        self.notes.push(Note { text: warning.to_owned() });
        if self.notes.len() > NOTES {
            self.notes.remove(0);
        }
        self.hub.set(Section::Notes, &self.notes);
    }

    fn asked(&mut self) -> Option<Asked> {
        self.hub.take_asked()
    }
}

impl Drop for WebFollower {
    /// A practice that was not led to its end says so.
    fn drop(&mut self) {
        if matches!(self.phase, Phase::Starting | Phase::Practice) {
            self.finish(self.named("page-broken-off-shown"));
        }
    }
}

#[cfg(test)]
#[path = "tests/follower.rs"]
mod tests;

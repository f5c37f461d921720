//! The short questions at the end: each can be skipped, "stop" and "finish" end them at once, and nothing of them holds up the end.
//!
//! An answer is said back and kept at once. A "no", "go back" or another answer right after it corrects it: the last one counts.

use super::listening;
use super::moment::{HowFar, Told};
use super::next::{NextAction, Speaking, Turn};
use super::outlet::{count, line};
use super::patience::{Patience, Silence};
use super::practice::Practice;
use super::questions::Question;
use model::{Arg, Command, Fact, Line, MissedReason, Rating, Response, SignAnswer, Utterance};

/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;
/// After an answer was said back there is so long to correct it, s; common practice, no source.
const CORRECT_S: f64 = 2.5;
/// Whoever begins to speak meanwhile has so long at most, s.
const CORRECT_AT_MOST_S: f64 = 8.0;
/// After so many questions in a row that nobody answered, nobody is there: the rest is left out.
const UNANSWERED: u32 = 2;
/// Whoever was not well is listened to for so long before it ends, s; common practice, no source.
const UNWELL_S: f64 = 120.0;

/// A question stands open, or has just been answered, or is left.
#[derive(Debug, Clone)]
pub(super) struct LookingBack {
    stage: Stage,
    /// The answer that was said back, by its message: saying it twice changes nothing.
    taken: String,
    /// What was told so far, where a moment is asked for.
    told: Told,
    pub patience: Patience,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Stage {
    Asked,
    /// And asked again, into the silence.
    AskedAgain,
    /// An answer was said back, and can be corrected.
    Taken,
    /// The client was not well; it listens for a while, and then it ends.
    Unwell {
        since_s: f64,
    },
    /// No more questions; the last words come then, s.
    Left {
        at_s: f64,
    },
}

/// Nothing is asked any more; then the practice ends as it had ended.
pub(super) fn last_words(practice: &mut Practice, key: &str) -> Speaking {
    practice.listen_for_worded(&[], Vec::new());
    let last = practice.say(key, &[]);
    practice.show_prompt(line("questions-over-shown"), &[]);
    practice.after(last, BREATH_S, NextAction::End(reason(practice)))
}

fn reason(practice: &Practice) -> &'static str {
    practice.looking_back.as_ref().map_or("completed", |questions| questions.reason)
}

impl LookingBack {
    fn at(practice: &Practice, stage: Stage) -> Self {
        Self { stage, taken: String::new(), told: Told::default(), patience: Patience::new(practice.now_s) }
    }

    /// Asks the question that stands open; none behind the last one.
    pub fn ask(practice: &mut Practice) -> Option<Self> {
        let questions = practice.looking_back.as_mut()?;
        let (many, announced) = (questions.len(), std::mem::replace(&mut questions.announced, true));
        let question = questions.now()?;
        if !announced {
            practice.say("questions-first", &[("n", count(many))]);
        }
        let (list, worded) = hears(&question);
        practice.listen_for_worded(list, worded);
        let (key, args) = wording(practice, &question);
        practice.say(&key, &args);
        practice.show_prompt(Line { key: format!("{key}-shown"), args }, &can_say(&question));
        practice.resume_target = NextAction::LookBack;
        Some(Self::at(practice, Stage::Asked))
    }

    /// After words to somebody who was not well: it listens for a while longer.
    pub fn listening_on(practice: &mut Practice) -> Self {
        practice.listen_for_worded(listening::EMERGENCY, Vec::new());
        practice.say("questions-unwell", &[]);
        practice.show_prompt(line("questions-unwell-shown"), &[Command::AllRight, Command::Help]);
        Self::at(practice, Stage::Unwell { since_s: practice.now_s })
    }

    /// No more questions: what was answered stands.
    pub fn leave(practice: &mut Practice, silence_s: f64) -> Self {
        practice.hush();
        practice.listen_for_worded(listening::HALTED, Vec::new());
        practice.resume_target = NextAction::End(reason(practice));
        Self::at(practice, Stage::Left { at_s: practice.now_s + silence_s })
    }

    /// A question stands open: what we say ourselves holds the answers.
    pub fn is_asking(&self) -> bool {
        matches!(self.stage, Stage::Asked | Stage::AskedAgain)
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if practice.is_speaking() {
            return Turn::Stay;
        }
        let now_s = practice.now_s;
        match self.stage {
            Stage::Asked | Stage::AskedAgain if self.takes_a_tale(practice) => self.listen_to_tale(practice),
            Stage::Asked | Stage::AskedAgain => self.wait(practice),
            Stage::Taken => {
                let quiet_s = self.patience.quiet_for_s(now_s);
                let speaks = practice.talk.since_s.is_some() && quiet_s < CORRECT_AT_MOST_S;
                if quiet_s < CORRECT_S || speaks { Turn::Stay } else { next(practice) }
            }
            Stage::Unwell { since_s } if now_s - since_s < UNWELL_S => Turn::Stay,
            Stage::Left { at_s } if now_s < at_s => Turn::Stay,
            Stage::Unwell { .. } | Stage::Left { .. } => last_words(practice, "questions-left").into(),
        }
    }

    /// Asks once more into the silence, and then goes on.
    fn wait(&mut self, practice: &mut Practice) -> Turn {
        if practice.silence(&mut self.patience, Some(Response::Answer)) == Silence::Wait {
            return Turn::Stay;
        }
        let Some(question) = open(practice) else { return next(practice) };
        if self.stage == Stage::Asked {
            self.stage = Stage::AskedAgain;
            practice.remind(match question {
                Question::Rating(..) => "ask-rating-again",
                Question::Moment => "ask-moment-again",
                Question::Missed => "ask-missed-again",
                Question::Sign(_) => "ask-sign-again",
            });
            return Turn::Stay;
        }
        pass_over(practice, &question);
        let nobody = practice.looking_back.as_mut().is_none_or(|questions| {
            questions.unanswered += 1;
            questions.unanswered >= UNANSWERED
        });
        if nobody { last_words(practice, "questions-left").into() } else { next(practice) }
    }

    /// A moment is asked for, and what is said now is the answer.
    pub fn takes_a_tale(&self, practice: &Practice) -> bool {
        self.is_asking() && open(practice) == Some(Question::Moment)
    }

    pub fn speech_began(&mut self, practice: &Practice, onset_s: f64) {
        if !practice.is_speaking() {
            self.told.speech_began(onset_s);
            self.patience.speaks(practice.now_s);
        }
    }

    /// What was said over our own voice, or was a word that we knew, is no part of it.
    pub fn spoken(&mut self, practice: &Practice, utterance: &Utterance) {
        let ours = practice.is_speaking() || utterance.onset_s < practice.last_spoke_s;
        if !ours && practice.command_at_s < utterance.onset_s {
            self.told.spoken(utterance);
            self.patience.heard(practice.now_s);
        } else {
            self.told = Told::default();
        }
    }

    fn listen_to_tale(&mut self, practice: &mut Practice) -> Turn {
        match self.told.how_far(practice.now_s) {
            HowFar::UnderWay => Turn::Stay,
            HowFar::Nothing => self.wait(practice),
            HowFar::Short if self.stage == Stage::Asked => {
                self.told = Told::default();
                self.stage = Stage::AskedAgain;
                practice.remind("ask-moment-again");
                Turn::Stay
            }
            HowFar::Short | HowFar::Over => {
                self.keep_tale(practice);
                Turn::Stay
            }
        }
    }

    fn keep_tale(&mut self, practice: &mut Practice) {
        practice.record(self.told.fact());
        self.take(practice, "moment-taken", &[]);
        self.told = Told::default();
    }

    /// "Finish" in the middle of it: what was told stands.
    pub fn keep_what_was_told(&self, practice: &mut Practice) {
        if self.takes_a_tale(practice) && self.told.is_enough() {
            practice.record(self.told.fact());
        }
    }

    /// "Yes" and "no" to whether there was such a moment, where nothing has been told yet.
    fn was_there_a_moment(&mut self, practice: &mut Practice, there_was: bool) -> Turn {
        if self.told.is_enough() {
            return Turn::Stay;
        }
        practice.hush();
        self.told = Told::default();
        if there_was {
            practice.say("moment-tell", &[]);
            self.patience = Patience::new(practice.now_s);
            return Turn::Stay;
        }
        practice.record(self.told.fact());
        practice.say("moment-none", &[]);
        if let Some(questions) = &mut practice.looking_back {
            questions.unanswered = 0;
        }
        next(practice)
    }

    /// One of the answers was heard, or pressed. What is heard while we speak may be our own words; what is pressed is not.
    pub fn answer(&mut self, practice: &mut Practice, key: &str, pressed: bool) {
        let can_answer = self.is_asking() || (self.stage == Stage::Taken && self.taken != key);
        if (practice.is_speaking() && !pressed) || !can_answer {
            return;
        }
        practice.hush();
        match open(practice) {
            Some(Question::Rating(what, over)) => {
                let Some(value) = value_of(key) else { return };
                practice.record(Fact::Rated { what, over, value: Some(value) });
                let n = [("n", Arg::Number(f64::from(value)))];
                self.take(practice, "rating-taken", &n);
                practice.show_figure(&value.to_string());
            }
            Some(Question::Missed) => {
                let Some(reason) = MissedReason::ALL.into_iter().find(|reason| reason.wordings_key() == key) else { return };
                let said = format!("missed-taken-{}", reason.replace(' ', "-"));
                practice.record(Fact::DaysMissed { days: days_missed(practice), reason: Some(reason) });
                self.take(practice, &said, &[]);
            }
            _ => return,
        }
        key.clone_into(&mut self.taken);
        practice.command_at_s = practice.now_s;
    }

    /// The answer is kept: it is said back, and can be corrected.
    fn take(&mut self, practice: &mut Practice, key: &str, args: &[(&'static str, Arg)]) {
        if let Some(questions) = &mut practice.looking_back {
            questions.unanswered = 0;
        }
        if let Some(question) = open(practice).filter(|_| self.is_asking()) {
            let (_, worded) = hears(&question);
            // A "no" said twice is no correction of itself.
            let list = if matches!(question, Question::Sign(_)) { listening::SIGN_CORRECTION } else { listening::CORRECTION };
            practice.listen_for_worded(list, worded);
        }
        practice.say(key, args);
        (self.stage, self.patience) = (Stage::Taken, Patience::new(practice.now_s));
    }

    /// What is said to the question that stands open.
    pub fn obey(&mut self, practice: &mut Practice, command: Command) -> Turn {
        let Some(question) = open(practice) else { return Turn::Stay };
        if matches!(self.stage, Stage::Unwell { .. } | Stage::Left { .. }) {
            let over = matches!(command, Command::AllRight | Command::GoOn | Command::Ready | Command::Done | Command::Skip);
            if over {
                *self = Self::leave(practice, 0.0);
            }
            return Turn::Stay;
        }
        let sign = |answer| if let Question::Sign(sign) = &question { Some((sign.clone(), answer)) } else { None };
        let answered = match command {
            _ if self.stage == Stage::Taken => None,
            Command::Yes => sign(SignAnswer::Yes),
            Command::No => sign(SignAnswer::No),
            Command::NotSure | Command::Hint => sign(SignAnswer::NotSure),
            _ => None,
        };
        if let Some((sign, answer)) = answered {
            practice.hush();
            let key = format!("sign-taken-{}", answer.replace(' ', "-"));
            practice.record(Fact::SwallowSign { sign, answer });
            self.take(practice, &key, &[]);
            return Turn::Stay;
        }
        match command {
            Command::Yes | Command::No if self.takes_a_tale(practice) => self.was_there_a_moment(practice, command == Command::Yes),
            Command::Skip => {
                practice.hush();
                if self.is_asking() {
                    pass_over(practice, &question);
                    if let Some(questions) = &mut practice.looking_back {
                        questions.unanswered = 0;
                    }
                }
                next(practice)
            }
            // Right after an answer both take it back.
            Command::GoBack if self.stage == Stage::Taken => again(practice),
            Command::No if self.stage == Stage::Taken && !matches!(question, Question::Sign(_)) => again(practice),
            Command::GoBack => {
                if let Some(questions) = &mut practice.looking_back {
                    questions.back();
                }
                again(practice)
            }
            Command::Again => again(practice),
            _ => Turn::Stay,
        }
    }
}

fn again(practice: &mut Practice) -> Turn {
    practice.hush();
    Turn::Go(NextAction::LookBack)
}

fn next(practice: &mut Practice) -> Turn {
    if let Some(questions) = &mut practice.looking_back {
        questions.next();
    }
    Turn::Go(NextAction::LookBack)
}

fn open(practice: &Practice) -> Option<Question> {
    practice.looking_back.as_ref().and_then(super::questions::Questions::now)
}

fn days_missed(practice: &Practice) -> u32 {
    practice.context.week_to_ask.map_or(0, |week| week.days_missed)
}

/// Nobody answered, or nobody wants to: that stands in the journal, too.
fn pass_over(practice: &mut Practice, question: &Question) {
    let fact = match question {
        Question::Rating(what, over) => Fact::Rated { what: *what, over: *over, value: None },
        Question::Moment => Told::default().fact(),
        Question::Missed => Fact::DaysMissed { days: days_missed(practice), reason: None },
        Question::Sign(sign) => Fact::SwallowSign { sign: sign.clone(), answer: SignAnswer::PassedOver },
    };
    practice.record(fact);
}

/// The message that asks, and its arguments.
fn wording(practice: &Practice, question: &Question) -> (String, Vec<(&'static str, Arg)>) {
    match question {
        Question::Rating(what, _) => (format!("ask-{}", what.name()), vec![]),
        Question::Moment => ("ask-moment".to_owned(), vec![]),
        Question::Missed => ("ask-missed".to_owned(), vec![("days", Arg::Number(f64::from(days_missed(practice))))]),
        Question::Sign(sign) => (sign.ask_key(), vec![]),
    }
}

/// What is listened for: commands, and answers by the messages that hold their wordings.
fn hears(question: &Question) -> (&'static [Command], Vec<String>) {
    match question {
        Question::Rating(..) => (listening::LOOKING_BACK, listening::numbers()),
        Question::Moment => (listening::MOMENT, Vec::new()),
        Question::Missed => (listening::LOOKING_BACK, listening::missed_reasons()),
        Question::Sign(_) => (listening::SIGN, Vec::new()),
    }
}

fn can_say(question: &Question) -> Vec<Command> {
    match question {
        Question::Sign(_) => vec![Command::Yes, Command::No, Command::NotSure, Command::Skip],
        Question::Moment => vec![Command::No, Command::Skip, Command::Finish],
        _ => vec![Command::Skip, Command::Finish],
    }
}

/// The number that a message of [`listening::numbers`] stands for.
fn value_of(key: &str) -> Option<u8> {
    (0..=Rating::MOST).find(|value| listening::number_key(*value) == key)
}

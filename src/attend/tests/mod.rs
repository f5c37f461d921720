//! The attendant as a client, a carer and a household meet it.

mod day;
mod notices;
mod starting;

use super::*;
use routine::{PlannedTime, Weekday};
use session::{Line, LineId};
use std::collections::BTreeSet;

/// One routine: call name and planned times of a Wednesday, minutes after midnight.
fn routine(called: &str, times: &[u16]) -> HouseRoutine {
    let on = |at_min: &u16| PlannedTime { days: BTreeSet::from([Weekday::Wednesday]), at_min: *at_min };
    HouseRoutine {
        file: format!("{called}.toml"),
        title: called.to_owned(),
        called: vec![called.to_owned()],
        plan: times.iter().map(on).collect(),
    }
}

fn person(name: &str, pronoun: Pronoun, routines: Vec<HouseRoutine>) -> Person {
    Person { name: name.to_owned(), pronoun, summary_after: false, by_page: false, routines }
}

/// One man with an evening routine at half past six.
fn alone() -> Household {
    Household { persons: vec![person("grandpa", Pronoun::He, vec![routine("evening routine", &[1110])])], ..Household::default() }
}

/// Two persons with an evening routine each, and a morning routine of hers.
fn couple() -> Household {
    Household {
        persons: vec![
            person("grandpa", Pronoun::He, vec![routine("evening routine", &[1110])]),
            person("grandma", Pronoun::She, vec![routine("evening routine", &[1200]), routine("morning routine", &[540])]),
        ],
        ..Household::default()
    }
}

/// An attendant on a Wednesday, whose lines are said in two seconds each.
struct Rig {
    attendant: Attendant,
    at_s: f64,
    begin_min: f64,
    day: i64,
    open: Vec<(LineId, f64)>,
    /// When and what was said, with arguments.
    said: Vec<(f64, Line)>,
    started: Vec<(usize, usize)>,
    kept: Vec<(Option<usize>, String, Keeping)>,
    listening: Vec<Said>,
    view: Option<View>,
}

impl Rig {
    fn new(household: Household, hour: u16, minute: u16) -> Self {
        let begin_min = f64::from(hour * 60 + minute);
        let mut rig = Self {
            attendant: Attendant::new(household),
            at_s: 0.0,
            begin_min,
            day: 1,
            open: Vec::new(),
            said: Vec::new(),
            started: Vec::new(),
            kept: Vec::new(),
            listening: Vec::new(),
            view: None,
        };
        rig.pass(0.1);
        rig
    }

    fn on(&mut self, event: Event) {
        for effect in self.attendant.on(event) {
            match effect {
                Effect::Say { id, line } => {
                    self.open.push((id, self.at_s + 2.0));
                    self.said.push((self.at_s, line));
                }
                Effect::Hush => self.open.iter_mut().for_each(|line| line.1 = self.at_s),
                Effect::Listen(listening) => self.listening = listening,
                Effect::Show(view) => self.view = Some(view),
                Effect::Start { person, routine } => self.started.push((person, routine)),
                Effect::Keep { person, line, keeping } => self.kept.push((person, line.key, keeping)),
            }
        }
    }

    fn moment(&self) -> Moment {
        let minute = self.begin_min + self.at_s / 60.0;
        let day = self.day + (minute / 1440.0) as i64;
        Moment { day, weekday: if day == 1 { Weekday::Wednesday } else { Weekday::Thursday }, minute: (minute % 1440.0) as u16 }
    }

    fn pass(&mut self, s: f64) {
        self.pass_with(s, false);
    }

    /// Lets time pass, somebody speaking all the while or not.
    fn pass_with(&mut self, s: f64, talk: bool) {
        let until_s = self.at_s + s;
        // Long stretches in longer steps, so that a day is soon over.
        let step_s = if s > 100.0 { 0.5 } else { 0.1 };
        while self.at_s < until_s - 1e-9 {
            self.at_s += step_s;
            if talk {
                self.on(Event::Talk { at_s: self.at_s });
            }
            let ended: Vec<_> = self.open.extract_if(.., |line| line.1 <= self.at_s + 1e-9).collect();
            for (line, _) in ended {
                self.on(Event::LineEnded { at_s: self.at_s, line });
            }
            let now = self.moment();
            self.on(Event::Tick { at_s: self.at_s, now });
        }
    }

    /// Until the clock shows this time.
    fn pass_to(&mut self, hour: u16, minute: u16) {
        let s = (f64::from(hour * 60 + minute) - self.begin_min) * 60.0 + 0.05 - self.at_s;
        self.pass(s);
    }

    /// Says something surely, and lets five seconds pass. What is not listened for is not heard; "stop" is, over our own voice.
    fn hear(&mut self, said: Said) {
        self.hear_with(said, 0.95);
    }

    fn hear_with(&mut self, said: Said, confidence: f64) {
        if self.listening.contains(&said) || (said == Said::Stop && !self.open.is_empty()) {
            self.on(Event::Heard { at_s: self.at_s, said, confidence });
        }
        self.pass(5.0);
    }

    fn keys(&self) -> Vec<&str> {
        self.said.iter().map(|line| line.1.key.as_str()).collect()
    }

    /// Everything said so far, in words; forgets it.
    fn words(&mut self) -> Vec<String> {
        let words = speak::Words::english().unwrap();
        std::mem::take(&mut self.said).iter().map(|(_, line)| words.text(line).unwrap()).collect()
    }

    /// The practice that was started is over.
    fn ends(&mut self, outcome: Practised) {
        self.on(Event::PracticeEnded { at_s: self.at_s, outcome });
        self.pass(0.2);
    }

    fn practised(&self, (person, routine): (usize, usize), done: u32, end: End) -> Practised {
        Practised {
            person,
            routine,
            begun_min: self.moment().minute,
            done,
            prescribed: 5,
            left_out: Vec::new(),
            unwell: Vec::new(),
            missed: 0,
            end,
        }
    }
}

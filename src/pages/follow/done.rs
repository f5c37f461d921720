//! What was done, exercise by exercise, for the page at the end. Pure.

use crate::web::live_page::DoneRow;
use session::{Arg, Entry, Fact, Line};

/// One exercise; the step where it has one.
#[derive(Debug, Clone, PartialEq)]
struct Done {
    step: Option<u32>,
    exercise: String,
    what: What,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum What {
    Begun,
    Of(u32, u32),
    LeftOut,
}

/// Gathers it from the facts as they come.
#[derive(Debug, Clone, Default)]
pub struct Gathered(Vec<Done>);

impl Gathered {
    pub fn take(&mut self, entry: &Entry) {
        let step = entry.position.map(|position| position.step);
        match &entry.fact {
            Fact::StepBegun { exercise, .. } => self.set(step, exercise, What::Begun),
            Fact::StepDone { exercise, repetitions_done, repetitions_prescribed }
            | Fact::StepStopped { exercise, repetitions_done, repetitions_prescribed, .. } => {
                self.set(step, exercise, What::Of(*repetitions_done, *repetitions_prescribed));
            }
            Fact::StepLeftOut { exercise, .. } => self.set(step, exercise, What::LeftOut),
            _ => {}
        }
    }

    fn set(&mut self, step: Option<u32>, exercise: &str, what: What) {
        let known = self.0.iter_mut().find(|done| done.step == step && done.exercise == exercise);
        match known {
            // What was done before a step was gone back to stands until there is more.
            Some(done) if what == What::Begun && done.what != What::LeftOut => {}
            Some(done) => done.what = what,
            None => self.0.push(Done { step, exercise: exercise.to_owned(), what }),
        }
    }

    /// In the routine's order; what was left out before any step comes last.
    pub fn rows(&self, text: &dyn Fn(&Line) -> String) -> Vec<DoneRow> {
        let mut all: Vec<&Done> = self.0.iter().collect();
        all.sort_by_key(|done| done.step.unwrap_or(u32::MAX));
        let row = |done: &&Done| DoneRow {
            name: text(&Line { key: format!("ex-{}-name", done.exercise), args: Vec::new() }),
            done: match done.what {
                What::Of(done, all) => {
                    let args = vec![("done", Arg::Number(done.into())), ("all", Arg::Number(all.into()))];
                    text(&Line { key: "page-done-of-shown".into(), args })
                }
                What::Begun => text(&Line { key: "page-begun-shown".into(), args: Vec::new() }),
                What::LeftOut => text(&Line { key: "page-left-out-shown".into(), args: Vec::new() }),
            },
        };
        all.iter().map(row).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use session::Position;

    fn entry(step: Option<u32>, fact: Fact) -> Entry {
        Entry { at_s: 0.0, fact, position: step.map(|step| Position { step, set: 1, repetition: 1 }) }
    }

    #[test]
    fn each_exercise_stands_once_with_what_came_of_it() {
        let (ah, lift) = ("long-ah".to_owned(), "head-lift".to_owned());
        let facts = [
            (None, Fact::StepLeftOut { exercise: lift, reason: "no spoken agreement".into() }),
            (Some(2), Fact::StepBegun { exercise: ah.clone(), ramp_stage: None }),
            (Some(2), Fact::StepStopped { exercise: ah.clone(), reason: "skipped".into(), repetitions_done: 1, repetitions_prescribed: 3 }),
            (Some(2), Fact::StepBegun { exercise: ah.clone(), ramp_stage: None }),
            (Some(2), Fact::StepDone { exercise: ah.clone(), repetitions_done: 3, repetitions_prescribed: 3 }),
            (Some(1), Fact::StepDone { exercise: ah, repetitions_done: 2, repetitions_prescribed: 2 }),
            (Some(3), Fact::StepBegun { exercise: "glide-up".into(), ramp_stage: None }),
        ];
        let mut gathered = Gathered::default();
        facts.into_iter().for_each(|(step, fact)| gathered.take(&entry(step, fact)));
        let text = |line: &Line| format!("{}{:?}", line.key, line.args.iter().map(|(_, arg)| arg).collect::<Vec<_>>());
        let rows: Vec<(String, String)> = gathered.rows(&text).into_iter().map(|row| (row.name, row.done)).collect();
        let of = |n: f64| format!("page-done-of-shown[Number({n:.1}), Number({n:.1})]");
        let plain = |key: &str| key.to_owned();
        let expected = [
            ("ex-long-ah-name[]", of(2.0)),
            ("ex-long-ah-name[]", of(3.0)),
            ("ex-glide-up-name[]", plain("page-begun-shown[]")),
            ("ex-head-lift-name[]", plain("page-left-out-shown[]")),
        ];
        assert_eq!(rows, expected.map(|(name, done)| (name.to_owned(), done)));
    }
}

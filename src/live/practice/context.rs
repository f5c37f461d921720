//! What the client's record says before a practice begins.

use std::collections::BTreeMap;

use crate::practice::lead::Practice;
use crate::practice::understood::understood;
use files::error::{Failure, tell};
use files::load;
use jiff::ZonedDateTime;
use record::{Source, Store, Unfinished, amounts_in, led_in};
use routine::{Work, fresh_first};
use session::SessionContext;

impl Practice {
    /// What the engine must know of earlier sessions. A recording or a rehearsal knows nothing of the client's: a "yes"
    /// in a recording is nobody's agreement, and the same sound must give the same journal.
    pub(super) fn context(&self, store: &Store, now: &ZonedDateTime, unfinished: Option<&Unfinished>) -> Result<SessionContext, Failure> {
        let resume_from = unfinished.map(|unfinished| unfinished.position);
        let resume_done = unfinished.map(|unfinished| unfinished.steps_done.clone()).unwrap_or_default();
        let resume_counts = unfinished.map(|unfinished| unfinished.counts.clone()).unwrap_or_default();
        let resume_loud_s = unfinished.map_or(0.0, |unfinished| unfinished.loud_s);
        let resume_amounts = unfinished.map(|unfinished| amounts_in(&unfinished.entries)).unwrap_or_default();
        let resume_led_s = unfinished.map_or(0.0, |unfinished| led_in(&unfinished.entries));
        let resumed_agreed = unfinished.map(|unfinished| unfinished.agreed.clone()).unwrap_or_default();
        if self.source != Source::Live {
            return Ok(SessionContext {
                first_session: resume_from.is_none(),
                agreed: resumed_agreed,
                resume_from,
                resume_done,
                resume_counts,
                resume_loud_s,
                resume_amounts,
                resume_led_s,
                understood: understood(&self.model),
                emergency_number: self.emergency_number.clone(),
                ..SessionContext::default()
            });
        }
        let known = store.exercises_begun(&self.client)?;
        let sound = store.sound_to_ask(&self.client, now)?;
        let mut agreed = store.agreed_now(&self.client, &self.prescription, now)?;
        agreed.extend(resumed_agreed);
        Ok(SessionContext {
            first_session: known.is_empty(),
            agreed,
            known,
            resume_from,
            resume_done,
            resume_counts,
            resume_loud_s,
            resume_amounts,
            resume_led_s,
            resume_other_day: unfinished
                .and_then(|unfinished| now.checked_sub(unfinished.age).ok())
                .is_some_and(|last| last.date() != now.date()),
            resume_ago_s: unfinished.map(|unfinished| unfinished.age.as_secs_f64()),
            today: store.earlier_today(&self.client, now, unfinished.map(|unfinished| unfinished.session))?,
            past: store.past(&self.client, now, unfinished.map(|unfinished| unfinished.session))?,
            habits: store.habits(&self.client)?,
            practice_week: store.practice_week(&self.client, now)?,
            sound_days: sound.map(|question| question.days),
            sound_again: sound.is_some_and(|question| question.again),
            keeps_sound: store.sound_allowed(&self.client)?.is_some(),
            writes_down: load::writing_model(&self.data).is_some(),
            understood: understood(&self.model),
            emergency_number: self.emergency_number.clone(),
            week_to_ask: match self.prescription.routine.looking_back.weekly {
                true => store.week_to_ask(&self.client, now)?,
                false => None,
            },
            class: false,
            participants: Vec::new(),
            names_aloud: false,
        })
    }

    /// What only the client's own record can settle: questions that were not asked lately come first, and sips are for the client
    /// alone for whom they were enabled.
    pub(super) fn make_ready(&mut self, store: &Store, unfinished: Option<&Unfinished>) -> Result<(), Failure> {
        // An interrupted practice asks what it would have asked.
        let asked = if self.source == Source::Live && unfinished.is_none() { store.asked(&self.client)? } else { BTreeMap::new() };
        let own_sips = self.prescription.client.as_ref() == Some(&self.client);
        for step in &mut self.prescription.routine.steps {
            match &mut step.work {
                Work::Question { items, .. } => fresh_first(items, &asked, |item| &item.clue),
                Work::Naming { items, .. } => fresh_first(items, &asked, |item| &item.category),
                Work::Repeated { sip_every, .. } if sip_every.is_some() && !own_sips => {
                    tell(&format!(
                        "Sips are left out: the routine enables them for {:?}, not for {:?}.",
                        self.prescription.client.as_deref().unwrap_or_default(),
                        self.client
                    ));
                    *sip_every = None;
                }
                _ => {}
            }
        }
        Ok(())
    }
}

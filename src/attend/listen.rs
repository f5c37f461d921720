//! What may be said to the attendant now, and what it shows.

use super::attendant::{Ask, Asking, Attendant, State};
use super::clock::Moment;
use super::event::{Effect, View};
use super::invite;
use super::notice::{self, About};
use super::said::Said;
use session::{Arg, Line};

/// So many wordings are shown at once; a page tells the others on demand.
const FEW: usize = 4;

impl Attendant {
    pub(super) fn settle(&mut self) {
        if matches!(self.state, State::Practising) {
            self.listening.clear();
            self.shown = None;
            return;
        }
        let listening = self.may_be_said();
        if listening != self.listening {
            self.listening.clone_from(&listening);
            self.effects.push(Effect::Listen(listening));
        }
        let view = self.view();
        if self.shown.as_ref() != Some(&view) {
            self.shown = Some(view.clone());
            self.effects.push(Effect::Show(view));
        }
    }

    fn may_be_said(&self) -> Vec<Said> {
        let mut may = vec![Said::StartMine, Said::WhatIsLeft, Said::HowDidItGo];
        if self.several() {
            may.extend((0..self.household.persons.len()).map(Said::StartFor));
            may.extend(self.household.several_at_once());
        } else {
            // "Start for grandpa" is natural for a carer, also where nobody else lives here.
            may.push(Said::StartFor(0));
        }
        may.push(Said::StartForUnknown);
        may.extend(self.household.call_names().into_iter().map(Said::StartCalled));
        if self.notices.iter().any(|notice| notice.about != About::Ear && notice.said > 0) {
            may.push(Said::Thanks);
        }
        match &self.state {
            State::Asking(Asking { ask, .. }) => {
                may.extend([Said::No, Said::NotNow, Said::NeverMind, Said::Stop]);
                match ask {
                    Ask::Confirm(_) => may.push(Said::Yes),
                    Ask::ForWhom(pairs) => {
                        let mut persons: Vec<usize> = pairs.iter().map(|pair| pair.0).collect();
                        persons.dedup();
                        may.extend(persons.into_iter().map(Said::Name));
                    }
                    Ask::Which(person, routines) => {
                        let routines = routines.iter().filter_map(|routine| self.household.routine((*person, *routine)));
                        may.extend(routines.flat_map(|routine| &routine.called).cloned().map(Said::Called));
                    }
                }
            }
            _ if self.invitations.open(self.now_s).is_some() => {
                may.push(Said::NotNow);
                if self.may_say_yes() {
                    may.extend([Said::Yes, Said::No]);
                }
            }
            _ => {}
        }
        may
    }

    fn view(&self) -> View {
        if let Some(key) = notice::of_ear(self.hearing) {
            let heading = Some(Line { key: "attend-deaf-shown".into(), args: Vec::new() });
            return View { heading, prompt: Line { key: key.into(), args: Vec::new() }, can_say: Vec::new() };
        }
        let prompt = match (&self.state, &self.standing) {
            (State::Asking(asking), _) => asking.line.clone(),
            (_, Some((_, notice))) => notice.clone(),
            _ => Line { key: "attend-waiting-shown".into(), args: Vec::new() },
        };
        View { heading: self.now.and_then(|now| self.next_planned(now)), prompt, can_say: self.few() }
    }

    /// Of what may be said what matters now, most urgent first; while a question stands its answers alone.
    fn few(&self) -> Vec<Said> {
        let asking = matches!(self.state, State::Asking(_));
        let rank = |said: &Said| match said {
            Said::Yes | Said::Name(_) | Said::Called(_) => Some(0),
            Said::No => Some(1),
            Said::Thanks => Some(2),
            Said::NotNow => Some(3),
            Said::StartMine => Some(4),
            Said::StartFor(_) => Some(5),
            Said::WhatIsLeft => Some(6),
            Said::HowDidItGo | Said::StartCalled(_) | Said::NeverMind | Said::Stop => None,
            Said::StartForSeveral(_) | Said::StartForUnknown => None,
        };
        let mut ranked: Vec<(u8, &Said)> =
            self.listening.iter().filter_map(|said| Some((rank(said)?, said))).filter(|(rank, _)| !asking || *rank <= 1).collect();
        // Stable: those of one rank keep the household's order.
        ranked.sort_by_key(|(rank, _)| *rank);
        ranked.into_iter().take(FEW).map(|(_, said)| said.clone()).collect()
    }

    fn next_planned(&self, now: Moment) -> Option<Line> {
        let slot = invite::slots(&self.household, now)
            .into_iter()
            .find(|slot| slot.2.saturating_add(60) >= now.minute && !invite::is_done(&self.household, &self.today, *slot, now))?;
        let called = self.household.routine((slot.0, slot.1)).map(|routine| routine.title.clone()).unwrap_or_default();
        let clock = format!("{:02}:{:02}", slot.2 / 60, slot.2 % 60);
        let mut args = vec![("called", Arg::Text(called)), ("clock", Arg::Text(clock))];
        let key = if self.several() { "attend-next-shown-for" } else { "attend-next-shown" };
        if self.several() {
            args.push(("name", Arg::Text(self.household.name(slot.0))));
        }
        Some(Line { key: key.into(), args })
    }
}

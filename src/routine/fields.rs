//! Which fields of a step suit which exercise.

use super::catalogue::CatalogueEntry;
use super::prescribed::Timing;
use model::Climbs;

impl CatalogueEntry {
    /// The fields of a step that suit it.
    #[must_use]
    pub fn dose_fields(&self) -> Vec<&'static str> {
        let own: &[&str] = match self.timing {
            Timing::Voiced if self.climbs == Some(Climbs::Level) => &["rungs", "step_db", "target_s", "max_break_s", "min_hold_s"],
            Timing::Voiced if self.climbs.is_some() => &["rungs", "step_st", "target_s", "max_break_s", "min_hold_s"],
            Timing::Voiced => &["target_s", "max_break_s", "min_hold_s", "cues_at_s"],
            Timing::Timed => &["phases", "count_every_s", "count_last_s"],
            Timing::Paced => &["in", "out", "beat_s"],
            Timing::Repeated if self.sips => &["next_cue_after_s", "sip_every", "sips_enabled_by_clinician"],
            Timing::Repeated if self.needs_setting => &["next_cue_after_s", "setting"],
            Timing::Repeated => &["next_cue_after_s"],
            Timing::ReadAloud if self.dose.beat_s.is_some() => &["phrases", "beat_s"],
            Timing::ReadAloud => &["phrases"],
            Timing::Talk if self.dose.passage.is_some() => &["passage", "length_s"],
            Timing::Talk => &["prompts", "length_s"],
            Timing::Rapid => &["syllables", "length_s"],
            Timing::Question if self.naming => &["packs", "length_s"],
            Timing::Question => &["questions", "packs", "think_s"],
            Timing::Rest => return vec!["length_s"],
        };
        let ramp: &[&str] = if self.stage_fields().is_empty() { &[] } else { &["ramp"] };
        ["sets", "repetitions", "rest_s", "set_rest_s"].iter().chain(own).chain(ramp).copied().collect()
    }

    /// The fields of a step that have no default.
    pub(super) fn required_fields(&self) -> &'static [&'static str] {
        match self.timing {
            Timing::ReadAloud if self.dose.phrases.is_none() => &["phrases"],
            Timing::Repeated if self.needs_setting => &["setting"],
            Timing::Question if self.naming => &["packs"],
            Timing::Question => &["questions"],
            _ => &[],
        }
    }

    /// The fields of a stage of a dose that grows; empty: its dose does not grow.
    #[must_use]
    pub fn stage_fields(&self) -> &'static [&'static str] {
        match self.timing {
            Timing::Voiced if self.climbs.is_some() => &["sets", "repetitions"],
            Timing::Voiced => &["sets", "repetitions", "target_s"],
            Timing::Timed => &["sets", "repetitions", "hold_s", "phases"],
            Timing::Paced => &["sets", "repetitions", "in", "out"],
            Timing::Repeated => &["sets", "repetitions"],
            Timing::Rapid => &["sets", "repetitions", "length_s"],
            Timing::Talk if self.dose.passage.is_none() => &["sets", "repetitions", "length_s"],
            Timing::ReadAloud | Timing::Talk | Timing::Question | Timing::Rest => &[],
        }
    }
}

//! A fact of a practice in words for whoever reads it afterwards.

use crate::set_up::site::Site;
use crate::web::pages::FactRow;
use live::levels::in_words;
use routine::Prescription;
use session::{Arg, Entry, Fact, Fall, Position};

/// What is told: the words, what stands below them, and a mark where somebody should look.
#[derive(Default)]
struct Told {
    told: String,
    more: Vec<String>,
    mark: Option<&'static str>,
}

/// One line of the practice's page; none for what is only of use to the program.
pub fn fact_row(site: &Site, entry: &Entry, prescription: Option<&Prescription>) -> Option<FactRow> {
    let told = tell(site, &entry.fact)?;
    Some(FactRow {
        at: clock(entry.at_s),
        place: place_of(site, entry, prescription),
        told: told.told,
        more: told.more,
        mark: told.mark.map(|key| site.s(key)),
        sound: None,
    })
}

/// Where in the routine. What concerns a step as a whole is in no repetition, and its begin names it already.
fn place_of(site: &Site, entry: &Entry, prescription: Option<&Prescription>) -> String {
    match (&entry.fact, entry.position) {
        (Fact::StepBegun { .. }, _) | (_, None) => String::new(),
        (Fact::StepDone { exercise, .. } | Fact::StepStopped { exercise, .. } | Fact::StepLeftOut { exercise, .. }, _) => {
            site.words.exercise(exercise)
        }
        (Fact::CommandHeard { .. } | Fact::Rested { .. } | Fact::NoAnswer { .. }, _) => String::new(),
        (_, Some(at)) => place(site, at, prescription),
    }
}

/// "4:05" of 245 s.
fn clock(at_s: f64) -> String {
    let whole = if at_s.is_finite() { at_s.max(0.0) as u64 } else { 0 };
    format!("{}:{:02}", whole / 60, whole % 60)
}

/// "3, 2 of 4": the step, and which repetition of how many.
fn place(site: &Site, at: Position, prescription: Option<&Prescription>) -> String {
    let step = prescription.and_then(|prescription| prescription.routine.steps.get(at.step.saturating_sub(1) as usize));
    let number = |n: u32| Arg::Number(f64::from(n));
    let name = step.map_or_else(|| at.step.to_string(), |step| site.words.exercise(&step.exercise.id));
    let repetitions = step.map_or(at.repetition, |step| step.repetitions);
    let args = vec![
        ("name", Arg::Text(name)),
        ("n", number(at.repetition)),
        ("of", number(repetitions)),
        ("set", number(at.set)),
        ("sets", number(step.map_or(1, |step| step.sets))),
    ];
    site.with_texts(|texts| texts.with("page-fact-place", args))
}

fn one(value: f64) -> Arg {
    Arg::Text(if value.is_finite() { format!("{value:.1}") } else { "–".to_owned() })
}

fn whole(value: f64) -> Arg {
    Arg::Text(if value.is_finite() { format!("{value:.0}") } else { "–".to_owned() })
}

fn count(n: u32) -> Arg {
    Arg::Number(f64::from(n))
}

fn text(text: &str) -> Arg {
    Arg::Text(text.to_owned())
}

#[allow(clippy::too_many_lines, reason = "one arm a fact, each a line or two")]
fn tell(site: &Site, fact: &Fact) -> Option<Told> {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let plain = |key: &str, args: Vec<(&'static str, Arg)>| Some(Told { told: say(key, args), ..Told::default() });
    let marked = |key: &str, args: Vec<(&'static str, Arg)>, mark: &'static str| {
        Some(Told { told: say(key, args), mark: Some(mark), ..Told::default() })
    };
    match fact {
        Fact::SessionBegun { routine, steps, .. } => plain("page-fact-begun", vec![("routine", text(routine)), ("n", count(*steps))]),
        Fact::SessionResumed { .. } => plain("page-fact-resumed", Vec::new()),
        Fact::Agreement { given, exercises, .. } => {
            let names: Vec<String> = exercises.iter().map(|id| site.words.exercise(id)).collect();
            plain(if *given { "page-fact-agreed" } else { "page-fact-not-agreed" }, vec![("names", text(&names.join(", ")))])
        }
        Fact::StepLeftOut { reason, .. } => marked("page-fact-left-out", vec![("reason", text(&why(site, reason)))], "page-mark-left-out"),
        Fact::StepBegun { exercise, ramp_stage } => {
            let more = ramp_stage.map(|stage| say("page-fact-stage", vec![("n", count(stage))]));
            Some(Told {
                told: say("page-fact-step", vec![("name", text(&site.words.exercise(exercise)))]),
                more: more.into_iter().collect(),
                mark: None,
            })
        }
        Fact::HoldMeasured { .. } => Some(hold(site, fact)),
        Fact::PostureHeld { duration_s, prescribed_s, complete, .. } => {
            let mut told =
                Told { told: say("page-fact-posture", vec![("s", whole(*duration_s)), ("of", whole(*prescribed_s))]), ..Told::default() };
            if !complete {
                told.more.push(say("page-fact-cut-off", Vec::new()));
            }
            Some(told)
        }
        Fact::RoundPaced { duration_s, beat_s, .. } => plain("page-fact-round", vec![("s", one(*duration_s)), ("beat", one(*beat_s))]),
        Fact::RepetitionDone { duration_s, ended_by, .. } => {
            plain("page-fact-repetition", vec![("s", one(*duration_s)), ("by", text(&why(site, ended_by)))])
        }
        Fact::PhraseRead { phrase, duration_s, level_mean_db, f0_median_hz, level_weighting, level_terms, .. } => {
            let level = in_words(&site.words, *level_mean_db, level_weighting, level_terms.as_ref());
            let told = say("page-fact-phrase", vec![("phrase", text(phrase)), ("s", one(*duration_s))]);
            Some(Told { told, more: vec![say("page-fact-level", vec![("level", text(&level)), ("hz", whole(*f0_median_hz))])], mark: None })
        }
        Fact::Talked { duration_s, pauses, pause_share_pct, level_mean_db, f0_median_hz, level_weighting, level_terms, .. } => {
            let level = in_words(&site.words, *level_mean_db, level_weighting, level_terms.as_ref());
            let told = say("page-fact-talk", vec![("s", one(*duration_s)), ("pauses", count(*pauses)), ("share", whole(*pause_share_pct))]);
            Some(Told { told, more: vec![say("page-fact-level", vec![("level", text(&level)), ("hz", whole(*f0_median_hz))])], mark: None })
        }
        Fact::SyllablesCounted { syllables, duration_s, rate_hz, irregularity_pct, .. } => plain(
            "page-fact-syllables",
            vec![("n", count(*syllables)), ("s", one(*duration_s)), ("rate", one(*rate_hz)), ("irregularity", whole(*irregularity_pct))],
        ),
        Fact::QuestionAnswered { clue, answer, correct, .. } => {
            let key = match (answer, correct) {
                (None, _) => "page-fact-question-none",
                (_, true) => "page-fact-question-right",
                _ => "page-fact-question-other",
            };
            plain(key, vec![("clue", text(clue)), ("answer", text(answer.as_deref().unwrap_or_default()))])
        }
        Fact::CategoryNamed { category, named, duration_s, .. } => plain(
            "page-fact-named",
            vec![
                ("n", Arg::Number(named.len() as f64)),
                ("category", text(category)),
                ("s", whole(*duration_s)),
                ("words", text(&named.join(", "))),
            ],
        ),
        Fact::Rested { duration_s } => plain("page-fact-rested", vec![("s", whole(*duration_s))]),
        Fact::FallNoticed { of, reference, latest, .. } => {
            let key = if *of == Fall::Duration { "page-fact-fall-length" } else { "page-fact-fall-level" };
            marked(key, vec![("from", one(*reference)), ("to", one(*latest))], "page-mark-look")
        }
        Fact::RestOffered { taken } => plain(if *taken { "page-fact-rest-taken" } else { "page-fact-rest-declined" }, Vec::new()),
        Fact::Rated { what, over, value } => {
            let what = site.s(&format!("report-rating-{}-shown", what.name()));
            let over = site.s(&format!("report-rating-of-{}-shown", over.name()));
            let value = value.map_or_else(|| site.s("page-fact-rated-none"), |value| value.to_string());
            plain("page-fact-rated", vec![("what", text(&what)), ("over", text(&over)), ("value", text(&value))])
        }
        Fact::SwallowSign { sign, answer } => {
            let args = vec![("what", text(&why(site, sign))), ("answer", text(&why(site, answer)))];
            if answer.is_warning() { marked("page-fact-sign", args, "page-mark-look") } else { plain("page-fact-sign", args) }
        }
        Fact::MomentTold { from_s: Some(from_s), until_s: Some(until_s), text: words } => {
            let more = words.as_ref().map(|words| say("page-fact-moment-words", vec![("text", text(words))]));
            let told = say("page-fact-moment", vec![("s", whole(until_s - from_s))]);
            Some(Told { told, more: more.into_iter().collect(), mark: None })
        }
        Fact::MomentTold { .. } => plain("page-fact-moment-none", Vec::new()),
        Fact::DaysMissed { days, reason } => {
            let reason = reason.as_ref().map_or_else(|| site.s("page-fact-missed-unsaid"), |reason| why(site, reason));
            plain("page-fact-missed", vec![("n", count(*days)), ("why", text(&reason))])
        }
        Fact::LoudLimitReached { loud_s, limit_s } => {
            marked("page-fact-loud-limit", vec![("s", whole(*loud_s)), ("limit", whole(*limit_s))], "page-mark-look")
        }
        Fact::CommandHeard { command, text: heard, .. } => {
            let meant = site.s(&command.name_key());
            plain("page-fact-command", vec![("text", text(heard)), ("command", text(&meant))])
        }
        Fact::NoAnswer { asked } => plain("page-fact-no-answer", vec![("n", count(*asked))]),
        Fact::StepDone { repetitions_done, repetitions_prescribed, .. } => {
            plain("page-fact-step-done", vec![("done", count(*repetitions_done)), ("of", count(*repetitions_prescribed))])
        }
        Fact::StepStopped { reason, repetitions_done, repetitions_prescribed, .. } => marked(
            "page-fact-step-ended",
            vec![("reason", text(&why(site, reason))), ("done", count(*repetitions_done)), ("of", count(*repetitions_prescribed))],
            "page-mark-ended",
        ),
        Fact::SafetyStop { reason, .. } => marked("page-fact-safety", vec![("reason", text(&why(site, reason)))], "page-mark-safety"),
        Fact::RecogniserRestarted { lost_s } => marked("page-fact-recogniser", vec![("s", one(*lost_s))], "page-mark-look"),
        Fact::Troubled { trouble } => marked(trouble_key(trouble), Vec::new(), "page-mark-look"),
        Fact::MicrophoneNoted { text: told, .. } => plain("page-fact-microphone", vec![("text", text(told))]),
        Fact::RoomLoud { loud: true, room_db } => marked("page-fact-room-loud", vec![("db", whole(*room_db))], "page-mark-look"),
        Fact::RoomLoud { loud: false, .. } => plain("page-fact-room-quiet", Vec::new()),
        Fact::HoldInNoise { over_room_db, .. } => marked("page-fact-in-noise", vec![("db", whole(*over_room_db))], "page-mark-discarded"),
        Fact::SoundLost { lost_s } => marked("page-fact-sound-lost", vec![("s", Arg::Text(format!("{lost_s:.2}")))], "page-mark-look"),
        Fact::SessionEnded { reason, steps_done, steps_prescribed, .. } => plain(
            "page-fact-ended",
            vec![("reason", text(&why(site, reason))), ("done", count(*steps_done)), ("of", count(*steps_prescribed))],
        ),
        // Only of use to the program.
        Fact::ResponseTimed { .. } | Fact::ResultTold { .. } => None,
        #[allow(unreachable_patterns, reason = "facts that are added later are shown by their name until they have words")]
        other => {
            let kind =
                serde_json::to_value(other).ok().and_then(|value| value.get("kind").and_then(|kind| kind.as_str().map(str::to_owned)));
            plain("page-fact-other", vec![("kind", text(&kind.unwrap_or_default().replace('_', " ")))])
        }
    }
}

/// A word of the journal in plain words.
pub(super) fn why(site: &Site, word: &str) -> String {
    site.words.reason(word)
}

fn trouble_key(trouble: &session::Trouble) -> &'static str {
    use session::Trouble;
    match trouble {
        Trouble::LoudspeakerTooLoud => "page-trouble-loudspeaker-too-loud",
        Trouble::RoomTooLoud => "page-trouble-room-too-loud",
        Trouble::RoomTalks => "page-trouble-room-talks",
        Trouble::MicrophoneClips => "page-trouble-microphone-clips",
        Trouble::MicrophoneGain => "page-trouble-microphone-gain",
        Trouble::MicrophoneSilent => "page-trouble-microphone-silent",
        Trouble::LoudspeakerGone => "page-trouble-loudspeaker-gone",
    }
}

/// A hold with its conditions, and why it counts in no figure.
fn hold(site: &Site, fact: &Fact) -> Told {
    let Fact::HoldMeasured {
        duration_s,
        f0_median_hz,
        f0_span_st,
        level_mean_db,
        level_weighting,
        level_terms,
        breaks,
        masked_s,
        complete,
        ..
    } = fact
    else {
        return Told::default();
    };
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let level = in_words(&site.words, *level_mean_db, level_weighting, level_terms.as_ref());
    let mut told = Told {
        told: say("page-fact-hold", vec![("s", one(*duration_s))]),
        more: vec![say("page-fact-hold-figures", vec![("level", text(&level)), ("hz", whole(*f0_median_hz)), ("span", one(*f0_span_st))])],
        mark: None,
    };
    let mut conditions = Vec::new();
    if let Some(terms) = level_terms {
        match terms.distance_cm {
            Some(cm) => conditions.push(say("page-fact-distance", vec![("cm", Arg::Number(cm))])),
            None => conditions.push(say("page-fact-distance-unknown", Vec::new())),
        }
        if terms.clipped_s > 0.0 {
            conditions.push(say("page-fact-clipped", vec![("s", one(terms.clipped_s))]));
        }
        if terms.auto_gain {
            conditions.push(say("page-fact-auto-gain", Vec::new()));
        }
    }
    if *breaks > 0 {
        conditions.push(say("page-fact-breaks", vec![("n", count(*breaks))]));
    }
    if *masked_s > 0.0 {
        conditions.push(say("page-fact-masked", vec![("s", one(*masked_s))]));
    }
    told.more.extend(conditions);
    if !complete {
        told.mark = Some("page-mark-discarded");
        told.more.push(say("page-fact-cut-off", Vec::new()));
    }
    told
}

#[cfg(test)]
mod tests {
    #[test]
    fn times_read_as_a_clock() {
        assert_eq!(super::clock(245.9), "4:05");
        assert_eq!(super::clock(f64::NAN), "0:00");
        assert_eq!(super::clock(-3.0), "0:00");
    }
}

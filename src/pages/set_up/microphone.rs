//! The page of microphone and loudspeaker.

use crate::set_up::desk::{Now, Outcome, Task};
use crate::set_up::fields::Fields;
use crate::set_up::mic_judge::{Finding, Judged};
use crate::set_up::mic_listen::{self, Told};
use crate::set_up::now;
use crate::set_up::site::{PageError, Shown, Site};
use crate::set_up::sound_devices::Devices;
use crate::web::pages::{Choice, FaultTold, Field, Kind, MicrophoneView, Verdict, microphone};
use audio::devices::{self, Listed};

const HERE: &str = "/microphone";

/// The devices to choose from, those of the command line first where they are no device of the system.
pub fn device_fields(site: &Site, typed: &Fields, with_speaker: bool) -> Vec<Field> {
    let listed = devices::list().unwrap_or_default();
    let (mic, speaker) = site.devices();
    let of = |id: &str, key: &str, (own, picked): (&str, &str), all: &[Listed]| {
        let mut choices = Vec::new();
        if !all.iter().any(|device| device.name == own) {
            let label = if own == "default" { site.s("page-device-default") } else { own.to_owned() };
            choices.push(Choice::new(own, label));
        }
        choices.extend(all.iter().map(|device| {
            let name = if device.description.is_empty() { device.name.clone() } else { device.description.clone() };
            let label = if device.is_default { site.with_texts(|texts| texts.text("page-device-is-default", "name", &name)) } else { name };
            Choice::new(device.name.clone(), label)
        }));
        let chosen = typed.get(id).unwrap_or(picked).to_owned();
        Field::new(id, site.s(key), Kind::Choice(choices), chosen)
    };
    let mut fields = vec![of("mic", "page-field-mic", (&site.place.mic, &mic), &listed.microphones)];
    if with_speaker {
        fields.push(of("speaker", "page-field-speaker", (&site.place.speaker, &speaker), &listed.loudspeakers));
    }
    fields
}

/// What was chosen, which must be one of the choices: a form never opens a file.
pub fn chosen(site: &Site, form: &Fields) -> Result<Devices, PageError> {
    let fields = device_fields(site, form, true);
    let before = site.devices();
    let of = |id: &str, own: &str| {
        let asked = form.get(id).unwrap_or(own);
        let known = fields
            .iter()
            .filter(|field| field.id == id)
            .any(|field| matches!(&field.kind, Kind::Choice(choices) if choices.iter().any(|choice| choice.value == asked)));
        if known { Ok(asked.to_owned()) } else { Err(PageError::bad(site.s("page-device-gone"))) }
    };
    let (mic, speaker) = (of("mic", &before.0)?, of("speaker", &before.1)?);
    site.pick(&mic, &speaker);
    Ok(Devices { mic, speaker, voice: site.place.voice.clone(), data: site.place.data.clone() })
}

/// `GET /microphone`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    if let Some(job) = site.desk.job()
        && job.task.page() == HERE
    {
        return now::page(site, &job, if job.task == Task::Play { "page-speaker-title" } else { "page-listen-title" });
    }
    let outcome = site.desk.outcome(HERE);
    let mut view = MicrophoneView { fields: device_fields(site, query, true), to: site.to(HERE), ..MicrophoneView::default() };
    match outcome {
        Some(Outcome::Played) => view.asks_heard = true,
        Some(Outcome::Judged(judged)) => view.verdict = Some(verdict(site, &judged)),
        Some(Outcome::Broken) => view.notice = Some(site.s("page-broken-off")),
        Some(Outcome::Failed(why)) => {
            view.faults.push((None, FaultTold::short(site.with_texts(|texts| texts.text("page-device-failed", "why", &why)))))
        }
        _ => {}
    }
    match query.text("told") {
        "heard" => view.heard = Some(site.s("page-speaker-well")),
        "unheard" => view.heard = Some(site.s("page-speaker-help")),
        _ => {}
    }
    if site.desk.job().is_some() {
        view.notice = Some(site.s("page-device-busy-here"));
    }
    let main = site.with_texts(|texts| microphone(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-microphone"), main })
}

fn verdict(site: &Site, judged: &Judged) -> Verdict {
    let works = judged.findings.is_empty();
    let headline = judged.findings.first().map_or("page-mic-works", |finding| match finding {
        Finding::Dead => "page-mic-head-dead",
        Finding::NoSpeech => "page-mic-head-no-speech",
        _ => "page-mic-head-trouble",
    });
    let decibel = |value: Option<f64>| value.map_or_else(|| site.s("page-figure-none"), |db| format!("{db:.0} dB(A)"));
    let levels = &judged.levels;
    let figures = [
        ("page-figure-room", decibel(levels.room_db)),
        ("page-figure-voice", decibel(levels.voice_db)),
        ("page-figure-own", decibel(levels.own_voice_db)),
        ("page-figure-clipped", format!("{:.2} s", levels.clipped_s)),
        ("page-figure-lost", format!("{:.2} s", levels.lost_s)),
    ];
    Verdict {
        works,
        headline: site.s(headline),
        findings: judged.findings.iter().map(|finding| site.s(finding.key())).collect(),
        figures: figures.into_iter().map(|(key, value)| (site.s(key), value)).collect(),
    }
}

/// `POST /microphone`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let devices = chosen(site, form)?;
    let begun = match form.text("do") {
        "play" => {
            let line = site.s("page-spoken-test");
            let now = Now { told: site.s("page-speaker-playing"), ..Now::default() };
            site.desk.begin(Task::Play, now, move |job| mic_listen::play(&devices, &line, job))
        }
        "listen" => {
            let told = Told {
                room: site.s("page-listen-room"),
                speech: site.s("page-listen-speech"),
                sentence: site.s("page-listen-own"),
                line: site.s("page-spoken-test"),
            };
            let now = Now { told: told.room.clone(), ..Now::default() };
            site.desk.begin(Task::Listen, now, move |job| mic_listen::listen(&devices, &told, job))
        }
        answer @ ("heard" | "unheard") => {
            site.desk.forget(HERE);
            return Ok(Shown::To(format!("{HERE}?told={answer}")));
        }
        _ => return Err(PageError::bad(site.s("page-no-such-button"))),
    };
    if begun { Ok(Shown::To(HERE.to_owned())) } else { Err(PageError::bad(site.s("page-device-busy-here"))) }
}

//! The page of a client's own voice: begins the spoken dialogue of `tidecount enrol`, shows each word, forgets on demand.

use std::sync::Arc;

use crate::set_up::clients::clients;
use crate::set_up::desk::{Job, Now, Outcome, Task};
use crate::set_up::fields::Fields;
use crate::set_up::microphone::{chosen, device_fields};
use crate::set_up::now;
use crate::set_up::site::{PageError, Shown, Site};
use crate::set_up::sound_devices::Devices;
use crate::web::pages::{Choice, EnrolmentView, FaultTold, Field, KeptWord, Kind, enrolment};
use audio::file::names_file;
use files::error::Failure;
use files::load;
use live::enrol::enrolment::Enrolment;
use live::enrol::event::Learnt;
use live::follow::SharedScreen;
use record::{Source, Store};
use screen::{Screen, ShownView};
use session::Arg;
use speak::Words;

const HERE: &str = "/own-voice";

/// `GET /own-voice`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    if let Some(job) = site.desk.job().filter(|job| job.task == Task::Enrol) {
        return now::page(site, &job, "page-nav-enrolment");
    }
    page(site, query, Vec::new())
}

fn page(site: &Site, typed: &Fields, faults: Vec<(String, String)>) -> Result<Shown, PageError> {
    let mut view = EnrolmentView { to: site.to(HERE), ..EnrolmentView::default() };
    match site.desk.outcome(HERE) {
        Some(Outcome::Learnt { words, .. }) if words.is_empty() => view.notice = Some(site.s("page-enrolment-nothing")),
        Some(Outcome::Learnt { words, .. }) => view.learnt = words.iter().map(|word| learnt_word(site, word)).collect(),
        Some(Outcome::Broken) => view.notice = Some(site.s("page-broken-off")),
        Some(Outcome::Failed(why)) => view.faults.push((None, FaultTold::short(why))),
        _ => {}
    }
    if typed.text("told") == "forgotten" {
        view.notice = Some(site.s("page-enrolment-forgotten"));
    }
    let clients = clients(site)?;
    let choices: Vec<Choice> = clients.iter().map(|name| Choice::new(name.clone(), name.clone())).collect();
    let whose = typed.get("client").map(str::to_owned).or_else(|| clients.first().cloned()).unwrap_or_default();
    let name = if choices.is_empty() {
        Field::new("client", site.s("page-field-client-name"), Kind::Line, whose).hint(site.s("page-hint-client-name"))
    } else {
        Field::new("client", site.s("page-field-whose"), Kind::Choice(choices), whose)
    };
    view.fields = std::iter::once(name).chain(device_fields(site, typed, true)).collect();
    for (at, what) in faults {
        view.faults.push((Some(at.clone()), FaultTold::short(what.clone())));
        if let Some(field) = view.fields.iter_mut().find(|field| field.id == at) {
            field.faults.push(FaultTold::short(what));
        }
    }
    if let Some(store) = site.store()? {
        for client in store.enrolled_clients()? {
            let words = store.own_words(&client)?.iter().map(|word| kept_word(site, word)).collect();
            view.kept.push((client, words, site.to(HERE)));
        }
    }
    let main = site.with_texts(|texts| enrolment(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-enrolment"), main })
}

fn learnt_word(site: &Site, word: &Learnt) -> KeptWord {
    let key = if word.doubtful { "enrol-summary-doubtful" } else { "enrol-summary-surer" };
    KeptWord { wording: word.wording.clone(), told: site.s(key) }
}

fn kept_word(site: &Site, word: &record::StoredWord) -> KeptWord {
    let bytes: usize = word.takes.iter().map(Vec::len).sum();
    let args = vec![
        ("takes", Arg::Number(word.takes.len() as f64)),
        ("day", Arg::Text(word.said_at.get(..10).unwrap_or_default().to_owned())),
        ("bytes", Arg::Number(bytes as f64)),
    ];
    KeptWord { wording: word.wording.clone(), told: site.with_texts(|texts| texts.with("page-enrolment-word", args)) }
}

/// `POST /own-voice`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let client = form.text("client").to_owned();
    match form.text("do") {
        "begin" if client.is_empty() => page(site, form, vec![("client".to_owned(), site.s("page-client-missing"))]),
        "begin" => begin(site, form, client),
        "forget" if !form.on("sure") => page(site, form, vec![("sure".to_owned(), site.s("page-sure-missing"))]),
        "forget" => {
            if let Some(mut store) = site.store()? {
                store.forget_own_voice(&client)?;
            }
            site.desk.forget(HERE);
            Ok(Shown::To(format!("{HERE}?told=forgotten")))
        }
        _ => Err(PageError::bad(site.s("page-no-such-button"))),
    }
}

fn begin(site: &Site, form: &Fields, client: String) -> Result<Shown, PageError> {
    let devices = chosen(site, form)?;
    let (place, words) = (site.place.clone(), site.words.clone());
    let now = Now { told: site.s("page-enrolment-starting"), ..Now::default() };
    let begun = site.desk.begin_shared(Task::Enrol, now, move |job| {
        let model = match load::models(place.model.as_deref(), words.language()) {
            Ok(model) => model,
            Err(why) => return Outcome::Failed(why.to_string()),
        };
        let lead = Lead { words, devices, client, model, data: place.data, recogniser: place.recogniser };
        match lead.run(&job) {
            Ok((words, _)) if words.is_empty() && job.stopped() => Outcome::Broken,
            Ok((_, Some(fault))) => Outcome::Failed(fault),
            Ok((words, None)) => Outcome::Learnt { client: lead.client, words },
            Err(why) => Outcome::Failed(why.to_string()),
        }
    });
    if begun { Ok(Shown::To(HERE.to_owned())) } else { Err(PageError::bad(site.s("page-device-busy-here"))) }
}

struct Lead {
    words: Words,
    devices: Devices,
    client: String,
    model: command_ear::Models,
    data: std::path::PathBuf,
    recogniser: Option<std::path::PathBuf>,
}

impl Lead {
    fn run(&self, job: &Arc<Job>) -> Result<(Vec<Learnt>, Option<String>), Failure> {
        let recording = names_file(&self.devices.mic);
        let io = self.devices.open()?;
        // The record is opened before anything is said, so that nothing is asked for in vain.
        drop(Store::open(&self.data)?);
        let enrolment = Enrolment {
            words: self.words.clone(),
            model: self.model.clone(),
            hears_itself: !recording && self.devices.plays() && !names_file(&self.devices.speaker),
            voice: self.devices.voice.clone(),
            source: if recording { Source::Replay } else { Source::Live },
            client: self.client.clone(),
            data: self.data.clone(),
            recogniser: self.recogniser.clone(),
        };
        let stop = job.clone();
        enrolment.lead_until(io, SharedScreen::new(PageScreen { job: job.clone() }), Vec::new(), move || stop.stopped())
    }
}

/// Shows the dialogue on the page.
struct PageScreen {
    job: Arc<Job>,
}

impl Screen for PageScreen {
    fn show(&mut self, _at_s: f64, view: &ShownView) {
        self.job.show(|now| {
            now.told = if view.prompt.is_empty() { view.heading.clone() } else { format!("{}. {}", view.heading, view.prompt) };
            now.figure.clone_from(&view.figure);
            now.can_say = view.can_say.iter().map(|offer| offer.label.clone()).collect();
        });
    }
    fn said(&mut self, _at_s: f64, _text: &str) {}
    fn heard(&mut self, _at_s: f64, _text: &str) {}
    fn note(&mut self, _at_s: f64, _text: &str) {}
    fn finish(&mut self) {}
}

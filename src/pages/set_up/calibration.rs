//! The page of level calibration: the procedure of `tidecount calibrate`, by form.

use std::sync::{Mutex, PoisonError};

use crate::set_up::desk::{HeardSound, Job, Now, Outcome, Task};
use crate::set_up::fields::Fields;
use crate::set_up::microphone::{chosen, device_fields};
use crate::set_up::now;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::pages::{
    CalibrationStage, CalibrationView, Choice, FaultTold, Field, KeptCalibration, Kind, calibration as calibration_page,
};
use audio;
use files::calibrations::{Calibration, CalibrationStore};
use files::error::Failure;
use hear::calibration::{BELIEVABLE_CM, BELIEVABLE_DB, Heard, Known, Method, REPORTED_CM};
use hear::weighting::Weighting;
use live::calibrate::{Listened, QUIET_S, SOUND_S, calibration, listen, warnings};
use live::levels;
use session::Arg;

const HERE: &str = "/calibration";
const METHODS: [(&str, Method); 3] = [("meter", Method::Meter), ("source", Method::Source), ("phone", Method::Phone)];
const WEIGHTINGS: [Weighting; 3] = [Weighting::A, Weighting::C, Weighting::Z];

/// `GET /calibration`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    if let Some(job) = site.desk.job().filter(|job| job.task == Task::Calibrate) {
        return now::page(site, &job, "page-calibration-listening");
    }
    page(site, query, Vec::new(), None)
}

fn page(site: &Site, typed: &Fields, faults: Vec<(String, String)>, kept: Option<(String, Vec<String>)>) -> Result<Shown, PageError> {
    let store = CalibrationStore::open(&site.place.data)?;
    let mut view = CalibrationView {
        stage: CalibrationStage::Ask,
        notice: (typed.text("told") == "forgotten").then(|| site.s("page-calibration-forgotten")),
        faults: faults.iter().map(|(at, what)| (Some(at.clone()), FaultTold::short(what.clone()))).collect(),
        fields: Vec::new(),
        steps: Vec::new(),
        kept: store.all().iter().map(|one| kept_view(site, one)).collect(),
        to: site.to(HERE),
    };
    match (kept, site.desk.outcome(HERE)) {
        (Some((line, warnings)), _) => {
            view.stage = CalibrationStage::Kept { line, warnings };
            view.fields = ask_fields(site, typed);
        }
        (None, Some(Outcome::Heard(heard))) => {
            view.stage = CalibrationStage::Number { heard: heard_text(site, &heard.heard, heard.weighting) };
            view.fields = vec![level_field(site, &heard, typed)];
        }
        (None, outcome) => {
            match outcome {
                Some(Outcome::Failed(why)) => view.faults.push((None, FaultTold::short(why))),
                Some(Outcome::Broken) => view.notice = Some(site.s("page-broken-off")),
                _ => {}
            }
            let seconds = vec![("quiet", Arg::Number(QUIET_S as f64)), ("sound", Arg::Number(SOUND_S as f64))];
            let steps = ["page-calibration-step-place", "page-calibration-step-meter", "page-calibration-step-listen"];
            view.steps = steps.iter().map(|key| site.with_texts(|texts| texts.with(key, seconds.clone()))).collect();
            view.fields = ask_fields(site, typed);
        }
    }
    for (at, what) in faults {
        if let Some(field) = view.fields.iter_mut().find(|field| field.id == at) {
            field.faults.push(FaultTold::short(what));
        }
    }
    let main = site.with_texts(|texts| calibration_page(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-calibration"), main })
}

fn heard_text(site: &Site, heard: &Heard, weighting: Weighting) -> String {
    let text = |value: f64, decimals: usize| Arg::Text(format!("{value:.decimals$}"));
    let args = vec![
        ("length", text(heard.length_s, 1)),
        ("level", text(heard.level_db, 1)),
        ("weighting", Arg::Text(weighting.letter().to_string())),
        ("over", text(heard.over_room_db(), 0)),
        ("spread", text(heard.spread_db, 1)),
    ];
    site.with_texts(|texts| texts.with("page-calibration-heard", args))
}

fn kept_view(site: &Site, one: &Calibration) -> KeptCalibration {
    let method = match one.method {
        Method::Meter => "page-method-meter",
        Method::Source => "page-method-source",
        Method::Phone => "page-method-phone",
    };
    let args = vec![
        ("date", Arg::Text(one.date.clone())),
        ("method", Arg::Text(site.s(method))),
        ("level", Arg::Text(format!("{:.1} dB({})", one.known_db, one.weighting.letter()))),
        ("at", Arg::Text(one.known_at_cm.to_string())),
        ("distance", Arg::Text(one.distance_cm.to_string())),
        ("full", Arg::Text(format!("{:.1}", one.reported_offset_db()))),
    ];
    let told = vec![
        site.with_texts(|texts| texts.with("page-calibration-how", args.clone())),
        site.with_texts(|texts| texts.with("page-calibration-scale", args)),
    ];
    KeptCalibration { device: one.device.name.clone(), told, void: one.void.clone(), to: site.to(HERE) }
}

fn ask_fields(site: &Site, typed: &Fields) -> Vec<Field> {
    let mut fields = device_fields(site, typed, false);
    let methods = METHODS.iter().map(|(value, _)| Choice::new(*value, site.s(&format!("page-method-choose-{value}"))));
    let chosen = typed.get("method").unwrap_or("meter").to_owned();
    fields.push(Field::new("method", site.s("page-field-method"), Kind::Radio(methods.collect()), chosen));
    let number = |id: &str, usual: &str, hint: &str| {
        Field::new(id, site.s(&format!("page-field-{id}")), Kind::Number, typed.get(id).unwrap_or(usual)).hint(site.s(hint))
    };
    fields.push(number("distance_cm", &REPORTED_CM.to_string(), "page-hint-distance"));
    fields.push(number("reference_cm", "", "page-hint-reference"));
    let mut weightings = vec![Choice::new("", site.s("page-weighting-usual"))];
    weightings.extend(WEIGHTINGS.iter().map(|weighting| Choice::new(weighting.letter().to_string(), weighting.letter().to_string())));
    fields.push(
        Field::new("weighting", site.s("page-field-weighting"), Kind::Choice(weightings), typed.text("weighting"))
            .hint(site.s("page-hint-weighting")),
    );
    fields.push(number("level_db", "", "page-hint-level-before"));
    fields
}

fn level_field(site: &Site, heard: &HeardSound, typed: &Fields) -> Field {
    let key = if heard.method == Method::Source { "page-field-level-source" } else { "page-field-level-read" };
    let label = site.with_texts(|texts| texts.text(key, "weighting", heard.weighting.letter()));
    // A number that was known before is not typed twice.
    let known = typed.get("level_db").map_or_else(|| heard.given_db.map_or(String::new(), |db| db.to_string()), str::to_owned);
    Field::new("level_db", label, Kind::Number, known).hint(limits(site, BELIEVABLE_DB))
}

fn limits(site: &Site, range: std::ops::RangeInclusive<f64>) -> String {
    let args = vec![("from", Arg::Text(range.start().to_string())), ("to", Arg::Text(range.end().to_string()))];
    site.with_texts(|texts| texts.with("page-hint-limits", args))
}

/// A number within its range; nothing where the field is empty.
fn number(site: &Site, form: &Fields, id: &str, range: std::ops::RangeInclusive<f64>, faults: &mut Vec<(String, String)>) -> Option<f64> {
    let typed = form.text(id);
    if typed.is_empty() {
        return None;
    }
    let value = typed.parse::<f64>().ok().filter(|value| range.contains(value));
    if value.is_none() {
        faults.push((id.to_owned(), format!("{} {}", site.s("page-number-wrong"), limits(site, range))));
    }
    value
}

/// `POST /calibration`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    match form.text("do") {
        "listen" => begin(site, form),
        "keep" => keep(site, form),
        "drop" => {
            site.desk.forget(HERE);
            Ok(Shown::To(HERE.to_owned()))
        }
        "forget" => {
            CalibrationStore::open(&site.place.data)?.forget(form.text("device"))?;
            Ok(Shown::To(format!("{HERE}?told=forgotten")))
        }
        _ => Err(PageError::bad(site.s("page-no-such-button"))),
    }
}

fn begin(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let mut faults = Vec::new();
    let distance_cm = number(site, form, "distance_cm", BELIEVABLE_CM, &mut faults).unwrap_or(REPORTED_CM);
    let reference_cm = number(site, form, "reference_cm", BELIEVABLE_CM, &mut faults);
    let given = number(site, form, "level_db", BELIEVABLE_DB, &mut faults);
    if !faults.is_empty() {
        return page(site, form, faults, None);
    }
    let method = METHODS.iter().find(|(value, _)| *value == form.text("method")).map_or(Method::Meter, |(_, method)| *method);
    let usual = if method == Method::Source { Weighting::Z } else { Weighting::A };
    let weighting = WEIGHTINGS.into_iter().find(|weighting| weighting.letter() == form.text("weighting")).unwrap_or(usual);
    let mic = chosen(site, form)?.mic;
    let told = (
        site.s("page-calibration-quiet"),
        site.s(if method == Method::Source { "page-calibration-source" } else { "page-calibration-voice" }),
    );
    let now = Now { told: told.0.clone(), ..Now::default() };
    let ask = Ask { mic, method, weighting, distance_cm, reference_cm, given_db: given };
    site.desk.forget(HERE);
    if !site.desk.begin(Task::Calibrate, now, move |job| run(&ask, &told, job)) {
        return Err(PageError::bad(site.s("page-device-busy-here")));
    }
    Ok(Shown::To(HERE.to_owned()))
}

struct Ask {
    mic: String,
    method: Method,
    weighting: Weighting,
    distance_cm: f64,
    reference_cm: Option<f64>,
    given_db: Option<f64>,
}

fn run(ask: &Ask, told: &(String, String), job: &Job) -> Outcome {
    match listened(ask, told, job) {
        Ok(heard) => Outcome::Heard(Box::new(heard)),
        Err(_) if job.stopped() => Outcome::Broken,
        Err(why) => Outcome::Failed(why.to_string()),
    }
}

fn listened(ask: &Ask, told: &(String, String), job: &Job) -> Result<HeardSound, Failure> {
    let mut io = audio::open(&ask.mic, "none", audio::file::names_file(&ask.mic))?;
    let rate_hz = io.mic_rate_hz();
    let device = levels::device(&ask.mic, rate_hz, None)?;
    let live = device.system != levels::RECORDING;
    let shared = Mutex::new(Listened::new(ask.weighting, rate_hz, None));
    let done = std::sync::atomic::AtomicBool::new(false);
    let lock = || shared.lock().unwrap_or_else(PoisonError::into_inner);
    let fault = std::thread::scope(|scope| {
        // Shows how far it is while the sound thread listens.
        scope.spawn(|| {
            while !done.load(std::sync::atomic::Ordering::Relaxed) {
                let (at_s, level_db) = lock().latest();
                let (said, left_s) =
                    if at_s < QUIET_S as f64 { (&told.0, QUIET_S as f64 - at_s) } else { (&told.1, (QUIET_S + SOUND_S) as f64 - at_s) };
                job.show(|now| {
                    now.told.clone_from(said);
                    now.figure = format!("{:.0}", left_s.max(0.0).ceil());
                    now.level_db = level_db;
                });
                std::thread::sleep(std::time::Duration::from_millis(100));
            }
        });
        let outcome = listen(io.as_mut(), live, &shared, || job.stopped());
        done.store(true, std::sync::atomic::Ordering::Relaxed);
        outcome
    });
    fault?;
    drop(io);
    let mut listened = lock();
    if listened.interrupted() {
        return Err(Failure::Declined("broken off; nothing was calibrated".into()));
    }
    let heard = listened.judge(ask.method != Method::Source)?;
    if live && levels::device(&ask.mic, rate_hz, None)?.gain != device.gain {
        return Err(Failure::Again("the microphone's gain was changed while it listened; leave it alone and calibrate again".into()));
    }
    Ok(HeardSound {
        heard,
        device,
        method: ask.method,
        weighting: ask.weighting,
        distance_cm: ask.distance_cm,
        reference_cm: ask.reference_cm,
        given_db: ask.given_db,
    })
}

fn keep(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let Some(Outcome::Heard(heard)) = site.desk.outcome(HERE) else { return Ok(Shown::To(HERE.to_owned())) };
    let mut faults = Vec::new();
    let level_db = number(site, form, "level_db", BELIEVABLE_DB, &mut faults);
    let Some(level_db) = level_db else {
        if faults.is_empty() {
            faults.push(("level_db".to_owned(), site.s("page-level-missing")));
        }
        return page(site, form, faults, None);
    };
    let known = Known { method: heard.method, level_db, weighting: heard.weighting, at_cm: heard.reference_cm };
    let made = calibration(&known, heard.distance_cm, &heard.heard, heard.device.clone());
    let line = made.line();
    CalibrationStore::open(&site.place.data)?.keep(made)?;
    site.desk.forget(HERE);
    let notes = warnings(&known, &heard.heard, &heard.device);
    page(site, &Fields::default(), Vec::new(), Some((line, notes)))
}

//! Set-up in order: what is done and what is still to do.

use super::{cautions, desk, household};
use crate::set_up::clients::clients;
use crate::set_up::fields::Fields;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::pages::{Standing, StartItem, StartView, start};
use files::calibrations::CalibrationStore;
use routine::check_text;
use session::Arg;

/// `GET /setup`
pub fn show(site: &Site, _query: &Fields) -> Result<Shown, PageError> {
    let view = StartView { items: items(site)?, then: vec![site.s("page-start-then-one")] };
    let main = site.with_texts(|texts| start(texts, &view));
    Ok(Shown::Page { here: "/setup", title: site.s("page-nav-setup"), main })
}

/// Every part of the set-up in order.
pub fn items(site: &Site) -> Result<Vec<StartItem>, PageError> {
    let clients = clients(site)?;
    Ok(vec![
        microphone(site),
        calibration(site)?,
        routines(site),
        agreements(site, &clients)?,
        own_voice(site)?,
        recordings(site, &clients)?,
    ])
}

fn item(site: &Site, path: &str, label: &str, told: String, standing: Standing) -> StartItem {
    StartItem { path: path.to_owned(), label: site.s(label), told, standing }
}

fn microphone(site: &Site) -> StartItem {
    let (told, standing) = match site.desk.outcome("/microphone") {
        Some(desk::Outcome::Judged(judged)) if judged.findings.is_empty() => ("page-start-mic-works", Standing::Done),
        Some(desk::Outcome::Judged(_)) => ("page-start-mic-trouble", Standing::Missing),
        // What was found is not kept: a microphone is tried again after each move.
        _ => ("page-start-mic", Standing::Again),
    };
    item(site, "/microphone", "page-nav-microphone", site.s(told), standing)
}

fn calibration(site: &Site) -> Result<StartItem, PageError> {
    let store = CalibrationStore::open(&site.place.data)?;
    let valid = store.all().iter().rev().find(|one| one.void.is_none());
    let (told, standing) = match valid {
        Some(one) => {
            let args = vec![("device", Arg::Text(one.device.name.clone())), ("date", Arg::Text(one.date.clone()))];
            (site.with_texts(|texts| texts.with("page-start-calibrated", args)), Standing::Done)
        }
        None if store.all().is_empty() => (site.s("page-start-uncalibrated"), Standing::Optional),
        None => (site.s("page-start-calibration-void"), Standing::Again),
    };
    Ok(item(site, "/calibration", "page-nav-calibration", told, standing))
}

fn routines(site: &Site) -> StartItem {
    let names = site.routines.names();
    let well = |name: &&String| {
        let read = site.routines.read(name).ok();
        read.is_some_and(|read| site.with_hearing(|hearing| check_text(name, &read.text, hearing)).is_ok())
    };
    let sound = names.iter().filter(well).count();
    let number = |n: usize| Arg::Number(n as f64);
    let practised = household::read(site).unwrap_or_default().names();
    let (told, standing) = if names.is_empty() {
        (site.s("page-start-no-routine"), Standing::Missing)
    } else if sound < names.len() {
        (
            site.with_texts(|texts| {
                texts.with("page-start-routine-faults", vec![("n", number(names.len() - sound)), ("of", number(names.len()))])
            }),
            Standing::Missing,
        )
    } else {
        let who = match practised.as_slice() {
            [] => site.s("page-start-nobody"),
            names => site.with_texts(|texts| texts.text("page-routines-who", "names", &names.join(", "))),
        };
        (format!("{} {who}", site.with_texts(|texts| texts.number("page-start-routines", "n", names.len() as f64))), Standing::Done)
    };
    item(site, "/routines", "page-nav-routines", told, standing)
}

fn agreements(site: &Site, clients: &[String]) -> Result<StartItem, PageError> {
    let mut open = Vec::new();
    for client in clients {
        if cautions::open(site, client)? > 0 {
            open.push(client.clone());
        }
    }
    let (told, standing) = if open.is_empty() {
        (site.s("page-start-cautions-done"), Standing::Done)
    } else {
        (site.with_texts(|texts| texts.text("page-start-cautions-open", "names", &open.join(", "))), Standing::Missing)
    };
    Ok(item(site, "/cautions", "page-nav-cautions", told, standing))
}

fn own_voice(site: &Site) -> Result<StartItem, PageError> {
    let enrolled = site.store()?.map_or_else(|| Ok(Vec::new()), |store| store.enrolled_clients())?;
    let (told, standing) = if enrolled.is_empty() {
        (site.s("page-start-no-voice"), Standing::Optional)
    } else {
        (site.with_texts(|texts| texts.text("page-start-voice", "names", &enrolled.join(", "))), Standing::Done)
    };
    Ok(item(site, "/own-voice", "page-nav-enrolment", told, standing))
}

fn recordings(site: &Site, clients: &[String]) -> Result<StartItem, PageError> {
    let Some(store) = site.store()? else {
        return Ok(item(site, "/sound", "page-nav-sound", site.s("page-start-no-sound"), Standing::Optional));
    };
    let mut kept = Vec::new();
    for client in clients {
        if matches!(store.sound_consent(client)?, record::SoundConsent::Given { .. }) {
            kept.push(client.clone());
        }
    }
    let (told, standing) = if kept.is_empty() {
        (site.s("page-start-no-sound"), Standing::Optional)
    } else {
        (site.with_texts(|texts| texts.text("page-start-sound", "names", &kept.join(", "))), Standing::Done)
    };
    Ok(item(site, "/sound", "page-nav-sound", told, standing))
}

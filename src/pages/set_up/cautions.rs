//! The page of cautions: what needs a clinician's agreement, who has agreed, and the way to withdraw.

use std::collections::BTreeMap;

use jiff::ZonedDateTime;

use crate::set_up::clients::clients;
use crate::set_up::fields::Fields;
use crate::set_up::household::{self, Residents};
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use crate::web::pages::{AgreedBy, CautionsView, FaultTold, Field, GuardedExercise, Kind, cautions};
use record::{AgreedHow, Agreement, Store};
use routine::{Prescription, doses_of, find};
use session::Arg;

const HERE: &str = "/cautions";
/// A name longer than this is a slip.
const LONGEST_NAME: usize = 80;

/// The routines of one client by file, with what needs agreement in each. Whose is nobody's is everybody's.
fn guarded(site: &Site, residents: &Residents, client: &str) -> BTreeMap<String, Vec<String>> {
    let read = |name: &String| Some((name.clone(), doses_of(&site.routines.read(name).ok()?.text)?));
    let all: Vec<(String, Prescription)> = site.routines.names().iter().filter_map(read).collect();
    let own = residents.files_of(client);
    let is_own = |(file, prescription): &&(String, Prescription)| own.contains(file) || prescription.client.as_deref() == Some(client);
    let mut theirs: Vec<&(String, Prescription)> = all.iter().filter(is_own).collect();
    if theirs.is_empty() {
        let free =
            |(file, prescription): &&(String, Prescription)| prescription.client.is_none() && residents.who_practises(file).is_empty();
        theirs = all.iter().filter(free).collect();
    }
    let mut by_exercise: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (_, prescription) in theirs {
        for step in prescription.routine.steps.iter().filter(|step| step.exercise.needs_agreement) {
            let titles = by_exercise.entry(step.exercise.id.clone()).or_default();
            if !titles.contains(&prescription.routine.title) {
                titles.push(prescription.routine.title.clone());
            }
        }
    }
    by_exercise
}

fn agreements(site: &Site, client: &str) -> Result<Vec<Agreement>, PageError> {
    match site.store()? {
        Some(store) => Ok(store.agreements(client)?),
        None => Ok(Vec::new()),
    }
}

/// How many exercises of this client nobody has agreed to.
pub fn open(site: &Site, client: &str) -> Result<usize, PageError> {
    let residents = household::read(site).unwrap_or_default();
    let agreed = agreements(site, client)?;
    Ok(guarded(site, &residents, client).keys().filter(|id| !agreed.iter().any(|one| one.exercise == **id)).count())
}

/// `GET /cautions?client=`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    page(site, query, Vec::new())
}

fn page(site: &Site, typed: &Fields, faults: Vec<(String, String)>) -> Result<Shown, PageError> {
    let names = clients(site)?;
    let client = typed
        .get("client")
        .filter(|client| !client.is_empty())
        .map(str::to_owned)
        .or_else(|| if names.len() == 1 { names.first().cloned() } else { None });
    let client = client.filter(|client| names.contains(client));
    let told = match typed.text("told") {
        "agreed" => Some("page-cautions-agreed"),
        "withdrawn" => Some("page-cautions-withdrawn"),
        _ => None,
    };
    let mut view = CautionsView { notice: told.map(|key| site.s(key)), to: site.to(HERE), ..CautionsView::default() };
    for name in names {
        let open = open(site, &name)?;
        view.clients.push((name, site.with_texts(|texts| texts.number("page-cautions-open", "n", open as f64))));
    }
    if let Some(client) = &client {
        let residents = household::read(site).unwrap_or_default();
        let agreed = agreements(site, client)?;
        let mut exercises = guarded(site, &residents, client);
        // What was agreed to once is shown, also where no routine holds it any more.
        for one in &agreed {
            exercises.entry(one.exercise.clone()).or_default();
        }
        view.exercises = exercises.iter().filter_map(|(id, routines)| exercise(site, client, id, routines, &agreed, typed)).collect();
        let by = Field::new("by", site.s("page-field-agreed-by"), Kind::Line, typed.text("by")).hint(site.s("page-hint-agreed-by"));
        view.by = Some(by);
    }
    view.client = client;
    for (at, what) in faults {
        view.faults.push((Some(at.clone()), FaultTold::short(what.clone())));
        let fields = view.exercises.iter_mut().map(|exercise| &mut exercise.agree).chain(view.by.as_mut());
        if let Some(field) = fields.into_iter().find(|field| field.id == at) {
            field.faults.push(FaultTold::short(what));
        }
    }
    let main = site.with_texts(|texts| cautions(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-cautions"), main })
}

fn exercise(site: &Site, client: &str, id: &str, routines: &[String], agreed: &[Agreement], typed: &Fields) -> Option<GuardedExercise> {
    let entry = find(id)?;
    let box_id = format!("agree-{id}");
    let told = if routines.is_empty() {
        site.s("page-cautions-no-routine")
    } else {
        site.with_texts(|texts| texts.text("page-cautions-routines", "names", &routines.join(", ")))
    };
    let ticked = if typed.on(&box_id) { "on" } else { "" };
    Some(GuardedExercise {
        id: id.to_owned(),
        name: site.s(&format!("ex-{id}-name")),
        purpose: site.s(&format!("ex-{id}-purpose")),
        routines: told,
        not_for: entry.not_for.iter().map(|key| site.s(&format!("notfor-{key}"))).collect(),
        cautions: entry.cautions.iter().map(|key| site.s(&format!("caution-{key}"))).collect(),
        agreed: agreed.iter().find(|one| one.exercise == id).map(|one| told_agreement(site, one)),
        agree: Field::new(box_id, site.with_texts(|texts| texts.text("page-cautions-box", "name", client)), Kind::Check, ticked),
    })
}

fn told_agreement(site: &Site, one: &Agreement) -> AgreedBy {
    let when = one.at.get(..10).unwrap_or_default().to_owned();
    let with = |key: &str, by: &str| {
        site.with_texts(|texts| texts.with(key, vec![("by", Arg::Text(by.to_owned())), ("when", Arg::Text(when.clone()))]))
    };
    match &one.how {
        AgreedHow::Aloud => AgreedBy::Elsewhere(with("page-agreed-aloud", "")),
        AgreedHow::Page { by } => AgreedBy::Page(with("page-agreed-page", by)),
        AgreedHow::Package { by } => AgreedBy::Elsewhere(with("page-agreed-package", by)),
    }
}

/// `POST /cautions`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let client = form.text("client");
    if !clients(site)?.iter().any(|name| name == client) {
        return Err(PageError::bad(site.s("page-client-missing")));
    }
    let now = ZonedDateTime::now();
    if let Some(id) = form.text("do").strip_prefix("withdraw.") {
        let Some(entry) = find(id) else { return Err(PageError::bad(site.s("page-no-such-button"))) };
        Store::open(&site.place.data)?.withdraw_by_page(client, &entry.id, &site.s("page-by-page"), &now)?;
        return Ok(Shown::To(format!("{HERE}?client={}&told=withdrawn", encoded(client))));
    }
    let ticked: Vec<String> = form
        .beginning("agree-")
        .filter(|name| form.on(name))
        .filter_map(|name| find(name.trim_start_matches("agree-")))
        .map(|entry| entry.id.clone())
        .collect();
    let by = form.text("by");
    let mut faults = Vec::new();
    if ticked.is_empty() {
        let residents = household::read(site).unwrap_or_default();
        let agreed = agreements(site, client)?;
        let first = guarded(site, &residents, client).into_keys().find(|id| !agreed.iter().any(|one| one.exercise == *id));
        faults.push((first.map_or_else(|| "by".to_owned(), |id| format!("agree-{id}")), site.s("page-cautions-tick")));
    }
    if by.is_empty() || by.chars().count() > LONGEST_NAME || by.chars().any(char::is_control) {
        faults.push(("by".to_owned(), site.s("page-agreed-by-missing")));
    }
    if !faults.is_empty() {
        return page(site, form, faults);
    }
    Store::open(&site.place.data)?.agree_by_page(client, &ticked, by, &now)?;
    Ok(Shown::To(format!("{HERE}?client={}&told=agreed", encoded(client))))
}

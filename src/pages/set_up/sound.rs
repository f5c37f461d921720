//! The page of kept sound: the page's half of the consent, what is stored, and deleting it.

use jiff::ZonedDateTime;

use crate::set_up::clients::clients;
use crate::set_up::fields::Fields;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use crate::web::pages::{FaultTold, Field, Kind, SoundView, StoredSound, sound};
use record::{MOST_SOUND_DAYS, SOUND_DAYS, SessionId, SoundConsent, SoundSide, Store};
use session::Arg;

const HERE: &str = "/sound";

/// `GET /sound?client=`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    page(site, query, Vec::new())
}

fn page(site: &Site, typed: &Fields, faults: Vec<(String, String)>) -> Result<Shown, PageError> {
    let clients = clients(site)?;
    let asked = typed.get("client").filter(|client| clients.iter().any(|known| known == client)).map(str::to_owned);
    let client = asked.or_else(|| if clients.len() == 1 { clients.first().cloned() } else { None });
    let store = site.store()?;
    let consent = match (&store, &client) {
        (Some(store), Some(client)) => store.sound_consent(client)?,
        _ => SoundConsent::Never,
    };
    let stored = match (&store, &client) {
        (Some(store), Some(client)) => store.stored_sounds(client)?,
        _ => Vec::new(),
    };
    let days = match consent {
        SoundConsent::Asked { days, .. } | SoundConsent::Given { days, .. } | SoundConsent::Refused { days, .. } => days,
        _ => SOUND_DAYS,
    };
    let hint = site.with_texts(|texts| {
        texts.with("page-hint-limits", vec![("from", Arg::Text("1".into())), ("to", Arg::Text(MOST_SOUND_DAYS.to_string()))])
    });
    let mut days = Field::new(
        "days",
        site.s("page-field-sound-days"),
        Kind::Number,
        typed.get("days").map_or_else(|| days.to_string(), str::to_owned),
    )
    .hint(hint);
    days.faults = faults.iter().filter(|(at, _)| at == "days").map(|(_, what)| FaultTold::short(what.clone())).collect();
    let told = match typed.text("told") {
        "on" => Some("page-sound-told-on"),
        "off" => Some("page-sound-told-off"),
        "deleted" => Some("page-sound-told-deleted"),
        _ => None,
    };
    let view = SoundView {
        standing: standing(site, &consent),
        on: matches!(consent, SoundConsent::Asked { .. } | SoundConsent::Given { .. }),
        notice: told.map(|key| site.s(key)),
        faults: faults.into_iter().map(|(at, what)| (Some(at), FaultTold::short(what))).collect(),
        stored: stored.iter().map(|one| StoredSound { told: told_sound(site, one) }).collect(),
        to: site.to(HERE),
        days,
        client,
        clients,
    };
    let main = site.with_texts(|texts| sound(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-sound"), main })
}

fn day(at: &str) -> Arg {
    Arg::Text(at.get(..10).unwrap_or(at).to_owned())
}

fn standing(site: &Site, consent: &SoundConsent) -> Vec<String> {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| vec![site.with_texts(|texts| texts.with(key, args))];
    let number = |days: u32| Arg::Number(f64::from(days));
    match consent {
        SoundConsent::Never => say("page-sound-never", Vec::new()),
        SoundConsent::Asked { days, by_page_at } => say("page-sound-asked", vec![("days", number(*days)), ("when", day(by_page_at))]),
        SoundConsent::Refused { by_voice_at, .. } => say("page-sound-refused", vec![("when", day(by_voice_at))]),
        SoundConsent::Given { days, by_voice_at, .. } => say("page-sound-given", vec![("days", number(*days)), ("when", day(by_voice_at))]),
        SoundConsent::Withdrawn { at, .. } => say("page-sound-withdrawn", vec![("when", day(at))]),
    }
}

fn told_sound(site: &Site, one: &record::StoredSound) -> String {
    let args = vec![
        ("practice", Arg::Number(one.session.0 as f64)),
        ("when", Arg::Text(one.made_at.get(..16).unwrap_or(&one.made_at).replace('T', " "))),
        ("minutes", Arg::Text(format!("{:.1}", (one.to_s() - one.from_s) / 60.0))),
        ("until", day(&one.expires_at)),
    ];
    site.with_texts(|texts| texts.with("page-sound-one", args))
}

/// What is stored of one practice, in words.
pub fn of_practice(site: &Site, store: &Store, client: &str, session: SessionId) -> Result<Vec<String>, PageError> {
    Ok(store.stored_sounds(client)?.iter().filter(|one| one.session == session).map(|one| told_sound(site, one)).collect())
}

/// `POST /sound`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let client = form.text("client");
    if !clients(site)?.iter().any(|name| name == client) {
        return Err(PageError::bad(site.s("page-client-missing")));
    }
    let now = ZonedDateTime::now();
    let told = match form.text("do") {
        "on" => {
            let Some(days) = form.text("days").parse::<u32>().ok().filter(|days| (1..=MOST_SOUND_DAYS).contains(days)) else {
                return page(site, form, vec![("days".to_owned(), site.s("page-number-wrong"))]);
            };
            Store::open(&site.place.data)?.sound_wish(client, days, &now)?;
            "on"
        }
        "off" => {
            Store::open(&site.place.data)?.withdraw_sound(client, SoundSide::Page, &now)?;
            "off"
        }
        "delete" if !form.on("sure") => return page(site, form, vec![("sure".to_owned(), site.s("page-sure-missing"))]),
        "delete" => {
            Store::open(&site.place.data)?.delete_sounds(client)?;
            "deleted"
        }
        _ => return Err(PageError::bad(site.s("page-no-such-button"))),
    };
    Ok(Shown::To(format!("{HERE}?client={}&told={told}", encoded(client))))
}

//! Routines by hand: the list, one of them, the form over its file, the file's own text.

use crate::set_up::draft::RoutineDraft;
use crate::set_up::fields::Fields;
use crate::set_up::files::{FileFault, MOST_IN_A_FORM, Read, file_name};
use crate::set_up::household::{self, Residents};
use crate::set_up::routine_fields::form_of;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use crate::web::pages::{
    Choice, Chooser, FaultTold, Field, Kind, RoutineForm, RoutineRow, RoutineView, RoutinesView, StepView, Texts, routine_form,
    routine_text, routine_view, routines,
};
use files::pdf;
use report::handout;
use routine::{Faults, MAX_FILE_BYTES, Prescription, check_text};
use session::{Arg, Line};

const HERE: &str = "/routines";

fn file_fault(site: &Site, fault: &FileFault) -> String {
    let key = |key: &str, file: &str| site.with_texts(|texts| texts.text(key, "file", file));
    match fault {
        FileFault::None(file) => key("page-file-none", file),
        FileFault::BadName(file) => key("page-file-bad-name", file),
        FileFault::Exists(file) => key("page-file-exists", file),
        FileFault::Changed(file) => key("page-file-changed", file),
        FileFault::NotText(file) => key("page-file-not-text", file),
        FileFault::TooLarge(file) => key("page-file-too-large", file),
        FileFault::System { file, why } => site
            .with_texts(|texts| texts.with("page-file-system", vec![("file", Arg::Text(file.clone())), ("why", Arg::Text(why.clone()))])),
    }
}

fn no_file(site: &Site, fault: &FileFault) -> PageError {
    let what = file_fault(site, fault);
    if matches!(fault, FileFault::None(_)) { PageError::none(what) } else { PageError::bad(what) }
}

fn check(site: &Site, name: &str, text: &str) -> Result<Prescription, Faults> {
    site.with_hearing(|hearing| check_text(name, text, hearing))
}

fn shown(title: String, main: maud::Markup) -> Result<Shown, PageError> {
    Ok(Shown::Page { here: HERE, title, main })
}

/// `GET /routines`
pub fn list(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let view = list_view(site, query, None);
    shown(site.s("page-nav-routines"), site.with_texts(|texts| routines(texts, &view)))
}

fn list_view(site: &Site, typed: &Fields, fault: Option<String>) -> RoutinesView {
    let residents = household::read(site).unwrap_or_default();
    let names = site.routines.names();
    let rows: Vec<RoutineRow> = names.iter().map(|name| row(site, name, &residents)).collect();
    let mut copies = vec![Choice::new("", site.s("page-routines-empty"))];
    copies.extend(
        rows.iter()
            .map(|row| Choice::new(row.file.clone(), site.with_texts(|texts| texts.text("page-routines-copy-of", "title", &row.title)))),
    );
    let mut name = Field::new("name", site.s("page-field-file-name"), Kind::Line, typed.text("name")).hint(site.s("page-hint-file-name"));
    name.faults = fault.iter().map(|what| FaultTold::short(what.clone())).collect();
    let like = Field::new("like", site.s("page-field-like"), Kind::Choice(copies), typed.text("like"));
    RoutinesView {
        folder: site.routines.path().display().to_string(),
        rows,
        notice: None,
        faults: fault.into_iter().map(|what| (Some("name".to_owned()), FaultTold::short(what))).collect(),
        new: vec![name, like],
        to: site.to("/routines/new"),
    }
}

fn row(site: &Site, name: &str, residents: &Residents) -> RoutineRow {
    let who = residents.who_practises(name);
    let broken = |title: String, about: String| RoutineRow { file: name.to_owned(), title, faulty: true, about, who: who.clone() };
    let read = match site.routines.read(name) {
        Ok(read) => read,
        Err(fault) => return broken(stem(name), file_fault(site, &fault)),
    };
    match check(site, name, &read.text) {
        Ok(prescription) => RoutineRow {
            file: name.to_owned(),
            title: prescription.routine.title.clone(),
            faulty: false,
            about: length_of(site, &prescription),
            who,
        },
        Err(faults) => broken(
            title_in(&read.text).unwrap_or_else(|| stem(name)),
            site.with_texts(|texts| texts.number("page-routines-faults", "n", faults.list.len() as f64)),
        ),
    }
}

/// What a file is called where it has no title.
fn stem(name: &str) -> String {
    name.trim_end_matches(".toml").to_owned()
}

/// The title of a file, whatever faults it has besides.
fn title_in(text: &str) -> Option<String> {
    let document = text.parse::<toml_edit::DocumentMut>().ok()?;
    document.get("title")?.as_str().map(|title| title.trim().to_owned()).filter(|title| !title.is_empty())
}

/// The text of a routine, also of one that lies elsewhere and is named in the household file.
///
/// # Errors
/// Why it cannot be read, in words.
pub fn read_of_household(site: &Site, name: &str) -> Result<String, String> {
    if !name.contains('/') {
        return site.routines.read(name).map(|read| read.text).map_err(|fault| file_fault(site, &fault));
    }
    let bytes = files::routine_files::read_limited(&site.routines.path().join(name)).map_err(|why| why.to_string())?;
    String::from_utf8(bytes).map_err(|_| file_fault(site, &FileFault::NotText(name.to_owned())))
}

/// "4 exercises, about 12 minutes".
pub fn length_of(site: &Site, prescription: &Prescription) -> String {
    let (steps, minutes) = (prescription.routine.steps.len() as f64, (prescription.routine.planned_duration_s() / 60.0).ceil());
    site.with_texts(|texts| texts.with("page-routines-about", vec![("steps", Arg::Number(steps)), ("minutes", Arg::Number(minutes))]))
}

/// `GET /routines/view?file=`
pub fn view(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let name = query.text("file");
    let Read { text, .. } = site.routines.read(name).map_err(|fault| no_file(site, &fault))?;
    let saved = match query.text("told") {
        "saved" => Some(site.s("page-routine-saved")),
        "chosen" => Some(site.s("page-routine-chosen")),
        "unchosen" => Some(site.s("page-routine-unchosen")),
        _ => None,
    };
    let mut view = RoutineView { file: name.to_owned(), title: stem(name), notice: saved, offers_pdf: pdf::MADE, ..RoutineView::default() };
    if text.len() > MOST_IN_A_FORM {
        view.fixed = Some(site.s("page-routine-too-large"));
    }
    match check(site, name, &text) {
        Ok(prescription) => describe(site, &mut view, &prescription),
        Err(faults) => view.faults = faults.list.iter().map(|fault| (None, of_line(fault))).collect(),
    }
    choosers(site, &mut view);
    let residents = household::read(site).unwrap_or_default();
    view.others = site.routines.names().iter().map(|name| row(site, name, &residents)).collect();
    view.start = site.starts.is_open().then(|| site.to("/start"));
    view.text = text;
    shown(view.title.clone(), site.with_texts(|texts| routine_view(texts, &view)))
}

/// A fault of the file's text, with its line.
fn of_line(fault: &routine::Fault) -> FaultTold {
    FaultTold { what: format!("{fault}."), why: fault.remedy.clone() }
}

fn describe(site: &Site, view: &mut RoutineView, prescription: &Prescription) {
    let say = |key: &str, args: &[(&'static str, Arg)]| site.say(&Line { key: key.to_owned(), args: args.to_vec() });
    let page = handout(prescription, &say);
    view.title.clone_from(&page.title);
    view.about.clone_from(&page.under_title);
    view.client.clone_from(&prescription.client);
    let sentences = |prefix: &str, keys: &[String]| keys.iter().map(|key| site.s(&format!("{prefix}-{key}"))).collect();
    let steps = page.items.into_iter().zip(&prescription.routine.steps);
    view.steps = steps
        .map(|(item, step)| StepView {
            exercise: step.exercise.id.clone(),
            name: item.name,
            dose: item.dose,
            how: item.how,
            phrases: item.phrases,
            cautions: sentences("caution", &step.exercise.cautions),
            not_for: routine::find(&step.exercise.id).map_or(Vec::new(), |entry| sentences("notfor", &entry.not_for)),
        })
        .collect();
}

fn choosers(site: &Site, view: &mut RoutineView) {
    match household::read(site) {
        Ok(residents) => {
            let practising = residents.who_practises(&view.file);
            view.choosers = residents
                .names()
                .into_iter()
                .map(|name| Chooser { practises: practising.contains(&name), name, to: site.to("/routines/choose") })
                .collect();
            let person = Field::new("person", site.s("page-field-person"), Kind::Line, "").hint(site.s("page-hint-person"));
            view.new_person = Some((person, site.to("/routines/choose")));
        }
        Err(why) => view.choose_note = Some(why),
    }
}

/// `POST /routines/choose`
pub fn choose(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let (file, person) = (form.text("file"), form.text("person"));
    site.routines.read(file).map_err(|fault| no_file(site, &fault))?;
    let told = if form.text("do") == "unchoose" {
        household::forget_routine(site, person, file)?;
        "unchosen"
    } else {
        household::add_routine(site, person, file)?;
        "chosen"
    };
    Ok(Shown::To(format!("/routines/view?file={}&told={told}#who", encoded(file))))
}

/// `GET /routines/handout.pdf?file=`
pub fn handout_pdf(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    if !pdf::MADE {
        return Err(PageError::none(site.s("page-no-pdf")));
    }
    let name = query.text("file");
    let read = site.routines.read(name).map_err(|fault| no_file(site, &fault))?;
    let prescription = check(site, name, &read.text).map_err(|faults| PageError::bad(faults.to_string()))?;
    let say =
        |key: &str, args: &[(&'static str, Arg)]| site.words.text(&Line { key: key.to_owned(), args: args.to_vec() }).unwrap_or_default();
    let bytes = pdf::handout(&handout(&prescription, &say)).map_err(|why| PageError::bad(why.to_string()))?;
    Ok(Shown::File { kind: "application/pdf", name: format!("{}.pdf", name.trim_end_matches(".toml")), bytes })
}

/// `POST /routines/new`: the form of a routine that is no file yet.
pub fn new(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let name = file_name(form.text("name"));
    if let Err(fault) = site.routines.new_path(&name) {
        let view = list_view(site, form, Some(file_fault(site, &fault)));
        return shown(site.s("page-nav-routines"), site.with_texts(|texts| routines(texts, &view)));
    }
    let text = match form.text("like") {
        "" => {
            let title = name.trim_end_matches(".toml");
            let draft = routine::Draft { title: title.to_owned(), feedback_every: 5, ..routine::Draft::default() };
            draft.to_toml(&|key: &str| site.words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok())
        }
        like => site.routines.read(like).map_err(|fault| no_file(site, &fault))?.text,
    };
    if text.len() > MOST_IN_A_FORM {
        return Err(PageError::bad(site.s("page-routine-too-large")));
    }
    form_page(site, &Sheet { file: &name, base: "", text: &text, told: None, checked: false, extra: None })
}

/// `GET /routines/edit?file=`
pub fn edit(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let name = query.text("file");
    let read = site.routines.read(name).map_err(|fault| no_file(site, &fault))?;
    if read.text.len() > MOST_IN_A_FORM {
        return Err(PageError::bad(site.s("page-routine-too-large")));
    }
    form_page(site, &Sheet { file: name, base: &read.hash, text: &read.text, told: None, checked: true, extra: None })
}

/// `POST /routines/edit`: every button of the form and of the text.
pub fn change(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let (file, base, action) = (form.text("file"), form.text("base"), form.text("do"));
    // A browser sends line breaks of fields as CR LF.
    let mut text = form.get("draft").or(form.get("text")).unwrap_or_default().replace("\r\n", "\n");
    if text.len() > MAX_FILE_BYTES {
        return Err(PageError::bad(site.s("page-routine-too-large")));
    }
    let by_text = matches!(action, "save-text" | "check-text" | "form");
    if !by_text {
        let Ok(mut draft) = RoutineDraft::parse(&text) else {
            return text_page(site, &Sheet { file, base, text: &text, told: None, checked: true, extra: None });
        };
        draft.take(form);
        let look_up = |key: &str| site.words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok();
        let changed = draft.act(action, form, &look_up);
        text = draft.text();
        if changed {
            return form_page(
                site,
                &Sheet { file, base, text: &text, told: Some("page-routine-not-yet-saved"), checked: false, extra: None },
            );
        }
    }
    let sheet = Sheet { file, base, text: &text, told: None, checked: true, extra: None };
    match action {
        "text" => text_page(site, &sheet),
        "form" => form_page(site, &sheet),
        "save" | "save-text" => save(site, &sheet, by_text),
        _ => {
            let well = check(site, file, &text).is_ok();
            let sheet = Sheet { told: well.then_some("page-routine-well"), ..sheet };
            if by_text { text_page(site, &sheet) } else { form_page(site, &sheet) }
        }
    }
}

fn save(site: &Site, sheet: &Sheet<'_>, by_text: bool) -> Result<Shown, PageError> {
    let again = |extra: Option<String>| {
        let sheet = Sheet { extra, ..*sheet };
        if by_text { text_page(site, &sheet) } else { form_page(site, &sheet) }
    };
    if check(site, sheet.file, sheet.text).is_err() {
        return again(None);
    }
    match site.routines.write(sheet.file, sheet.base, sheet.text) {
        Ok(()) => Ok(Shown::To(format!("/routines/view?file={}&told=saved", encoded(sheet.file)))),
        Err(fault) => again(Some(file_fault(site, &fault))),
    }
}

/// What stands on the form, or on the page of the text.
struct Sheet<'a> {
    file: &'a str,
    base: &'a str,
    text: &'a str,
    /// A message to be told.
    told: Option<&'static str>,
    /// Faults are shown.
    checked: bool,
    /// What is wrong besides.
    extra: Option<String>,
}

impl Sheet<'_> {
    fn head(&self, site: &Site, form: &mut RoutineForm) {
        form.file = self.file.to_owned();
        form.title = title_in(self.text).unwrap_or_else(|| stem(self.file));
        form.base = self.base.to_owned();
        form.to = site.to("/routines/edit");
        form.is_new = self.base.is_empty();
        form.notice = self.told.map(|key| site.s(key));
        if let Some(extra) = &self.extra {
            form.faults.insert(0, (None, FaultTold::short(extra.clone())));
        }
    }
}

fn titled(site: &Site, form: &RoutineForm, key: &str) -> String {
    site.with_texts(|texts| {
        let title = texts.text(key, "title", &form.title);
        if form.faults.is_empty() { title } else { texts.text("page-title-faults", "title", &title) }
    })
}

fn form_page(site: &Site, sheet: &Sheet<'_>) -> Result<Shown, PageError> {
    let Ok(draft) = RoutineDraft::parse(sheet.text) else { return text_page(site, sheet) };
    let faults = check(site, sheet.file, &draft.text()).err().filter(|_| sheet.checked);
    let mut form = site.with_texts(|texts: Texts<'_>| form_of(&draft, faults.as_ref(), texts));
    sheet.head(site, &mut form);
    let main = site.with_texts(|texts| routine_form(texts, &form));
    shown(titled(site, &form, "page-routine-edit-title"), main)
}

fn text_page(site: &Site, sheet: &Sheet<'_>) -> Result<Shown, PageError> {
    let mut form = RoutineForm::default();
    let mut field = Field::new("text", site.s("page-field-text"), Kind::Lines(24), sheet.text).hint(site.s("page-hint-text"));
    if let (true, Err(faults)) = (sheet.checked, check(site, sheet.file, sheet.text)) {
        form.faults = faults.list.iter().map(|fault| (Some("text".to_owned()), of_line(fault))).collect();
        field.faults = form.faults.iter().map(|(_, what)| what.clone()).collect();
    }
    sheet.head(site, &mut form);
    let main = site.with_texts(|texts| routine_text(texts, &form, &field));
    shown(titled(site, &form, "page-routine-text-title"), main)
}

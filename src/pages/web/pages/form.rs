//! Parts of forms: fields with their hints and faults, and the summary of all faults that links to them (WCAG 2.2, 3.3.1, 3.3.3).

use maud::{Markup, html};

use super::texts::Texts;

/// What a field takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    /// One line of text.
    Line,
    /// A number; typed as text, so that what was typed wrong can be shown again.
    Number,
    /// Several lines of text, so many shown.
    Lines(u8),
    Check,
    /// One of these.
    Choice(Vec<Choice>),
    /// One of these, all seen at once.
    Radio(Vec<Choice>),
}

/// One thing to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    pub value: String,
    pub label: String,
    /// The heading it stands under; none stands alone.
    pub group: Option<String>,
}

impl Choice {
    /// A choice under no heading.
    #[must_use]
    pub fn new(value: impl Into<String>, label: impl Into<String>) -> Self {
        Self { value: value.into(), label: label.into(), group: None }
    }
}

/// What is wrong, in one short sentence, and below it what to do about it and why.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FaultTold {
    pub what: String,
    /// May be empty.
    pub why: String,
}

impl FaultTold {
    /// What needs no reason.
    #[must_use]
    pub fn short(what: String) -> Self {
        Self { what, why: String::new() }
    }
}

/// One field of a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// Its name in the form, and its id.
    pub id: String,
    pub label: String,
    /// What belongs in it; may be empty.
    pub hint: String,
    /// As it was typed; "on" for a checked box.
    pub value: String,
    pub kind: Kind,
    /// What is wrong with it, and what to do.
    pub faults: Vec<FaultTold>,
}

impl Field {
    /// A field without hint and fault.
    #[must_use]
    pub fn new(id: impl Into<String>, label: impl Into<String>, kind: Kind, value: impl Into<String>) -> Self {
        Self { id: id.into(), label: label.into(), hint: String::new(), value: value.into(), kind, faults: Vec::new() }
    }

    /// With words on what belongs in it.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = hint.into();
        self
    }
}

/// Fields that belong together under one heading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Group {
    pub legend: String,
    pub fields: Vec<Field>,
    /// Takes the whole group out.
    pub remove: Option<Action>,
}

/// A button of a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Action {
    /// What is sent as `do`.
    pub value: String,
    pub label: String,
    /// Said by a screen reader behind the label: which one is meant.
    pub of: String,
    /// Where the page stands afterwards, an id; none: at its top.
    pub then_at: Option<String>,
}

impl Action {
    /// A button whose label says all.
    #[must_use]
    pub fn new(value: impl Into<String>, label: impl Into<String>) -> Self {
        Self { value: value.into(), label: label.into(), of: String::new(), then_at: None }
    }

    /// Which one of several is meant.
    #[must_use]
    pub fn of(mut self, of: impl Into<String>) -> Self {
        self.of = of.into();
        self
    }

    /// Where the page stands afterwards.
    #[must_use]
    pub fn then_at(mut self, id: impl Into<String>) -> Self {
        self.then_at = Some(id.into());
        self
    }
}

/// A button. `to`: where the form goes with its number that is good once; needed only where the page shall then stand elsewhere.
#[must_use]
pub fn action(action: &Action, to: &str, class: &str) -> Markup {
    let target = action.then_at.as_ref().map(|id| format!("{to}#{id}"));
    html! {
        button type="submit" name="do" value=(action.value) class=(class) formaction=[target] {
            (action.label)
            @if !action.of.is_empty() { span class="unseen" { " " (action.of) } }
        }
    }
}

/// Several buttons in a row.
#[must_use]
pub fn buttons(actions: &[Action], to: &str, class: &str) -> Markup {
    html! { @if !actions.is_empty() { div class="row" { @for one in actions { (action(one, to, class)) } } } }
}

/// A field with its label above it, its hint, and what is wrong with it.
#[must_use]
pub fn field(field: &Field) -> Markup {
    let wrong = !field.faults.is_empty();
    let hint_id = format!("{}-hint", field.id);
    let fault_id = format!("{}-fault", field.id);
    let mut described = Vec::new();
    if !field.hint.is_empty() {
        described.push(hint_id.as_str());
    }
    if wrong {
        described.push(fault_id.as_str());
    }
    let described = (!described.is_empty()).then(|| described.join(" "));
    let about = html! {
        @if !field.hint.is_empty() { p class="hint" id=(hint_id) { (field.hint) } }
        @if wrong { div class="fault" id=(fault_id) { (told(&field.faults)) } }
    };
    let invalid = wrong.then_some("true");
    html! {
        div class=(if wrong { "field wrong" } else { "field" }) {
            @match &field.kind {
                Kind::Check => {
                    div class="check" {
                        input type="checkbox" id=(field.id) name=(field.id) value="on" checked[field.value == "on"] aria-describedby=[described] aria-invalid=[invalid];
                        label for=(field.id) { (field.label) }
                    }
                    (about)
                }
                Kind::Radio(choices) => {
                    fieldset class="choices" id=(field.id) tabindex="-1" aria-describedby=[described] {
                        legend { (field.label) }
                        (about)
                        @for (n, choice) in choices.iter().enumerate() {
                            @let id = format!("{}-{n}", field.id);
                            div class="check" {
                                input type="radio" id=(id) name=(field.id) value=(choice.value) checked[choice.value == field.value];
                                label for=(id) { (choice.label) }
                            }
                        }
                    }
                }
                _ => {
                    label for=(field.id) { (field.label) }
                    (about)
                    (input(field, described.as_deref(), invalid))
                }
            }
        }
    }
}

/// Faults beside what they are about.
#[must_use]
pub fn told(faults: &[FaultTold]) -> Markup {
    html! { @for fault in faults { p { (fault.what) } @if !fault.why.is_empty() { p class="why" { (fault.why) } } } }
}

fn input(field: &Field, described: Option<&str>, invalid: Option<&str>) -> Markup {
    html! {
        @match &field.kind {
            Kind::Lines(rows) => {
                textarea id=(field.id) name=(field.id) rows=(rows) aria-describedby=[described] aria-invalid=[invalid] { "\n" (field.value) }
            }
            Kind::Choice(choices) => {
                select id=(field.id) name=(field.id) aria-describedby=[described] aria-invalid=[invalid] {
                    @for (heading, choices) in headed(choices) {
                        @if let Some(heading) = heading {
                            optgroup label=(heading) { (options(&choices, &field.value)) }
                        } @else {
                            (options(&choices, &field.value))
                        }
                    }
                }
            }
            Kind::Number => {
                input type="text" inputmode="decimal" class="number" autocomplete="off" id=(field.id) name=(field.id) value=(field.value)
                    aria-describedby=[described] aria-invalid=[invalid];
            }
            _ => {
                input type="text" autocomplete="off" id=(field.id) name=(field.id) value=(field.value) aria-describedby=[described] aria-invalid=[invalid];
            }
        }
    }
}

fn options(choices: &[&Choice], chosen: &str) -> Markup {
    html! { @for choice in choices { option value=(choice.value) selected[choice.value == chosen] { (choice.label) } } }
}

/// Neighbours under the same heading together.
fn headed(choices: &[Choice]) -> Vec<(Option<&str>, Vec<&Choice>)> {
    let mut all: Vec<(Option<&str>, Vec<&Choice>)> = Vec::new();
    for choice in choices {
        let heading = choice.group.as_deref();
        match all.last_mut().filter(|(last, _)| *last == heading) {
            Some((_, under)) => under.push(choice),
            None => all.push((heading, vec![choice])),
        }
    }
    all
}

/// Fields under one heading, beside each other where there is room.
#[must_use]
pub fn group(group: &Group, to: &str) -> Markup {
    html! {
        fieldset class="group" {
            legend { (group.legend) }
            div class="fields" { @for one in &group.fields { (field(one)) } }
            @if let Some(remove) = &group.remove { (action(remove, to, "plain")) }
        }
    }
}

/// All faults together, each a link to its field; it takes the focus. Nothing where there is none.
#[must_use]
pub fn error_summary(texts: Texts<'_>, faults: &[(Option<String>, FaultTold)]) -> Markup {
    html! {
        @if !faults.is_empty() {
            div class="summary" role="alert" tabindex="-1" autofocus id="summary" {
                h2 { (texts.number("page-summary-title", "n", faults.len() as f64)) }
                ul {
                    @for (at, told) in faults {
                        li {
                            @if let Some(at) = at { a href={ "#" (at) } { (told.what) } } @else { p { (told.what) } }
                            @if !told.why.is_empty() { p class="why" { (told.why) } }
                        }
                    }
                }
            }
        }
    }
}

/// What was done, told in place.
#[must_use]
pub fn notice(text: Option<&str>) -> Markup {
    html! { @if let Some(text) = text { p class="notice" role="status" { (text) } } }
}

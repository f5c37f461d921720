//! Short pages of the same record: a letter to another clinician, of which only what is ticked is told, and a page for whoever helps at
//! home. The letter judges nothing, and its last words are left to whoever signs it.

use serde::Serialize;

use super::about::About;
use super::terms::{Terms, printable};
use super::{chart_text, dose, events, front, goals, ratings};
use crate::handout::Say;
use progress::Picture;

/// What a letter can tell, in its order on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Stops and warning signs.
    Safety,
    /// How much of what was prescribed was done.
    Practice,
    /// Minutes and repetitions by group of exercises.
    Dose,
    /// What was measured, against this person's own scatter.
    Measures,
    Goals,
    /// The client's own ratings.
    Ratings,
    /// What was left out, and why.
    LeftOut,
    /// What changed in the programme.
    Programme,
}

impl Part {
    /// All of them, in their order.
    pub const ALL: [Self; 8] =
        [Self::Safety, Self::Practice, Self::Dose, Self::Measures, Self::Goals, Self::Ratings, Self::LeftOut, Self::Programme];

    /// As it is typed and ticked, "left-out".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Safety => "safety",
            Self::Practice => "practice",
            Self::Dose => "dose",
            Self::Measures => "measures",
            Self::Goals => "goals",
            Self::Ratings => "ratings",
            Self::LeftOut => "left-out",
            Self::Programme => "programme",
        }
    }

    /// The part of that name.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.name() == name)
    }
}

/// A heading and what stands under it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Section {
    pub title: String,
    pub lines: Vec<String>,
}

/// A short page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Letter {
    /// "en".
    pub language: String,
    /// "ltr" or "rtl".
    pub direction: String,
    /// What the document is called, in a reader's title bar.
    pub document: String,
    /// "Page {page} of {pages}".
    pub page_of: String,
    pub title: String,
    pub intro: Vec<String>,
    pub sections: Vec<Section>,
    /// Large type, for a page that is read at the kitchen table.
    pub large: bool,
    pub foot: String,
}

/// A letter to another clinician with these parts.
#[must_use]
pub fn letter(picture: &Picture, about: &About<'_>, parts: &[Part], say: Say<'_>) -> Letter {
    let terms = &Terms::new(say);
    let mut wanted = parts.to_vec();
    wanted.sort_unstable();
    wanted.dedup();
    let section = |part: &Part| {
        let lines = lines(*part, picture, about, terms);
        let none = || vec![terms.plain("report-letter-nothing-shown")];
        Section {
            title: terms.plain(&format!("report-letter-{}-shown", part.name())),
            lines: if lines.is_empty() { none() } else { lines },
        }
    };
    let mut sections: Vec<Section> = wanted.iter().map(section).collect();
    // A blank to sign: the judgement is a person's.
    sections.push(Section { title: terms.plain("report-letter-yours-shown"), lines: vec![terms.plain("report-letter-blank-shown")] });
    let span = terms.span(picture.window.from, picture.window.to);
    let client = || terms.name(&picture.client);
    Letter {
        language: terms.plain("language-tag"),
        direction: terms.plain("language-direction"),
        document: terms.text("report-letter-document-shown", &[("client", client()), ("span", span.clone().into())]),
        page_of: crate::handout::page_of(say),
        title: terms.text("report-letter-title-shown", &[("client", client())]),
        intro: vec![terms.text("report-letter-intro-shown", &[("span", span.into())]), made(about, terms)],
        sections,
        large: false,
        foot: terms.plain("report-foot-shown"),
    }
}

/// A page for whoever helps at home: what was wrong first, then what waits, how it goes, and how to help.
#[must_use]
pub fn carer(picture: &Picture, about: &About<'_>, say: Say<'_>) -> Letter {
    let terms = &Terms::new(say);
    let list = |name: &str, n: usize| (1..=n).map(|n| terms.plain(&format!("report-carer-{name}-{n}-shown"))).collect::<Vec<_>>();
    let section = |name: &str, lines: Vec<String>| Section { title: terms.plain(&format!("report-carer-{name}-shown")), lines };
    let mut first = events::stops(picture, terms);
    first.extend(events::signs(picture, terms));
    let mut sections = Vec::new();
    if first.is_empty() {
        first.push(terms.plain("report-carer-well-shown"));
    } else {
        first.push(terms.plain("report-carer-tell-shown"));
    }
    sections.push(section("wrong", first));
    let waiting = events::unsettled(picture, terms);
    if !waiting.is_empty() {
        sections.push(section("waits", vec![terms.text("report-carer-waits-line-shown", &[("list", waiting.join(", ").into())])]));
    }
    let mut how = vec![front::adherence(picture, about, terms)];
    how.extend(events::missed(picture, terms));
    sections.push(section("how", how));
    let goals = goals::for_client(&picture.goals, picture.window.to, terms);
    if !goals.is_empty() {
        sections.push(section("goals", goals));
    }
    sections.push(section("help", list("help", 4)));
    sections.push(section("stop", list("stop", 4)));
    let span = terms.span(picture.window.from, picture.window.to);
    let client = || terms.name(&picture.client);
    Letter {
        language: terms.plain("language-tag"),
        direction: terms.plain("language-direction"),
        document: terms.text("report-carer-document-shown", &[("client", client()), ("span", span.clone().into())]),
        page_of: crate::handout::page_of(say),
        title: terms.text("report-carer-title-shown", &[("client", client())]),
        intro: vec![terms.text("report-client-span-shown", &[("span", span.into())])],
        sections,
        large: true,
        foot: format!("{} {}", terms.plain("report-client-foot-shown"), made(about, terms)),
    }
}

fn made(about: &About<'_>, terms: &Terms<'_>) -> String {
    let made = [("date", terms.date(about.made).into()), ("software", printable(about.software).into())];
    format!("{}.", terms.text("report-made-shown", &made))
}

fn lines(part: Part, picture: &Picture, about: &About<'_>, terms: &Terms<'_>) -> Vec<String> {
    match part {
        Part::Safety => {
            let mut lines = events::stops(picture, terms);
            if lines.is_empty() {
                lines.push(terms.plain("report-glance-stops-none-shown"));
            }
            lines.extend(events::signs(picture, terms));
            lines
        }
        Part::Practice => {
            let mut lines = vec![front::adherence(picture, about, terms)];
            lines.extend(events::missed(picture, terms));
            lines
        }
        Part::Dose => dose::group_lines(picture, terms),
        Part::Measures => chart_text::explained_lines(picture, terms),
        Part::Goals => goals::of(&picture.goals, terms).lines,
        Part::Ratings => ratings::lines(&picture.ratings, terms),
        Part::LeftOut => events::left_out(picture, terms),
        Part::Programme => events::programme(picture, terms),
    }
}

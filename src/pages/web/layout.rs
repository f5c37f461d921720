//! The frame of every page: landmarks, the way to the others, and nothing else.

use maud::{DOCTYPE, Markup, html};

/// One page in the list of pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NavItem {
    /// "/history".
    pub path: &'static str,
    pub label: String,
}

/// What stands around a page's own content.
#[derive(Debug, Clone)]
pub struct PageFrame<'a> {
    /// The page's name; "tidecount" follows it in the window's title.
    pub title: &'a str,
    /// BCP 47.
    pub language: &'a str,
    /// "ltr" or "rtl".
    pub direction: &'a str,
    /// The words of the link that leaps over the list of pages.
    pub skip: &'a str,
    /// What the list of pages is called.
    pub nav_label: &'a str,
    pub nav: &'a [NavItem],
    /// The path of the entry of `nav` that this page belongs to.
    pub here: &'a str,
    /// What stands between the list of pages and the content: the other pages of the same place.
    pub beside: Option<Markup>,
    /// Scripts beside the common ones, names in `assets`.
    pub scripts: &'a [&'static str],
    /// A word for the page's own styles, on `<body>`.
    pub kind: &'static str,
}

/// A whole page.
#[must_use]
pub fn page(frame: &PageFrame<'_>, main: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(frame.language) dir=[Some(frame.direction).filter(|direction| *direction == "rtl")] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (frame.title) " · tidecount" }
                link rel="stylesheet" href="/assets/style.css";
                @if !frame.nav.is_empty() { link rel="stylesheet" href="/assets/pages.css"; }
                @if frame.kind == "live" { link rel="stylesheet" href="/assets/live.css"; }
                link rel="icon" href="/assets/icon.svg" type="image/svg+xml";
                @for script in frame.scripts {
                    script src={ "/assets/" (script) } defer {}
                }
            }
            body class=(frame.kind) {
                // Where no list of pages stands before the content there is nothing to leap over.
                @if !frame.nav.is_empty() {
                    a class="skip" href="#main" { (frame.skip) }
                    header {
                        nav aria-label=(frame.nav_label) {
                            ul {
                                @for item in frame.nav {
                                    li { a href=(item.path) aria-current=[(item.path == frame.here).then_some("page")] { (item.label) } }
                                }
                            }
                        }
                    }
                }
                @if let Some(beside) = &frame.beside {
                    div class="place" { (beside) main id="main" tabindex="-1" { (main) } }
                } @else {
                    main id="main" tabindex="-1" { (main) }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_runs_the_way_its_language_is_written() {
        let of = |language: &str, direction: &str| {
            let frame = PageFrame {
                title: "x",
                language,
                direction,
                skip: "",
                nav_label: "",
                nav: &[],
                here: "",
                beside: None,
                scripts: &[],
                kind: "live",
            };
            page(&frame, &html! {}).into_string()
        };
        assert!(of("he", "rtl").contains("<html lang=\"he\" dir=\"rtl\">"));
        assert!(of("de", "ltr").contains("<html lang=\"de\">"));
    }
}

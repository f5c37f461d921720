//! The report as one HTML file: no script, nothing from elsewhere, the same words and drawings as on paper.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::sheet::{Column, Letter, Panel, Sheet, Table};

const STYLE: &str = include_str!("templates/report.css");

/// The whole report as an HTML document.
#[must_use]
pub fn to_html(sheet: &Sheet) -> String {
    let (front, tables, client) = (&sheet.front, &sheet.tables, &sheet.client);
    let page = html! {
        (DOCTYPE)
        html lang=(sheet.language) dir=[Some(&sheet.direction).filter(|direction| *direction == "rtl")] {
            (head(&sheet.document))
            body {
                header {
                    h1 { (front.title) }
                    p.period { (front.period) }
                }
                main {
                    section.glance aria-labelledby="glance" {
                        h2 #glance { (front.glance_title) }
                        ul { @for line in &front.glance { li { (line) } } }
                    }
                    @if let Some(goals) = &front.goals {
                        section aria-labelledby="goals" {
                            h2 #goals { (goals.title) }
                            ul { @for line in &goals.lines { li { (line) } } }
                            p.small { (goals.rule) }
                        }
                    }
                    @for (n, panel) in front.calendar.iter().chain(&front.charts).enumerate() { (panel_of(n, panel)) }
                    @if let Some(key) = &front.key {
                        section.key aria-labelledby="key" {
                            h2 #key { (key.title) }
                            ul {
                                @for sign in &key.signs { li { span aria-hidden="true" { (PreEscaped(&sign.svg)) } " " (sign.text) } }
                                li { (key.loose) }
                                @for line in &key.abbreviations { li { (line) } }
                            }
                        }
                    }
                    @if !front.breaks.is_empty() {
                        section aria-labelledby="breaks" {
                            h2 #breaks { (front.breaks_title) }
                            ul { @for line in &front.breaks { li { (line) } } }
                        }
                    }
                    div.columns { @for (n, column) in front.columns.iter().enumerate() { (column_of(n, column)) } }
                    section.tables aria-labelledby="tables" {
                        h2 #tables { (tables.title) }
                        @for (n, table) in tables.tables.iter().enumerate() { (table_of(n, table)) }
                        h3 { (tables.conditions_title) }
                        dl.conditions {
                            @for condition in &tables.conditions {
                                dt { (condition.name) }
                                @for line in &condition.lines { dd { (line) } }
                            }
                        }
                    }
                    section.chart aria-labelledby="chart" {
                        h2 #chart { (sheet.chart.title) }
                        p.small { (sheet.chart.hint) }
                        pre tabindex="0" role="region" aria-labelledby="chart" { (sheet.chart.text) }
                    }
                    section.client aria-labelledby="client" {
                        h2 #client { (client.title) }
                        p { (client.span) }
                        p { (client.practised) }
                        @if let Some(svg) = &client.weeks_svg {
                            h3 { (client.weeks_title) }
                            (drawing("weeks", svg, &client.weeks_title, &client.weeks_described))
                            p { (client.weeks_key) }
                        }
                        @if !client.goals.is_empty() {
                            h3 { (client.goals_title) }
                            @for line in &client.goals { p { (line) } }
                        }
                        @if !client.voice.is_empty() {
                            h3 { (client.voice_title) }
                            @for line in &client.voice { p { (line) } }
                        }
                        @if !client.moments.is_empty() {
                            h3 { (client.moments_title) }
                            @for line in &client.moments { p { (line) } }
                        }
                        @if !client.programme.is_empty() {
                            h3 { (client.programme_title) }
                            @for line in &client.programme { p { (line) } }
                        }
                        p.care { (client.care) }
                        p { (client.foot) }
                    }
                }
                footer { p { (front.foot) " " (front.made) } }
            }
        }
    };
    page.into_string()
}

fn panel_of(n: usize, panel: &Panel) -> Markup {
    let (id, drawn) = (format!("panel-{n}"), format!("drawing-{n}"));
    html! {
        section.panel {
            h2 id=(id) { (panel.title) }
            div.beside {
                (drawing(&drawn, &panel.svg, &panel.title, &panel.described))
                div {
                    dl { @for figure in &panel.figures { div { dt { (figure.label) } dd { (figure.value) } } } }
                    @if let Some(key) = &panel.key { p.small { (key) } }
                }
            }
        }
    }
}

/// A drawing that a screen reader tells in words. It may be moved sideways where the window is narrow.
fn drawing(id: &str, svg: &str, title: &str, described: &str) -> Markup {
    let (title_id, words_id) = (format!("{id}-title"), format!("{id}-words"));
    // The drawing's own first tag gives way to one that can be named and grows with the page.
    let (head, inner) = svg.split_once('>').unwrap_or(("", svg));
    let view = head.split_once("viewBox=\"").and_then(|(_, rest)| rest.split_once('"')).map_or("0 0 1 1", |(view, _)| view);
    let inner = inner.trim_end().trim_end_matches("</svg>");
    html! {
        div.drawing tabindex="0" role="region" aria-label=(title) {
            svg xmlns="http://www.w3.org/2000/svg" viewBox=(view) role="img" aria-labelledby={ (title_id) " " (words_id) } {
                title id=(title_id) { (title) }
                desc id=(words_id) { (described) }
                (PreEscaped(inner))
            }
        }
    }
}

fn column_of(n: usize, column: &Column) -> Markup {
    let id = format!("column-{n}");
    html! {
        section aria-labelledby=(id) {
            h2 id=(id) { (column.title) }
            @if column.items.is_empty() { p { (column.none) } } @else { ul { @for item in &column.items { li { (item) } } } }
        }
    }
}

/// Nothing is loaded and nothing runs, whatever a name or note holds.
fn head(title: &str) -> Markup {
    html! {
        head {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:";
            title { (title) }
            style { (PreEscaped(STYLE)) }
        }
    }
}

/// A letter or a carer's page as an HTML document.
#[must_use]
pub fn letter_html(letter: &Letter) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(letter.language) dir=[Some(&letter.direction).filter(|direction| *direction == "rtl")] {
            (head(&letter.document))
            body class=(if letter.large { "letter large" } else { "letter" }) {
                header { h1 { (letter.title) } }
                main {
                    @for line in &letter.intro { p { (line) } }
                    @for (n, section) in letter.sections.iter().enumerate() {
                        section aria-labelledby=(format!("part-{n}")) {
                            h2 id=(format!("part-{n}")) { (section.title) }
                            ul { @for line in &section.lines { li { (line) } } }
                        }
                    }
                }
                footer { p { (letter.foot) } }
            }
        }
    };
    page.into_string()
}

fn table_of(n: usize, table: &Table) -> Markup {
    let id = format!("table-{n}");
    html! {
        h3 id=(id) { (table.title) }
        div.scroll tabindex="0" role="region" aria-labelledby=(id) {
            table aria-labelledby=(id) class=[table.wraps.then_some("wraps")] {
                thead { tr { @for head in &table.head { th scope="col" { (head) } } } }
                tbody {
                    @for row in &table.rows {
                        tr {
                            @for (n, cell) in row.iter().enumerate() { @if n == 0 { th scope="row" { (cell) } } @else { td { (cell) } } }
                        }
                    }
                }
            }
        }
        p.small { (table.note) }
    }
}

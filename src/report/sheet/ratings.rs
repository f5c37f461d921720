//! The client's own ratings: as a table, and as lines.

use super::table::Table;
use super::terms::Terms;
use crate::number::number;
use progress::Ratings;

/// "Effort, after practice"
fn name(rated: &Ratings, terms: &Terms<'_>) -> String {
    let of = |name: &str| terms.plain(&format!("report-rating-{name}-shown"));
    let over = of(&format!("of-{}", rated.over.name()));
    terms.text("report-rating-name-shown", &[("what", of(rated.what.name()).into()), ("over", over.into())])
}

fn median(rated: &Ratings) -> String {
    number(rated.median, usize::from(rated.median.fract() != 0.0))
}

fn range(rated: &Ratings, terms: &Terms<'_>) -> String {
    terms.text("report-interval-shown", &[("low", rated.low.to_string().into()), ("high", rated.high.to_string().into())])
}

fn latest(rated: &Ratings, terms: &Terms<'_>) -> String {
    let given = [("value", rated.latest.to_string().into()), ("date", terms.date(rated.latest_day).into())];
    terms.text("report-rating-latest-shown", &given)
}

/// "Effort, after practice: median 4 (2 to 7), latest 5 on 2026-11-20; 12 ratings"
pub(super) fn lines(ratings: &[Ratings], terms: &Terms<'_>) -> Vec<String> {
    let line = |rated: &Ratings| {
        let given = [
            ("name", name(rated, terms).into()),
            ("median", median(rated).into()),
            ("range", range(rated, terms).into()),
            ("latest", latest(rated, terms).into()),
            ("n", rated.given.into()),
        ];
        terms.text("report-rating-line-shown", &given)
    };
    ratings.iter().map(line).collect()
}

/// A row for each kind that was rated.
pub(super) fn table(ratings: &[Ratings], terms: &Terms<'_>) -> Option<Table> {
    let heads = ["what", "median", "range", "latest", "times"];
    let times = |rated: &Ratings| match rated.passed_over {
        0 => rated.given.to_string(),
        left => terms.text("report-cell-trials-shown", &[("n", rated.given.into()), ("left", left.into())]),
    };
    let row = |rated: &Ratings| vec![name(rated, terms), median(rated), range(rated, terms), latest(rated, terms), times(rated)];
    (!ratings.is_empty()).then(|| Table {
        title: terms.plain("report-ratings-shown"),
        note: terms.plain("report-ratings-note-shown"),
        head: heads.iter().map(|head| terms.plain(&format!("report-head-rating-{head}-shown"))).collect(),
        grows: (0..heads.len()).map(|n| n == 0).collect(),
        rows: ratings.iter().map(row).collect(),
        wraps: false,
    })
}

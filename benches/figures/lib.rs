//! The figures that the benches measure. `benches/figures.toml` declares each one once: what it is, its unit, which way is better,
//! its limit, and the value on record with its commit. A bench calls [`figure`] with an id and a number; that prints a line for
//! people and, where `TIDECOUNT_FIGURES` names a file, adds one for `figures compare`.
//!
//! It measures nothing itself and knows no part of the program. Start with [`declared`] for what a figure is and [`compare`] for
//! what counts as worse.

pub mod compare;
pub mod declared;
mod interval;
pub mod keep;
pub mod page;
mod spread;
pub mod taken;

pub use spread::Spread;

use declared::{Declared, File};
use std::sync::OnceLock;

/// The variable that names the file which [`figure`] adds to.
pub const VARIABLE: &str = "TIDECOUNT_FIGURES";

/// `benches/figures.toml` as it was when the bench was built.
const FIGURES: &str = include_str!("../figures.toml");

fn on_record() -> &'static File {
    static FILE: OnceLock<File> = OnceLock::new();
    FILE.get_or_init(|| File::read(FIGURES).unwrap_or_else(|why| panic!("benches/figures.toml: {why}")))
}

/// Puts down a figure by the id that `benches/figures.toml` knows it by.
pub fn figure(id: &str, value: f64) {
    put_down(id, value, None);
}

/// Puts down a figure that was taken from `sample` recordings, words, runs or whatever else was counted.
pub fn figure_of(id: &str, value: f64, sample: usize) {
    put_down(id, value, Some(sample as u64));
}

/// Puts down a share in percent: `part` of `whole`.
pub fn share(id: &str, part: usize, whole: usize) {
    figure_of(id, 100.0 * part as f64 / whole as f64, whole);
}

fn put_down(id: &str, value: f64, sample: Option<u64>) {
    let known = on_record().figure(id);
    println!("= {id} | {}", line(known, value, sample));
    let Some(path) = std::env::var_os(VARIABLE) else { return };
    if let Err(why) = taken::add(path.as_ref(), id, value, sample) {
        panic!("{}: {why}", path.to_string_lossy());
    }
}

/// What a person reads of a figure: what it is, its value, its limit and whether it keeps it.
pub fn line(known: Option<&Declared>, value: f64, sample: Option<u64>) -> String {
    let Some(known) = known else { return format!("not in benches/figures.toml | {} | |", declared::number(value)) };
    let kept = match known.keeps_limit(value) {
        _ if (taken::Value { value, sample }).is_of_nothing() => "nothing measured",
        None => "",
        Some(true) => "met",
        Some(false) => "MISSED",
    };
    format!("{} | {} | {} | {kept}", known.what, known.shown(value, sample), known.shown_limit())
}

#[cfg(test)]
mod tests;

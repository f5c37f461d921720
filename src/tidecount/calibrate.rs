//! `tidecount calibrate`: from dB re full scale to dB SPL, for one microphone.

use std::io::{BufRead, IsTerminal, Write};
use std::process::ExitCode;
use std::sync::atomic::Ordering;
use std::sync::{Arc, Mutex, PoisonError};

use crate::options::{DataFolder, Microphone, distance};
use audio;
use files::calibrations::CalibrationStore;
use files::error::Failure;
use hear::calibration::{BELIEVABLE_DB, Known, Method, REPORTED_CM};
use hear::weighting::Weighting;
use live::calibrate::{Listened, QUIET_S, SOUND_S, calibration, listen, warnings};
use live::interrupt::until_interrupted;
use live::levels;

/// Calibrate a microphone, so that levels are dB SPL at 30 cm and not only relative
///
/// Choose one of --meter, --source and --phone.
#[derive(Debug, Clone, clap::Args)]
#[command(group(clap::ArgGroup::new("what").required(true).args(["meter", "source", "phone", "show", "forget"])))]
#[command(mut_arg("mic", |mic| mic.help("Calibrate a microphone from `tidecount devices`, or a recording of the quiet room and then the sound")))]
pub struct CalibrateArgs {
    #[command(flatten)]
    pub microphone: Microphone,
    /// Calibrate with a sound level meter that showed this level, dB; without a number, be asked after listening
    #[arg(long, value_name = "DB", num_args = 0..=1, value_parser = level)]
    pub meter: Option<Option<f64>>,
    /// Calibrate with a known source of this level at the microphone, dB; an acoustic calibrator gives 94 or 114
    #[arg(long, value_name = "DB", num_args = 0..=1, value_parser = level)]
    pub source: Option<Option<f64>>,
    /// Calibrate with a phone whose sound level app showed this level, dB; levels stay marked "rough"
    #[arg(long, value_name = "DB", num_args = 0..=1, value_parser = level)]
    pub phone: Option<Option<f64>>,
    /// Say how far the microphone will stand from the mouth in practice
    #[arg(long, value_name = "CM", default_value_t = REPORTED_CM, value_parser = distance)]
    pub distance_cm: f64,
    /// Say how far the meter or phone is from the sound [default: as far as the microphone]
    #[arg(long, value_name = "CM", value_parser = distance)]
    pub reference_cm: Option<f64>,
    /// Say which frequency weighting the meter has [default: A; Z for a source]
    #[arg(long, value_name = "A|C|Z", value_parser = weighting)]
    pub weighting: Option<Weighting>,
    /// Name the recorder a recording was made with; the calibration holds for all its recordings [default: the recording's folder]
    #[arg(long, value_name = "NAME")]
    pub recorded_with: Option<String>,
    /// Show what is calibrated
    #[arg(long)]
    pub show: bool,
    /// Forget the calibration of the device of this name
    #[arg(long, value_name = "NAME")]
    pub forget: Option<String>,
    #[command(flatten)]
    pub data: DataFolder,
}

fn level(text: &str) -> Result<f64, String> {
    let value: f64 = text.parse().map_err(|_| "not a number of dB".to_owned())?;
    if BELIEVABLE_DB.contains(&value) {
        return Ok(value);
    }
    Err(format!("no sound to calibrate with has that level; give {} to {} dB", BELIEVABLE_DB.start(), BELIEVABLE_DB.end()))
}

fn weighting(text: &str) -> Result<Weighting, String> {
    [Weighting::A, Weighting::C, Weighting::Z]
        .into_iter()
        .find(|w| w.letter().eq_ignore_ascii_case(text))
        .ok_or_else(|| "give A, C or Z".to_owned())
}

/// Runs the command.
///
/// # Errors
/// The microphone cannot be used, the sound was not fit to calibrate with, or nothing can be kept.
pub fn run(args: &CalibrateArgs) -> Result<ExitCode, Failure> {
    let folder = args.data.folder()?;
    let mut store = CalibrationStore::open(&folder)?;
    if args.show {
        show(&store);
        return Ok(ExitCode::SUCCESS);
    }
    if let Some(name) = &args.forget {
        return forget(&mut store, name);
    }
    let (method, given) = match (args.meter, args.source, args.phone) {
        (Some(given), _, _) => (Method::Meter, given),
        (_, Some(given), _) => (Method::Source, given),
        (_, _, given) => (Method::Phone, given.flatten()),
    };
    let weighting = args.weighting.unwrap_or(if method == Method::Source { Weighting::Z } else { Weighting::A });
    let mut io = audio::open(&args.microphone.mic, "none", audio::file::names_file(&args.microphone.mic))?;
    let rate_hz = io.mic_rate_hz();
    let device = levels::device(&args.microphone.mic, rate_hz, args.recorded_with.as_deref())?;
    let live = device.system != levels::RECORDING;
    if live {
        say(&instructions(method, args.distance_cm, args.reference_cm, weighting));
    }
    let listened = Arc::new(Mutex::new(Listened::new(weighting, rate_hz, live.then_some(show_reading as fn(u64, f64)))));
    let shared = listened.clone();
    let fault = until_interrupted(move |interrupted| listen(io.as_mut(), live, &shared, || interrupted.load(Ordering::Relaxed)))?;
    if let Some(fault) = fault {
        return Err(Failure::Again(fault));
    }
    let mut listened = listened.lock().unwrap_or_else(PoisonError::into_inner);
    if listened.interrupted() {
        return Err(Failure::Declined("interrupted; nothing was calibrated".into()));
    }
    let heard = listened.judge(method != Method::Source)?;
    say(&format!(
        "Heard {:.1} s of sound at {:.1} dB({}) re full scale, {:.0} dB above the room; it varied by {:.1} dB.",
        heard.length_s,
        heard.level_db,
        weighting.letter(),
        heard.over_room_db(),
        heard.spread_db
    ));
    let known = Known { method, level_db: given.map_or_else(|| ask(method, weighting), Ok)?, weighting, at_cm: args.reference_cm };
    let calibration = calibration(&known, args.distance_cm, &heard, device.clone());
    // The gain must not have been turned while it listened.
    if live && levels::device(&args.microphone.mic, rate_hz, None)?.gain != device.gain {
        return Err(Failure::Again("the microphone's gain was changed while it listened; leave it alone and calibrate again".into()));
    }
    let line = calibration.line();
    store.keep(calibration)?;
    say(&format!("Calibrated and kept:\n  {line}"));
    warnings(&known, &heard, &device).iter().for_each(|warning| say(&format!("  Note: {warning}")));
    Ok(ExitCode::SUCCESS)
}

fn instructions(method: Method, distance_cm: f64, reference_cm: Option<f64>, weighting: Weighting) -> String {
    let first = format!(
        "1. Put the microphone where it will stay in practice, {distance_cm} cm from the mouth. Turn off automatic gain and noise reduction."
    );
    let at = reference_cm.unwrap_or(distance_cm);
    let second = match method {
        Method::Meter => format!(
            "2. Put the sound level meter {at} cm from the mouth{}, set to {} and Slow.",
            if reference_cm.is_none() { ", beside the microphone" } else { "" },
            weighting.letter()
        ),
        Method::Source => {
            format!("2. Have the source ready; its level is taken to be that at {at} cm from it, or at the microphone in a coupler.")
        }
        Method::Phone => format!("2. Put the phone {at} cm from the mouth, its app set to {} and Slow if it can.", weighting.letter()),
    };
    let third = match method {
        Method::Source => format!("3. Keep quiet for {QUIET_S} seconds; then switch the source on for {SOUND_S} seconds."),
        _ => {
            format!(
                "3. Keep quiet for {QUIET_S} seconds; then hold one steady \"ah\" for {SOUND_S} seconds and read the number while you do."
            )
        }
    };
    format!("{first}\n{second}\n{third}\nPress Ctrl-C to give up.")
}

fn show_reading(second: u64, level_db: f64) {
    let now = if second <= QUIET_S { "quiet, please" } else { "now the sound" };
    say(&format!("  {second:>2} s  {level_db:>6.1} dB re full scale   {now}"));
}

/// Asks for the number that could not be known before.
fn ask(method: Method, weighting: Weighting) -> Result<f64, Failure> {
    let (what, option) = match method {
        Method::Meter => ("What did the sound level meter show", "--meter 78.4"),
        Method::Source => ("What is the level of the source", "--source 94"),
        Method::Phone => ("What did the phone show", "--phone 75"),
    };
    if !std::io::stdin().is_terminal() {
        return Err(Failure::Options(format!("the level is missing; give it on the command line, as in {option}")));
    }
    say(&format!("{what}, in dB({})? ", weighting.letter()));
    let mut line = String::new();
    std::io::stdin()
        .lock()
        .read_line(&mut line)
        .map_err(|error| Failure::Options(format!("no answer could be read ({error}); give it as {option}")))?;
    level(line.trim()).map_err(|why| Failure::Options(format!("\"{}\": {why}; nothing was calibrated", line.trim())))
}

fn show(store: &CalibrationStore) {
    if store.all().is_empty() {
        say("No microphone is calibrated; levels are relative. `tidecount calibrate --help` tells you how to calibrate one.");
    }
    store.all().iter().for_each(|calibration| say(&calibration.line()));
}

fn forget(store: &mut CalibrationStore, name: &str) -> Result<ExitCode, Failure> {
    if store.forget(name)? > 0 {
        say(&format!("The calibration of \"{name}\" is forgotten; its levels are relative from now on."));
        return Ok(ExitCode::SUCCESS);
    }
    let known: Vec<String> = store.all().iter().map(|c| format!("\"{}\"", c.device.name)).collect();
    let known = if known.is_empty() { "none is calibrated".to_owned() } else { format!("there are calibrations of {}", known.join(", ")) };
    Err(Failure::Options(format!("there is no calibration of \"{name}\"; {known}")))
}

/// A reader that went away is no reason to break off.
fn say(text: &str) {
    let mut out = std::io::stdout().lock();
    let _ = writeln!(out, "{text}").and_then(|()| out.flush());
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arguments_are_checked() {
        assert!(level("78.4").is_ok() && level("7.84").is_err() && level("x").is_err());
        assert_eq!(weighting("c"), Ok(Weighting::C));
        assert!(weighting("B").is_err());
    }
}

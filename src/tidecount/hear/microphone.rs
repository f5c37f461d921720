//! `tidecount hear` without recordings: a live meter of the microphone for setting up.

use crate::hear::args::HearArgs;
use crate::hear::lines::Found;
use crate::hear::out::{reader_left, unwritten};
use crate::hear::phrases::{PhraseEar, phrase_ear};
use audio::{self, AudioError, AudioIo};
use command_ear::Mode;
use files::error::Failure;
use hear::voice_file::FILE_SETTINGS;
use hear::{Held, VoiceEar, VoiceEvent, VoiceOutput, VoiceTask};
use live::capture::capture;
use live::interrupt::until_interrupted;
use live::meter::Meter;
use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::sync::atomic::Ordering;

/// A terminal is redrawn after so many blocks of 10 ms; a pipe gets a line after so many.
const REDRAW_BLOCKS: u64 = 10;
const LINE_BLOCKS: u64 = 100;

/// Shows the microphone until Ctrl-C, or until a recording named as microphone ends. Always true.
///
/// # Errors
/// The microphone or the commands cannot be used, or it went away for good.
pub fn run(args: &HearArgs) -> Result<bool, Failure> {
    if args.frames.is_some() {
        return Err(Failure::Options("--frames needs a recording; name one: tidecount hear FILE.wav --frames FILE.csv".into()));
    }
    let name = args.microphone.mic.clone();
    let mut io = audio::open(&name, "none", false)?;
    let mode = if io.is_offline() { Mode::Offline } else { Mode::Live };
    let mut phrases = phrase_ear(args, mode)?;
    if let Some(phrases) = &mut phrases {
        phrases.begin(io.mic_rate_hz())?;
    }
    let mut live = Live { view: View::new(args.json), meter: Meter::default(), phrases, name, voice: args.voice, auto_gain: false };
    match until_interrupted(move |interrupted| live.run(io.as_mut(), || interrupted.load(Ordering::Relaxed)))? {
        Some(fault) => Err(Failure::Again(fault)),
        None => Ok(true),
    }
}

struct Live {
    view: View,
    meter: Meter,
    phrases: Option<PhraseEar>,
    name: String,
    voice: bool,
    auto_gain: bool,
}

impl Live {
    fn run(&mut self, io: &mut dyn AudioIo, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        let rate_hz = io.mic_rate_hz();
        let mut ear = VoiceEar::new(rate_hz);
        ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
        let mut blocks = 0u64;
        self.view.began(&self.name, self.phrases.is_some());
        capture(io, |mic, captured| {
            if interrupted() || self.view.closed {
                return ControlFlow::Break(());
            }
            let mut outputs = Vec::new();
            if captured.lost_frames > 0 {
                ear.skip(captured.lost_frames, &mut |output| outputs.push(output));
            }
            ear.push(mic, false, &mut |output| outputs.push(output));
            self.meter.samples(ear.now_s(), mic, captured.lost_frames);
            let room_db = ear.noise_floor_db();
            if ear.auto_gain_found() && !std::mem::replace(&mut self.auto_gain, true) {
                self.view.warn("your microphone changes its own volume; levels are not comparable");
            }
            outputs.into_iter().for_each(|output| self.take(output, room_db));
            if let Some(phrases) = &mut self.phrases {
                phrases.push(mic);
                self.tell_heard(false);
            }
            blocks += 1;
            self.view.show(&self.meter, blocks);
            ControlFlow::Continue(())
        })?;
        let mut outputs = Vec::new();
        ear.finish(&mut |output| outputs.push(output));
        outputs.into_iter().for_each(|output| self.take(output, None));
        self.tell_heard(true);
        self.view.ended();
        io.finish()?;
        self.view.fault.take().map_or(Ok(()), |fault| Err(AudioError::File(fault)))
    }

    fn take(&mut self, output: VoiceOutput, room_db: Option<f64>) {
        match output {
            VoiceOutput::Frame(frame) => self.meter.frame(&frame, room_db),
            VoiceOutput::Event(VoiceEvent::Onset { onset_s, .. }) => self.meter.hold(Some(onset_s)),
            VoiceOutput::Event(VoiceEvent::Offset(held)) => {
                self.meter.hold(None);
                let Held { mut hold, steady } = held;
                if self.voice {
                    hold.quality = steady.map(|steady| steady.quality());
                }
                self.view.found(&Found::hold(&self.name, &hold, self.auto_gain));
            }
            VoiceOutput::Event(_) => {}
        }
    }

    fn tell_heard(&mut self, over: bool) {
        let Some(phrases) = &mut self.phrases else { return };
        match if over { phrases.end() } else { phrases.heard() } {
            Ok(heard) => {
                let considered = phrases.considered().into_iter().map(|considered| Found::considered(&self.name, considered));
                heard.iter().map(|phrase| Found::command(&self.name, phrase)).chain(considered).for_each(|found| self.view.found(&found));
            }
            Err(error) => {
                // The meter goes on without commands.
                self.phrases = None;
                self.view.warn(&error.to_string());
            }
        }
    }
}

/// Standard output as a terminal, a pipe or a file of JSON lines.
struct View {
    json: bool,
    terminal: bool,
    utf8: bool,
    drawn: usize,
    hint: Option<String>,
    /// The reader went away.
    closed: bool,
    fault: Option<String>,
}

impl View {
    fn new(json: bool) -> Self {
        let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
        // The first of these that is set decides the character set (POSIX, "Environment Variables").
        let locale = ["LC_ALL", "LC_CTYPE", "LANG"].into_iter().filter_map(std::env::var_os).find(|value| !value.is_empty());
        let utf8 = locale.is_some_and(|value| value.to_string_lossy().to_ascii_lowercase().replace('-', "").contains("utf8"));
        let terminal = !json && !dumb && std::io::stdout().is_terminal();
        Self { json, terminal, utf8, drawn: 0, hint: None, closed: false, fault: None }
    }

    fn began(&mut self, name: &str, commands: bool) {
        if !self.json {
            let commands = if commands { " and commands" } else { "" };
            self.line(&format!(
                "Listening to \"{name}\" for voice{commands}; nothing is kept. Levels in dB(A) re full scale. Ctrl-C ends."
            ));
        }
    }

    /// Something was found: it stands above the meter.
    fn found(&mut self, found: &Found) {
        if self.json {
            let mut line = Vec::new();
            let done = found.write_json(&mut line).and_then(|()| {
                let mut out = std::io::stdout().lock();
                out.write_all(&line).and_then(|()| out.flush())
            });
            self.note(done);
        } else {
            let line = match found {
                Found::Hold(hold) => format!(
                    "hold     {:.2} s from {:.2} to {:.2} s, {:.0} Hz, {:.1} dB(A)",
                    hold.duration_s, hold.onset_s, hold.offset_s, hold.f0_median_hz, hold.level_mean_db
                ),
                Found::Level(_) | Found::Considered(_) => found.row(),
                Found::Command(command) => {
                    format!("command  \"{}\" at {:.2} s, confidence {:.2}", command.text, command.start_s, command.confidence)
                }
            };
            self.line(&line);
        }
    }

    fn warn(&mut self, text: &str) {
        if self.json {
            // Standard output is for JSON alone. Where standard error is closed nobody reads warnings.
            let _ = writeln!(std::io::stderr(), "tidecount: {text}");
        } else {
            self.line(text);
        }
    }

    fn show(&mut self, meter: &Meter, blocks: u64) {
        if self.terminal {
            if blocks.is_multiple_of(REDRAW_BLOCKS) {
                self.redraw(meter);
            }
            return;
        }
        let hint = meter.hint();
        if !self.json && blocks.is_multiple_of(LINE_BLOCKS) {
            let hint = hint.map(|hint| format!("  ({hint})")).unwrap_or_default();
            self.line(&format!("{:>5.0} s  {}{hint}", meter.heard_s(), meter.line()));
        } else if self.json && blocks.is_multiple_of(LINE_BLOCKS) && hint != self.hint {
            if let Some(hint) = &hint {
                self.warn(hint);
            }
            self.hint = hint;
        }
    }

    fn redraw(&mut self, meter: &Meter) {
        let (full, empty, mark) = if self.utf8 { ('█', '·', '│') } else { ('#', '.', '|') };
        let columns = terminal_size::terminal_size().map_or(80, |(columns, _)| usize::from(columns.0)).max(2) - 1;
        let cut = |line: String| line.chars().take(columns).collect::<String>();
        let mut lines = vec![cut(format!("[{}] {}", meter.bar(full, empty, mark), meter.line()))];
        lines.extend(meter.hint().map(cut));
        let text = format!("{}{}", self.wipe(), lines.join("\r\n"));
        self.drawn = lines.len();
        self.write(&text);
    }

    /// Takes the meter off the terminal.
    fn wipe(&mut self) -> String {
        let up = std::mem::take(&mut self.drawn).saturating_sub(1);
        if !self.terminal {
            String::new()
        } else if up > 0 {
            format!("\r\x1b[{up}A\x1b[J")
        } else {
            "\r\x1b[J".to_owned()
        }
    }

    fn line(&mut self, text: &str) {
        let text = format!("{}{text}\n", self.wipe());
        self.write(&text);
    }

    fn ended(&mut self) {
        if self.terminal && self.drawn > 0 {
            self.drawn = 0;
            self.write("\n");
        }
    }

    fn write(&mut self, text: &str) {
        let mut out = std::io::stdout().lock();
        let done = out.write_all(text.as_bytes()).and_then(|()| out.flush());
        drop(out);
        self.note(done);
    }

    fn note(&mut self, done: std::io::Result<()>) {
        if let Err(error) = done {
            self.closed = true;
            if !reader_left(&error) {
                self.fault = Some(unwritten(&error).to_string());
            }
        }
    }
}

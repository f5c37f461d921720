//! The command path as a practice has it, on a mixed scene.

use super::scene::Mix;
use audio::ECHO_RATE_HZ;
use audio::echo::AutoCanceller;
use command_ear::{ChildRecogniser, Choice, CommandEvent, Grammar, HeardPhrase, Mode, Options, Path as Way};
use live::command_path::CommandPath;
use live::give_way::GivesWay;
use live::grammar::{Meaning, main_grammar, meaning};
use live::over_own_voice::OverOwnVoice;
use session::Listening;
use speak::Words;
use std::path::Path;

/// A command that would have been acted upon.
pub struct Heard {
    pub tag: String,
    pub text: String,
    pub start_s: f64,
    /// When it was decided.
    pub at_s: f64,
    pub confidence: f64,
    /// Over what is left of our own voice, dB.
    pub over_db: f64,
}

pub struct Ear {
    path: CommandPath,
    /// Whether we would have got softer, for each block of 10 ms.
    softer: Vec<bool>,
    _folder: Option<tempfile::TempDir>,
}

/// The model with the network of a fold in it.
fn of_fold(model: &Path, fold: usize) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::create_dir(folder.path().join("am")).expect("a folder");
    let network = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("models/training/folds/{fold}.mdl"));
    let links = [(network, "am/final.mdl"), (model.join("conf"), "conf"), (model.join("graph"), "graph")];
    for (from, to) in links {
        std::os::unix::fs::symlink(from, folder.path().join(to)).expect("a link");
    }
    folder
}

fn grammar(list: &str) -> Grammar {
    Grammar {
        choices: list.split(',').map(|word| Choice { tag: word.into(), wordings: vec![word.into()] }).collect(),
        ..Grammar::default()
    }
}

impl Ear {
    /// With the main path as a practice has it in a state.
    pub fn of_state(words: &Words, listening: &Listening) -> Self {
        let mut ear = Self::start(None, "stop", None);
        ear.path.listen_for(&main_grammar(words, listening)).expect("known words");
        ear
    }

    /// `fast` and `main`: phrases parted by commas. `fold`: the network that has not met the speakers of this fold, in place of the model.
    pub fn start(fold: Option<usize>, fast: &str, main: Option<&str>) -> Self {
        let model = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en");
        let folder = fold.map(|fold| of_fold(&model, fold));
        let model = folder.as_ref().map_or(model, |folder| folder.path().to_owned());
        let program = Some(env!("CARGO_BIN_EXE_tidecount").into());
        let commands = ChildRecogniser::start(&Options { model: model.into(), program, fast: grammar(fast), mode: Mode::Offline })
            .expect("the recogniser");
        let mut path = CommandPath::new(Box::new(AutoCanceller::new()), Box::new(commands), ECHO_RATE_HZ, ECHO_RATE_HZ).expect("rates");
        if let Some(main) = main {
            path.listen_for(&grammar(main)).expect("known words");
        }
        Self { path, softer: Vec::new(), _folder: folder }
    }

    /// Hears a whole scene; `main_open` says when the main path hears it, too.
    pub fn hear(&mut self, mix: &Mix, main_open: impl Fn(f64) -> bool) -> Vec<Heard> {
        self.hear_where(mix, main_open, |_, _| true)
    }

    /// The main path hears all of it; what it hears over our own voice counts as in a practice.
    pub fn hear_over(&mut self, mix: &Mix, words: &Words) -> Vec<Heard> {
        self.hear_where(
            mix,
            |_| true,
            |path, heard| {
                let Some(Meaning::Command(command)) = meaning(&heard.tag) else { return true };
                let said = mix.said_between(heard.start_s, heard.end_s);
                let over = OverOwnVoice { said: &said, echo: path.echo_state(), over_residual_db: path.over_residual_echo_db(heard) };
                let counts = heard.path == Way::Fast || said.is_empty() || over.counts(command, &words.wordings(command), heard);
                if !counts {
                    println!(
                        "      {:.1} s: \"{}\" ({:.2}, {:.1} dB over us) can wait until we are silent",
                        heard.start_s, heard.text, heard.confidence, over.over_residual_db
                    );
                }
                counts
            },
        )
    }

    fn hear_where(
        &mut self,
        mix: &Mix,
        main_open: impl Fn(f64) -> bool,
        counts: impl Fn(&CommandPath, &HeardPhrase) -> bool,
    ) -> Vec<Heard> {
        const BLOCK: usize = ECHO_RATE_HZ as usize / 100;
        let (mut heard, mut gives_way) = (Vec::new(), GivesWay::default());
        for (n, (mic, played)) in mix.mic.chunks_exact(BLOCK).zip(mix.played.chunks_exact(BLOCK)).enumerate() {
            let block_s = n as f64 * 0.01;
            for event in self.path.hear(mic, block_s, mix.hint_s, main_open(block_s)).expect("blocks of 10 ms") {
                let CommandEvent::Heard(phrase) = event else { continue };
                if !self.path.exceeds_residual_echo(&phrase) {
                    println!("      {:.1} s: \"{}\" taken for our own voice", phrase.start_s, phrase.text);
                    continue;
                }
                if !counts(&self.path, &phrase) {
                    continue;
                }
                let over_db = self.path.over_residual_echo_db(&phrase);
                heard.push(Heard {
                    over_db,
                    tag: phrase.tag,
                    text: phrase.text,
                    start_s: phrase.start_s,
                    at_s: block_s,
                    confidence: phrase.confidence,
                });
            }
            self.softer.push(gives_way.hear(block_s, self.path.somebody_speaks()));
            self.path.play(played, audio::Sent::whole(played.len()));
        }
        heard
    }

    /// Whether we would have got softer in each block heard so far.
    pub fn softer(&self) -> &[bool] {
        &self.softer
    }

    /// How the canceller stands.
    pub fn state(&self) -> String {
        let own = self.path.echo_state();
        format!("reduction {:.0} dB{}", own.reduction_db.unwrap_or(0.0), if own.drowns { ", drowns" } else { "" })
    }
}

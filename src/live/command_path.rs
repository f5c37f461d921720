//! From the microphone to what was said: echo cancelling, then the command ear, and whether a phrase heard over our own
//! voice can be ours.

use crate::clock::block_frames;
use crate::near_voice::NearVoice;
use crate::played_stream::PlayedStream;
use crate::residual_echo_log::ResidualEchoLog;
use crate::residual_suppressor::ResidualSuppressor;
use crate::stirring::Stirring;
use audio::resample::Resampler;
use audio::{AudioError, ECHO_RATE_HZ, EchoCanceller, EchoState, Sent};
use command_ear::templates::EnrolledVoice;
use command_ear::{CommandEarError, CommandEvent, CommandRecogniser, Grammar, HeardPhrase};

/// The command path. The voice ear has another, without any of this.
pub struct CommandPath {
    echo: Box<dyn EchoCanceller>,
    commands: Box<dyn CommandRecogniser>,
    from_mic: Resampler,
    from_speaker: Resampler,
    block: Vec<f32>,
    /// What the loudspeaker is given, and the block of it that goes with the microphone's: at its rate, and at the command path's.
    stream: PlayedStream,
    speaker_block: Vec<f32>,
    played: Vec<f32>,
    log: ResidualEchoLog,
    residual: ResidualSuppressor,
    near: NearVoice,
    /// Somebody speaks over our own voice.
    somebody_speaks: bool,
    stirring: Stirring,
    /// Something began to stand out from the room in the last block.
    something_stirs: bool,
    speaker_rate_hz: u32,
}

impl CommandPath {
    /// # Errors
    /// A rate that cannot be resampled to the command path's.
    pub fn new(
        echo: Box<dyn EchoCanceller>,
        commands: Box<dyn CommandRecogniser>,
        mic_rate_hz: u32,
        speaker_rate_hz: u32,
    ) -> Result<Self, AudioError> {
        let block = (ECHO_RATE_HZ / 100) as usize;
        Ok(Self {
            echo,
            commands,
            from_mic: Resampler::new(mic_rate_hz, ECHO_RATE_HZ)?,
            from_speaker: Resampler::new(speaker_rate_hz, ECHO_RATE_HZ)?,
            block: vec![0.0; block],
            stream: PlayedStream::new(speaker_rate_hz),
            speaker_block: vec![0.0; block_frames(speaker_rate_hz)],
            played: vec![0.0; block],
            log: ResidualEchoLog::default(),
            residual: ResidualSuppressor::default(),
            near: NearVoice::default(),
            somebody_speaks: false,
            stirring: Stirring::default(),
            something_stirs: false,
            speaker_rate_hz,
        })
    }

    /// Changes what the main path listens for.
    ///
    /// # Errors
    /// A word that the model does not know; the old grammar stays.
    pub fn listen_for(&mut self, grammar: &Grammar) -> Result<(), CommandEarError> {
        self.commands.listen_for(grammar)
    }

    /// Changes what the fast path listens for; without choices it is off.
    ///
    /// # Errors
    /// As [`CommandPath::listen_for`].
    pub fn listen_for_fast(&mut self, grammar: &Grammar) -> Result<(), CommandEarError> {
        self.commands.listen_for_fast(grammar)
    }

    /// Lets a client's own way of saying the commands weigh in from now on.
    pub fn weigh_in(&mut self, own: &EnrolledVoice) {
        self.commands.weigh_in(own);
    }

    /// Frames per second of what [`CommandPath::play`] takes.
    #[must_use]
    pub fn speaker_rate_hz(&self) -> u32 {
        self.speaker_rate_hz
    }

    /// Nothing is heard for a while: what is half heard is decided.
    pub fn pause(&mut self) {
        self.commands.pause();
    }

    /// What was decided since the last call, where no sound is heard.
    pub fn poll(&mut self) -> Vec<CommandEvent> {
        self.commands.poll()
    }

    /// Hears 10 ms of the raw microphone that begin at `block_s`. `delay_s`: the sound system's word on how late what we
    /// play is heard. `main`: whether the main path hears it, too.
    ///
    /// # Errors
    /// A block of another length than 10 ms.
    pub fn hear(&mut self, mic: &[f32], block_s: f64, delay_s: f64, main: bool) -> Result<Vec<CommandEvent>, AudioError> {
        self.from_mic.process(mic, &mut self.block)?;
        self.stream.take(&mut self.speaker_block);
        self.from_speaker.process(&self.speaker_block, &mut self.played)?;
        let waits_s = self.stream.waiting() as f64 / f64::from(self.speaker_rate_hz);
        self.echo.hint_delay((delay_s - waits_s).max(0.0));
        self.echo.cancel(&self.played, &mut self.block);
        let sound_s = (block_s - self.from_mic.delay_s()).max(0.0);
        let echo = self.echo.echo_state();
        self.log.take(sound_s, &self.block, echo.left_db, echo.raw_db);
        let power = self.block.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / self.block.len().max(1) as f64;
        let left_db = if echo.aligned { echo.left_db } else { echo.raw_db };
        let [left, raw] = [left_db, echo.raw_db].map(|db| 10f64.powf(db / 10.0));
        self.somebody_speaks = self.near.hear(power, left, raw);
        self.something_stirs = if raw > 0.0 {
            self.stirring.pause();
            false
        } else {
            self.stirring.hear(power)
        };
        let left_db = self.residual.suppress_residual(&mut self.block, echo.left_db);
        self.commands.expect_own_voice(left_db);
        self.commands.push(sound_s, &self.block, main);
        Ok(self.commands.poll())
    }

    /// The 10 ms that were handed to the loudspeaker now, and what became of them.
    pub fn play(&mut self, speaker: &[f32], sent: Sent) {
        self.stream.hand_over(speaker, sent);
    }

    /// Sound was lost on its way from the microphone, during `played_s` of what waited for the loudspeaker.
    pub fn skip(&mut self, played_s: f64) {
        self.log.clear();
        self.stream.pass((played_s * f64::from(self.speaker_rate_hz)).round() as usize);
    }

    /// The phrase is louder than what the canceller leaves of our own voice; true where nothing was played.
    #[must_use]
    pub fn exceeds_residual_echo(&self, heard: &HeardPhrase) -> bool {
        self.log.exceeds_residual_echo(heard.start_s, heard.end_s, self.echo.echo_state().aligned)
    }

    /// By how much the phrase is louder than what the canceller leaves of our own voice, dB; ∞ where nothing was played.
    #[must_use]
    pub fn over_residual_echo_db(&self, heard: &HeardPhrase) -> f64 {
        self.log.over_residual_echo_db(heard.start_s, heard.end_s, self.echo.echo_state().aligned)
    }

    /// Somebody speaks over our own voice, as far as can be told from its level.
    #[must_use]
    pub fn somebody_speaks(&self) -> bool {
        self.somebody_speaks
    }

    /// While nothing of us is heard, something began to stand out from the room in the last block.
    #[must_use]
    pub fn something_stirs(&self) -> bool {
        self.something_stirs
    }

    /// What is known of the echo now.
    #[must_use]
    pub fn echo_state(&self) -> EchoState {
        self.echo.echo_state()
    }
}

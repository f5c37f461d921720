//! Builds cpal streams: which host, which device, which format. The only file besides `devices` and the callbacks that knows cpal.

use super::AudioError;
use super::callback::{Shared, capture, play};
use super::host::Direction;
use cpal::traits::{DeviceTrait, StreamTrait};
use cpal::{BufferSize, Device, FromSample, Host, I24, Sample, SampleFormat, SizedSample, StreamConfig, SupportedStreamConfigRange};
use ringbuf::traits::{Consumer, Producer};
use ringbuf::{HeapCons, HeapProd};
use std::sync::Arc;
use std::sync::atomic::Ordering::Relaxed;
use std::time::Duration;

/// Frames asked of a PulseAudio or PipeWire server at 48 kHz; the default would be a buffer of 2 s. For a loudspeaker
/// this is one callback and half the server's buffer. For a microphone it is the server's whole buffer, which it empties
/// in halves and silently drops when full: 960 lost 20 ms in every other run on a busy machine.
const SERVER_FRAMES_OUT: u32 = 960;
const SERVER_FRAMES_IN: u32 = 3_840;
/// Frames of buffer asked of ALSA; with 1,024 and less one underrun could lead to endless errors under load.
const ALSA_FRAMES: u32 = 2_048;
/// Rates asked for in this order where the device's own does not fit.
const RATES_HZ: [u32; 5] = [48_000, 44_100, 32_000, 16_000, 8_000];
const BUILD_TIMEOUT: Duration = Duration::from_secs(2);

/// How a device is to be opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Format {
    pub rate_hz: u32,
    pub channels: u16,
    pub sample: SampleFormat,
}

/// A running stream. Dropping it stops it, on another thread, for a dead server may keep the drop waiting.
pub(super) struct Running(Option<cpal::Stream>);

impl Drop for Running {
    fn drop(&mut self) {
        if let Some(stream) = self.0.take() {
            std::thread::spawn(move || drop(stream));
        }
    }
}

fn configs(device: &Device, direction: Direction) -> Result<(cpal::SupportedStreamConfig, Vec<SupportedStreamConfigRange>), cpal::Error> {
    Ok(match direction {
        Direction::Input => (device.default_input_config()?, device.supported_input_configs()?.collect()),
        Direction::Output => (device.default_output_config()?, device.supported_output_configs()?.collect()),
    })
}

/// The device's own rate if 10 ms of it are whole frames and it is no higher than needed, otherwise the first usual
/// one it can do; its own sample format if known here.
pub(super) fn format(device: &Device, direction: Direction) -> Result<Format, AudioError> {
    let (own, ranges) = configs(device, direction).map_err(|e| refused(direction, &device.to_string(), &e))?;
    let own_fits = own.sample_rate() % 100 == 0 && (8_000..=48_000).contains(&own.sample_rate());
    let can = |rate_hz: u32, sample: SampleFormat, channels: u16| {
        ranges.iter().any(|r| r.sample_format() == sample && r.channels() == channels && r.contains_rate(rate_hz))
    };
    if own_fits && is_known(own.sample_format()) {
        return Ok(Format { rate_hz: own.sample_rate(), channels: own.channels(), sample: own.sample_format() });
    }
    let rates = own_fits.then_some(own.sample_rate()).into_iter().chain(RATES_HZ);
    let samples = [own.sample_format(), SampleFormat::F32, SampleFormat::I16, SampleFormat::I32];
    let channels = [own.channels(), 1, 2];
    for rate_hz in rates {
        for sample in samples.into_iter().filter(|s| is_known(*s)) {
            if let Some(channels) = channels.into_iter().find(|c| can(rate_hz, sample, *c)) {
                return Ok(Format { rate_hz, channels, sample });
            }
        }
    }
    Err(AudioError::Device(format!(
        "the {} \"{device}\" offers neither {} Hz nor another rate of 8 to 48 kHz that can be used; choose another with {}",
        direction.noun(),
        own.sample_rate(),
        direction.option()
    )))
}

fn is_known(sample: SampleFormat) -> bool {
    matches!(sample, SampleFormat::F32 | SampleFormat::I16 | SampleFormat::I24 | SampleFormat::I32 | SampleFormat::U8 | SampleFormat::U16)
}

fn config(host: &Host, direction: Direction, format: Format) -> StreamConfig {
    let at_48k = match direction {
        Direction::Input => SERVER_FRAMES_IN,
        Direction::Output => SERVER_FRAMES_OUT,
    };
    let frames = if host.id().name() == "ALSA" { ALSA_FRAMES } else { (u64::from(at_48k) * u64::from(format.rate_hz) / 48_000) as u32 };
    StreamConfig { channels: format.channels, sample_rate: format.rate_hz, buffer_size: BufferSize::Fixed(frames) }
}

/// Calls a function of the type in which the device's samples stand; as f32 where cpal gives a kind that it does not name here.
macro_rules! for_samples {
    ($sample:expr, $start:ident($($argument:expr),*)) => {
        match $sample {
            SampleFormat::I16 => $start::<i16>($($argument),*),
            SampleFormat::I24 => $start::<I24>($($argument),*),
            SampleFormat::I32 => $start::<i32>($($argument),*),
            SampleFormat::U8 => $start::<u8>($($argument),*),
            SampleFormat::U16 => $start::<u16>($($argument),*),
            _ => $start::<f32>($($argument),*),
        }
    };
}

/// Starts a microphone that fills `ring`.
pub(super) fn start_input(
    host: &Host,
    device: &Device,
    format: Format,
    ring: HeapProd<f32>,
    shared: Arc<Shared>,
) -> Result<Running, cpal::Error> {
    let config = config(host, Direction::Input, format);
    for_samples!(format.sample, input(device, config, ring, shared))
}

fn input<T>(device: &Device, config: StreamConfig, mut ring: HeapProd<f32>, shared: Arc<Shared>) -> Result<Running, cpal::Error>
where
    T: SizedSample + Send + 'static,
    f32: FromSample<T>,
    HeapProd<f32>: Producer<Item = f32>,
{
    let channels = usize::from(config.channels);
    let errors = Arc::clone(&shared);
    let mut pushed = 0;
    let stream = device.build_input_stream(
        config,
        move |data: &[T], _| capture(data, channels, &mut pushed, &mut ring, &shared),
        move |error: cpal::Error| errors.error(error.kind()),
        Some(BUILD_TIMEOUT),
    )?;
    stream.play()?;
    Ok(Running(Some(stream)))
}

/// Starts a loudspeaker that empties `ring`.
pub(super) fn start_output(
    host: &Host,
    device: &Device,
    format: Format,
    ring: HeapCons<f32>,
    shared: Arc<Shared>,
) -> Result<Running, cpal::Error> {
    let config = config(host, Direction::Output, format);
    for_samples!(format.sample, output(device, config, ring, shared))
}

fn output<T>(device: &Device, config: StreamConfig, mut ring: HeapCons<f32>, shared: Arc<Shared>) -> Result<Running, cpal::Error>
where
    T: SizedSample + Sample + FromSample<f32> + Send + 'static,
    HeapCons<f32>: Consumer<Item = f32>,
{
    let channels = usize::from(config.channels);
    let errors = Arc::clone(&shared);
    let stream = device.build_output_stream(
        config,
        move |data: &mut [T], info: &cpal::OutputCallbackInfo| {
            let stamp = info.timestamp();
            let latency = stamp.playback.saturating_duration_since(stamp.callback);
            shared.latency_us.store(u32::try_from(latency.as_micros()).unwrap_or(u32::MAX), Relaxed);
            play(data, channels, &mut ring, &shared);
        },
        move |error: cpal::Error| errors.error(error.kind()),
        Some(BUILD_TIMEOUT),
    )?;
    stream.play()?;
    Ok(Running(Some(stream)))
}

/// What a refusal means for the user.
pub(super) fn refused(direction: Direction, name: &str, error: &cpal::Error) -> AudioError {
    use cpal::ErrorKind::{DeviceBusy, DeviceNotAvailable, HostUnavailable, PermissionDenied};
    let noun = direction.noun();
    match error.kind() {
        DeviceNotAvailable | HostUnavailable => AudioError::NoDevice(format!(
            "the {noun} \"{name}\" is not there ({error}); is it plugged in and switched on? `tidecount devices` lists those that are"
        )),
        DeviceBusy => AudioError::Device(format!("the {noun} \"{name}\" is in use by another program; close that one and try again")),
        PermissionDenied => AudioError::Device(format!(
            "the {noun} \"{name}\" may not be used by this user; on Debian, put the user into the group \"audio\" and log in again"
        )),
        _ => AudioError::Device(format!("the {noun} \"{name}\" cannot be opened: {error}; `tidecount devices` tries all of them")),
    }
}

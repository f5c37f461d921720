//! The echo canceller of libspeexdsp (Debian: libspeexdsp-dev), four functions of C behind one safe type.

use std::ffi::{c_int, c_void};
use std::ptr::NonNull;

/// `speex_echo.h`: sets the sampling rate; takes an `int *`.
const SET_SAMPLING_RATE: c_int = 24;

#[link(name = "speexdsp")]
unsafe extern "C" {
    fn speex_echo_state_init(frame_size: c_int, filter_length: c_int) -> *mut c_void;
    fn speex_echo_state_destroy(state: *mut c_void);
    fn speex_echo_cancellation(state: *mut c_void, rec: *const i16, play: *const i16, out: *mut i16);
    fn speex_echo_ctl(state: *mut c_void, request: c_int, value: *mut c_void) -> c_int;
}

/// An adaptive linear filter: keeps the speech of the person unharmed, needs one common clock for both directions.
pub struct LinearCanceller {
    state: NonNull<c_void>,
    rec: Vec<i16>,
    play: Vec<i16>,
    out: Vec<i16>,
}

// SAFETY: the state is plain memory used by one caller at a time (`&mut self`) and bound to no thread.
unsafe impl Send for LinearCanceller {}

impl LinearCanceller {
    /// `frame`: frames per block; `tail_s`: longest echo that is followed, delay included. `None` if the library
    /// cannot get memory.
    pub fn new(rate_hz: u32, frame: usize, tail_s: f64) -> Option<Self> {
        let tail = c_int::try_from((tail_s * f64::from(rate_hz)) as i64).ok()?;
        let mut rate = c_int::try_from(rate_hz).ok()?;
        // SAFETY: both lengths are positive; the result is checked for null.
        let state = NonNull::new(unsafe { speex_echo_state_init(c_int::try_from(frame).ok()?, tail) })?;
        // SAFETY: the state is valid, and this request reads one int.
        unsafe { speex_echo_ctl(state.as_ptr(), SET_SAMPLING_RATE, (&raw mut rate).cast()) };
        Some(Self { state, rec: vec![0; frame], play: vec![0; frame], out: vec![0; frame] })
    }
}

impl LinearCanceller {
    /// Takes `played` out of `mic`, which is replaced by the result. Blocks of another length than the canceller was made for stay as they are.
    pub fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        if played.len() != self.play.len() || mic.len() != self.rec.len() {
            return;
        }
        let to_i16 = |s: &f32| (s * 32_768.0).clamp(-32_768.0, 32_767.0) as i16;
        self.play.iter_mut().zip(played).for_each(|(to, s)| *to = to_i16(s));
        self.rec.iter_mut().zip(mic.iter()).for_each(|(to, s)| *to = to_i16(s));
        // SAFETY: the three buffers hold `frame` samples each, as the state was told, and do not overlap.
        unsafe {
            speex_echo_cancellation(self.state.as_ptr(), self.rec.as_ptr(), self.play.as_ptr(), self.out.as_mut_ptr());
        }
        mic.iter_mut().zip(&self.out).for_each(|(to, s)| *to = f32::from(*s) / 32_768.0);
    }
}

impl Drop for LinearCanceller {
    fn drop(&mut self) {
        // SAFETY: the state comes from `speex_echo_state_init` and is freed once.
        unsafe { speex_echo_state_destroy(self.state.as_ptr()) };
    }
}

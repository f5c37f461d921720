//! The echo canceller of libspeexdsp as one of ours.

use crate::EchoCanceller;

pub use foreign::speex::LinearCanceller;

impl EchoCanceller for LinearCanceller {
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        LinearCanceller::cancel(self, played, mic);
    }
}

//! A process that ends with the one that started it, however that ended.

#[cfg(target_os = "linux")]
use std::ffi::{c_int, c_ulong};

/// `sys/prctl.h`: the signal that a process gets when the thread that started it ends.
#[cfg(target_os = "linux")]
const SET_PARENT_DEATH_SIGNAL: c_int = 1;
/// `signal.h`: cannot be caught, and reaches a process that stands still, too.
#[cfg(target_os = "linux")]
const KILL: c_ulong = 9;

#[cfg(target_os = "linux")]
unsafe extern "C" {
    fn prctl(option: c_int, ...) -> c_int;
}

/// From now on this process is killed as soon as the thread that started it ends. False where the system does not do that: then it ends
/// when it next reads what the other wrote.
#[must_use]
pub fn end_with_parent() -> bool {
    #[cfg(target_os = "linux")]
    {
        // SAFETY: the request takes one number and touches no memory of ours.
        unsafe { prctl(SET_PARENT_DEATH_SIGNAL, KILL) == 0 }
    }
    #[cfg(not(target_os = "linux"))]
    false
}

//! How much room a disk has left.

use std::path::Path;

/// Bytes that this user may still write on the disk of `path`; none where the system does not say.
#[must_use]
pub fn free_bytes(path: &Path) -> Option<u64> {
    #[cfg(unix)]
    {
        let disk = rustix::fs::statvfs(path).ok()?;
        Some(disk.f_bavail.saturating_mul(disk.f_frsize))
    }
    #[cfg(not(unix))]
    {
        let _ = path;
        None
    }
}

#[cfg(all(test, unix))]
mod tests {
    #[test]
    fn a_disk_that_is_there_has_a_figure_and_another_none() {
        let dir = tempfile::tempdir().expect("a folder");
        assert!(super::free_bytes(dir.path()).is_some());
        assert_eq!(super::free_bytes(&dir.path().join("nowhere")), None);
    }
}

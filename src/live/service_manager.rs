//! Tells the service manager that the loop still goes round, so that one that hangs is killed and started again.
//!
//! The manager gives the name of a datagram socket in `NOTIFY_SOCKET` and takes plain text there (sd_notify(3)). Without it, nothing is
//! sent. A name that begins with `@` is one of Linux's without a file.

use std::ffi::{OsStr, OsString};
use std::io;

const VARIABLE: &str = "NOTIFY_SOCKET";
/// Blocks of 10 ms between two signs of life: one a second.
const BLOCKS: u64 = 100;

/// Signs of life of one loop.
#[derive(Debug, Default)]
pub struct SignsOfLife {
    to: Option<manager::Manager>,
    blocks: u64,
}

impl SignsOfLife {
    /// To the manager that started the program; to nobody where none did.
    #[must_use]
    pub fn from_environment() -> Self {
        Self::to(std::env::var_os(VARIABLE))
    }

    fn to(name: Option<OsString>) -> Self {
        let to = name.filter(|name| !name.is_empty()).and_then(|name| match manager::open(&name) {
            Ok(to) => Some(to),
            Err(why) => {
                tracing::warn!("the service manager cannot be told that all is well: {why}");
                None
            }
        });
        Self { to, blocks: 0 }
    }

    /// A block was dealt with to its end. The first one says that the service is ready.
    pub fn block_done(&mut self) {
        let Some(to) = &self.to else { return };
        if self.blocks.is_multiple_of(BLOCKS) {
            let text: &[u8] = if self.blocks == 0 { b"READY=1\nWATCHDOG=1" } else { b"WATCHDOG=1" };
            // A manager that does not read must not hold up the sound: the next sign follows in a second.
            let _ = manager::send(to, text);
        }
        self.blocks += 1;
    }
}

#[cfg(unix)]
mod manager {
    use super::{OsStr, io};
    use std::os::unix::net::{SocketAddr, UnixDatagram};

    pub type Manager = (UnixDatagram, SocketAddr);

    pub fn open(name: &OsStr) -> io::Result<Manager> {
        let socket = UnixDatagram::unbound()?;
        socket.set_nonblocking(true)?;
        Ok((socket, address(name)?))
    }

    pub fn send((socket, to): &Manager, text: &[u8]) -> io::Result<usize> {
        socket.send_to_addr(text, to)
    }

    fn address(name: &OsStr) -> io::Result<SocketAddr> {
        #[cfg(target_os = "linux")]
        {
            use std::os::linux::net::SocketAddrExt;
            use std::os::unix::ffi::OsStrExt;
            if let Some(rest) = name.as_bytes().strip_prefix(b"@") {
                return SocketAddr::from_abstract_name(rest);
            }
        }
        SocketAddr::from_pathname(name)
    }
}

/// Systems without such sockets have no such manager.
#[cfg(not(unix))]
mod manager {
    use super::{OsStr, io};

    pub type Manager = std::convert::Infallible;

    pub fn open(_name: &OsStr) -> io::Result<Manager> {
        Err(io::ErrorKind::Unsupported.into())
    }

    pub fn send(to: &Manager, _text: &[u8]) -> io::Result<usize> {
        match *to {}
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use std::os::unix::net::UnixDatagram;

    fn received(manager: &UnixDatagram) -> Vec<String> {
        manager.set_nonblocking(true).expect("a socket");
        let mut buffer = [0; 64];
        std::iter::from_fn(|| manager.recv(&mut buffer).ok().map(|n| String::from_utf8_lossy(&buffer[..n]).into_owned())).collect()
    }

    #[test]
    fn the_first_block_says_ready_and_then_each_second_gives_a_sign() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("notify");
        let manager = UnixDatagram::bind(&path).expect("a socket");
        let mut signs = SignsOfLife::to(Some(path.into_os_string()));
        assert_eq!(received(&manager), Vec::<String>::new(), "before the first block it is not ready");
        (0..250).for_each(|_| signs.block_done());
        assert_eq!(received(&manager), ["READY=1\nWATCHDOG=1", "WATCHDOG=1", "WATCHDOG=1"]);
    }

    #[test]
    #[cfg(target_os = "linux")]
    fn a_name_without_a_file_works_too() {
        use std::os::linux::net::SocketAddrExt;
        use std::os::unix::net::SocketAddr;
        let name = format!("tidecount-test-{}", std::process::id());
        let manager = UnixDatagram::bind_addr(&SocketAddr::from_abstract_name(&name).expect("a name")).expect("a socket");
        SignsOfLife::to(Some(format!("@{name}").into())).block_done();
        assert_eq!(received(&manager), ["READY=1\nWATCHDOG=1"]);
    }

    #[test]
    fn nobody_to_tell_is_no_fault() {
        for name in [None, Some(OsString::new()), Some(OsString::from("/nowhere/notify"))] {
            let mut signs = SignsOfLife::to(name);
            (0..101).for_each(|_| signs.block_done());
        }
    }

    #[test]
    fn a_manager_that_does_not_read_holds_nothing_up() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("notify");
        let _manager = UnixDatagram::bind(&path).expect("a socket");
        let mut signs = SignsOfLife::to(Some(path.into_os_string()));
        (0..200 * BLOCKS).for_each(|_| signs.block_done());
    }
}

//! Whose connection this is: the kernel knows the user of both ends of a connection on one computer.

use std::net::{IpAddr, SocketAddr};

/// The other end of a connection.
#[derive(Debug, Clone, Copy)]
pub(super) struct Peer(pub SocketAddr);

impl Peer {
    /// False where the other end is surely another user's. On a system that does not tell, nobody is refused.
    pub(super) fn is_own(self) -> bool {
        let Some(own) = own_user() else { return true };
        let tables = ["/proc/net/tcp", "/proc/net/tcp6"].map(|table| std::fs::read_to_string(table).ok());
        if tables.iter().all(Option::is_none) {
            return true;
        }
        tables.iter().flatten().find_map(|table| user_of(table, self.0)) == Some(own)
    }
}

#[cfg(target_os = "linux")]
fn own_user() -> Option<u32> {
    std::fs::metadata("/proc/self").ok().map(|data| std::os::unix::fs::MetadataExt::uid(&data))
}

#[cfg(not(target_os = "linux"))]
fn own_user() -> Option<u32> {
    None
}

/// The user of the socket with this local address, from the kernel's table (Linux `proc_pid_net(5)`): the addresses are hexadecimal, each
/// group of four bytes in the order of the machine.
fn user_of(table: &str, address: SocketAddr) -> Option<u32> {
    let IpAddr::V4(ip) = address.ip() else { return None };
    let group = format!("{:08X}", u32::from_ne_bytes(ip.octets()));
    let port = address.port();
    // A socket for both families stands in the second table, with the first address inside the second.
    let mapped = format!("{:08X}{:08X}{:08X}{group}:{port:04X}", 0, 0, u32::from_ne_bytes([0, 0, 0xFF, 0xFF]));
    let plain = format!("{group}:{port:04X}");
    table.lines().skip(1).find_map(|line| {
        let mut fields = line.split_whitespace();
        let local = fields.nth(1)?;
        let user = fields.nth(5)?;
        (local == plain || local == mapped).then(|| user.parse().ok()).flatten()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(target_endian = "little")]
    #[test]
    fn the_user_of_a_connection_is_read_from_the_table() {
        let table = "  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode\n\
             0: 0100007F:1F90 00000000:0000 0A 00000000:00000000 00:00000000 00000000  1000        0 1 1 0 100 0 0 10 0\n\
             1: 0100007F:A001 0100007F:1F90 01 00000000:00000000 00:00000000 00000000  1001        0 2 1 0 20 4 30 10 -1\n";
        let at = |port| SocketAddr::from(([127, 0, 0, 1], port));
        assert_eq!((user_of(table, at(0xA001)), user_of(table, at(0x1F90)), user_of(table, at(7))), (Some(1001), Some(1000), None));
        let both = "head\n 1: 0000000000000000FFFF00000100007F:A001 0000000000000000FFFF00000100007F:1F90 01 0:0 0:0 0 1002 0 2\n";
        assert_eq!(user_of(both, at(0xA001)), Some(1002));
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_connection_of_this_process_is_its_own_and_one_that_is_not_there_is_not() {
        let listener = std::net::TcpListener::bind("127.0.0.1:0").expect("binds");
        let stream = std::net::TcpStream::connect(listener.local_addr().expect("an address")).expect("connects");
        let peer = stream.local_addr().expect("an address");
        assert!(Peer(peer).is_own());
        drop(stream);
        assert!(!Peer(SocketAddr::from(([127, 0, 0, 9], 9))).is_own());
    }
}

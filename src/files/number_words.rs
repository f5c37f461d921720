//! Numbers with their noun or unit in the texts of commands.

/// "1 practice", "2 practices". `of` follows the noun: ("file", " of sound").
pub fn counted_of(count: impl TryInto<u64>, one: &str, of: &str) -> String {
    let count = count.try_into().unwrap_or(u64::MAX);
    let many = if count == 1 { "" } else { "s" };
    format!("{count} {one}{many}{of}")
}

/// "1 practice", "2 practices".
pub fn counted(count: impl TryInto<u64>, one: &str) -> String {
    counted_of(count, one, "")
}

/// "1.4 MB".
pub fn size(bytes: u64) -> String {
    let bytes = bytes as f64;
    match bytes {
        _ if bytes >= 1e9 => format!("{:.1} GB", bytes / 1e9),
        _ if bytes >= 1e6 => format!("{:.1} MB", bytes / 1e6),
        _ => format!("{:.0} kB", (bytes / 1e3).ceil()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_one_and_nothing_is_many() {
        assert_eq!([0, 1, 2].map(|n: u32| counted(n, "practice")), ["0 practices", "1 practice", "2 practices"]);
        assert_eq!(counted_of(1_usize, "file", " of sound"), "1 file of sound");
    }
}

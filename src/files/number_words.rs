//! Numbers with their noun in the texts of commands.

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_one_and_nothing_is_many() {
        assert_eq!([0, 1, 2].map(|n: u32| counted(n, "practice")), ["0 practices", "1 practice", "2 practices"]);
        assert_eq!(counted_of(1_usize, "file", " of sound"), "1 file of sound");
    }
}

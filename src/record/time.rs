//! Times of day as they stand in the record.

use jiff::fmt::temporal::Pieces;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};

/// Reads a time with its zone (RFC 9557). Where this computer does not know the zone, or its rules have changed since, the instant and
/// the offset that were written count: a record must not become unreadable because a country changed its clocks.
pub(super) fn read(text: &str) -> Option<ZonedDateTime> {
    if let Ok(time) = text.parse() {
        return Some(time);
    }
    let offset = Pieces::parse(text).ok()?.to_numeric_offset()?;
    let instant: Timestamp = text.split('[').next()?.parse().ok()?;
    Some(instant.to_zoned_datetime(TimeZone::fixed(offset)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_read_with_its_zone_also_where_the_zone_is_unknown_or_has_changed() {
        let known = read("2026-11-24T19:00:00+01:00[Europe/Berlin]").expect("a time");
        assert_eq!(known.time_zone().iana_name(), Some("Europe/Berlin"));
        // No such zone, and an offset that the zone never had.
        for text in ["2026-11-24T19:00:00+01:00[Nowhere/Else]", "2026-11-24T19:00:00+01:00[America/New_York]"] {
            let time = read(text).expect(text);
            assert_eq!(time.timestamp(), known.timestamp(), "{text}");
            assert_eq!((time.hour(), time.offset().seconds()), (19, 3600), "{text}");
        }
        assert_eq!(read("yesterday"), None);
        assert_eq!(read("2026-11-24T19:00:00"), None, "no instant without an offset");
    }
}

//! Text from elsewhere as it is shown on a terminal. A name may hold characters that nobody sees and that turn the order of what stands
//! around them, or steer the terminal; two names could then look alike.

/// Whether a character is seen, or only does something to those around it. Ranges: Unicode 16, characters that are
/// `Default_Ignorable_Code_Point`, `Bidi_Control` or line separators; from memory.
fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(
            u32::from(c),
            0xAD | 0x34F | 0x61C | 0x115F | 0x1160 | 0x17B4 | 0x17B5 | 0x180B..=0x180F | 0x200B..=0x200F | 0x2028..=0x202E
                | 0x2060..=0x206F | 0x3164 | 0xFE00..=0xFE0F | 0xFEFF | 0xFFA0 | 0xFFF0..=0xFFFB | 0x1BCA0..=0x1BCA3
                | 0x1D173..=0x1D17A | 0xE0000..=0xE0FFF
        )
}

/// A text of any number of lines: what is not seen is written out, "\u{202e}". Line ends and tabs stay.
#[must_use]
pub fn visible(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for c in text.chars() {
        if is_unseen(c) && !matches!(c, '\n' | '\t') {
            shown.extend(c.escape_unicode());
        } else {
            shown.push(c);
        }
    }
    shown
}

/// As [`visible`], on one line: control characters, line ends among them, are spaces.
#[must_use]
pub fn visible_line(text: &str) -> String {
    visible(&text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_seen_is_written_out_and_what_is_seen_stays() {
        assert_eq!(
            visible("gra\u{202e}apdn\u{2066}x\u{200b}y\u{feff}\u{1b}[2J"),
            "gra\\u{202e}apdn\\u{2066}x\\u{200b}y\\u{feff}\\u{1b}[2J"
        );
        let plain = "Zoë, Åse, 太郎, יעל, مريم\n\tsecond line – “quoted”, 3 °C";
        assert_eq!(visible(plain), plain);
        assert_eq!(visible_line("one\ntwo\u{1b}[2J\u{61c}"), "one two [2J\\u{61c}");
    }

    #[test]
    fn no_two_names_that_differ_look_alike_by_what_is_unseen() {
        for hidden in ['\u{ad}', '\u{200d}', '\u{2060}', '\u{e0041}', '\u{fe0f}', '\u{3164}', '\u{2028}'] {
            assert_ne!(visible(&format!("gra{hidden}ndpa")), format!("gra{hidden}ndpa"), "{hidden:?}");
        }
    }
}

//! Figures five rows high, to be read from across a room.

/// Rows of a large figure.
pub(super) const ROWS: usize = 5;

/// One figure: five rows of up to five dots, `#` for ink.
fn glyph(character: char) -> Option<[&'static str; ROWS]> {
    Some(match character {
        '0' => ["###", "# #", "# #", "# #", "###"],
        '1' => [" # ", "## ", " # ", " # ", "###"],
        '2' => ["###", "  #", "###", "#  ", "###"],
        '3' => ["###", "  #", "###", "  #", "###"],
        '4' => ["# #", "# #", "###", "  #", "  #"],
        '5' => ["###", "#  ", "###", "  #", "###"],
        '6' => ["###", "#  ", "###", "# #", "###"],
        '7' => ["###", "  #", "  #", " # ", " # "],
        '8' => ["###", "# #", "###", "# #", "###"],
        '9' => ["###", "# #", "###", "  #", "###"],
        '.' => [" ", " ", " ", " ", "#"],
        ':' => [" ", "#", " ", "#", " "],
        '-' => ["  ", "  ", "##", "  ", "  "],
        '/' => ["  #", "  #", " # ", "#  ", "#  "],
        ' ' => [" ", " ", " ", " ", " "],
        _ => return None,
    })
}

/// The figure in large rows, two cells a dot so that it is not narrow; none where it is empty, holds something that has no
/// large form, or is wider than `width` cells. `ink` is the character of a dot.
pub(super) fn large(figure: &str, width: usize, ink: char) -> Option<[String; ROWS]> {
    let mut rows: [String; ROWS] = Default::default();
    if figure.trim().is_empty() {
        return None;
    }
    for (index, character) in figure.trim().chars().enumerate() {
        for (row, dots) in rows.iter_mut().zip(glyph(character)?) {
            if index > 0 {
                row.push_str("  ");
            }
            for dot in dots.chars() {
                let cell = if dot == '#' { ink } else { ' ' };
                row.push(cell);
                row.push(cell);
            }
        }
    }
    (rows.iter().all(|row| row.chars().count() <= width)).then_some(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_has_a_form_of_its_own() {
        let forms: std::collections::BTreeSet<_> = "0123456789.:-/".chars().filter_map(glyph).collect();
        assert_eq!(forms.len(), 14);
        for form in forms {
            let width = form[0].len();
            assert!(form.iter().all(|row| row.len() == width), "{form:?}");
        }
    }

    #[test]
    fn what_has_no_large_form_or_no_room_is_left_to_plain_text() {
        assert!(large("in", 80, '█').is_none());
        assert!(large("", 80, '█').is_none());
        assert!(large("12345", 30, '█').is_none());
        assert!(large("12", 14, '█').is_some());
    }
}

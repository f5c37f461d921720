//! Our own line drawings of the postures, SVG, on a field of 100 × 100.
//!
//! Black lines for the body, grey for what it lies or sits on, arrows for movement; no text, no colour.

/// A drawing and its description in words.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Figure {
    pub svg: &'static str,
    pub described: String,
}

/// How to sit.
pub const SEATED_FIGURE: &str = include_str!("sit-upright.svg");

/// The drawing of an exercise, where a posture needs one.
#[must_use]
pub fn figure_of(exercise: &str) -> Option<&'static str> {
    Some(match exercise {
        "head-lift-sustained" | "head-lift-repeated" => include_str!("head-lift.svg"),
        "chin-tuck-ball" | "chin-tuck-ball-repeated" => include_str!("chin-tuck.svg"),
        "neck-turns" => include_str!("neck-turn.svg"),
        "neck-tilts" => include_str!("neck-tilt.svg"),
        "jaw-opening" => include_str!("jaw-opening.svg"),
        "tongue-hold-swallow" => include_str!("tongue-hold.svg"),
        "lip-press-smile" => include_str!("lips.svg"),
        "shoulder-rolls" => include_str!("shoulder-rolls.svg"),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::{SEATED_FIGURE, figure_of};
    use routine::catalogue;

    #[test]
    fn every_drawing_can_be_read_and_is_lines_alone() {
        let of = |entry: &'static routine::CatalogueEntry| Some((entry.id.as_str(), figure_of(&entry.id)?));
        let drawn: Vec<_> = catalogue().iter().filter_map(of).chain([("seated", SEATED_FIGURE)]).collect();
        assert!(drawn.len() >= 10);
        for (id, svg) in drawn {
            let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).unwrap_or_else(|why| panic!("{id}: {why}"));
            assert_eq!((tree.size().width(), tree.size().height()), (100.0, 100.0), "{id}");
            assert!(tree.root().has_children() && !svg.contains("<text") && !svg.contains("<image"), "{id}");
        }
    }
}

use std::collections::BTreeSet;

use super::{Picture, all, find};
use routine::{Posture, Timing, catalogue};

/// Of the height of a picture. On the live page at 1080p and 24 inches a picture is 12 cm high: 6 minutes of arc from two metres.
const THINNEST: f32 = 0.03;

fn tree(picture: &Picture) -> usvg::Tree {
    usvg::Tree::from_str(&picture.svg(), &usvg::Options::default()).unwrap_or_else(|why| panic!("{}: {why}", picture.name))
}

/// Every path with its width on the picture; none for one without a stroke.
fn paths(group: &usvg::Group, into: &mut Vec<(usvg::Rect, Option<f32>)>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) => paths(inner, into),
            usvg::Node::Path(path) => {
                let (across, down) = path.abs_transform().get_scale();
                let width = path.stroke().map(|stroke| stroke.width().get() * across.min(down));
                into.push((path.abs_bounding_box(), width));
            }
            usvg::Node::Image(_) | usvg::Node::Text(_) => panic!("lines alone"),
        }
    }
}

#[test]
fn every_picture_is_lines_alone_thick_and_on_its_field() {
    let mut outside = Vec::new();
    for picture in all() {
        let tree = tree(&picture);
        assert_eq!((tree.size().width(), tree.size().height()), (100.0, 100.0), "{}", picture.name);
        let mut found = Vec::new();
        paths(tree.root(), &mut found);
        assert!(found.len() > 3, "{}", picture.name);
        for (place, width) in found {
            assert!(width.is_none_or(|width| width >= 100.0 * THINNEST - 0.01), "{}: a line of {width:?}", picture.name);
            let on_field = place.left() > -1.0 && place.top() > -1.0 && place.right() < 101.0 && place.bottom() < 101.0;
            if !on_field {
                outside.push(format!("{}: {place:?}", picture.name));
            }
        }
        let svg = picture.svg();
        assert!(!["<text", "<style", "url(", "href", "#"].iter().any(|one| svg.contains(one)), "{}: {svg}", picture.name);
    }
    assert!(outside.is_empty(), "{}", outside.join("\n"));
}

#[test]
fn every_exercise_posture_and_part_of_getting_up_is_drawn_and_nothing_else() {
    let mut known: BTreeSet<String> = ["rise-side", "rise-sit", "rise-stand"].map(str::to_owned).into();
    known.extend([Posture::Lying, Posture::Sitting, Posture::Standing].map(|posture| posture.name().to_owned()));
    known.extend(catalogue().iter().map(|entry| entry.id.clone()));
    let missing: Vec<&String> = known.iter().filter(|name| find(name).is_none()).collect();
    assert!(missing.is_empty(), "not drawn: {missing:?}");
    for entry in catalogue() {
        let breaths = ["in", "out"].into_iter().filter(|_| entry.timing == Timing::Paced);
        known.extend(entry.phase_names().chain(breaths).map(|phase| format!("{}-{phase}", entry.id)));
    }
    let names: BTreeSet<String> = all().map(|picture| picture.name.to_owned()).collect();
    assert_eq!(names.len(), all().count(), "a name stands twice");
    assert_eq!(names.difference(&known).collect::<Vec<_>>(), Vec::<&String>::new());
}

//! What a screen reader makes of the PDF: headings, paragraphs, drawings with their description, in reading order.

use std::num::NonZeroU16;

use krilla::tagging::{Identifier, Node, Tag, TagGroup, TagTree};

use super::layout::Role;

/// Gathers the pieces of the pages as they are drawn.
#[derive(Default)]
pub struct Outline {
    done: Vec<Node>,
    /// The heading or paragraph under way; lines of the same role go on with it.
    open: Option<(Role, TagGroup)>,
}

impl Outline {
    /// A line of text was drawn.
    pub fn line(&mut self, role: Role, piece: Identifier) {
        if self.open.as_ref().is_none_or(|(open, _)| *open != role) {
            self.close();
            self.open = Some((role, group_of(role)));
        }
        if let Some((_, group)) = &mut self.open {
            group.push(piece);
        }
    }

    /// A drawing was made.
    pub fn figure(&mut self, described: &str, piece: Identifier) {
        self.close();
        let mut group = TagGroup::new(Tag::Figure(Some(described.to_owned())));
        group.push(piece);
        self.done.push(group.into());
    }

    fn close(&mut self) {
        self.done.extend(self.open.take().map(|(_, group)| Node::from(group)));
    }

    /// All of it.
    pub fn tree(mut self, language: &str) -> TagTree {
        self.close();
        TagTree::from(self.done).with_lang(Some(language.to_owned()))
    }
}

fn group_of(role: Role) -> TagGroup {
    match role {
        Role::Title => TagGroup::new(Tag::Hn(NonZeroU16::MIN, None)),
        Role::Heading => TagGroup::new(Tag::Hn(NonZeroU16::MIN.saturating_add(1), None)),
        Role::Body => TagGroup::new(Tag::P),
    }
}

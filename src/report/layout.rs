//! Where everything stands on the pages of a handout; points, from the upper left corner of an A4 page. Pure.

use super::figures::Figure;
use super::fonts::{Face, Faces};
use super::handout::{Handout, Item};

/// A4, points.
pub const PAGE_WIDTH: f32 = 595.28;
/// A4, points.
pub const PAGE_HEIGHT: f32 = 841.89;
/// White edge, points, about 10 mm: every home printer leaves less than that blank.
pub const MARGIN: f32 = 30.0;
/// Sizes of the body text that are tried, points; the first that needs one page is taken. Nothing is set smaller than the
/// last: large print begins at about 14 points (common practice, no source).
const BODY_SIZES: [f32; 5] = [18.0, 17.0, 16.0, 15.0, 14.0];
/// Distance of lines over the size of the letters.
const LEADING: f32 = 1.13;
/// Width and height of a drawing, points.
const FIGURE: f32 = 53.0;

/// One thing to draw.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// `y` is the base line.
    Text { x: f32, y: f32, size: f32, bold: bool, role: Role, text: String },
    /// A thin line across the page.
    Rule { y: f32 },
    Frame { x: f32, y: f32, width: f32, height: f32 },
    Figure { x: f32, y: f32, size: f32, figure: Figure },
    /// It stands at the right below, and is passed over when the page is read out.
    PageNumber { x: f32, y: f32, size: f32, text: String },
}

/// What a text is, for those who hear the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    Title,
    Heading,
    Body,
}

/// Marks whose places count from the top of their own row.
#[derive(Debug, Clone, Default)]
struct Row {
    height: f32,
    marks: Vec<Mark>,
}

/// Rows that stay together where a page can hold them.
type Block = Vec<Row>;

/// The pages of the handout, each in the order in which it is read.
pub fn pages(handout: &Handout, faces: &Faces) -> Vec<Vec<Mark>> {
    let smallest = BODY_SIZES.last().copied().unwrap_or(14.0);
    let fitting = BODY_SIZES.iter().map(|&body| flow(blocks(handout, faces, body), 0.0)).find(|pages| pages.len() == 1);
    fitting.unwrap_or_else(|| {
        let foot = smallest * LEADING;
        flow(blocks(handout, faces, smallest), foot)
    })
}

/// Where a page number stands.
pub fn page_number(text: String, faces: &Faces) -> Mark {
    let size = BODY_SIZES.last().copied().unwrap_or(14.0);
    let x = PAGE_WIDTH - MARGIN - faces.regular.width(&text, size);
    Mark::PageNumber { x, y: PAGE_HEIGHT - MARGIN, size, text }
}

/// Blocks onto pages; `foot` is left free below. A block that is taller than a page is broken between its rows.
fn flow(blocks: Vec<Block>, foot: f32) -> Vec<Vec<Mark>> {
    let bottom = PAGE_HEIGHT - MARGIN - foot;
    let mut pages: Vec<Vec<Mark>> = vec![Vec::new()];
    let mut y = MARGIN;
    for block in blocks {
        let height: f32 = block.iter().map(|row| row.height).sum();
        let taller_than_a_page = height > bottom - MARGIN;
        if y + height > bottom && y > MARGIN && !taller_than_a_page {
            pages.push(Vec::new());
            y = MARGIN;
        }
        for row in block {
            if y + row.height > bottom && y > MARGIN {
                pages.push(Vec::new());
                y = MARGIN;
            }
            if let Some(page) = pages.last_mut() {
                page.extend(row.marks.into_iter().map(|mark| mark.moved(y)));
            }
            y += row.height;
        }
    }
    pages
}

impl Mark {
    fn moved(self, by: f32) -> Self {
        match self {
            Self::Text { x, y, size, bold, role, text } => Self::Text { x, y: y + by, size, bold, role, text },
            Self::Rule { y } => Self::Rule { y: y + by },
            Self::Frame { x, y, width, height } => Self::Frame { x, y: y + by, width, height },
            Self::Figure { x, y, size, figure } => Self::Figure { x, y: y + by, size, figure },
            Self::PageNumber { x, y, size, text } => Self::PageNumber { x, y: y + by, size, text },
        }
    }
}

fn blocks(handout: &Handout, faces: &Faces, body: f32) -> Vec<Block> {
    let width = PAGE_WIDTH - 2.0 * MARGIN;
    let beside = if handout.figure.is_some() { FIGURE + 8.0 } else { 0.0 };
    let mut head: Block = text_rows(&faces.bold, Role::Title, &handout.title, body + 9.0, 0.0, width - beside);
    for line in &handout.under_title {
        head.extend(text_rows(&faces.regular, Role::Body, line, body, 0.0, width - beside));
    }
    if let Some(figure) = &handout.figure {
        place_figure(&mut head, figure, 0.0);
    }
    head.push(space(body * 0.25));
    let mut blocks: Vec<Block> = vec![vec![together(head)]];
    blocks.extend(handout.items.iter().map(|item| item_block(item, faces, body)));
    blocks.push(last_block(handout, faces, body));
    blocks
}

/// One exercise: name and dose, how, phrases, care, and its drawing at the right.
fn item_block(item: &Item, faces: &Faces, body: f32) -> Block {
    let name_size = body + 1.0;
    let indent = faces.bold.width("00. ", name_size);
    let right = if item.figure.is_some() { FIGURE + 8.0 } else { 0.0 };
    let width = PAGE_WIDTH - 2.0 * MARGIN - indent - right;
    let above = body * 0.33;
    let mut rows = vec![Row { height: above, marks: vec![Mark::Rule { y: body * 0.16 }] }];
    // The dose stands beside the name where it fits.
    let name_width = faces.bold.width(&item.name, name_size) + body * 0.6;
    let mut name_rows = text_rows(&faces.bold, Role::Heading, &item.name, name_size, indent, width);
    let number = Mark::Text { x: MARGIN, y: baseline(name_size), size: name_size, bold: true, role: Role::Heading, text: format!("{}.", item.number) };
    if let Some(first) = name_rows.first_mut() {
        first.marks.insert(0, number);
    }
    let dose = capital(&item.dose);
    let beside = name_width + faces.regular.width(&item.dose, body) <= width && name_rows.len() == 1;
    if let Some(first) = name_rows.first_mut().filter(|_| beside) {
        let (x, y) = (MARGIN + indent + name_width, baseline(name_size));
        first.marks.push(Mark::Text { x, y, size: body, bold: false, role: Role::Body, text: item.dose.clone() });
    }
    rows.extend(name_rows);
    if !beside {
        rows.extend(text_rows(&faces.regular, Role::Body, &dose, body, indent, width));
    }
    rows.extend(text_rows(&faces.regular, Role::Body, &item.how, body, indent, width));
    if !item.phrases.is_empty() {
        let phrases: Vec<String> = item.phrases.iter().map(|phrase| format!("“{phrase}”")).collect();
        rows.extend(text_rows(&faces.regular, Role::Body, &phrases.join("  "), body, indent + body, width - body));
    }
    if let Some(care) = &item.care {
        rows.extend(text_rows(&faces.regular, Role::Body, care, body, indent, width));
    }
    if let Some(figure) = &item.figure {
        place_figure(&mut rows, figure, above);
    }
    rows
}

/// A drawing at the right of the rows, from `y` down; they grow where it is taller.
fn place_figure(rows: &mut Vec<Row>, figure: &Figure, y: f32) {
    let height: f32 = rows.iter().map(|row| row.height).sum();
    // Drawn and read after the words; it stands beside them.
    let mark = Mark::Figure { x: PAGE_WIDTH - MARGIN - FIGURE, y: y - height, size: FIGURE, figure: figure.clone() };
    rows.push(Row { height: (FIGURE + y - height).max(0.0), marks: vec![mark] });
}

/// What to say, the box with the stop rules, and the line below; they stay together.
fn last_block(handout: &Handout, faces: &Faces, body: f32) -> Block {
    let width = PAGE_WIDTH - 2.0 * MARGIN;
    let mut rows = vec![Row { height: body * 0.5, marks: vec![Mark::Rule { y: body * 0.16 }] }];
    rows.extend(led_rows(&handout.say_title, &handout.say, faces, body, 0.0, width));
    rows.push(space(body * 0.4));
    let inset = body * 0.55;
    let mut inside: Vec<Row> = vec![space(inset * 0.6)];
    inside.extend(text_rows(&faces.bold, Role::Heading, &handout.stop_title, body + 2.0, inset, width - 2.0 * inset));
    for line in &handout.stop {
        inside.extend(led_rows("•", line, faces, body, inset, width - 2.0 * inset));
    }
    inside.push(space(inset * 0.8));
    let height = inside.iter().map(|row| row.height).sum();
    if let Some(first) = inside.first_mut() {
        first.marks.push(Mark::Frame { x: MARGIN, y: 0.0, width, height });
    }
    rows.extend(inside);
    rows.push(space(body * 0.2));
    rows.extend(text_rows(&faces.regular, Role::Body, &handout.foot, body, 0.0, width));
    // One row: a frame must not be broken.
    vec![together(rows)]
}

/// A bold word, and a text that goes on beside it.
fn led_rows(lead: &str, text: &str, faces: &Faces, body: f32, indent: f32, width: f32) -> Vec<Row> {
    let lead_width = faces.bold.width(lead, body) + body * 0.5;
    let mut rows = text_rows(&faces.regular, Role::Body, text, body, indent + lead_width, width - lead_width);
    if let Some(first) = rows.first_mut() {
        first.marks.insert(0, Mark::Text { x: MARGIN + indent, y: baseline(body), size: body, bold: true, role: Role::Body, text: lead.to_owned() });
    }
    rows
}

fn together(rows: Vec<Row>) -> Row {
    let mut all = Row::default();
    for row in rows {
        let y = all.height;
        all.marks.extend(row.marks.into_iter().map(|mark| mark.moved(y)));
        all.height += row.height;
    }
    all
}

fn text_rows(face: &Face, role: Role, text: &str, size: f32, indent: f32, width: f32) -> Vec<Row> {
    let (x, y, bold) = (MARGIN + indent, baseline(size), role != Role::Body);
    let row = |text| Row { height: size * LEADING, marks: vec![Mark::Text { x, y, size, bold, role, text }] };
    face.lines(text, size, width).into_iter().map(row).collect()
}

fn space(height: f32) -> Row {
    Row { height, marks: Vec::new() }
}

fn baseline(size: f32) -> f32 {
    size * 0.95
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or(String::new(), |first| first.to_uppercase().chain(chars).collect())
}

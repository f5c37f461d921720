//! The handout as PDF, A4. Text stays text; the drawings stay lines.

use krilla::Document;
use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point, Rect, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, SpanTag};
use krilla::text::TextDirection;
use usvg::tiny_skia_path::PathSegment;

use super::fonts::{Face, Faces};
use super::handout::{Handout, Say};
use super::layout::{MARGIN, Mark, PAGE_HEIGHT, PAGE_WIDTH, page_number, pages};
use super::tags::Outline;
use crate::session::Arg;

/// Why a page cannot be made. All of it is built in, so none of these is the user's fault.
#[derive(Debug, thiserror::Error)]
pub enum ReportError {
    #[error("the built-in typeface cannot be read")]
    Font,
    #[error("a built-in drawing cannot be read: {0}")]
    Figure(String),
    #[error("the PDF cannot be written: {0}")]
    Pdf(String),
}

/// The handout as a PDF file. `say` is needed for page numbers.
///
/// # Errors
/// A built-in font or drawing is damaged.
pub fn to_pdf(handout: &Handout, say: Say<'_>) -> Result<Vec<u8>, ReportError> {
    let faces = Faces::load()?;
    let mut document = Document::new();
    let metadata = Metadata::new().title(handout.title.clone()).language(handout.language.clone()).creator("tidecount".to_owned());
    document.set_metadata(metadata);
    let pages = pages(handout, &faces);
    let count = pages.len();
    let mut outline = Outline::default();
    let no_page = || ReportError::Pdf("the size of the page is refused".to_owned());
    for (n, mut marks) in pages.into_iter().enumerate() {
        if count > 1 {
            let numbers = [("page", Arg::Number((n + 1) as f64)), ("pages", Arg::Number(count as f64))];
            marks.push(page_number(say("handout-page-shown", &numbers), &faces));
        }
        let mut page = document.start_page_with(PageSettings::from_wh(PAGE_WIDTH, PAGE_HEIGHT).ok_or_else(no_page)?);
        let mut surface = page.surface();
        for mark in &marks {
            draw(&mut surface, mark, &faces, &mut outline)?;
        }
        surface.finish();
        page.finish();
    }
    document.set_tag_tree(outline.tree(&handout.language));
    document.finish().map_err(|why| ReportError::Pdf(format!("{why:?}")))
}

fn draw(surface: &mut Surface<'_>, mark: &Mark, faces: &Faces, outline: &mut Outline) -> Result<(), ReportError> {
    match mark {
        Mark::Text { x, y, size, bold, role, text } => {
            let piece = surface.start_tagged(ContentTag::Span(SpanTag::empty()));
            // The blank at the end keeps the words of two lines apart where the text is taken out.
            print(surface, (*x, *y), *size, if *bold { &faces.bold } else { &faces.regular }, &format!("{text} "));
            surface.end_tagged();
            outline.line(*role, piece);
        }
        Mark::PageNumber { x, y, size, text } => {
            surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::PageNumber)));
            print(surface, (*x, *y), *size, &faces.regular, text);
            surface.end_tagged();
        }
        Mark::Rule { y } => {
            let mut line = PathBuilder::new();
            line.move_to(MARGIN, *y);
            line.line_to(PAGE_WIDTH - MARGIN, *y);
            ornament(surface, line.finish(), 0.6, 160);
        }
        Mark::Frame { x, y, width, height } => {
            let mut frame = PathBuilder::new();
            if let Some(rect) = Rect::from_xywh(*x, *y, *width, *height) {
                frame.push_rect(rect);
            }
            ornament(surface, frame.finish(), 2.0, 0);
        }
        Mark::Figure { x, y, size, figure } => {
            let piece = surface.start_tagged(ContentTag::Other);
            let drawn = self::figure(surface, *x, *y, *size, figure.svg);
            surface.end_tagged();
            outline.figure(&figure.described, piece);
            drawn?;
        }
    }
    Ok(())
}

fn print(surface: &mut Surface<'_>, (x, y): (f32, f32), size: f32, face: &Face, text: &str) {
    surface.set_fill(Some(Fill::default()));
    surface.set_stroke(None);
    surface.draw_text(Point::from_xy(x, y), face.font.clone(), size, text, false, TextDirection::Auto);
}

/// A line that says nothing to who hears the page.
fn ornament(surface: &mut Surface<'_>, path: Option<Path>, width: f32, grey: u8) {
    let Some(path) = path else { return };
    surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)));
    surface.set_fill(None);
    surface.set_stroke(Some(pen(width, grey)));
    surface.draw_path(&path);
    surface.end_tagged();
}

fn pen(width: f32, grey: u8) -> Stroke {
    Stroke {
        paint: luma::Color::new(grey).into(),
        width,
        line_cap: LineCap::Round,
        line_join: LineJoin::Round,
        ..Stroke::default()
    }
}

/// A drawing of the figures' own kind: strokes and fills in shades of grey.
fn figure(surface: &mut Surface<'_>, x: f32, y: f32, size: f32, svg: &str) -> Result<(), ReportError> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).map_err(|why| ReportError::Figure(why.to_string()))?;
    let scale = size / tree.size().width().max(tree.size().height());
    surface.push_transform(&Transform::from_row(scale, 0.0, 0.0, scale, x, y));
    group(surface, tree.root());
    surface.pop();
    Ok(())
}

fn group(surface: &mut Surface<'_>, group_node: &usvg::Group) {
    for node in group_node.children() {
        match node {
            usvg::Node::Group(inner) => group(surface, inner),
            usvg::Node::Path(path) => svg_path(surface, path),
            // The figures hold neither; a test sees to it.
            usvg::Node::Image(_) | usvg::Node::Text(_) => {}
        }
    }
}

fn svg_path(surface: &mut Surface<'_>, path: &usvg::Path) {
    let Some(drawn) = built(path) else { return };
    let at = path.abs_transform();
    surface.push_transform(&Transform::from_row(at.sx, at.ky, at.kx, at.sy, at.tx, at.ty));
    let fill = path.fill().map(|fill| Fill {
        paint: luma::Color::new(grey_of(fill.paint())).into(),
        opacity: NormalizedF32::ONE,
        rule: if fill.rule() == usvg::FillRule::EvenOdd { FillRule::EvenOdd } else { FillRule::NonZero },
    });
    let stroke = path.stroke().map(|stroke| pen(stroke.width().get(), grey_of(stroke.paint())));
    surface.set_fill(fill);
    surface.set_stroke(stroke);
    surface.draw_path(&drawn);
    surface.pop();
}

fn built(path: &usvg::Path) -> Option<Path> {
    let mut to = PathBuilder::new();
    for segment in path.data().segments() {
        match segment {
            PathSegment::MoveTo(p) => to.move_to(p.x, p.y),
            PathSegment::LineTo(p) => to.line_to(p.x, p.y),
            PathSegment::QuadTo(a, p) => to.quad_to(a.x, a.y, p.x, p.y),
            PathSegment::CubicTo(a, b, p) => to.cubic_to(a.x, a.y, b.x, b.y, p.x, p.y),
            PathSegment::Close => to.close(),
        }
    }
    to.finish()
}

/// The figures use greys alone, so any channel tells it.
fn grey_of(paint: &usvg::Paint) -> u8 {
    match paint {
        usvg::Paint::Color(color) => color.green,
        _ => 0,
    }
}

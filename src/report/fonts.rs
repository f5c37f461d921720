//! The typeface of printed pages and how wide its words are.
//!
//! DejaVu Sans Condensed, freely licensed (fonts/DejaVu-LICENSE.txt): large open letters, all signs we print, and it comes
//! with the program, so that a page looks the same on every computer.

use krilla::text::Font;

use super::pdf::ReportError;

const REGULAR: &[u8] = include_bytes!("fonts/DejaVuSansCondensed.ttf");
const BOLD: &[u8] = include_bytes!("fonts/DejaVuSansCondensed-Bold.ttf");

/// One weight of the typeface.
pub struct Face {
    pub font: Font,
    metrics: ttf_parser::Face<'static>,
}

/// Both weights.
pub struct Faces {
    pub regular: Face,
    pub bold: Face,
}

impl Faces {
    /// # Errors
    /// The built-in fonts cannot be read; that they can is tested.
    pub fn load() -> Result<Self, ReportError> {
        Ok(Self { regular: Face::load(REGULAR)?, bold: Face::load(BOLD)? })
    }
}

impl Face {
    fn load(data: &'static [u8]) -> Result<Self, ReportError> {
        let font = Font::new(data.into(), 0).ok_or(ReportError::Font)?;
        Ok(Self { font, metrics: ttf_parser::Face::parse(data, 0).map_err(|_| ReportError::Font)? })
    }

    /// Width of a text set in this size, points; kerning is left out, so it is never too small by more than a hair.
    pub fn width(&self, text: &str, size: f32) -> f32 {
        let advance = |c: char| {
            let glyph = self.metrics.glyph_index(c).unwrap_or_default();
            f32::from(self.metrics.glyph_hor_advance(glyph).unwrap_or(0))
        };
        text.chars().map(advance).sum::<f32>() * size / f32::from(self.metrics.units_per_em())
    }

    /// The text in lines of at most `width` points; a word that is longer is broken.
    pub fn lines(&self, text: &str, size: f32, width: f32) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut line = String::new();
        for word in text.split_whitespace() {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if self.width(&longer, size) <= width {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for c in word.chars() {
                if !line.is_empty() && self.width(&format!("{line}{c}"), size) > width {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(c);
            }
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_every_letter_and_the_width() {
        let faces = Faces::load().expect("fonts");
        let text = "Sit tall, with a soft ball between your chin and your chest. Pneumonoultramicroscopicsilicovolcanoconiosis";
        let lines = faces.regular.lines(text, 14.0, 120.0);
        assert!(lines.iter().all(|line| faces.regular.width(line, 14.0) <= 120.0), "{lines:?}");
        let letters = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect::<String>();
        assert_eq!(letters(&lines.concat()), letters(text));
        assert!(faces.bold.width("Say", 14.0) > faces.regular.width("Say", 14.0));
    }
}

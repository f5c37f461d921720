//! Pictures of pages, compared with the intended ones.

use std::path::{Path, PathBuf};

/// A channel that differs by less is drawn the same: edges are smoothed a little differently from one Chromium to the next.
const SAME: u8 = 40;
/// So many of a picture's pixels may differ.
const FEW: f64 = 0.004;
/// A block of so many pixels each way whose mean differs by more than [`BLOCK_DIFFERS`] shows something else: a word, a figure, a mark.
const BLOCK: usize = 16;
const BLOCK_DIFFERS: f64 = 28.0;

/// Red, green and blue, row by row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub rgb: Vec<u8>,
}

impl Picture {
    pub fn of_png(bytes: &[u8]) -> Self {
        let mut decoder = png::Decoder::new(std::io::Cursor::new(bytes));
        decoder.set_transformations(png::Transformations::normalize_to_color8() | png::Transformations::ALPHA);
        let mut reader = decoder.read_info().expect("a PNG");
        let mut pixels = vec![0; reader.output_buffer_size().expect("its size")];
        let info = reader.next_frame(&mut pixels).expect("a picture");
        let channels = info.color_type.samples();
        let rgb = pixels
            .chunks_exact(channels)
            .flat_map(|pixel| if channels >= 3 { [pixel[0], pixel[1], pixel[2]] } else { [pixel[0]; 3] })
            .collect();
        Self { width: info.width as usize, height: info.height as usize, rgb }
    }

    pub fn write(&self, path: &Path) {
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        let file = std::io::BufWriter::new(std::fs::File::create(path).expect("a file"));
        let mut encoder = png::Encoder::new(file, self.width as u32, self.height as u32);
        encoder.set_color(png::ColorType::Rgb);
        encoder.set_compression(png::Compression::High);
        encoder.write_header().and_then(|mut writer| writer.write_image_data(&self.rgb)).expect("writes");
    }

    /// Half as wide and high, each pixel the mean of four, in 32 shades a channel: small to keep, and finer than what is compared.
    pub fn halved(&self) -> Self {
        let (width, height) = (self.width / 2, self.height / 2);
        let at = |x: usize, y: usize, channel: usize| u32::from(self.rgb[(y * self.width + x) * 3 + channel]);
        let mean = |x: usize, y: usize, c: usize| {
            ((at(2 * x, 2 * y, c) + at(2 * x + 1, 2 * y, c) + at(2 * x, 2 * y + 1, c) + at(2 * x + 1, 2 * y + 1, c) + 2) / 4) as u8 & 0xf8
        };
        let rgb =
            (0..height).flat_map(|y| (0..width).flat_map(move |x| (0..3).map(move |c| (x, y, c)))).map(|(x, y, c)| mean(x, y, c)).collect();
        Self { width, height, rgb }
    }

    fn difference(&self, other: &Self, x: usize, y: usize) -> u8 {
        let at = (y * self.width + x) * 3;
        (0..3).map(|c| self.rgb[at + c].abs_diff(other.rgb[at + c])).max().unwrap_or(0)
    }

    /// How it differs from what was intended; none where it looks the same.
    pub fn differs_from(&self, intended: &Self) -> Option<String> {
        if (self.width, self.height) != (intended.width, intended.height) {
            return Some(format!("it is {} × {}, not {} × {}", self.width, self.height, intended.width, intended.height));
        }
        let mut differing = 0usize;
        for y in 0..self.height {
            differing += (0..self.width).filter(|&x| self.difference(intended, x, y) >= SAME).count();
        }
        let share = differing as f64 / (self.width * self.height) as f64;
        if share > FEW {
            return Some(format!("{:.2} % of it differ", 100.0 * share));
        }
        for top in (0..self.height).step_by(BLOCK) {
            for left in (0..self.width).step_by(BLOCK) {
                let (bottom, right) = ((top + BLOCK).min(self.height), (left + BLOCK).min(self.width));
                let sum: u32 = (top..bottom)
                    .flat_map(|y| (left..right).map(move |x| (x, y)))
                    .map(|(x, y)| u32::from(self.difference(intended, x, y)))
                    .sum();
                let mean = f64::from(sum) / ((bottom - top) * (right - left)) as f64;
                if mean > BLOCK_DIFFERS {
                    return Some(format!("it differs at {left}, {top}"));
                }
            }
        }
        None
    }

    /// Compares it, half size, with `tests/browser/expected/NAME.png`; with `UPDATE_SCREENS=1` it becomes the intended one.
    pub fn assert_looks_like(&self, name: &str) {
        let own = self.halved();
        let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("tests/browser/expected/{name}.png"));
        if std::env::var_os("UPDATE_SCREENS").is_some() {
            own.write(&path);
            return;
        }
        let bytes = std::fs::read(&path).unwrap_or_else(|why| panic!("{}: {why}; draw it with UPDATE_SCREENS=1", path.display()));
        if let Some(how) = own.differs_from(&Picture::of_png(&bytes)) {
            let drawn = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.png"));
            own.write(&drawn);
            panic!("{name} is not as intended: {how}; it was drawn to {}", drawn.display());
        }
    }
}

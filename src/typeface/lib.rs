//! The typeface of printed pages and screens, built in; it sets nothing. DejaVu Sans Condensed, freely licensed
//! (fonts/DejaVu-LICENSE.txt): large open letters, all signs we print, and it comes with the program, so that a page looks the
//! same on every computer.

#![no_std]

/// TrueType, regular weight.
pub const REGULAR: &[u8] = include_bytes!("fonts/DejaVuSansCondensed.ttf");
/// TrueType, bold weight.
pub const BOLD: &[u8] = include_bytes!("fonts/DejaVuSansCondensed-Bold.ttf");

/// Its name, as pages and drawings ask for it.
pub const FAMILY: &str = "DejaVu Sans Condensed";

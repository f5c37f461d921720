//! What the pages are made of, built in: nothing is fetched from elsewhere.

use axum::extract::Path;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use rust_embed::RustEmbed;

#[derive(RustEmbed)]
#[folder = "web/assets/"]
struct Assets;

/// The typeface of the printed pages is that of the screen, too.
#[derive(RustEmbed)]
#[folder = "../typeface/fonts/"]
struct Fonts;

/// `GET /assets/NAME`.
pub(super) async fn asset(Path(name): Path<String>) -> Response {
    let Some(file) = Assets::get(&name).or_else(|| Fonts::get(&name)) else {
        return (StatusCode::NOT_FOUND, "There is no such file.").into_response();
    };
    ([(header::CONTENT_TYPE, content_type(&name))], file.data.into_owned()).into_response()
}

fn content_type(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("ttf") => "font/ttf",
        _ => "application/octet-stream",
    }
}

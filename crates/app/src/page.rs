//! The page as the build left it, inside the program: nothing is fetched from anywhere.

include!(concat!(env!("OUT_DIR"), "/page_files.rs"));

/// One file of the page.
#[derive(Clone, Copy, Debug)]
pub struct PageFile {
    /// From the root of the page: `/assets/index.js`.
    pub path: &'static str,
    /// What is in it.
    pub bytes: &'static [u8],
}

/// The file at a path; `/` is the page itself.
#[must_use]
pub fn file(path: &str) -> Option<&'static PageFile> {
    let path = if path == "/" { "/index.html" } else { path };
    FILES.iter().find(|file| file.path == path)
}

/// The media type of a file of the page, by the end of its name.
#[must_use]
pub fn media(path: &str) -> &'static str {
    match path.rsplit('.').next().unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" | "webmanifest" => "application/json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

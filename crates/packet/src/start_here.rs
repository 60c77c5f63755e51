//! `START-HERE.html`: what is in a packet, for who unpacked it. No script, no outside address.

use crate::contents::{FileRow, Role};
use crate::edition::Edition;
use crate::job::{Freeze, Job};
use crate::lack::Lack;
use crate::plan::escaped;
use std::fmt::Write;

/// What stands on it besides the job.
pub struct Start<'a> {
    pub edition: Edition,
    pub freeze: &'a Freeze,
    pub files: &'a [FileRow],
    pub lacks: &'a [Lack],
    pub not_known: &'a [String],
}

const STYLE: &str = "html{font:112.5%/1.5 'Atkinson Hyperlegible Next',system-ui,sans-serif;background:#fff;color:#16212B}\
body{max-width:44rem;margin:2rem auto;padding:0 1rem}h1{font-size:1.33rem}h2{font-size:1rem;border-bottom:1.5px solid #16212B;margin-top:2rem}\
li{margin:.4rem 0}a{color:#0B4A8F}.firm{border-left:3px solid #16212B;padding-left:.75rem;font-weight:700}footer{border-top:1.5px solid #4A5561;margin-top:2rem;padding-top:.5rem}";

/// The page.
pub fn start_here(job: &Job, start: &Start) -> String {
    let address = escaped(&job.book.address);
    let (edition, freeze) = (start.edition, start.freeze);
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width\">\n<title>{address}: start here</title>\n\
         <style>{STYLE}</style>\n</head>\n<body>\n<main>\n<h1>{address}</h1>\n\
         <p>{}. Version {}, made {}.</p>\n",
        for_whom(edition),
        freeze.version,
        escaped(&freeze.moment),
    );
    if job.book.pretend {
        page.push_str("<p class=\"firm\">A pretend house: nothing here is of a real place.</p>\n");
    }
    if edition == Edition::Firm {
        page.push_str(
            "<p class=\"firm\">The firm's own packet: it holds the costs, the field book and the photos as they were taken. Do not pass it on.</p>\n",
        );
    }
    let papers: Vec<&FileRow> = start.files.iter().filter(|row| is_paper(row)).collect();
    section(&mut page, "Papers", papers.into_iter().map(link));
    let others: Vec<&FileRow> = start
        .files
        .iter()
        .filter(|row| {
            !is_paper(row) && !matches!(row.role, Role::Photo | Role::Original | Role::List)
        })
        .collect();
    section(
        &mut page,
        "Plan, tables and book",
        others.into_iter().map(link),
    );
    let photos = start.files.iter().filter(|row| row.role == Role::Photo);
    section(&mut page, "Photos", photos.map(link));
    section(
        &mut page,
        "Not known",
        start.not_known.iter().map(|one| escaped(one)),
    );
    let lacks = start.lacks.iter().map(|lack| {
        format!(
            "<strong>{}</strong>: {} {}",
            escaped(&lack.what),
            escaped(&lack.why),
            escaped(&lack.remedy)
        )
    });
    section(&mut page, "Lacking", lacks);
    let _ = write!(
        page,
        "</main>\n<footer>Proved by <code>sha256sum -c manifest-sha256.txt</code> in the folder above, \
         or by <code>eavebook packet --check</code>. Made with {}.</footer>\n</body>\n</html>\n",
        escaped(&freeze.made_with)
    );
    page
}

fn is_paper(row: &FileRow) -> bool {
    row.path.starts_with("data/papers/")
}

fn for_whom(edition: Edition) -> &'static str {
    match edition {
        Edition::Owner => "Made for the owner of the house",
        Edition::Crew => "Made for the crew",
        Edition::Firm => "Made for the firm itself",
        Edition::Supplier => "Made for the supplier of the material",
        Edition::Permit => "Made for the permit office",
    }
}

fn link(row: &FileRow) -> String {
    let path = row.path.strip_prefix("data/").unwrap_or(&row.path);
    format!("<a href=\"{}\">{}</a>", escaped(path), escaped(&row.title))
}

/// A list under its heading; nothing where there is nothing.
fn section(page: &mut String, heading: &str, items: impl Iterator<Item = String>) {
    let items: Vec<String> = items.collect();
    if items.is_empty() {
        return;
    }
    let _ = writeln!(page, "<h2>{heading}</h2>\n<ul>");
    for item in items {
        let _ = writeln!(page, "<li>{item}</li>");
    }
    page.push_str("</ul>\n");
}

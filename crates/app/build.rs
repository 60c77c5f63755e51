//! Builds the page where it is missing or older than what it is made of, and lists its files for
//! the program to hold, so that `cargo build` alone makes a whole eavebook from a fresh clone.

use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};
use std::time::SystemTime;
use std::{env, fs, io};

fn main() -> ExitCode {
    match make_page() {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

fn make_page() -> Result<(), String> {
    let manifest = env::var("CARGO_MANIFEST_DIR").map_err(|why| why.to_string())?;
    let ui = Path::new(&manifest).join("../../ui");
    let sources: Vec<PathBuf> = SOURCES.iter().map(|name| ui.join(name)).collect();
    let page = ui.join("dist/index.html");
    if !page.exists() || newest(&sources) > changed(&page) {
        build(&ui)?;
    } else {
        // A page just written is younger than this run and would only run it again.
        println!("cargo:rerun-if-changed={}", page.display());
    }
    for source in sources.iter().filter(|source| source.exists()) {
        println!("cargo:rerun-if-changed={}", source.display());
    }
    let mut files = Vec::new();
    gather(&ui.join("dist"), "", &mut files).map_err(|why| format!("ui/dist: {why}"))?;
    files.sort();
    let lines: String = files
        .iter()
        .map(|(path, file)| {
            format!("    PageFile {{ path: {path:?}, bytes: include_bytes!({file:?}) }},\n")
        })
        .collect();
    let list =
        format!("/// Every file of the page.\npub static FILES: &[PageFile] = &[\n{lines}];\n");
    let out = env::var("OUT_DIR").map_err(|why| why.to_string())?;
    fs::write(Path::new(&out).join("page_files.rs"), list).map_err(|why| why.to_string())
}

/// What the page is made of, in `ui`.
const SOURCES: [&str; 8] = [
    "src",
    "public",
    "index.html",
    "package.json",
    "package-lock.json",
    "vite.config.ts",
    "svelte.config.js",
    "tsconfig.json",
];

fn build(ui: &Path) -> Result<(), String> {
    let installed = ui.join("node_modules/.package-lock.json");
    if !installed.exists() || changed(&ui.join("package-lock.json")) > changed(&installed) {
        npm(ui, &["ci", "--no-audit", "--no-fund"])?;
    }
    npm(ui, &["run", "build"])
}

fn npm(ui: &Path, words: &[&str]) -> Result<(), String> {
    let program = if cfg!(windows) { "npm.cmd" } else { "npm" };
    let said = match Command::new(program).args(words).current_dir(ui).output() {
        Ok(said) => said,
        Err(why) if why.kind() == io::ErrorKind::NotFound => {
            return Err(
                "The page of eavebook is built with npm, which is not here: install \
                 Node 20 or newer, then build again."
                    .to_owned(),
            );
        }
        Err(why) => return Err(format!("npm does not start: {why}")),
    };
    if said.status.success() {
        return Ok(());
    }
    Err(format!(
        "`npm {}` in ui fails:\n{}\n{}",
        words.join(" "),
        String::from_utf8_lossy(&said.stdout),
        String::from_utf8_lossy(&said.stderr)
    ))
}

fn changed(file: &Path) -> SystemTime {
    fs::metadata(file)
        .and_then(|about| about.modified())
        .unwrap_or(SystemTime::UNIX_EPOCH)
}

/// The latest change in files and folders.
fn newest(places: &[PathBuf]) -> SystemTime {
    let within = |place: &PathBuf| {
        let inside = fs::read_dir(place).into_iter().flatten().flatten();
        let inside: Vec<PathBuf> = inside.map(|found| found.path()).collect();
        newest(&inside).max(changed(place))
    };
    places
        .iter()
        .map(within)
        .max()
        .unwrap_or(SystemTime::UNIX_EPOCH)
}

/// Files below a folder: (path from the root of the page, file).
fn gather(folder: &Path, at: &str, files: &mut Vec<(String, PathBuf)>) -> io::Result<()> {
    for found in fs::read_dir(folder)? {
        let found = found?;
        let path = format!("{at}/{}", found.file_name().to_string_lossy());
        if found.file_type()?.is_dir() {
            gather(&found.path(), &path, files)?;
        } else {
            files.push((path, found.path().canonicalize()?));
        }
    }
    Ok(())
}

//! Brings a machine that has Rust and Node to where every task can run. What is there is left alone.

use crate::ground::{Ground, answers, is_newer};
use crate::run;
use crate::trouble::Trouble;
use std::path::PathBuf;
use std::process::Command;

/// A C compiler for SQLite.
pub const COMPILER_PACKAGES: [&str; 2] = ["build-essential", "pkg-config"];

/// A browser, the tracer that watches what reaches the disk, and other people's readers of what a
/// packet holds.
pub const TEST_PACKAGES: [&str; 6] = [
    "chromium",
    "strace",
    "unzip",
    "qpdf",
    "poppler-utils",
    "python3-venv",
];

/// The geometry library beside whose roofs ours are timed, and the carrier beside which photos are.
pub const BENCH_PACKAGES: [&str; 3] = ["build-essential", "libcgal-dev", "rsync"];

/// What the shell is compiled against, and a display and a driver to press its buttons.
pub const SHELL_PACKAGES: [&str; 10] = [
    "libwebkit2gtk-4.1-dev",
    "librsvg2-dev",
    "libayatana-appindicator3-dev",
    "libxdo-dev",
    "libssl-dev",
    "xvfb",
    "xauth",
    "webkit2gtk-driver",
    "dbus",
    "dbus-x11",
];

/// Installs the Debian packages that are missing, by apt-get as root or through sudo.
///
/// # Errors
/// On another system, or without the right to install: a sentence with what to install.
pub fn packages(wanted: &[&str]) -> Result<(), Trouble> {
    if run::ask(Command::new("dpkg-query").arg("--version")).is_none() {
        println!("    not a Debian system: these must be there by its own packages:");
        println!("      {}", wanted.join(" "));
        return Ok(());
    }
    let missing: Vec<&str> = wanted
        .iter()
        .copied()
        .filter(|name| !is_installed(name))
        .collect();
    if missing.is_empty() {
        println!("    Debian packages: all {} are there", wanted.len());
        return Ok(());
    }
    let install = format!(
        "apt-get install -y --no-install-recommends {}",
        missing.join(" ")
    );
    let is_root = run::ask(Command::new("id").arg("-u")).is_some_and(|id| id.trim() == "0");
    let lead = if is_root {
        ""
    } else if answers(Command::new("sudo").arg("--version")) {
        "sudo "
    } else {
        return Err(Trouble::Missing {
            remedy: format!("as root, run `apt-get update && {install}`, then this again"),
        });
    };
    for line in [format!("{lead}apt-get update"), format!("{lead}{install}")] {
        let words: Vec<&str> = line.split(' ').collect();
        let mut command = Command::new(words[0]);
        command
            .args(&words[1..])
            .env("DEBIAN_FRONTEND", "noninteractive");
        run::must(&mut command)?;
    }
    Ok(())
}

/// Installs what the lock file of a Node folder names, unless that was done since it last changed.
pub fn node_modules(ground: &Ground, folder: &str) -> Result<(), Trouble> {
    let lock = ground.root.join(folder).join("package-lock.json");
    let done = ground
        .root
        .join(folder)
        .join("node_modules/.package-lock.json");
    if is_newer(&done, &lock) {
        println!("    {folder}/node_modules: as the lock file says");
        return Ok(());
    }
    let mut command = ground.command("npm", folder, &["ci", "--no-audit", "--no-fund"]);
    // The browser is Debian's: none is fetched from elsewhere.
    command.env("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");
    run::must(&mut command).map(drop)
}

/// A Python of our own with what a list of requirements names, unless that was installed since the
/// list last changed; where it lies.
pub fn python(ground: &Ground, requirements: &str) -> Result<PathBuf, Trouble> {
    let folder = ground.tools.join("python");
    let python = folder.join("bin/python");
    let done = folder.join(requirements.replace('/', "-"));
    let list = ground.root.join(requirements);
    if is_newer(&done, &list) {
        println!("    {requirements}: is there");
        return Ok(python);
    }
    let place = folder.to_string_lossy().into_owned();
    run::must(&mut ground.command("python3", ".", &["-m", "venv", &place]))?;
    let mut install = Command::new(&python);
    install.args(["-m", "pip", "install", "--quiet", "--requirement"]);
    run::must(install.arg(&list))?;
    std::fs::write(&done, []).map_err(|cause| Trouble::File { path: done, cause })?;
    Ok(python)
}

/// Installs a cargo tool into our own folder, unless one is there or on PATH already.
pub fn tool(ground: &Ground, name: &str) -> Result<(), Trouble> {
    tool_with(ground, name, &[])
}

/// [`tool`] with more words for cargo: a version, features.
pub fn tool_with(ground: &Ground, name: &str, how: &[&str]) -> Result<(), Trouble> {
    if has_tool(ground, name) {
        println!("    {name}: is there");
        return Ok(());
    }
    let place = ground.tools.to_string_lossy().into_owned();
    let words = ["install", "--locked", "--debug", "--root", &place, name];
    let mut command = ground.command("cargo", ".", &words);
    command.args(how);
    command.env("CARGO_TARGET_DIR", ground.tools.join("build"));
    run::must(&mut command).map(drop)
}

/// Whether a tool is in our own folder or on PATH.
pub fn has_tool(ground: &Ground, name: &str) -> bool {
    ground.tools.join("bin").join(name).exists()
        || answers(&mut ground.command(name, ".", &["--version"]))
        || answers(&mut ground.command(name, ".", &["--help"]))
}

fn is_installed(package: &str) -> bool {
    let mut query = Command::new("dpkg-query");
    query.args(["--show", "--showformat=${db:Status-Status}", package]);
    run::ask(&mut query).is_some_and(|state| state.trim() == "installed")
}

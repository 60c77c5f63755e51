//! Where things lie on this machine.

use crate::trouble::Trouble;
use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The folders every task works in.
pub struct Ground {
    /// The top of the repository.
    pub root: PathBuf,
    /// Cargo's target folder, shared by everything that is built.
    pub target: PathBuf,
    /// Where cargo tools are installed once (`bin` inside).
    pub tools: PathBuf,
}

impl Ground {
    /// Looks upward from this crate, so that it works from any folder inside the repository.
    pub fn find() -> Result<Ground, Trouble> {
        let here = env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = here.join("../..");
        let root = root
            .canonicalize()
            .map_err(|cause| Trouble::File { path: root, cause })?;
        let target =
            env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), PathBuf::from);
        let tools = target.join("tools");
        Ok(Ground {
            root,
            target,
            tools,
        })
    }

    /// A command that runs in `folder` (from the top) and finds our installed tools first.
    pub fn command(&self, program: &str, folder: &str, words: &[&str]) -> Command {
        let mut command = Command::new(program);
        command
            .args(words)
            .current_dir(self.root.join(folder))
            .env("PATH", self.path());
        // What cargo told this program about itself is not meant for the programs it starts.
        for (name, _) in env::vars_os() {
            if name.to_str().is_some_and(|name| {
                name.starts_with("CARGO_PKG_") || name.starts_with("CARGO_MANIFEST_")
            }) {
                command.env_remove(name);
            }
        }
        command
    }

    /// A program built in the dev profile.
    pub fn built(&self, program: &str) -> PathBuf {
        self.target.join("debug").join(program)
    }

    fn path(&self) -> OsString {
        let mut parts = vec![self.tools.join("bin")];
        if let Some(path) = env::var_os("PATH") {
            parts.extend(env::split_paths(&path));
        }
        env::join_paths(parts).unwrap_or_default()
    }
}

/// Whether a program answers when asked for its version.
pub fn answers(command: &mut Command) -> bool {
    command
        .stdout(std::process::Stdio::null())
        .stderr(std::process::Stdio::null())
        .status()
        .is_ok_and(|status| status.success())
}

/// Whether `newer` was written after `older`; a missing file was never written.
pub fn is_newer(newer: &Path, older: &Path) -> bool {
    let written = |path: &Path| path.metadata().and_then(|m| m.modified()).ok();
    match (written(newer), written(older)) {
        (Some(newer), Some(older)) => newer >= older,
        (_, None) | (None, _) => false,
    }
}

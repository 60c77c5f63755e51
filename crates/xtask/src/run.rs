//! Runs a program: says so first, shows every line as it comes, and keeps the lines for counting.

use crate::trouble::Trouble;
use std::io::{BufRead, BufReader, Read};
use std::process::{Command, Stdio};
use std::sync::mpsc;
use std::thread;

/// What a finished program said.
pub struct Said {
    /// Whether it ended with exit status 0.
    pub end: End,
    /// Every line of both its streams, in the order in which they came.
    pub lines: Vec<String>,
}

/// How a program ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Exit status 0.
    Well,
    /// Any other.
    Badly,
}

/// Runs to the end, showing and keeping what it says.
pub fn show(command: &mut Command) -> Result<Said, Trouble> {
    println!("    $ {}", line_of(command));
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .map_err(|cause| Trouble::NoStart {
            program: program_of(command),
            cause,
        })?;
    let (send, receive) = mpsc::channel();
    let out = child
        .stdout
        .take()
        .map(|stream| pass_on(stream, send.clone()));
    let err = child.stderr.take().map(|stream| pass_on(stream, send));
    let mut lines = Vec::new();
    for line in receive {
        println!("      {line}");
        lines.push(line);
    }
    for reader in [out, err].into_iter().flatten() {
        // A reader thread has nothing to say beyond its lines.
        let _ended = reader.join();
    }
    let status = child.wait().map_err(|cause| Trouble::NoStart {
        program: program_of(command),
        cause,
    })?;
    let end = if status.success() {
        End::Well
    } else {
        End::Badly
    };
    Ok(Said { end, lines })
}

/// Runs to the end; anything but success is trouble.
pub fn must(command: &mut Command) -> Result<Said, Trouble> {
    let output = show(command)?;
    match output.end {
        End::Well => Ok(output),
        End::Badly => Err(Trouble::Failed {
            command: line_of(command),
        }),
    }
}

/// Runs to the end in silence and returns what it printed; `None` if it failed or is not there.
pub fn ask(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).into_owned())
}

fn pass_on(
    stream: impl Read + Send + 'static,
    send: mpsc::Sender<String>,
) -> thread::JoinHandle<()> {
    thread::spawn(move || {
        let mut reader = BufReader::new(stream);
        let mut bytes = Vec::new();
        while reader
            .read_until(b'\n', &mut bytes)
            .is_ok_and(|read| read > 0)
        {
            let line = String::from_utf8_lossy(&bytes).trim_end().to_owned();
            bytes.clear();
            if send.send(line).is_err() {
                break;
            }
        }
    })
}

fn program_of(command: &Command) -> String {
    command.get_program().to_string_lossy().into_owned()
}

fn line_of(command: &Command) -> String {
    let mut line = program_of(command);
    for word in command.get_args() {
        line.push(' ');
        let word = word.to_string_lossy();
        if word.contains(' ') {
            line.push_str(&format!("'{word}'"));
        } else {
            line.push_str(&word);
        }
    }
    line
}

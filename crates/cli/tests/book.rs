//! `eavebook demo` and `eavebook open`, run as a person runs them.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};

fn eavebook() -> Command {
    Command::new(env!("CARGO_BIN_EXE_eavebook"))
}

fn demo(book: &Path) -> Output {
    eavebook()
        .arg("demo")
        .arg("--book")
        .arg(book)
        .output()
        .unwrap()
}

/// The program while it serves; killed at the end, as it may be at any moment.
struct Serving {
    child: Child,
    port: u16,
}

impl Serving {
    fn opens(book: &Path) -> Serving {
        let mut child = eavebook()
            .args(["open", "--port", "0", "--book"])
            .arg(book)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut line = String::new();
        BufReader::new(child.stdout.take().unwrap())
            .read_line(&mut line)
            .unwrap();
        let port = line
            .trim()
            .strip_prefix("listening on http://127.0.0.1:")
            .unwrap();
        Serving {
            child,
            port: port.parse().unwrap(),
        }
    }

    fn asks(&self, request: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        let (port, length) = (self.port, request.len());
        write!(
            stream,
            "POST /command HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n\
             Content-Type: application/json\r\nContent-Length: {length}\r\n\r\n{request}"
        )
        .unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer.split_once("\r\n\r\n").unwrap().1.to_owned()
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn one_sentence(said: &Output) -> String {
    assert_eq!(said.status.code(), Some(2));
    assert!(said.stdout.is_empty());
    let text = String::from_utf8(said.stderr.clone()).unwrap();
    assert_eq!(text.lines().count(), 1, "{text}");
    text.trim().to_owned()
}

#[test]
fn the_demo_prints_the_roof_with_its_give_or_take() {
    let dir = tempfile::tempdir().unwrap();
    let book = dir.path().join("not yet there");
    let said = demo(&book);
    assert_eq!(said.status.code(), Some(0));
    let text = String::from_utf8(said.stdout).unwrap();
    assert!(
        text.contains("(invented)") && text.contains("Closes within"),
        "{text}"
    );
    let area = text
        .lines()
        .find(|line| line.starts_with("Roof area"))
        .unwrap();
    assert!(area.contains("sq ft ±"), "{area}");
}

#[test]
fn the_demo_is_the_first_stop_of_the_page_and_outlives_a_kill() {
    let dir = tempfile::tempdir().unwrap();
    demo(dir.path());
    for _ in 0..2 {
        let serving = Serving::opens(dir.path());
        let today = serving.asks(r#"{"ask": "today"}"#);
        assert!(today.contains(r#""pretend":true"#), "{today}");
    }
}

#[test]
fn a_second_program_on_the_same_book_is_told_in_one_sentence() {
    let dir = tempfile::tempdir().unwrap();
    let serving = Serving::opens(dir.path());
    let said = one_sentence(&demo(dir.path()));
    let process = format!("(process {})", serving.child.id());
    assert!(
        said.contains("open in another program") && said.contains(&process),
        "{said}"
    );
    assert!(
        said.ends_with("close that one, or name another folder"),
        "{said}"
    );
}

#[test]
fn a_port_in_use_is_told_in_one_sentence() {
    let first = tempfile::tempdir().unwrap();
    let second = tempfile::tempdir().unwrap();
    let serving = Serving::opens(first.path());
    let port = serving.port.to_string();
    let open = eavebook()
        .args(["open", "--port", &port, "--book"])
        .arg(second.path())
        .output();
    let said = one_sentence(&open.unwrap());
    let want =
        format!("port {port} is in use by another program: give another --port, or --port 0");
    assert!(said.starts_with(&want), "{said}");
}

#[test]
fn a_book_of_a_newer_version_is_told_in_one_sentence_and_not_touched() {
    let dir = tempfile::tempdir().unwrap();
    demo(dir.path());
    let file = dir.path().join("book.sqlite");
    let mut bytes = std::fs::read(&file).unwrap();
    // Offset 60 of the SQLite file format: the user version, big-endian.
    bytes[60..64].copy_from_slice(&99_u32.to_be_bytes());
    std::fs::write(&file, &bytes).unwrap();
    let said = one_sentence(&demo(dir.path()));
    assert!(
        said.contains("written by a newer eavebook (book version 99"),
        "{said}"
    );
    assert_eq!(std::fs::read(&file).unwrap(), bytes);
}

#[test]
fn a_folder_that_is_a_file_is_told_in_one_sentence() {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("a file");
    std::fs::write(&file, "not a folder").unwrap();
    let said = one_sentence(&demo(&file));
    assert!(said.contains("name another folder"), "{said}");
    assert_eq!(std::fs::read(&file).unwrap(), b"not a folder");
}

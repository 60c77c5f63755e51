use eavebook_app::{App, localhost};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::Arc;

/// A server on a free port, as the program runs it.
struct Served {
    port: u16,
    _runtime: tokio::runtime::Runtime,
    _dir: tempfile::TempDir,
}

struct Answer {
    status: u16,
    head: String,
    body: String,
}

fn served() -> Served {
    let dir = tempfile::tempdir().unwrap();
    let app = Arc::new(App::open(dir.path()).unwrap());
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .unwrap();
    let listener = runtime
        .block_on(tokio::net::TcpListener::bind("127.0.0.1:0"))
        .unwrap();
    let port = listener.local_addr().unwrap().port();
    let router = localhost::router(app, port);
    runtime.spawn(async move { axum::serve(listener, router).await });
    Served {
        port,
        _runtime: runtime,
        _dir: dir,
    }
}

impl Served {
    fn sends(&self, first: &str, headers: &[&str], body: &[u8]) -> Answer {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        let host = format!("Host: 127.0.0.1:{}", self.port);
        let named = headers.iter().any(|header| header.starts_with("Host:"));
        let mut lines = vec![format!("{first} HTTP/1.1")];
        lines.extend((!named).then_some(host));
        lines.extend(headers.iter().map(|&header| header.to_owned()));
        lines.push(format!("Content-Length: {}", body.len()));
        lines.push("Connection: close\r\n\r\n".to_owned());
        stream.write_all(lines.join("\r\n").as_bytes()).unwrap();
        stream.write_all(body).unwrap();
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).unwrap();
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let (head, body) = text.split_once("\r\n\r\n").unwrap();
        let status = head.split(' ').nth(1).unwrap().parse().unwrap();
        Answer {
            status,
            head: head.to_lowercase(),
            body: body.to_owned(),
        }
    }

    /// The bytes of a file, as long as its head says.
    fn fetches(&self, path: &str) -> Vec<u8> {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        let asked = format!(
            "GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n",
            self.port
        );
        stream.write_all(asked.as_bytes()).unwrap();
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).unwrap();
        let end = bytes.windows(4).position(|four| four == b"\r\n\r\n");
        let body = bytes.split_off(end.unwrap() + 4);
        let head = String::from_utf8(bytes).unwrap().to_lowercase();
        let length = format!("content-length: {}\r\n", body.len());
        assert!(head.contains(&length), "{head}");
        body
    }

    fn command(&self, body: &str) -> Answer {
        self.sends(
            "POST /command",
            &["Content-Type: application/json"],
            body.as_bytes(),
        )
    }

    fn begins(&self) -> String {
        let begun = self.command(r#"{"ask": "start_job", "address": "7 Invented Street"}"#);
        let job: serde_json::Value = serde_json::from_str(&begun.body).unwrap();
        job["job"].as_str().unwrap().to_owned()
    }
}

#[test]
fn a_request_is_answered_as_json_that_is_not_kept() {
    let answer = served().command(r#"{"ask": "today"}"#);
    assert_eq!(answer.status, 200);
    assert!(
        answer.body.starts_with(r#"{"reply":"today""#),
        "{}",
        answer.body
    );
    assert!(answer.head.contains("cache-control: no-store"));
    assert!(answer.head.contains("x-content-type-options: nosniff"));
}

#[test]
fn a_refusal_in_words_is_a_reply_with_status_200() {
    let answer = served().command(r#"{"ask": "start_job", "address": ""}"#);
    assert_eq!(answer.status, 200);
    assert!(
        answer
            .body
            .starts_with(r#"{"reply":"refused","code":"no_address""#)
    );
}

#[test]
fn only_a_body_that_is_no_request_is_an_error() {
    let served = served();
    assert_eq!(served.command("{").status, 400);
    assert_eq!(served.command(r#"{"ask": "fly"}"#).status, 422);
    assert_eq!(served.command(r#"{"ask": "job", "job": 7}"#).status, 422);
    let form = ["Content-Type: text/plain"];
    assert_eq!(
        served
            .sends("POST /command", &form, br#"{"ask": "today"}"#)
            .status,
        415
    );
}

#[test]
fn strangers_are_turned_away() {
    let served = served();
    let port = served.port;
    let today = br#"{"ask": "today"}"#;
    let json = "Content-Type: application/json";
    let foreign = [
        "Host: rebound.example".to_owned(),
        format!("Host: rebound.example:{port}"),
        "Host: 127.0.0.1:1".to_owned(),
        "Origin: http://elsewhere.example".to_owned(),
        "Origin: null".to_owned(),
        format!("Origin: https://127.0.0.1:{port}"),
    ];
    for header in &foreign {
        let answer = served.sends("POST /command", &[json, header], today);
        assert_eq!(answer.status, 403, "{header}");
        assert_eq!(
            served.sends("GET /", &[header], b"").status,
            403,
            "{header}"
        );
    }
    for header in [
        format!("Host: localhost:{port}"),
        format!("Origin: http://127.0.0.1:{port}"),
    ] {
        assert_eq!(
            served
                .sends("POST /command", &[json, &header], today)
                .status,
            200,
            "{header}"
        );
    }
}

#[test]
fn the_page_allows_no_script_of_its_own_text_and_nothing_from_elsewhere() {
    let answer = served().sends("GET /", &[], b"");
    assert_eq!(answer.status, 200);
    assert!(answer.head.contains("content-type: text/html"));
    let policy = answer
        .head
        .lines()
        .find(|line| line.starts_with("content-security-policy"));
    let policy = policy.unwrap();
    assert!(
        policy.contains("default-src 'none'; script-src 'self';"),
        "{policy}"
    );
    assert!(
        !policy.contains("unsafe") && !policy.contains("http"),
        "{policy}"
    );
    assert!(!answer.body.contains("<script>"), "{}", answer.body);
}

#[test]
fn a_photo_comes_back_byte_for_byte_under_its_name() {
    let served = served();
    let job = served.begins();
    let bytes = b"\x89PNG\r\n\x1a\n drawn";
    let kept = served.sends(&format!("POST /photo?job={job}&from=camera"), &[], bytes);
    assert_eq!(kept.status, 200);
    let view: serde_json::Value = serde_json::from_str(&kept.body).unwrap();
    let name = view["photos"][0]["sha256"].as_str().unwrap();
    let back = served.sends(&format!("GET /photo/{name}"), &[], b"");
    assert_eq!(back.status, 200);
    assert!(back.head.contains("content-type: image/png"));
    assert!(back.head.contains("x-content-type-options: nosniff"));
    assert_eq!(
        back.body.as_bytes(),
        String::from_utf8_lossy(bytes).as_bytes()
    );
    assert_eq!(
        served.sends("GET /photo/..%2fbook.sqlite", &[], b"").status,
        404
    );
}

#[test]
fn a_photo_names_its_thing_in_the_address() {
    let served = served();
    let job = served.begins();
    let refused = served.sends(
        &format!("POST /photo?job={job}&of=leg%204"),
        &[],
        b"\xff\xd8\xff",
    );
    assert_eq!(refused.status, 200);
    assert!(
        refused.body.contains("There is no leg 4."),
        "{}",
        refused.body
    );
}

#[test]
fn a_copy_of_the_book_goes_out_whole_and_comes_back_in_piece_by_piece() {
    let phone = served();
    phone.begins();
    let made = phone.sends("POST /copy", &[], b"");
    let made: serde_json::Value = serde_json::from_str(&made.body).unwrap();
    let file = made["file"].as_str().unwrap();
    let fetched = phone.fetches(&format!("/copy/{file}"));
    assert!(fetched.starts_with(b"eavebook-book-backup/1\n"));
    let again = phone.sends(&format!("GET /copy/{file}"), &[], b"");
    assert_eq!(again.status, 404, "{}", again.body);
    assert!(again.body.contains("Save it again."), "{}", again.body);

    let office = served();
    let id = "0196a5e0-0000-4000-8000-000000000001";
    let mut told = String::new();
    for (at, piece) in fetched.chunks(50_000).enumerate() {
        let (at, whole) = (at * 50_000, fetched.len());
        let first = format!("POST /carried?file={id}&at={at}&whole={whole}");
        let answer = office.sends(&first, &[], piece);
        assert_eq!(answer.status, 200, "{}", answer.body);
        told = answer.body;
    }
    assert!(
        told.contains("Brought in: 1 entry of 7 Invented Street."),
        "{told}"
    );
    let today = office.command(r#"{"ask": "today"}"#);
    assert!(today.body.contains("7 Invented Street"), "{}", today.body);
    let foreign = ["Origin: http://elsewhere.example"];
    assert_eq!(office.sends("POST /copy", &foreign, b"").status, 403);
    assert_eq!(office.sends("POST /carried", &foreign, b"").status, 403);
}

#[test]
fn a_page_that_is_not_there_is_not_there() {
    let served = served();
    assert_eq!(served.sends("GET /nothing.js", &[], b"").status, 404);
    assert_eq!(served.sends("GET /../Cargo.toml", &[], b"").status, 404);
}

#[test]
fn a_port_in_use_is_said_in_one_sentence() {
    let served = served();
    let dir = tempfile::tempdir().unwrap();
    let refused = localhost::serve(App::open(dir.path()).unwrap(), served.port, "").unwrap_err();
    let said = format!(
        "port {} is in use by another program: give another --port, or --port 0 for any",
        served.port
    );
    assert_eq!(refused.to_string(), said);
}

//! `cargo xtask stores COMMAND`: runs a command beside a PostgreSQL and an S3-compatible object
//! store, both of this machine alone, in a folder that goes with them.
//!
//! The command finds them by `EAVEBOOK_TEST_POSTGRES`, `EAVEBOOK_TEST_BUCKET` and, to kill the
//! first, `EAVEBOOK_TEST_POSTGRES_FOLDER`.

use crate::ground::Ground;
use crate::run;
use crate::setup;
use crate::trouble::Trouble;
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// The database, as Debian packs it.
pub const PACKAGES: [&str; 1] = ["postgresql"];

/// How long a server may take to answer.
const PATIENCE: Duration = Duration::from_secs(60);

/// Which object store.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Objects {
    /// `moto`, from the Python registry: in memory, keeps to conditional writes.
    Moto,
    /// `s3s-fs`, from the Rust registry: files; checks signatures; two may win a race to create.
    Files,
}

/// Servers that run; dropped, they end.
pub struct Stores {
    folder: PathBuf,
    postgres: PathBuf,
    objects: Option<Child>,
    port: u16,
}

/// Installs what [`Stores::begin`] starts.
///
/// # Errors
/// What could not be installed, with the line to run.
pub fn install(ground: &Ground) -> Result<(), Trouble> {
    setup::packages(&PACKAGES)?;
    setup::python(ground, "tests/stores/requirements.txt")?;
    // The last version that our compiler builds.
    let how = ["--version", "0.14.1", "--features", "binary"];
    setup::tool_with(ground, "s3s-fs", &how)
}

impl Stores {
    /// Starts both and waits until they answer.
    ///
    /// # Errors
    /// What did not start.
    pub fn begin(ground: &Ground, objects: Objects) -> Result<Stores, Trouble> {
        let folder = std::env::temp_dir().join(format!("eavebook-stores-{}", std::process::id()));
        let port = free_port()?;
        let mut stores = Stores {
            postgres: programs()?,
            objects: None,
            port,
            folder,
        };
        stores.begin_postgres()?;
        stores.begin_objects(ground, objects)?;
        println!("    PostgreSQL and {objects:?} answer");
        Ok(stores)
    }

    /// Tells a command where they are.
    pub fn tell(&self, command: &mut Command) {
        let socket = self.folder.join("socket");
        command
            .env(
                "EAVEBOOK_TEST_POSTGRES",
                format!("host={} user=hub dbname=postgres", socket.display()),
            )
            .env("EAVEBOOK_TEST_POSTGRES_FOLDER", &self.folder)
            .env("EAVEBOOK_TEST_POSTGRES_PROGRAMS", &self.postgres)
            .env(
                "EAVEBOOK_TEST_BUCKET",
                format!("http://127.0.0.1:{}", self.port),
            );
    }

    /// A socket in its folder, no port, no password: who may open the folder may ask.
    fn begin_postgres(&self) -> Result<(), Trouble> {
        let (data, socket) = (self.folder.join("data"), self.folder.join("socket"));
        for folder in [&self.folder, &data, &socket] {
            std::fs::create_dir_all(folder).map_err(|cause| Trouble::File {
                path: folder.clone(),
                cause,
            })?;
        }
        if is_root() {
            let folder = self.folder.to_string_lossy().into_owned();
            let given = ["-R", "postgres:postgres", &folder];
            run::must(Command::new("chown").args(given))?;
        }
        let data = data.to_string_lossy().into_owned();
        let words = ["-D", &data, "-A", "trust", "-U", "hub", "-E", "UTF8"];
        let mut make = self.postgres("initdb");
        run::must(make.args(words).args(["--locale=C", "--no-sync"]))?;
        // Not `run::must`: the server keeps what it inherits of streams open.
        let answer = self
            .postgres("pg_ctl")
            .args(["-D", &data, "-w", "-l", &format!("{data}/log"), "-o"])
            .arg(format!(
                "-c listen_addresses='' -c unix_socket_directories='{}' -c max_connections=400",
                socket.display()
            ))
            .arg("start")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status();
        if answer.is_ok_and(|answer| answer.success()) {
            self.watch(&data);
            Ok(())
        } else {
            Err(Trouble::Failed {
                command: format!("pg_ctl start: see {data}/log"),
            })
        }
    }

    /// The database is in a session of its own: an interrupt that ends this process would leave it.
    /// A shell that waits for this process to go stops it then.
    fn watch(&self, data: &str) {
        let script = "while [ -d /proc/$1 ]; do sleep 1; done
                      [ -d \"$3\" ] && exec \"$2\" -D \"$3\" -m immediate stop";
        let pg_ctl = self.postgres.join("pg_ctl");
        let mut watch = if is_root() {
            let mut watch = Command::new("setsid");
            watch.args(["runuser", "-u", "postgres", "--", "sh"]);
            watch
        } else {
            let mut watch = Command::new("setsid");
            watch.arg("sh");
            watch
        };
        // Where it does not start, the database has still to be stopped by whoever interrupts.
        let _ = watch
            .args(["-c", script, "watch", &std::process::id().to_string()])
            .arg(pg_ctl)
            .arg(data)
            .current_dir("/")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
    }

    /// One of its programs, as a user whom it does not refuse.
    fn postgres(&self, program: &str) -> Command {
        let program = self.postgres.join(program);
        let mut command = if is_root() {
            let mut command = Command::new("runuser");
            command.args(["-u", "postgres", "--"]).arg(program);
            command
        } else {
            Command::new(program)
        };
        command.current_dir("/");
        command
    }

    fn begin_objects(&mut self, ground: &Ground, objects: Objects) -> Result<(), Trouble> {
        let port = self.port.to_string();
        let mut command = match objects {
            Objects::Moto => {
                let server = ground.tools.join("python/bin/moto_server");
                let mut command = Command::new(server);
                command.args(["-H", "127.0.0.1", "-p", &port]);
                command
            }
            Objects::Files => {
                let folder = self.folder.join("objects");
                let made = std::fs::create_dir_all(folder.join("hub"));
                made.map_err(|cause| Trouble::File {
                    path: folder.clone(),
                    cause,
                })?;
                let mut command = ground.command("s3s-fs", ".", &["--host", "127.0.0.1"]);
                command
                    .args(["--port", &port, "--access-key", "test"])
                    .args(["--secret-key", "testtest"])
                    .arg(folder)
                    .env("RUST_LOG", "error");
                command
            }
        };
        let program = command.get_program().to_string_lossy().into_owned();
        let child = command
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
        self.objects = Some(child.map_err(|cause| Trouble::NoStart { program, cause })?);
        let began = Instant::now();
        // Asked for what every store has: its bucket, made where there is none.
        while !make_bucket(self.port) {
            if began.elapsed() > PATIENCE {
                return Err(Trouble::Failed {
                    command: format!("{objects:?}: no answer"),
                });
            }
            std::thread::sleep(Duration::from_millis(100));
        }
        Ok(())
    }
}

impl Drop for Stores {
    fn drop(&mut self) {
        if let Some(mut child) = self.objects.take() {
            // It may have ended by itself.
            let _ = child.kill();
            let _ = child.wait();
        }
        let data = self.folder.join("data").to_string_lossy().into_owned();
        let _ = self
            .postgres("pg_ctl")
            .args(["-D", &data, "-m", "immediate", "stop"])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status();
        // Ours alone: its name holds our process.
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

/// Where PostgreSQL's own programs lie.
fn programs() -> Result<PathBuf, Trouble> {
    let top = Path::new("/usr/lib/postgresql");
    let mut versions: Vec<(u32, PathBuf)> = std::fs::read_dir(top)
        .into_iter()
        .flatten()
        .flatten()
        .filter_map(|version| {
            let name = version.file_name().to_string_lossy().parse().ok()?;
            Some((name, version.path().join("bin")))
        })
        .filter(|(_, bin)| bin.join("initdb").exists())
        .collect();
    versions.sort();
    versions
        .pop()
        .map(|(_, bin)| bin)
        .ok_or_else(|| Trouble::Missing {
            remedy:
                "PostgreSQL's server is not in /usr/lib/postgresql: install the Debian package \
                     `postgresql`"
                    .to_owned(),
        })
}

fn is_root() -> bool {
    run::ask(Command::new("id").arg("-u")).is_some_and(|id| id.trim() == "0")
}

fn free_port() -> Result<u16, Trouble> {
    TcpListener::bind("127.0.0.1:0")
        .and_then(|listener| listener.local_addr())
        .map(|address| address.port())
        .map_err(|cause| Trouble::NoStart {
            program: "a listener on 127.0.0.1".to_owned(),
            cause,
        })
}

/// Asks for a bucket; `true` once the server answers. The store of files has its bucket as a folder
/// and refuses who has no key: that is an answer too.
fn make_bucket(port: u16) -> bool {
    let Ok(mut stream) = TcpStream::connect(("127.0.0.1", port)) else {
        return false;
    };
    let ask =
        "PUT /hub HTTP/1.1\r\nhost: 127.0.0.1\r\nconnection: close\r\ncontent-length: 0\r\n\r\n";
    let mut answer = String::new();
    let patience = Some(Duration::from_secs(20));
    stream.set_read_timeout(patience).is_ok()
        && stream.write_all(ask.as_bytes()).is_ok()
        && stream.read_to_string(&mut answer).is_ok()
        && answer.starts_with("HTTP/1.1 ")
}

/// Runs a command beside them.
///
/// # Errors
/// What did not start; `Failed` where the command said no.
pub fn run(ground: &Ground, objects: Objects, words: &[&str]) -> Result<(), Trouble> {
    let [program, words @ ..] = words else {
        return Err(Trouble::Missing {
            remedy: "say what to run beside them: `cargo xtask stores cargo nextest run -p \
                     eavebook-hub`"
                .to_owned(),
        });
    };
    install(ground)?;
    let stores = Stores::begin(ground, objects)?;
    let mut command = ground.command(program, ".", words);
    stores.tell(&mut command);
    run::must(&mut command).map(drop)
}

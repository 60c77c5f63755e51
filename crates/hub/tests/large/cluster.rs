//! A database that a test has for itself, to stop it or to start it in another way.

use crate::stores;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// A database of its own, which others do not notice to stop.
pub struct Cluster {
    programs: PathBuf,
    dir: tempfile::TempDir,
}

impl Cluster {
    /// Begins one that is reached by a socket alone.
    pub fn begin() -> Cluster {
        let programs = stores::named("EAVEBOOK_TEST_POSTGRES_PROGRAMS");
        let cluster = Cluster {
            programs: PathBuf::from(programs),
            dir: tempfile::tempdir().unwrap(),
        };
        let dir = cluster.dir.path().to_string_lossy().into_owned();
        if is_root() {
            let given = Command::new("chown")
                .args(["postgres:postgres", &dir])
                .status();
            assert!(given.unwrap().success());
        }
        cluster.run(
            "initdb",
            &["-A", "trust", "-U", "hub", "--locale=C", "--no-sync"],
        );
        cluster.start("");
        cluster
    }

    /// How its socket is reached.
    pub fn by_socket(&self) -> String {
        format!(
            "host={} user=hub dbname=postgres",
            self.dir.path().display()
        )
    }

    pub fn data(&self) -> PathBuf {
        self.dir.path().join("data")
    }

    fn run(&self, program: &str, words: &[&str]) {
        let program = self.programs.join(program);
        let mut command = if is_root() {
            let mut command = Command::new("runuser");
            command.args(["-u", "postgres", "--"]).arg(program);
            command
        } else {
            Command::new(program)
        };
        let ended = command
            .arg("-D")
            .arg(self.data())
            .args(words)
            .current_dir("/")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status()
            .unwrap();
        assert!(ended.success(), "{command:?}");
    }

    /// Starts it; `more` settings come after those that it needs.
    pub fn start(&self, more: &str) {
        let how = format!(
            "-c listen_addresses='' -c unix_socket_directories='{}' {more}",
            self.dir.path().display()
        );
        let log = self.dir.path().join("log");
        let log = log.to_string_lossy();
        self.run("pg_ctl", &["-w", "-l", &log, "-o", &how, "start"]);
    }

    /// Without a checkpoint, without waiting for anybody.
    pub fn stop_at_once(&self) {
        self.run("pg_ctl", &["-m", "immediate", "stop"]);
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        if self.data().join("postmaster.pid").exists() {
            self.stop_at_once();
        }
    }
}

fn is_root() -> bool {
    let id = Command::new("id").arg("-u").output().unwrap();
    String::from_utf8_lossy(&id.stdout).trim() == "0"
}

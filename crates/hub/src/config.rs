//! `hub.toml` in the hub's folder: where rows and photos are kept, if not in that folder.
//!
//! ```toml
//! [postgres]
//! connect = "host=db.example user=hub password=... dbname=hub"
//! connections = 8
//! ca = "/etc/ssl/certs/ca-certificates.crt"
//!
//! [bucket]
//! endpoint = "https://objects.example"
//! bucket = "hub"
//! region = "us-east-1"
//! access_key = "..."
//! secret_key = "..."
//! ca = "/etc/ssl/certs/ca-certificates.crt"
//! ```
//!
//! Both or either may be left out. A hub without the file keeps all in its folder.

use crate::error::HubError;
use serde::Deserialize;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

pub(crate) const FILE: &str = "hub.toml";

/// Where a hub keeps what it keeps.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Config {
    /// Rows in a PostgreSQL, which several hubs may share.
    pub(crate) postgres: Option<Postgres>,
    /// Photos in an S3-compatible object store.
    pub(crate) bucket: Option<Bucket>,
}

/// A database.
#[derive(Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Postgres {
    /// As libpq reads it, `host=... user=... dbname=...` or a URL.
    pub(crate) connect: String,
    /// Most connections of one hub.
    #[serde(default = "connections")]
    pub(crate) connections: usize,
    /// Authorities of its certificate. Without TLS only a database on this machine is asked.
    #[serde(default = "authorities")]
    pub(crate) ca: PathBuf,
}

/// A bucket.
#[derive(Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bucket {
    /// Its store, `https://HOST[:PORT]`.
    pub(crate) endpoint: String,
    /// Its name.
    pub(crate) bucket: String,
    /// Where it lies.
    #[serde(default = "region")]
    pub(crate) region: String,
    /// Who asks.
    pub(crate) access_key: String,
    /// What proves it.
    pub(crate) secret_key: String,
    /// Authorities of the store's certificate.
    #[serde(default = "authorities")]
    pub(crate) ca: PathBuf,
}

// Passwords are not printed with the rest.
impl std::fmt::Debug for Postgres {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Postgres")
    }
}

impl std::fmt::Debug for Bucket {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Bucket {} at {}", self.bucket, self.endpoint)
    }
}

fn connections() -> usize {
    8
}

fn region() -> String {
    "us-east-1".to_owned()
}

fn authorities() -> PathBuf {
    PathBuf::from("/etc/ssl/certs/ca-certificates.crt")
}

impl Config {
    /// Reads the file of a folder; all as usual where there is none.
    ///
    /// # Errors
    /// `Config`, `File`.
    pub(crate) fn from_folder(dir: &Path) -> Result<Config, HubError> {
        let path = dir.join(FILE);
        let text = match std::fs::read_to_string(&path) {
            Err(why) if why.kind() == ErrorKind::NotFound => return Ok(Config::default()),
            text => text.map_err(HubError::file(&path))?,
        };
        let hub_error = |why: String| HubError::Config {
            path: path.display().to_string(),
            why,
        };
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let file = std::fs::metadata(&path).map_err(HubError::file(&path))?;
            if file.permissions().mode() & 0o077 != 0 {
                return Err(hub_error(
                    "it holds passwords and others may read it: make it its owner's alone with \
                     `chmod 600`"
                        .to_owned(),
                ));
            }
        }
        toml::from_str(&text).map_err(|why| hub_error(why.to_string().trim().to_owned()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(text: &str, mode: u32) -> Result<Config, HubError> {
        use std::os::unix::fs::PermissionsExt;
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join(FILE);
        std::fs::write(&path, text).unwrap();
        std::fs::set_permissions(&path, std::fs::Permissions::from_mode(mode)).unwrap();
        Config::from_folder(dir.path())
    }

    #[test]
    fn without_the_file_all_is_kept_in_the_folder() {
        let dir = tempfile::tempdir().unwrap();
        let config = Config::from_folder(dir.path()).unwrap();
        assert!(config.postgres.is_none() && config.bucket.is_none());
    }

    #[test]
    fn what_is_not_said_is_as_usual_and_what_is_unknown_is_refused_by_its_name() {
        let config = parse("[postgres]\nconnect = \"host=/run user=hub\"", 0o600).unwrap();
        assert_eq!(config.postgres.unwrap().connections, 8);
        let message = parse("[postgres]\nconect = \"\"", 0o600)
            .unwrap_err()
            .to_string();
        assert!(message.contains("conect"), "{message}");
    }

    #[test]
    fn a_file_with_passwords_that_others_may_read_is_refused_with_the_remedy() {
        let message = parse("", 0o644).unwrap_err().to_string();
        assert!(message.contains("chmod 600"), "{message}");
    }
}

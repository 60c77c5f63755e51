//! The pairing with a hub: where it is, which key it has, the token that lets this device in. A file
//! of its own beside the book, for its owner alone, so that a copy of the book lets nobody in.

use crate::error::StoreError;
use crate::{Store, sync_dir};
use serde::{Deserialize, Serialize};
use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};

const FILE: &str = "pairing.json";

/// How this book reaches its hub.
#[derive(Clone, PartialEq, Eq, Deserialize, Serialize)]
pub struct Pairing {
    /// `https://host:port`.
    pub url: String,
    /// SHA-256 of the hub's public key in hex; none for a hub without TLS.
    pub pin: Option<String>,
    /// What lets this device in: a secret.
    pub token: String,
    /// Whose hub it is.
    pub company: String,
}

impl std::fmt::Debug for Pairing {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // The token is left out: what is printed for debugging is read by others.
        f.debug_struct("Pairing")
            .field("url", &self.url)
            .field("pin", &self.pin)
            .field("company", &self.company)
            .finish_non_exhaustive()
    }
}

impl Store {
    /// The pairing, where there is one.
    ///
    /// # Errors
    /// `Damaged` for a file that does not read, `Disk`.
    pub fn pairing(&self) -> Result<Option<Pairing>, StoreError> {
        let path = self.root.0.join(FILE);
        match std::fs::read(&path) {
            Ok(bytes) => {
                serde_json::from_slice(&bytes)
                    .map(Some)
                    .map_err(|why| StoreError::Pairing {
                        file: path.display().to_string(),
                        what: why.to_string(),
                    })
            }
            Err(why) if why.kind() == ErrorKind::NotFound => Ok(None),
            Err(why) => Err(self.root.io(&path, why)),
        }
    }

    /// Keeps a pairing in place of the one before; durable.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: the one before still stands.
    pub fn keep_pairing(&mut self, pairing: &Pairing) -> Result<(), StoreError> {
        let path = self.root.0.join(FILE);
        let arriving = self.root.0.join(format!("{FILE}.arriving"));
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        {
            use std::os::unix::fs::OpenOptionsExt;
            options.mode(0o600);
        }
        let keep = || {
            let mut file = options.open(&arriving)?;
            file.write_all(&serde_json::to_vec_pretty(pairing)?)?;
            file.sync_all()?;
            std::fs::rename(&arriving, &path)?;
            sync_dir(&self.root.0)
        };
        keep().map_err(|why| self.root.io(&path, why))
    }
}

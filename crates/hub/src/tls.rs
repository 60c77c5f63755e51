//! The hub's own key, and a certificate made of it anew at each start.
//!
//! Devices pin the key, not the certificate: the SHA-256 of its SubjectPublicKeyInfo (RFC 7469). A
//! certificate may so be renewed at will, and who copies it without the key gets nowhere.

use crate::error::HubError;
use crate::rows::sqlite::sync_dir;
use crate::{hex, token};
use rcgen::{CertificateParams, KeyPair, PKCS_ECDSA_P256_SHA256, PublicKeyData};
use rustls::ServerConfig;
use rustls::pki_types::{PrivateKeyDer, PrivatePkcs8KeyDer};
use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The file of the key.
pub(crate) const KEY: &str = "tls.key";

fn key_error(path: &Path) -> impl Fn(&dyn std::fmt::Display) -> HubError {
    let path = path.display().to_string();
    move |why| HubError::Key {
        path: path.clone(),
        why: why.to_string(),
    }
}

/// The key of a hub, drawn where there is none.
///
/// # Errors
/// `File`, `Key`.
pub(crate) fn key(dir: &Path) -> Result<KeyPair, HubError> {
    let path = dir.join(KEY);
    match std::fs::read_to_string(&path) {
        Ok(pem) => KeyPair::from_pem(&pem).map_err(|why| key_error(&path)(&why)),
        Err(why) if why.kind() == ErrorKind::NotFound => {
            let key = KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256)
                .map_err(|why| key_error(&path)(&why))?;
            write_secret(&path, key.serialize_pem().as_bytes())?;
            Ok(key)
        }
        Err(why) => Err(HubError::file(&path)(why)),
    }
}

/// Writes a file that only its owner may read, whole or not at all.
///
/// # Errors
/// `File`.
pub(crate) fn write_secret(path: &Path, bytes: &[u8]) -> Result<(), HubError> {
    let arriving = path.with_extension("arriving");
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    options
        .open(&arriving)
        .and_then(|mut file| {
            file.write_all(bytes)?;
            file.sync_all()
        })
        .and_then(|()| std::fs::rename(&arriving, path))
        .and_then(|()| sync_dir(path.parent().unwrap_or(&PathBuf::from("."))))
        .map_err(HubError::file(path))
}

/// The pin of the hub in a folder: 64 hex digits.
///
/// # Errors
/// `File`, `Key`.
pub fn pin(dir: &Path) -> Result<String, HubError> {
    Ok(pin_of(&key(dir)?.subject_public_key_info()))
}

/// The pin of a key, given as its SubjectPublicKeyInfo in DER.
#[must_use]
pub fn pin_of(spki: &[u8]) -> String {
    hex(&token::sha256(spki))
}

/// What a TLS listener needs; `host` is a name or address by which the hub is known.
///
/// # Errors
/// `File`, `Key`.
pub(crate) fn config(dir: &Path, host: &str) -> Result<Arc<ServerConfig>, HubError> {
    let (path, key) = (dir.join(KEY), key(dir)?);
    let hub_error = key_error(&path);
    let mut names = vec!["localhost".to_owned(), "127.0.0.1".to_owned()];
    if !names.iter().any(|name| name == host) {
        names.push(host.to_owned());
    }
    let certificate = CertificateParams::new(names)
        .and_then(|params| params.self_signed(&key))
        .map_err(|why| hub_error(&why))?;
    let secret = PrivateKeyDer::Pkcs8(PrivatePkcs8KeyDer::from(key.serialize_der()));
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let mut config = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .and_then(|config| {
            config
                .with_no_client_auth()
                .with_single_cert(vec![certificate.der().clone()], secret)
        })
        .map_err(|why| hub_error(&why))?;
    config.alpn_protocols = vec![b"http/1.1".to_vec()];
    Ok(Arc::new(config))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_key_stays_and_is_its_owners_alone() {
        let dir = tempfile::tempdir().unwrap();
        let pin = pin(dir.path()).unwrap();
        assert_eq!(pin.len(), 64);
        assert_eq!(super::pin(dir.path()).unwrap(), pin);
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let file = std::fs::metadata(dir.path().join(KEY)).unwrap();
            assert_eq!(file.permissions().mode() & 0o777, 0o600);
        }
    }

    #[test]
    fn a_key_that_is_none_is_refused_and_left_alone() {
        let dir = tempfile::tempdir().unwrap();
        std::fs::write(dir.path().join(KEY), "no key").unwrap();
        let message = pin(dir.path()).unwrap_err().to_string();
        assert!(message.contains("holds no key for TLS"), "{message}");
        assert_eq!(std::fs::read(dir.path().join(KEY)).unwrap(), b"no key");
    }
}

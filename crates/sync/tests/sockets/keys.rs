//! Pairing over TLS: the hub's key is pinned, and nothing is said to another one.

use crate::{Yard, new_book};
use eavebook_hub::{Transport, pin_of};
use eavebook_store::Store;
use eavebook_sync::{Invitation, Link, PairError, SyncStatus, pair};
use rcgen::{CertificateParams, KeyPair, PKCS_ECDSA_P256_SHA256, PublicKeyData};
use rustls::ServerConfig;
use rustls::pki_types::{CertificateDer, PrivateKeyDer, PrivatePkcs8KeyDer};
use rustls::sign::{CertifiedKey, SingleCertAndKey};
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpListener};
use std::sync::{Arc, Mutex};

fn join(book: &mut Store, link: &str) -> Result<eavebook_store::Pairing, PairError> {
    pair(book, &Invitation::read(link)?, "a phone")
}

#[test]
fn a_wrong_pin_is_refused_before_the_code_is_sent_and_the_code_stays_good() {
    let yard = Yard::new(Transport::Tls);
    let link = yard.link();
    let pin = &yard.hub.as_ref().unwrap().pin;
    let mut book = new_book(&yard.dir.path().join("book"));
    let error = join(&mut book, &link.replace(pin, &"0".repeat(64))).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("has another key than the one in the link"),
        "{error}"
    );
    assert_eq!(book.pairing().unwrap(), None);
    let pairing = join(&mut book, &link).unwrap();
    assert_eq!(pairing.company, "Ridge");
    assert_eq!(book.device().unwrap().author, "Ada");
    // Each code works once.
    let error = join(&mut book, &link).unwrap_err();
    assert!(
        error.to_string().contains("this code is not good"),
        "{error}"
    );
    assert_eq!(book.pairing().unwrap(), Some(pairing));
}

#[test]
fn a_book_in_step_over_tls_stays_so_when_the_certificate_is_renewed() {
    let mut yard = Yard::new(Transport::Tls);
    let mut mine = yard.paired("phone");
    let address = yard.address();
    mine.round_by(None);
    assert_eq!(mine.status(), &SyncStatus::InStep);
    yard.hub.take().unwrap().stop();
    yard.settings.listen = address.to_string();
    yard.hub = Some(eavebook_hub::RunningHub::begin(&yard.settings).unwrap());
    mine.round_by(None);
    assert_eq!(mine.status(), &SyncStatus::InStep);
}

#[cfg(unix)]
#[test]
fn the_token_is_its_owners_alone_to_read() {
    use std::os::unix::fs::PermissionsExt;
    let yard = Yard::new(Transport::Tls);
    let _mine = yard.paired("phone");
    let file = std::fs::metadata(yard.dir.path().join("phone/pairing.json")).unwrap();
    assert_eq!(file.permissions().mode() & 0o777, 0o600);
}

/// A server that shows a certificate of one key and signs with another, or with that one.
fn impostor(shown: &KeyPair, signs: &KeyPair) -> (SocketAddr, Arc<Mutex<Vec<u8>>>) {
    let mut params = CertificateParams::new(vec!["elsewhere.example".to_owned()]).unwrap();
    // Long past: a pinned key needs no date.
    params.not_after = rcgen::date_time_ymd(2001, 1, 1);
    params.not_before = rcgen::date_time_ymd(2000, 1, 1);
    let certificate: CertificateDer<'static> = params.self_signed(shown).unwrap().der().clone();
    let secret = PrivateKeyDer::Pkcs8(PrivatePkcs8KeyDer::from(signs.serialize_der()));
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let key = provider.key_provider.load_private_key(secret).unwrap();
    let certified = CertifiedKey::new(vec![certificate], key);
    let config = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_no_client_auth()
        .with_cert_resolver(Arc::new(SingleCertAndKey::from(certified)));
    let config = Arc::new(config);
    let listens = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = listens.local_addr().unwrap();
    let heard = Arc::new(Mutex::new(Vec::new()));
    let hears = heard.clone();
    std::thread::spawn(move || {
        for stream in listens.incoming().flatten() {
            let session = rustls::ServerConnection::new(config.clone()).unwrap();
            let mut stream = rustls::StreamOwned::new(session, stream);
            let mut buffer = [0; 4096];
            if let Ok(read) = stream.read(&mut buffer) {
                hears.lock().unwrap().extend_from_slice(&buffer[..read]);
                let _ = stream.write_all(b"HTTP/1.1 200 OK\r\ncontent-length: 2\r\n\r\n{}");
            }
        }
    });
    (address, heard)
}

fn key() -> KeyPair {
    KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256).unwrap()
}

#[test]
fn the_right_certificate_with_another_key_behind_it_is_refused_and_hears_nothing() {
    let (hub, thief) = (key(), key());
    let pin = pin_of(&hub.subject_public_key_info());
    let (address, heard) = impostor(&hub, &thief);
    let link = format!("https://{address}#pin={pin}&code=0123456789");
    let dir = tempfile::tempdir().unwrap();
    join(&mut new_book(dir.path()), &link).unwrap_err();
    assert!(heard.lock().unwrap().is_empty());
}

#[test]
fn a_pinned_key_is_taken_with_a_certificate_that_has_expired_and_names_another_host() {
    let hub = key();
    let pin = pin_of(&hub.subject_public_key_info());
    let (address, heard) = impostor(&hub, &hub);
    let mut link = Link::new(&format!("https://{address}"), Some(&pin), None).unwrap();
    let hello = eavebook_sync::Request {
        method: eavebook_sync::Method::Get,
        path: "/v1/hello".to_owned(),
        body: Vec::new(),
        span: None,
    };
    assert_eq!(link.ask(&hello).unwrap().status, 200);
    assert!(heard.lock().unwrap().starts_with(b"GET /v1/hello"));
}

//! TLS with the hub's own key: what a device that pins it sees.

use crate::talk::{Yard, answer, send};
use eavebook_hub::{Transport, pin_of};
use rcgen::{KeyPair, PKCS_ECDSA_P256_SHA256, PublicKeyData};
use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::{ClientConfig, ClientConnection, DigitallySignedStruct, SignatureScheme, StreamOwned};
use std::net::{SocketAddr, TcpStream};
use std::sync::{Arc, Mutex};

/// Takes any certificate and remembers it; proves the handshake's signature.
#[derive(Debug, Default)]
struct RecordingVerifier(Mutex<Vec<u8>>);

impl ServerCertVerifier for RecordingVerifier {
    fn verify_server_cert(
        &self,
        certificate: &CertificateDer<'_>,
        _: &[CertificateDer<'_>],
        _: &ServerName<'_>,
        _: &[u8],
        _: UnixTime,
    ) -> Result<ServerCertVerified, rustls::Error> {
        *self.0.lock().unwrap() = certificate.to_vec();
        Ok(ServerCertVerified::assertion())
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, rustls::Error> {
        let known = rustls::crypto::ring::default_provider().signature_verification_algorithms;
        rustls::crypto::verify_tls12_signature(message, certificate, signed, &known)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, rustls::Error> {
        let known = rustls::crypto::ring::default_provider().signature_verification_algorithms;
        rustls::crypto::verify_tls13_signature(message, certificate, signed, &known)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        let known = rustls::crypto::ring::default_provider().signature_verification_algorithms;
        known.supported_schemes()
    }
}

/// Asks for hello over TLS: the certificate shown, and the status.
fn hello(at: SocketAddr) -> (Vec<u8>, u16) {
    let found = Arc::new(RecordingVerifier::default());
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .unwrap()
        .dangerous()
        .with_custom_certificate_verifier(found.clone())
        .with_no_client_auth();
    let name = ServerName::try_from("hub.example").unwrap();
    let connection = ClientConnection::new(Arc::new(config), name).unwrap();
    let mut stream = StreamOwned::new(connection, TcpStream::connect(at).unwrap());
    send(&mut stream, "GET", "/v1/hello", &[], b"");
    let status = answer(&mut stream).status;
    let certificate = found.0.lock().unwrap().clone();
    (certificate, status)
}

fn holds(certificate: &[u8], spki: &[u8]) -> bool {
    certificate.windows(spki.len()).any(|part| part == spki)
}

#[test]
fn the_pin_is_that_of_the_key_in_the_certificate_and_stays_when_the_certificate_is_renewed() {
    let mut yard = Yard::with(|settings| settings.transport = Transport::Tls);
    let key = std::fs::read_to_string(yard.folder().join("tls.key")).unwrap();
    let spki = KeyPair::from_pem(&key).unwrap().subject_public_key_info();
    let pin = yard.hub.as_ref().unwrap().pin.clone();
    assert_eq!(pin, pin_of(&spki));
    let (first, status) = hello(yard.address());
    assert_eq!(status, 200);
    assert!(holds(&first, &spki));
    yard.restart();
    let (second, _) = hello(yard.address());
    assert_ne!(first, second);
    assert!(holds(&second, &spki));
    assert_eq!(yard.hub.as_ref().unwrap().pin, pin);
}

#[test]
fn another_key_has_another_pin() {
    let yard = Yard::with(|settings| settings.transport = Transport::Tls);
    let other = KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256).unwrap();
    let pin = &yard.hub.as_ref().unwrap().pin;
    assert_ne!(*pin, pin_of(&other.subject_public_key_info()));
}

#[test]
fn a_link_of_a_hub_with_tls_says_https_and_its_pin() {
    let yard = Yard::with(|settings| settings.transport = Transport::Tls);
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let hub = yard.hub.as_ref().unwrap();
    assert!(hub.url.starts_with("https://127.0.0.1:"));
    assert!(
        codes
            .link
            .starts_with(&format!("{}#pin={}&code=", hub.url, hub.pin))
    );
}

//! Knowing a hub by its key: the SHA-256 of its SubjectPublicKeyInfo (RFC 7469). The certificate
//! around it may be renewed, have expired or name another host; who has only a copy of it fails at
//! the handshake's signature.

use eavebook_core::book::entry::sha256_hex;
use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::crypto::CryptoProvider;
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::{ClientConfig, DigitallySignedStruct, Error, SignatureScheme};
use std::sync::{Arc, OnceLock};

/// Takes one key and no other.
#[derive(Debug)]
struct PinnedKey {
    pin: String,
    /// The whole pin of the key that was taken.
    taken: Arc<OnceLock<String>>,
    provider: Arc<CryptoProvider>,
}

/// What the handshake fails with at another key.
pub(crate) const OTHER_KEY: Error =
    Error::InvalidCertificate(rustls::CertificateError::ApplicationVerificationFailure);

/// TLS that takes the key whose pin begins with these hex digits, and no other; which it was, is
/// said in `taken`.
pub(crate) fn config(pin: &str, taken: Arc<OnceLock<String>>) -> Result<ClientConfig, Error> {
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let verifier = Arc::new(PinnedKey {
        pin: pin.to_owned(),
        taken,
        provider: provider.clone(),
    });
    let mut config = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()?
        .dangerous()
        .with_custom_certificate_verifier(verifier)
        .with_no_client_auth();
    config.alpn_protocols = vec![b"http/1.1".to_vec()];
    Ok(config)
}

impl ServerCertVerifier for PinnedKey {
    fn verify_server_cert(
        &self,
        certificate: &CertificateDer<'_>,
        _: &[CertificateDer<'_>],
        _: &ServerName<'_>,
        _: &[u8],
        _: UnixTime,
    ) -> Result<ServerCertVerified, Error> {
        let read = webpki::EndEntityCert::try_from(certificate).map_err(|_| OTHER_KEY)?;
        let pin = sha256_hex(&read.subject_public_key_info());
        if pin.starts_with(&self.pin) && *self.taken.get_or_init(|| pin.clone()) == pin {
            Ok(ServerCertVerified::assertion())
        } else {
            Err(OTHER_KEY)
        }
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        let known = &self.provider.signature_verification_algorithms;
        rustls::crypto::verify_tls12_signature(message, certificate, signed, known)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        let known = &self.provider.signature_verification_algorithms;
        rustls::crypto::verify_tls13_signature(message, certificate, signed, known)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        self.provider
            .signature_verification_algorithms
            .supported_schemes()
    }
}

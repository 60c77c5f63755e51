//! A database and an object store on another machine, as far as this one can be another: both are
//! asked over TLS, by an address that is not called this machine, and only where their certificates
//! are of the authority that `hub.toml` names.

use crate::cluster::Cluster;
use crate::stores;
use crate::talk::Yard;
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::RunningHub;
use rcgen::{BasicConstraints, CertificateParams, IsCa, Issuer, KeyPair, PKCS_ECDSA_P256_SHA256};
use rustls::ServerConfig;
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use std::net::{SocketAddr, TcpListener};
use std::os::unix::fs::{PermissionsExt, chown};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use tokio::io::copy_bidirectional;
use tokio::net::TcpStream;
use tokio_rustls::TlsAcceptor;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);
/// A loopback address that no list of names for this machine holds.
const AWAY: &str = "127.0.0.2";

/// An authority and a server that it vouches for, in PEM.
struct Certificates {
    authority: String,
    certificate: String,
    key: String,
}

fn vouched() -> Certificates {
    let draw = || KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256).unwrap();
    let mut authority = CertificateParams::new(Vec::<String>::new()).unwrap();
    authority.is_ca = IsCa::Ca(BasicConstraints::Unconstrained);
    let (its_key, key) = (draw(), draw());
    let shown = authority.self_signed(&its_key).unwrap().pem();
    let server = CertificateParams::new(vec![AWAY.to_owned()]).unwrap();
    let issuer = Issuer::new(authority, its_key);
    Certificates {
        authority: shown,
        certificate: server.signed_by(&key, &issuer).unwrap().pem(),
        key: key.serialize_pem(),
    }
}

/// A file that the owner of its folder alone may read.
fn give(file: &Path, text: &str) {
    std::fs::write(file, text).unwrap();
    std::fs::set_permissions(file, std::fs::Permissions::from_mode(0o600)).unwrap();
    let folder = std::fs::metadata(file.parent().unwrap()).unwrap();
    use std::os::unix::fs::MetadataExt;
    chown(file, Some(folder.uid()), Some(folder.gid())).unwrap();
}

/// The database at [`AWAY`], whose certificate is that. It lets nobody in there without TLS.
fn served(cluster: &Cluster, vouched: &Certificates) -> String {
    let port = TcpListener::bind((AWAY, 0)).unwrap().local_addr().unwrap();
    cluster.stop_at_once();
    give(&cluster.data().join("server.crt"), &vouched.certificate);
    give(&cluster.data().join("server.key"), &vouched.key);
    let doors = "local all all trust\nhostssl all all 127.0.0.0/8 trust\n";
    give(&cluster.data().join("pg_hba.conf"), doors);
    let port = port.port();
    cluster.start(&format!(
        "-c listen_addresses={AWAY} -c port={port} -c ssl=on"
    ));
    format!("host={AWAY} port={port} user=hub dbname=postgres")
}

/// A door of TLS before the object store. It is there until the test ends.
fn door(vouched: &Certificates) -> SocketAddr {
    let store = stores::named("EAVEBOOK_TEST_BUCKET");
    let store = store.strip_prefix("http://").unwrap().to_owned();
    let chain = vec![CertificateDer::from_pem_slice(vouched.certificate.as_bytes()).unwrap()];
    let key = PrivateKeyDer::from_pem_slice(vouched.key.as_bytes()).unwrap();
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_no_client_auth()
        .with_single_cert(chain, key)
        .unwrap();
    let tls = TlsAcceptor::from(Arc::new(config));
    let listener = TcpListener::bind((AWAY, 0)).unwrap();
    listener.set_nonblocking(true).unwrap();
    let at = listener.local_addr().unwrap();
    thread::spawn(move || {
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .unwrap();
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(listener).unwrap();
            while let Ok((stream, _)) = listener.accept().await {
                let (tls, store) = (tls.clone(), store.clone());
                tokio::spawn(async move {
                    // Who does not trust the certificate hangs up.
                    let Ok(mut from) = tls.accept(stream).await else {
                        return;
                    };
                    let mut to = TcpStream::connect(store).await.unwrap();
                    let _ = copy_bidirectional(&mut from, &mut to).await;
                });
            }
        });
    });
    at
}

fn names(dir: &Path, database: &str, objects: SocketAddr, [for_rows, for_photos]: [&PathBuf; 2]) {
    let toml = format!(
        "[postgres]\nconnect = \"{database}\"\nca = \"{}\"\n\n\
         [bucket]\nendpoint = \"https://{objects}\"\nbucket = \"hub\"\naccess_key = \"test\"\n\
         secret_key = \"testtest\"\nca = \"{}\"\n",
        for_rows.display(),
        for_photos.display()
    );
    stores::write(dir, &toml);
}

#[test]
fn a_database_and_an_object_store_elsewhere_are_asked_over_tls_and_no_stranger_is() {
    let (ours, strangers) = (vouched(), vouched());
    let cluster = Cluster::begin();
    let database = served(&cluster, &ours);
    let objects = door(&ours);
    let mut yard = Yard::new();
    yard.hub.take().unwrap().stop();
    let [known, strange] = ["known.pem", "strange.pem"].map(|name| yard.beside(name));
    std::fs::write(&known, &ours.authority).unwrap();
    std::fs::write(&strange, &strangers.authority).unwrap();

    // Of another authority: nothing is asked of it.
    for cas in [[&strange, &known], [&known, &strange]] {
        names(yard.folder(), &database, objects, cas);
        let refusal = RunningHub::begin(&yard.settings).unwrap_err().to_string();
        assert!(refusal.contains("certificate"), "{refusal}");
    }

    names(yard.folder(), &database, objects, [&known, &known]);
    yard.hub = Some(RunningHub::begin(&yard.settings).unwrap());
    let (writer, reader) = (yard.device("Ridge"), yard.device("Ridge"));
    let waits = thread::spawn({
        let reader = reader.clone();
        move || reader.get("/v1/feed?wait=25").json()
    });
    writer.statuses(&[writer.text(JOB, 1, "{}")]);
    assert_eq!(waits.join().unwrap()["entries"][0]["seq"], 1);
    let photo = vec![7; 100_000];
    let path = format!("/v1/blobs/{}", sha256_hex(&photo));
    assert_eq!(writer.ask("PUT", &path, &photo).status, 201);
    assert!(reader.get(&path).body == photo);

    // As the database itself sees it: not one of its guests came without.
    let port = database.split("port=").nth(1).unwrap();
    let port = port.split(' ').next().unwrap();
    let beside = format!("{} port={port}", cluster.by_socket());
    let (with, without): (i64, i64) = stores::ask(&beside, async |client| {
        let sql = "SELECT count(*) FILTER (WHERE s.ssl), count(*) FILTER (WHERE NOT s.ssl)
                   FROM pg_stat_ssl s JOIN pg_stat_activity a USING (pid)
                   WHERE a.client_addr IS NOT NULL";
        let row = client.query_one(sql, &[]).await.unwrap();
        (row.get(0), row.get(1))
    });
    assert!(with > 0, "{with}");
    assert_eq!(without, 0);
}

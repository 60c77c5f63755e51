//! The large pair of stores: a PostgreSQL and an S3-compatible object store, both started on this
//! machine by `cargo xtask stores`, which says where they are. Each hub has tables of its own.

#![allow(dead_code, reason = "each pair is asked for its own part")]

use rusty_s3::{Bucket, Credentials, S3Action, UrlStyle};
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use std::time::Duration;
use tokio_postgres::{Client, NoTls};
use uuid::Uuid;

/// What `cargo xtask stores` says.
pub fn named(name: &str) -> String {
    std::env::var(name).unwrap_or_else(|_| {
        panic!(
            "{name} is not set: this suite runs over a PostgreSQL and an object store; begin both \
             with it by `cargo xtask stores cargo nextest run -p eavebook-hub`"
        )
    })
}

/// How to reach the database.
pub fn database() -> String {
    named("EAVEBOOK_TEST_POSTGRES")
}

/// Asks the database.
pub fn ask<T>(to: &str, work: impl AsyncFnOnce(&mut Client) -> T) -> T {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    runtime.block_on(async {
        let (mut client, connection) = tokio_postgres::connect(to, NoTls).await.unwrap();
        tokio::spawn(connection);
        work(&mut client).await
    })
}

/// Tables of their own, and a `hub.toml` that names them.
pub fn prepare(dir: &Path) {
    std::fs::create_dir_all(dir).unwrap();
    let (schema, to) = (format!("y{}", Uuid::new_v4().simple()), database());
    ask(&to, async |client| {
        let make = format!("CREATE SCHEMA {schema}");
        client.batch_execute(&make).await.unwrap();
    });
    let toml = format!(
        "[postgres]\nconnect = \"{to} options='-c search_path={schema}'\"\nconnections = 6\n\n\
         [bucket]\nendpoint = \"{}\"\nbucket = \"hub\"\naccess_key = \"test\"\n\
         secret_key = \"testtest\"\n",
        named("EAVEBOOK_TEST_BUCKET")
    );
    write(dir, &toml);
}

/// Writes `hub.toml` so that it is its owner's alone.
pub fn write(dir: &Path, toml: &str) {
    let file = dir.join("hub.toml");
    std::fs::write(&file, toml).unwrap();
    std::fs::set_permissions(&file, std::fs::Permissions::from_mode(0o600)).unwrap();
}

/// How the hub of a folder reaches its tables.
pub fn connect(dir: &Path) -> String {
    let toml = std::fs::read_to_string(dir.join("hub.toml")).unwrap();
    let line = toml
        .lines()
        .find(|line| line.starts_with("connect"))
        .unwrap();
    line.split('"').nth(1).unwrap().to_owned()
}

/// Makes all open codes older.
pub fn age_codes(dir: &Path, seconds: i64) {
    ask(&connect(dir), async |client| {
        let sql = "UPDATE codes SET ends = ends - $1";
        client.execute(sql, &[&seconds]).await.unwrap();
    });
}

/// All that is kept of rows, as text, each with where it lies.
pub fn kept(dir: &Path) -> Vec<(String, Vec<u8>)> {
    ask(&connect(dir), async |client| {
        let mut all = Vec::new();
        for table in [
            "hub",
            "companies",
            "devices",
            "codes",
            "entries",
            "conflicts",
            "blobs",
        ] {
            let sql = format!("SELECT t::text, convert_to(t::text, 'UTF8') FROM {table} t");
            for row in client.query(&sql, &[]).await.unwrap() {
                all.push((table.to_owned(), row.get(1)));
            }
        }
        assert!(!all.is_empty());
        all
    })
}

fn object(dir: &Path, sha256: &str) -> (Bucket, Credentials, String) {
    let endpoint = named("EAVEBOOK_TEST_BUCKET").parse().unwrap();
    let bucket = Bucket::new(endpoint, UrlStyle::Path, "hub", "us-east-1").unwrap();
    let hub: String = ask(&connect(dir), async |client| {
        let row = client.query_one("SELECT hub_id FROM hub", &[]).await;
        row.unwrap().get(0)
    });
    let name = format!("{hub}/blobs/1/{sha256}");
    (bucket, Credentials::new("test", "testtest"), name)
}

/// Puts other bytes in the place of a photo of the first company.
pub fn rot(dir: &Path, sha256: &str, bytes: &[u8]) {
    let (bucket, keys, name) = object(dir, sha256);
    let url = bucket
        .put_object(Some(&keys), &name)
        .sign(Duration::from_secs(60));
    ureq::put(url.as_str()).send(bytes).unwrap();
}

/// Takes the bytes of a photo of the first company away.
pub fn lose(dir: &Path, sha256: &str) {
    let (bucket, keys, name) = object(dir, sha256);
    let url = bucket
        .delete_object(Some(&keys), &name)
        .sign(Duration::from_secs(60));
    ureq::delete(url.as_str()).call().unwrap();
}

/// A database folds by itself.
pub fn is_folded(_: &Path) -> bool {
    true
}

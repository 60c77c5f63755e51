//! Rows in a PostgreSQL, which several hubs may share at once.
//!
//! The row of a company is held while its entries are numbered, so that numbers are dense and become
//! visible in their order: a reader of the feed misses none. A sequence would not do that.

mod answers;
mod line;
mod moves;
mod wake;

use crate::config;
use crate::error::HubError;
use crate::problem::Problem;
use crate::rows::wakes::Wakes;
use deadpool_postgres::{
    Manager, ManagerConfig, Object, Pool, PoolError, RecyclingMethod, Runtime, Timeouts,
};
use rustls::pki_types::CertificateDer;
use rustls::pki_types::pem::PemObject;
use std::future::Future;
use std::sync::Arc;
use std::time::Duration;
use tokio::runtime::Handle;
use tokio_postgres::config::{Host, SslMode};
use tokio_postgres::{Config, NoTls};
use tokio_postgres_rustls::MakeRustlsConnect;
use uuid::Uuid;

/// The version of the tables.
const VERSION: i32 = 1;

/// Held while the tables are made: several hubs may begin at once. `EHUB` in four letters.
const MAKING: i64 = 0x4548_5542;

/// How long to wait for a connection.
const PATIENCE: Duration = Duration::from_secs(10);

/// What every connection is set to. A commit is on the disk when it is answered; a transaction that
/// hangs lets go of its company.
const SETTINGS: &str = "-c synchronous_commit=on -c statement_timeout=5000 \
                        -c idle_in_transaction_session_timeout=10000 -c client_encoding=UTF8";

/// The database, held open.
#[derive(Debug)]
pub(crate) struct Postgres {
    pool: Pool,
    /// Who waits for a database does so here.
    runtime: Handle,
    wakes: Arc<Wakes>,
    lines: line::Lines,
    /// Companies that other hubs are to be told of.
    news: tokio::sync::mpsc::UnboundedSender<i64>,
}

impl Postgres {
    /// Opens the database and makes the tables where there are none. `pin` is that of the key in the
    /// hub's folder: all who share a database share it.
    ///
    /// # Errors
    /// `Rows`, `OtherKey`, `NewerRows`.
    pub(crate) fn open(
        named: &config::Postgres,
        pin: &str,
        runtime: &Handle,
    ) -> Result<Postgres, HubError> {
        let rows_error = |why: String| HubError::Rows { why };
        let mut to: Config = named
            .connect
            .parse()
            .map_err(|why| rows_error(format!("`connect` in hub.toml cannot be read: {why}")))?;
        let settings = match to.get_options() {
            Some(more) => format!("{SETTINGS} {more}"),
            None => SETTINGS.to_owned(),
        };
        to.options(settings).connect_timeout(PATIENCE);
        let local = to.get_hosts().iter().all(|host| match host {
            Host::Tcp(name) => ["localhost", "127.0.0.1", "::1"].contains(&name.as_str()),
            #[cfg(unix)]
            Host::Unix(_) => true,
        });
        let wakes = Arc::new(Wakes::default());
        let (news, heard) = tokio::sync::mpsc::unbounded_channel();
        let pool = if local {
            to.ssl_mode(SslMode::Disable);
            runtime.spawn(wake::listen(to.clone(), NoTls, Arc::clone(&wakes), heard));
            pool(named, Manager::from_config(to, NoTls, recycling()))
        } else {
            to.ssl_mode(SslMode::Require);
            let tls = tls(named).map_err(rows_error)?;
            runtime.spawn(wake::listen(
                to.clone(),
                tls.clone(),
                Arc::clone(&wakes),
                heard,
            ));
            pool(named, Manager::from_config(to, tls, recycling()))
        }
        .map_err(rows_error)?;
        let postgres = Postgres {
            pool,
            runtime: runtime.clone(),
            wakes,
            lines: line::Lines::default(),
            news,
        };
        postgres.make(pin)?;
        Ok(postgres)
    }

    /// Makes the tables where there are none, and looks whether they and the database are fit.
    fn make(&self, pin: &str) -> Result<(), HubError> {
        let rows_error = |why: tokio_postgres::Error| HubError::Rows {
            why: describe(&why),
        };
        let (hub_id, epoch) = (Uuid::new_v4().to_string(), Uuid::new_v4().to_string());
        self.runtime.block_on(async {
            let mut client = self.pool.get().await.map_err(|why| HubError::Rows {
                why: unreached(&why),
            })?;
            let fsync: String = client
                .query_one("SHOW fsync", &[])
                .await
                .and_then(|row| row.try_get(0))
                .map_err(rows_error)?;
            if fsync != "on" {
                let why = "its fsync is off, so what it says is kept may be lost with the power; \
                           turn it on in postgresql.conf";
                return Err(HubError::Rows {
                    why: why.to_owned(),
                });
            }
            let change = client.transaction().await.map_err(rows_error)?;
            change
                .execute("SELECT pg_advisory_xact_lock($1)", &[&MAKING])
                .await
                .map_err(rows_error)?;
            let exists: bool = change
                .query_one("SELECT to_regclass('hub') IS NOT NULL", &[])
                .await
                .and_then(|row| row.try_get(0))
                .map_err(rows_error)?;
            if !exists {
                change
                    .batch_execute(include_str!("schema.sql"))
                    .await
                    .map_err(rows_error)?;
                let sql = "INSERT INTO hub (one, version, hub_id, epoch, pin)
                           VALUES (1, $1, $2, $3, $4)";
                change
                    .execute(sql, &[&VERSION, &hub_id, &epoch, &pin])
                    .await
                    .map_err(rows_error)?;
            }
            let row = change
                .query_one("SELECT version, pin FROM hub", &[])
                .await
                .map_err(rows_error)?;
            let found: i32 = row.try_get(0).map_err(rows_error)?;
            let theirs: String = row.try_get(1).map_err(rows_error)?;
            change.commit().await.map_err(rows_error)?;
            if found > VERSION {
                return Err(HubError::NewerRows {
                    found: i64::from(found),
                    known: i64::from(VERSION),
                });
            }
            if theirs != pin {
                return Err(HubError::OtherKey);
            }
            Ok(())
        })
    }

    /// Waits for an answer. Not on a thread that listens.
    fn wait<T>(&self, work: impl Future<Output = Result<T, QueryError>>) -> Result<T, Problem> {
        Ok(self.runtime.block_on(work)?)
    }

    async fn client(&self) -> Result<Object, QueryError> {
        self.pool
            .get()
            .await
            .map_err(|why| QueryError::Pool(why.to_string()))
    }
}

fn recycling() -> ManagerConfig {
    ManagerConfig {
        recycling_method: RecyclingMethod::Fast,
    }
}

fn pool(named: &config::Postgres, manager: Manager) -> Result<Pool, String> {
    Pool::builder(manager)
        .max_size(named.connections.max(1))
        .timeouts(Timeouts {
            wait: Some(PATIENCE),
            create: Some(PATIENCE),
            recycle: Some(PATIENCE),
        })
        .runtime(Runtime::Tokio1)
        .build()
        .map_err(|why| why.to_string())
}

/// TLS to a database on another machine: its certificate must be of a known authority.
fn tls(named: &config::Postgres) -> Result<MakeRustlsConnect, String> {
    let shown = named.ca.display();
    let mut roots = rustls::RootCertStore::empty();
    let file = CertificateDer::pem_file_iter(&named.ca)
        .map_err(|why| format!("the file of authorities {shown} cannot be read ({why})"))?;
    roots.add_parsable_certificates(file.flatten());
    if roots.is_empty() {
        return Err(format!("the file of authorities {shown} holds none"));
    }
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = rustls::ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(|why| why.to_string())?
        .with_root_certificates(roots)
        .with_no_client_auth();
    Ok(MakeRustlsConnect::new(config))
}

/// Why there is no connection: a certificate of a stranger is named as that.
fn unreached(why: &PoolError) -> String {
    if let PoolError::Backend(why) = why {
        describe(why)
    } else {
        why.to_string()
    }
}

/// What the database says, with its reason.
fn describe(why: &tokio_postgres::Error) -> String {
    match why.as_db_error() {
        Some(db) => db.message().to_owned(),
        None => {
            let reason = std::error::Error::source(why);
            reason.map_or_else(|| why.to_string(), |reason| format!("{why}: {reason}"))
        }
    }
}

/// Why a question was not answered.
enum QueryError {
    Database(tokio_postgres::Error),
    Pool(String),
    Problem(Problem),
}

impl From<tokio_postgres::Error> for QueryError {
    fn from(why: tokio_postgres::Error) -> QueryError {
        QueryError::Database(why)
    }
}

impl From<Problem> for QueryError {
    fn from(why: Problem) -> QueryError {
        QueryError::Problem(why)
    }
}

impl From<QueryError> for Problem {
    fn from(why: QueryError) -> Problem {
        match why {
            QueryError::Problem(problem) => problem,
            QueryError::Pool(why) => Problem::database(&why),
            QueryError::Database(why) => {
                if why.code() == Some(&tokio_postgres::error::SqlState::DISK_FULL) {
                    crate::problem::full()
                } else {
                    Problem::database(&describe(&why))
                }
            }
        }
    }
}

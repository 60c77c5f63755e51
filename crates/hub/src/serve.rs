//! Listening: TLS or plain, one task a connection, an end that loses nothing.

use crate::error::HubError;
use crate::limits::{Rates, STALL};
use crate::log::Log;
use crate::metrics::{Metrics, add};
use crate::place::Place;
use crate::{Hub, routes, tls, token};
use axum::Router;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::{GracefulShutdown, Watcher};
use hyper_util::service::TowerToHyperService;
use serde_json::json;
use std::io::Write;
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, SystemTime};
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::{TcpListener, TcpStream};
use tokio::runtime::Runtime;
use tokio::sync::{Semaphore, watch};
use tokio_rustls::TlsAcceptor;

/// Connections at once; the next ones wait to be accepted.
const CONNECTIONS: usize = 1024;
/// How long requests under way may take when the hub is to stop.
const LAST_WAIT: Duration = Duration::from_secs(10);
/// How long a TLS handshake may take.
const HANDSHAKE: Duration = Duration::from_secs(10);
/// Bytes of all headers of one request.
const HEADERS: usize = 64 << 10;

/// What a hub is begun with.
#[derive(Clone, Debug)]
pub struct Settings {
    /// Address and port; port 0 takes any that is free.
    pub listen: String,
    /// Its folder; it is made.
    pub dir: PathBuf,
    /// TLS or plain.
    pub transport: Transport,
    /// By which address devices reach it, where that is another than the one it listens at.
    pub url: Option<String>,
    /// Requests a second that one device may make.
    pub per_second: u32,
    /// Uploads at once of one device.
    pub uploads: u32,
    /// Whether it tells on stderr what it does.
    pub log: LogTarget,
}

impl Settings {
    /// The usual settings for a folder.
    pub fn new(dir: &Path) -> Settings {
        Settings {
            listen: "127.0.0.1:0".to_owned(),
            dir: dir.to_path_buf(),
            transport: Transport::Tls,
            url: None,
            per_second: 20,
            uploads: 4,
            log: LogTarget::Nothing,
        }
    }
}

/// What lies under HTTP.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Transport {
    /// TLS with the hub's own key.
    Tls,
    /// Nothing: behind a proxy that does TLS, or for a look.
    Plain,
}

/// Where log lines go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LogTarget {
    /// To stderr.
    Stderr,
    /// Nowhere.
    Nothing,
}

/// A hub that listens. Dropped without [`RunningHub::stop`] it ends as if it were killed: what it
/// acknowledged is on its disk.
#[derive(Debug)]
pub struct RunningHub {
    /// `https://127.0.0.1:7443`.
    pub url: String,
    /// SHA-256 of its public key in hex.
    pub pin: String,
    /// Where it listens.
    pub address: SocketAddr,
    hub: Arc<Hub>,
    stop: watch::Sender<bool>,
    listens: tokio::task::JoinHandle<()>,
    runtime: Runtime,
}

impl RunningHub {
    /// Opens the hub of a folder, or begins one there, and listens.
    ///
    /// # Errors
    /// `InUse`, `Config`, `Newer`, `Damaged`, `Unfit`, `Database`, `Rows`, `Bucket`, `OtherKey`,
    /// `File`, `Key`, `Listen`, `System`.
    pub fn begin(settings: &Settings) -> Result<RunningHub, HubError> {
        let system = |why: std::io::Error| HubError::System(why.to_string());
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            .enable_all()
            .build()
            .map_err(system)?;
        let Place { rows, blobs, lock } = Place::open(&settings.dir, runtime.handle())?;
        blobs
            .sweep(SystemTime::now())
            .map_err(HubError::file(&settings.dir))?;
        let pin = tls::pin(&settings.dir)?;
        let admin = admin(&settings.dir)?;
        let listener = runtime
            .block_on(TcpListener::bind(&settings.listen))
            .map_err(|why| HubError::Listen {
                address: settings.listen.clone(),
                why,
            })?;
        let address = listener.local_addr().map_err(system)?;
        let (scheme, over) = match settings.transport {
            Transport::Plain => ("http", None),
            Transport::Tls => {
                let config = tls::config(&settings.dir, &address.ip().to_string())?;
                ("https", Some(TlsAcceptor::from(config)))
            }
        };
        let url = format!("{scheme}://{address}");
        let shown = settings.url.clone().unwrap_or_else(|| url.clone());
        rows.reached_at(&shown)
            .map_err(|why| HubError::Refused(why.detail().to_owned()))?;
        let (stop, stopping) = watch::channel(false);
        let hub = Arc::new(Hub {
            rows,
            blobs,
            _lock: lock,
            rates: Rates::new(settings.per_second, settings.uploads),
            metrics: Metrics::default(),
            log: match settings.log {
                LogTarget::Stderr => Log::begin(),
                LogTarget::Nothing => Log::none(),
            },
            admin,
            per_second: settings.per_second,
            uploads: settings.uploads,
            stopping: stopping.clone(),
        });
        let router = routes::router(Arc::clone(&hub));
        let listens = runtime.spawn(listen(listener, over, router, Arc::clone(&hub), stopping));
        hub.log.tell("listening", json!({ "url": url }));
        Ok(RunningHub {
            url,
            pin,
            address,
            hub,
            stop,
            listens,
            runtime,
        })
    }

    /// Takes no more, lets what is under way end, closes what is kept.
    pub fn stop(self) {
        let _ = self.stop.send(true);
        let _ = self.runtime.block_on(self.listens);
        self.hub.rows.close();
        self.hub.log.tell("stopped", json!({}));
        self.runtime.shutdown_timeout(Duration::from_secs(1));
    }
}

/// Serves until the process is asked to end (SIGTERM, or Ctrl-C). Prints one line when it listens:
/// `listening on https://127.0.0.1:P pin HEX`.
///
/// # Errors
/// Those of [`RunningHub::begin`].
pub fn serve(settings: &Settings) -> Result<(), HubError> {
    let running = RunningHub::begin(settings)?;
    let system = |why: std::io::Error| HubError::System(why.to_string());
    // Before the line: who reads it may send the signal at once.
    let signals = running
        .runtime
        .block_on(async { StopSignals::new() })
        .map_err(system)?;
    let mut out = std::io::stdout().lock();
    writeln!(out, "listening on {} pin {}", running.url, running.pin)
        .and_then(|()| out.flush())
        .map_err(system)?;
    drop(out);
    running.runtime.block_on(signals.ended());
    running.stop();
    Ok(())
}

/// The signals that ask a process to end.
struct StopSignals {
    #[cfg(unix)]
    terminate: tokio::signal::unix::Signal,
}

impl StopSignals {
    fn new() -> std::io::Result<StopSignals> {
        Ok(StopSignals {
            #[cfg(unix)]
            terminate: tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate())?,
        })
    }

    #[cfg(unix)]
    async fn ended(mut self) {
        tokio::select! {
            _ = self.terminate.recv() => {}
            _ = tokio::signal::ctrl_c() => {}
        }
    }

    #[cfg(not(unix))]
    async fn ended(self) {
        let _ = tokio::signal::ctrl_c().await;
    }
}

/// The keeper's token: SHA-256 of the file that only the keeper can read, drawn where there is none.
fn admin(dir: &Path) -> Result<[u8; 32], HubError> {
    let path = dir.join("admin.token");
    if !path.exists() {
        let secret = crate::hex(&token::random::<32>()?);
        tls::write_secret(&path, format!("adm_{secret}\n").as_bytes())?;
    }
    let text = std::fs::read_to_string(&path).map_err(HubError::file(&path))?;
    Ok(token::sha256(text.trim().as_bytes()))
}

async fn listen(
    listener: TcpListener,
    over: Option<TlsAcceptor>,
    router: Router,
    hub: Arc<Hub>,
    mut stopping: watch::Receiver<bool>,
) {
    let graceful = GracefulShutdown::new();
    let room = Arc::new(Semaphore::new(CONNECTIONS));
    loop {
        let accepted = tokio::select! {
            accepted = accept(&listener, &room) => accepted,
            _ = stopping.changed() => break,
        };
        let Ok((stream, place)) = accepted else {
            // No file handles left, or a connection that ended before it began.
            tokio::time::sleep(Duration::from_millis(50)).await;
            continue;
        };
        add(&hub.metrics.connections, 1);
        let (over, router, watcher) = (over.clone(), router.clone(), graceful.watcher());
        tokio::spawn(async move {
            let _place = place;
            match over {
                None => talk(stream, router, watcher).await,
                Some(over) => {
                    let shaken = tokio::time::timeout(HANDSHAKE, over.accept(stream)).await;
                    if let Ok(Ok(stream)) = shaken {
                        talk(stream, router, watcher).await;
                    }
                }
            }
        });
    }
    drop(listener);
    // What is still under way then is cut off: nothing of it was acknowledged.
    let _ = tokio::time::timeout(LAST_WAIT, graceful.shutdown()).await;
}

async fn accept(
    listener: &TcpListener,
    room: &Arc<Semaphore>,
) -> std::io::Result<(TcpStream, tokio::sync::OwnedSemaphorePermit)> {
    let place = Arc::clone(room)
        .acquire_owned()
        .await
        .map_err(std::io::Error::other)?;
    let (stream, _) = listener.accept().await?;
    // Small answers are not to wait for more.
    let _ = stream.set_nodelay(true);
    Ok((stream, place))
}

async fn talk(
    stream: impl AsyncRead + AsyncWrite + Unpin + 'static,
    router: Router,
    watcher: Watcher,
) {
    let connection = hyper::server::conn::http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(STALL)
        .max_buf_size(HEADERS)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(router));
    // A connection that breaks off is the other side's to begin again.
    let _ = watcher.watch(connection).await;
}

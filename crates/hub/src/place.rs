//! A hub's folder, and where it says that rows and photos are kept.

use crate::blobs::Blobs;
use crate::blobs::bucket::Bucket;
use crate::blobs::folder::Folder;
use crate::config::Config;
use crate::error::HubError;
use crate::problem::Problem;
use crate::rows::postgres::Postgres;
use crate::rows::sqlite::Sqlite;
use crate::rows::{Photo, Rows, sqlite};
use crate::tls;
use std::fs::{File, OpenOptions, TryLockError};
use std::io::Read;
use std::path::Path;
use tokio::runtime::{Handle, Runtime};

const LOCK: &str = "hub.lock";

/// What a hub that serves holds open.
pub(crate) struct Place {
    pub(crate) rows: Box<dyn Rows>,
    pub(crate) blobs: Box<dyn Blobs>,
    /// One process serves a folder; hubs that share a database have one each.
    pub(crate) lock: File,
}

impl Place {
    /// Opens the hub of a folder, or begins one there.
    ///
    /// # Errors
    /// `InUse`, and why a store does not open.
    pub(crate) fn open(dir: &Path, runtime: &Handle) -> Result<Place, HubError> {
        std::fs::create_dir_all(dir).map_err(HubError::file(dir))?;
        let lock = take_lock(dir)?;
        let config = Config::from_folder(dir)?;
        let rows: Box<dyn Rows> = match &config.postgres {
            None => Box::new(Sqlite::begin(dir)?),
            Some(named) => Box::new(Postgres::open(named, &tls::pin(dir)?, runtime)?),
        };
        let blobs = blobs(dir, &config, rows.as_ref())?;
        Ok(Place { rows, blobs, lock })
    }
}

/// The store of photos of a hub.
fn blobs(dir: &Path, config: &Config, rows: &dyn Rows) -> Result<Box<dyn Blobs>, HubError> {
    Ok(match &config.bucket {
        None => Box::new(Folder::new(dir)),
        Some(named) => {
            let hub = rows.identity().map_err(|why| refused(&why))?.hub_id;
            let bucket = Bucket::open(named, &hub).map_err(|why| HubError::Bucket { why })?;
            Box::new(bucket)
        }
    })
}

fn refused(why: &Problem) -> HubError {
    HubError::Refused(why.detail().to_owned())
}

/// A hub as a command sees it, which may be serving meanwhile.
pub(crate) struct HubHandle {
    rows: Box<dyn Rows>,
    blobs: Box<dyn Blobs>,
    /// Where a database is waited for; a file needs none.
    _runtime: Option<Runtime>,
}

impl HubHandle {
    /// Opens the hub of a folder, which must be there.
    ///
    /// # Errors
    /// `NoHub`, and why a store does not open.
    pub(crate) fn open(dir: &Path) -> Result<HubHandle, HubError> {
        let config = Config::from_folder(dir)?;
        let (rows, runtime): (Box<dyn Rows>, _) = match &config.postgres {
            None => (Box::new(Sqlite::open_beside(dir)?), None),
            Some(named) => {
                let runtime = runtime()?;
                let rows = Postgres::open(named, &tls::pin(dir)?, runtime.handle())?;
                (Box::new(rows), Some(runtime))
            }
        };
        let blobs = blobs(dir, &config, rows.as_ref())?;
        Ok(HubHandle {
            rows,
            blobs,
            _runtime: runtime,
        })
    }

    /// Asks the rows.
    ///
    /// # Errors
    /// `Refused`.
    pub(crate) fn run<T>(
        &self,
        ask: impl FnOnce(&dyn Rows) -> Result<T, Problem>,
    ) -> Result<T, HubError> {
        ask(self.rows.as_ref()).map_err(|why| refused(&why))
    }

    /// The photos.
    pub(crate) fn blobs(&self) -> &dyn Blobs {
        self.blobs.as_ref()
    }
}

/// Puts a hub that was restored into the folder `plain` where the `hub.toml` there says: photos
/// first, so that no row speaks of what is not there.
///
/// # Errors
/// Why a store does not open or take it.
pub(crate) fn spread(plain: &Path, photos: &[Photo]) -> Result<(), HubError> {
    let config = Config::from_folder(plain)?;
    let file = |why| HubError::file(plain)(why);
    if let Some(named) = &config.bucket {
        let handle = Sqlite::open_beside(plain)?;
        let hub = handle.identity().map_err(|why| refused(&why))?.hub_id;
        handle.close();
        let bucket = Bucket::open(named, &hub).map_err(|why| HubError::Bucket { why })?;
        let folder = Folder::new(plain);
        for photo in photos {
            let mut bytes = Vec::new();
            folder
                .read(photo, 0, photo.size)
                .and_then(|mut from| from.read_to_end(&mut bytes))
                .and_then(|_| bucket.put(photo.company, &photo.sha256, &bytes))
                .map_err(file)?;
        }
        if !photos.is_empty() {
            std::fs::remove_dir_all(plain.join("blobs")).map_err(file)?;
        }
    }
    if let Some(named) = &config.postgres {
        let runtime = runtime()?;
        let rows = Postgres::open(named, &tls::pin(plain)?, runtime.handle())?;
        let conn = sqlite::connect_to(plain)?;
        rows.bring(&conn).map_err(|why| refused(&why))?;
        rows.close();
        drop(conn);
        for name in [
            sqlite::FILE.to_owned(),
            format!("{}-wal", sqlite::FILE),
            format!("{}-shm", sqlite::FILE),
        ] {
            match std::fs::remove_file(plain.join(name)) {
                Err(why) if why.kind() != std::io::ErrorKind::NotFound => return Err(file(why)),
                Ok(()) | Err(_) => {}
            }
        }
    }
    Ok(())
}

impl Drop for HubHandle {
    fn drop(&mut self) {
        self.rows.close();
    }
}

fn runtime() -> Result<Runtime, HubError> {
    tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .map_err(|why| HubError::System(why.to_string()))
}

/// One process at a time: a lock of the operating system, which goes with its holder.
fn take_lock(dir: &Path) -> Result<File, HubError> {
    let path = dir.join(LOCK);
    let file = OpenOptions::new()
        .write(true)
        .create(true)
        .truncate(false)
        .open(&path)
        .map_err(HubError::file(&path))?;
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => Err(HubError::InUse {
            dir: dir.display().to_string(),
        }),
        Err(TryLockError::Error(why)) => Err(HubError::file(&path)(why)),
    }
}

//! This device: who it is, the last count and stamp it gave, its settings.

use crate::error::{StoreError, StoreFolder};
use crate::{Store, entries};
use eavebook_core::book::clock::Hlc;
use rusqlite::{Connection, OptionalExtension, Row, params};
use uuid::Uuid;

/// This device in this book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Device {
    /// Which.
    pub id: Uuid,
    /// Which life of its store: a new one is drawn when the book was restored or copied.
    pub incarnation: Uuid,
    /// "this phone".
    pub name: String,
    /// Who books on it.
    pub author: String,
    /// Settings as JSON text; the store does not read it.
    pub settings: String,
    /// The last count given to an entry.
    pub dseq: u64,
    /// The last stamp given to an entry.
    pub hlc: Hlc,
}

/// Count and stamp of the next entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn {
    /// Count in this life of the store.
    pub dseq: u64,
    /// Later than every stamp before.
    pub hlc: Hlc,
}

impl Store {
    /// This device, once [`Store::set_device`] has named it.
    pub fn device(&self) -> Option<&Device> {
        self.device.as_ref()
    }

    /// Names this device, or names it anew; durable.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn set_device(&mut self, device: Device) -> Result<(), StoreError> {
        let set = || -> rusqlite::Result<()> {
            let change = self.entries.unchecked_transaction()?;
            change.execute(
                "UPDATE devices SET this = 0 WHERE this = 1 AND id <> ?1",
                [device.id.to_string()],
            )?;
            change.execute(
                "INSERT INTO devices (id, incarnation, name, author, this, dseq, hlc, settings)
                 VALUES (?1, ?2, ?3, ?4, 1, ?5, ?6, ?7)
                 ON CONFLICT (id) DO UPDATE SET incarnation = ?2, name = ?3, author = ?4, this = 1,
                     dseq = ?5, hlc = ?6, settings = ?7",
                params![
                    device.id.to_string(),
                    device.incarnation.to_string(),
                    device.name,
                    device.author,
                    device.dseq,
                    device.hlc.to_string(),
                    device.settings,
                ],
            )?;
            change.commit()
        };
        set().map_err(|why| self.sqlite(why))?;
        self.device = Some(device);
        Ok(())
    }

    /// Keeps the settings of this device; durable.
    ///
    /// # Errors
    /// `NoDevice`, `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn keep_settings(&mut self, settings: &str) -> Result<(), StoreError> {
        let mut device = self.named()?.clone();
        settings.clone_into(&mut device.settings);
        self.set_device(device)
    }

    /// Count and stamp for an entry about to be booked at a wall time, milliseconds since 1970.
    /// They are spent, whether or not it is then booked; the count may have gaps.
    ///
    /// # Errors
    /// `NoDevice`.
    pub fn next_turn(&mut self, wall_ms: u64) -> Result<Turn, StoreError> {
        let dir = self.root.dir();
        let device = self.device.as_mut().ok_or(StoreError::NoDevice { dir })?;
        device.dseq += 1;
        device.hlc = device.hlc.tick(wall_ms);
        Ok(Turn {
            dseq: device.dseq,
            hlc: device.hlc,
        })
    }

    pub(crate) fn named(&self) -> Result<&Device, StoreError> {
        self.device.as_ref().ok_or_else(|| StoreError::NoDevice {
            dir: self.root.dir(),
        })
    }
}

/// The row of this device, if it has one.
pub(crate) fn this_device(
    root: &StoreFolder,
    conn: &Connection,
) -> Result<Option<Device>, StoreError> {
    conn.query_row(
        "SELECT id, incarnation, name, author, settings, dseq, hlc FROM devices WHERE this = 1",
        [],
        device_of,
    )
    .optional()
    .map_err(|why| root.sqlite(why))
}

fn device_of(row: &Row<'_>) -> rusqlite::Result<Device> {
    Ok(Device {
        id: entries::parsed(row, 0)?,
        incarnation: entries::parsed(row, 1)?,
        name: row.get(2)?,
        author: row.get(3)?,
        settings: row.get(4)?,
        dseq: row.get(5)?,
        hlc: entries::parsed(row, 6)?,
    })
}

//! Why a command about a hub did nothing, in one sentence that names the thing and the remedy.

use std::io;
use std::path::Path;

/// Why a hub could not be begun, asked, copied or brought back.
#[derive(Debug, thiserror::Error)]
pub enum HubError {
    /// Another process serves this folder.
    #[error("another hub serves {dir}: stop that one, or name another --dir")]
    InUse {
        /// The folder.
        dir: String,
    },
    /// No hub was ever begun there.
    #[error(
        "there is no hub in {dir}: begin one with `eavebook hub --listen 127.0.0.1:0 --dir {dir}`"
    )]
    NoHub {
        /// The folder.
        dir: String,
    },
    /// Written by a newer version.
    #[error(
        "the hub in {dir} was written by a newer eavebook (version {found}, this one reads up to \
         {known}): update this program; nothing was changed"
    )]
    Newer {
        /// The folder.
        dir: String,
        /// Version of the hub's file.
        found: i64,
        /// Newest version known here.
        known: i64,
    },
    /// The disk or SQLite does not do what durability needs.
    #[error(
        "the disk that holds {dir} cannot keep a hub ({setting} stays {found}, not {wanted}): \
         name a folder on a disk of this machine"
    )]
    Unfit {
        /// The folder.
        dir: String,
        /// Which setting.
        setting: &'static str,
        /// What it must be.
        wanted: String,
        /// What it is.
        found: String,
    },
    /// The database does not hold together.
    #[error(
        "the hub in {dir} is damaged ({what}): copy the folder whole, then restore a backup into \
         another one; devices send again what it lacks"
    )]
    Damaged {
        /// The folder.
        dir: String,
        /// What was found.
        what: String,
    },
    /// The database failed.
    #[error(
        "the database of the hub in {dir} failed ({why}): look for space on its disk and do it again"
    )]
    Database {
        /// The folder.
        dir: String,
        /// What SQLite says.
        why: rusqlite::Error,
    },
    /// `hub.toml` cannot be followed.
    #[error(
        "{path} cannot be followed ({why}): correct it, or take it away to keep all in the folder"
    )]
    Config {
        /// The file.
        path: String,
        /// What is wrong.
        why: String,
    },
    /// The PostgreSQL that `hub.toml` names does not serve.
    #[error(
        "the database of hub.toml does not serve ({why}): look whether it runs and lets this user in"
    )]
    Rows {
        /// What it says.
        why: String,
    },
    /// The tables are of a newer version.
    #[error(
        "the database of hub.toml was written by a newer eavebook (version {found}, this one reads \
         up to {known}): update this program; nothing was changed"
    )]
    NewerRows {
        /// Version of the tables.
        found: i64,
        /// Newest version known here.
        known: i64,
    },
    /// The hub's key is not the one that the database's other hubs have.
    #[error(
        "the database of hub.toml belongs to a hub with another key, which its devices know it by: \
         copy tls.key and admin.token from the folder of that hub into this one"
    )]
    OtherKey,
    /// The bucket that `hub.toml` names does not serve.
    #[error(
        "the object store of hub.toml does not serve ({why}): look whether it runs and lets these keys in"
    )]
    Bucket {
        /// What was tried.
        why: String,
    },
    /// A store refused what a command asked.
    #[error("{0}")]
    Refused(String),
    /// A file failed.
    #[error(
        "{path} cannot be read or written ({why}): look at its folder, its permissions and the space on its disk"
    )]
    File {
        /// Which.
        path: String,
        /// What the system says.
        why: io::Error,
    },
    /// The key for TLS is no key.
    #[error(
        "{path} holds no key for TLS ({why}): put the key back from a backup, or move the file \
         away; with a new key every device must be paired anew"
    )]
    Key {
        /// The file.
        path: String,
        /// What is wrong.
        why: String,
    },
    /// The address cannot be listened at.
    #[error("nothing can listen at {address} ({why}): name another --listen, or port 0 for any")]
    Listen {
        /// As given.
        address: String,
        /// What the system says.
        why: io::Error,
    },
    /// The machine gives no threads, randomness or output.
    #[error("the hub cannot run ({0}): close other programs and begin it again")]
    System(String),
    /// A link needs the address.
    #[error("the hub in {dir} has never listened, so no link can be made: begin it first")]
    NoAddress {
        /// The folder.
        dir: String,
    },
    /// A company or author without a name, or with one that cannot be shown.
    #[error("\"{0}\" is no name: give 1 to 200 signs in one line")]
    Name(String),
    /// No such device.
    #[error("no device {0} is paired here: `eavebook hub devices` lists them")]
    NoDevice(String),
    /// The place for the restored hub is taken.
    #[error(
        "{dir} is not empty: a hub is restored into a new folder, so that nothing is written over"
    )]
    NotEmpty {
        /// The folder.
        dir: String,
    },
    /// The place for the backup is taken.
    #[error("{file} is there already: name a file that is not, so that no backup is written over")]
    BackupThere {
        /// The file.
        file: String,
    },
    /// The backup is not what was written.
    #[error("the backup {file} is damaged ({what}): take another copy; nothing was restored")]
    BackupDamaged {
        /// The file.
        file: String,
        /// What was found.
        what: String,
    },
    /// A photo of the hub is not as it was acknowledged.
    #[error(
        "photo {sha256} of the hub in {dir} is not whole ({what}): no backup was made; bring the photo back from an older one"
    )]
    PhotoDamaged {
        /// The folder.
        dir: String,
        /// Which.
        sha256: String,
        /// What was found.
        what: String,
    },
}

impl HubError {
    pub(crate) fn file(path: &Path) -> impl FnOnce(io::Error) -> HubError {
        let path = path.display().to_string();
        move |why| HubError::File { path, why }
    }

    pub(crate) fn database(dir: &Path) -> impl Fn(rusqlite::Error) -> HubError {
        let dir = dir.display().to_string();
        move |why| HubError::Database {
            dir: dir.clone(),
            why,
        }
    }
}

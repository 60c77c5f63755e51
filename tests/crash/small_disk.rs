//! A disk of a few megabytes that can really be filled.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

/// A disk of its own in memory, while this lives.
pub struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    /// Of a size that `mount` understands, as `2m`. None: this user may not mount.
    pub fn mount(size: &str) -> Option<SmallDisk> {
        let dir = tempfile::tempdir().unwrap();
        let mount = Command::new("mount")
            .args(["-t", "tmpfs", "-o", &format!("size={size}"), "tmpfs"])
            .arg(dir.path())
            .stderr(Stdio::null())
            .status();
        mount
            .is_ok_and(|status| status.success())
            .then(|| SmallDisk(dir))
    }

    pub fn path(&self) -> &Path {
        self.0.path()
    }

    /// Leaves no room.
    pub fn fill(&self) {
        self.fill_but(0);
    }

    /// Leaves room for so many bytes, to a page.
    pub fn fill_but(&self, room: u64) {
        let path = self.path().join("other");
        let mut file = std::fs::File::create(&path).unwrap();
        let page = [1_u8; 4096];
        let mut filled = 0;
        while file.write_all(&page).is_ok() {
            filled += 4096;
        }
        file.set_len(filled - room).unwrap();
    }

    /// All of it is there again.
    pub fn free(&self) {
        std::fs::remove_file(self.0.path().join("other")).unwrap();
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).status();
    }
}

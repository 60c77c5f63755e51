//! Backup and restore.

use crate::stores;
use crate::talk::Yard;
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::{HubError, RunningHub, Settings, backup, restore};
use serde_json::json;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

#[test]
fn a_restored_hub_has_entries_photos_tokens_and_key_and_another_epoch() {
    let mut yard = Yard::new();
    let mut device = yard.device("Ridge");
    device.statuses(&[device.text(JOB, 1, "{\"a\":\u{0}1}")]);
    let photo = b"a photo".to_vec();
    let path = format!("/v1/blobs/{}", sha256_hex(&photo));
    assert_eq!(device.ask("PUT", &path, &photo).status, 201);
    let (feed, before) = (device.get("/v1/feed").text(), device.hello());
    let file = yard.beside("monday.hub");
    // While it runs.
    let held = backup(yard.folder(), &file).unwrap();
    assert_eq!((held.entries, held.photos), (1, 1));
    let (pin, epoch) = (yard.hub.as_ref().unwrap().pin.clone(), device.epoch.clone());
    // Booked after the backup: the restored hub has it not.
    device.statuses(&[device.text(JOB, 2, "{}")]);
    yard.hub.take().unwrap().stop();

    let back = yard.beside("back");
    let answer = restore(&file, &back).unwrap();
    assert_eq!(answer.held, held);
    assert_ne!(answer.epoch, epoch);
    yard.settings = Settings {
        dir: back,
        ..yard.settings.clone()
    };
    yard.hub = Some(RunningHub::begin(&yard.settings).unwrap());
    assert_eq!(yard.hub.as_ref().unwrap().pin, pin);
    device.at = yard.address();
    let after = device.hello();
    assert_eq!(after["epoch"], json!(answer.epoch));
    for same in ["hub_id", "company", "digest"] {
        assert_eq!(after[same], before[same], "{same}");
    }
    assert_eq!(
        device.get("/v1/feed").text().replace(&answer.epoch, &epoch),
        feed
    );
    assert!(device.get(&path).body == photo);
    let old = device.get(&format!("/v1/feed?after={epoch}.2"));
    assert_eq!((old.status, old.code()), (409, "epoch".to_owned()));
}

#[test]
fn a_backup_with_any_byte_changed_or_cut_is_refused_and_nothing_is_made() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    device.statuses(&[device.text(JOB, 1, "{}")]);
    let photo = vec![7; 5000];
    device.ask("PUT", &format!("/v1/blobs/{}", sha256_hex(&photo)), &photo);
    let file = yard.beside("whole.hub");
    backup(yard.folder(), &file).unwrap();
    let whole = std::fs::read(&file).unwrap();
    let (bad, back) = (yard.beside("bad.hub"), yard.beside("back"));
    let mut tried = 0;
    let mut refused = |bytes: &[u8]| {
        std::fs::write(&bad, bytes).unwrap();
        let refusal = restore(&bad, &back).unwrap_err();
        assert!(
            matches!(refusal, HubError::BackupDamaged { .. }),
            "{refusal}"
        );
        assert!(
            refusal
                .to_string()
                .ends_with("take another copy; nothing was restored")
        );
        assert!(!back.exists());
        tried += 1;
    };
    for at in (0..whole.len())
        .step_by(whole.len() / 97)
        .chain(whole.len() - 100..whole.len())
    {
        let mut bytes = whole.clone();
        bytes[at] ^= 0x20;
        refused(&bytes);
        refused(&whole[..at]);
    }
    refused(b"");
    refused(&[&whole[..], b"x"].concat());
    assert!(tried > 390, "{tried}");
    restore(&file, &back).unwrap();
}

#[test]
fn nothing_is_written_over() {
    let yard = Yard::new();
    let file = yard.beside("a.hub");
    backup(yard.folder(), &file).unwrap();
    assert!(matches!(
        backup(yard.folder(), &file),
        Err(HubError::BackupThere { .. })
    ));
    assert!(matches!(
        restore(&file, yard.folder()),
        Err(HubError::NotEmpty { .. })
    ));
    let nowhere = yard.beside("nowhere");
    let refusal = backup(&nowhere, &yard.beside("b.hub"))
        .unwrap_err()
        .to_string();
    assert!(
        refusal.starts_with(&format!("there is no hub in {}", nowhere.display())),
        "{refusal}"
    );
    assert!(!nowhere.exists());
}

#[test]
fn a_hub_whose_photo_rotted_makes_no_backup_and_says_which() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let sha256 = sha256_hex(b"a photo");
    device.ask("PUT", &format!("/v1/blobs/{sha256}"), b"a photo");
    stores::rot(yard.folder(), &sha256, b"a phote");
    let file = yard.beside("a.hub");
    let refusal = backup(yard.folder(), &file).unwrap_err().to_string();
    assert!(
        refusal.starts_with(&format!("photo {sha256} of the hub")),
        "{refusal}"
    );
    assert!(!file.exists());
}

#[test]
fn a_code_that_was_open_does_not_come_back() {
    let mut yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let file = yard.beside("a.hub");
    backup(yard.folder(), &file).unwrap();
    yard.hub.take().unwrap().stop();
    let back = yard.beside("back");
    restore(&file, &back).unwrap();
    let refusal = eavebook_hub::code(&back, "Ridge", None).unwrap_err();
    assert!(matches!(refusal, HubError::NoAddress { .. }), "{refusal}");
    yard.settings = Settings {
        dir: back,
        ..yard.settings.clone()
    };
    yard.hub = Some(RunningHub::begin(&yard.settings).unwrap());
    assert_eq!(
        crate::talk::pair(yard.address(), &codes.typed, JOB).status,
        401
    );
}

//! A backup is one file whichever stores it was made of, and goes back into either pair.

use crate::stores;
use crate::talk::Yard;
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::{RunningHub, Settings, Transport, backup, restore};
use serde_json::json;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

#[test]
fn a_hub_moves_from_the_large_stores_to_a_folder_and_back_and_nothing_changes_but_the_epoch() {
    let mut yard = Yard::new();
    let mut device = yard.device("Ridge");
    let other = yard.device("Eave");
    let first = device.entry(JOB, 1, "{\"a\":\u{0}1}");
    device.statuses(&[first.to_string()]);
    let mut says_else = first.clone();
    says_else["author"] = json!("Ben");
    assert_eq!(device.statuses(&[says_else.to_string()]), ["id_conflict"]);
    other.statuses(&[other.text(JOB, 1, "{}"), other.text(JOB, 2, "{}")]);
    let photo = vec![7; 300_000];
    let path = format!("/v1/blobs/{}", sha256_hex(&photo));
    assert_eq!(device.ask("PUT", &path, &photo).status, 201);
    let all = |device: &crate::talk::Device, yard: &Yard| {
        let mut device = device.clone();
        device.at = yard.address();
        let hello = device.hello();
        assert!(device.get(&path).body == photo);
        (
            hello["hub_id"].clone(),
            hello["company"].clone(),
            hello["digest"].clone(),
            hello["own"].clone(),
            device.feed(),
            device.get("/v1/conflicts").json(),
        )
    };
    let before = all(&device, &yard);
    let mut epochs = vec![device.epoch.clone()];
    let large = yard.folder().to_path_buf();

    for (step, name) in ["plain", "large again"].into_iter().enumerate() {
        let file = yard.beside(&format!("{step}.hub"));
        let held = backup(yard.folder(), &file).unwrap();
        assert_eq!((held.entries, held.photos), (3, 1));
        yard.hub.take().unwrap().stop();
        let back = yard.beside(name);
        if step == 1 {
            stores::prepare(&back);
        }
        let answer = restore(&file, &back).unwrap();
        assert_eq!(answer.held, held);
        assert_eq!(back.join("hub.sqlite").exists(), step == 0);
        yard.settings = Settings {
            dir: back,
            transport: Transport::Plain,
            ..yard.settings.clone()
        };
        yard.hub = Some(RunningHub::begin(&yard.settings).unwrap());
        device.at = yard.address();
        assert_eq!(all(&device, &yard), before);
        assert_eq!(device.hello()["epoch"], json!(answer.epoch));
        epochs.push(answer.epoch.clone());
        device.epoch = answer.epoch;
    }
    epochs.dedup();
    assert_eq!(epochs.len(), 3);
    // New companies and entries go on behind the old ones.
    assert_eq!(device.statuses(&[device.text(JOB, 2, "{}")]), ["new"]);
    let newcomer = yard.device("Gutter");
    assert_eq!(newcomer.statuses(&[newcomer.text(JOB, 1, "{}")]), ["new"]);

    // What was written over would be lost.
    let file = yard.beside("full.hub");
    backup(yard.folder(), &file).unwrap();
    let full = yard.beside("full");
    std::fs::create_dir(&full).unwrap();
    stores::write(
        &full,
        &std::fs::read_to_string(large.join("hub.toml")).unwrap(),
    );
    let refusal = restore(&file, &full).unwrap_err().to_string();
    assert!(refusal.contains("holds a hub already"), "{refusal}");
}

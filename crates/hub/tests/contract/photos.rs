//! Photos: whole, in parts, in spans.

use crate::stores;
use crate::talk::{Device, Yard};
use eavebook_core::book::entry::sha256_hex;
use serde_json::json;

const MIB: usize = 1 << 20;

fn picture(bytes: usize, seed: u8) -> (Vec<u8>, String) {
    let bytes: Vec<u8> = (0..bytes)
        .map(|at| (at / 251) as u8 ^ (at as u8) ^ seed)
        .collect();
    let sha256 = sha256_hex(&bytes);
    (bytes, sha256)
}

fn put(device: &Device, sha256: &str, bytes: &[u8]) -> u16 {
    device
        .ask("PUT", &format!("/v1/blobs/{sha256}"), bytes)
        .status
}

fn put_part(device: &Device, sha256: &str, part: usize, bytes: &[u8]) -> u16 {
    device
        .ask("PUT", &format!("/v1/blobs/{sha256}/parts/{part}"), bytes)
        .status
}

#[test]
fn a_small_photo_goes_up_whole_once_and_comes_back_the_same() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(MIB, 1);
    assert_eq!(put(&device, &sha256, &bytes), 201);
    assert_eq!(put(&device, &sha256, &bytes), 200);
    let answer = device.get(&format!("/v1/blobs/{sha256}"));
    assert_eq!((answer.status, answer.body == bytes), (200, true));
    assert_eq!(answer.header("etag"), Some(format!("\"{sha256}\"")));
    assert_eq!(
        answer.header("x-content-type-options").as_deref(),
        Some("nosniff")
    );
    assert!(
        answer
            .header("cache-control")
            .unwrap()
            .contains("immutable")
    );
}

#[test]
fn bytes_of_another_name_are_refused_and_not_kept() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, _) = picture(100, 1);
    let (_, other) = picture(100, 2);
    let answer = device.ask("PUT", &format!("/v1/blobs/{other}"), &bytes);
    assert_eq!((answer.status, answer.code()), (422, "hash".to_owned()));
    assert_eq!(device.get(&format!("/v1/blobs/{other}")).status, 404);
}

#[test]
fn a_whole_photo_over_one_mebibyte_and_a_name_that_is_no_hash_are_refused() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(MIB + 1, 1);
    assert_eq!(put(&device, &sha256, &bytes), 413);
    for bad in [
        "x",
        &sha256.to_uppercase(),
        "..%2f..%2fhub.sqlite",
        &"g".repeat(64),
    ] {
        assert_eq!(put(&device, bad, b"x"), 400, "{bad}");
        assert_eq!(device.get(&format!("/v1/blobs/{bad}")).status, 400, "{bad}");
    }
}

#[test]
fn parts_come_in_any_order_again_and_again_and_make_the_photo() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(2 * MIB + 77, 3);
    let parts: Vec<&[u8]> = bytes.chunks(MIB).collect();
    let complete = |size: usize| {
        let path = format!("/v1/blobs/{sha256}/complete");
        device.post(&path, &json!({ "size": size }))
    };
    let there = || device.get(&format!("/v1/blobs/{sha256}/parts")).json();
    assert_eq!(there(), json!({ "parts": [] }));
    assert_eq!(put_part(&device, &sha256, 2, parts[2]), 201);
    assert_eq!(put_part(&device, &sha256, 0, parts[0]), 201);
    assert_eq!(put_part(&device, &sha256, 0, parts[0]), 200);
    assert_eq!(there(), json!({ "parts": [0, 2] }));
    let answer = complete(bytes.len());
    assert_eq!(
        (answer.status, answer.code()),
        (409, "parts_missing".to_owned())
    );
    assert_eq!(answer.json()["missing"], json!([1]));
    // A part that rotted on its way is sent again.
    let mut rotten = parts[1].to_vec();
    rotten[500] ^= 1;
    put_part(&device, &sha256, 1, &rotten);
    let answer = complete(bytes.len());
    assert_eq!((answer.status, answer.code()), (422, "hash".to_owned()));
    assert_eq!(device.get(&format!("/v1/blobs/{sha256}")).status, 404);
    put_part(&device, &sha256, 1, parts[1]);
    assert_eq!(complete(bytes.len() - 1).status, 422);
    assert_eq!(complete(bytes.len()).status, 201);
    assert_eq!(complete(bytes.len()).status, 200);
    assert!(device.get(&format!("/v1/blobs/{sha256}")).body == bytes);
    assert_eq!(there(), json!({ "parts": [0, 1, 2] }));
}

#[test]
fn a_part_number_over_sixty_three_a_part_too_large_and_an_empty_one_are_refused() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(MIB + 1, 4);
    assert_eq!(put_part(&device, &sha256, 63, b"x"), 201);
    assert_eq!(put_part(&device, &sha256, 64, b"x"), 413);
    assert_eq!(put_part(&device, &sha256, 1, &bytes), 413);
    assert_eq!(put_part(&device, &sha256, 1, b""), 400);
    let path = format!("/v1/blobs/{sha256}/complete");
    assert_eq!(device.post(&path, &json!({ "size": 65 * MIB })).status, 413);
}

#[test]
fn a_photo_of_another_company_is_not_there_and_is_missing() {
    let yard = Yard::new();
    let (ridge, eave) = (yard.device("Ridge"), yard.device("Eave"));
    let (bytes, sha256) = picture(1000, 5);
    assert_eq!(put(&ridge, &sha256, &bytes), 201);
    let answer = eave.get(&format!("/v1/blobs/{sha256}"));
    assert_eq!(
        (answer.status, answer.code()),
        (404, "not_found".to_owned())
    );
    let asks = json!({ "sha256": [sha256, "0".repeat(64)] });
    assert_eq!(
        eave.post("/v1/blobs/missing", &asks).json(),
        json!({ "missing": asks["sha256"] })
    );
    assert_eq!(
        ridge.post("/v1/blobs/missing", &asks).json(),
        json!({ "missing": ["0".repeat(64)] })
    );
    assert_eq!(put(&eave, &sha256, &bytes), 201);
}

#[test]
fn a_thousand_may_be_asked_for_in_one_call_and_more_may_not() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let asks = |many: usize| json!({ "sha256": vec!["0".repeat(64); many] });
    assert_eq!(device.post("/v1/blobs/missing", &asks(1000)).status, 200);
    assert_eq!(device.post("/v1/blobs/missing", &asks(1001)).status, 413);
    assert_eq!(
        device
            .post("/v1/blobs/missing", &json!({ "sha256": ["x"] }))
            .status,
        400
    );
}

#[test]
fn a_span_of_a_photo_is_handed_out_as_the_standard_says() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(300_000, 6);
    put(&device, &sha256, &bytes);
    let path = format!("/v1/blobs/{sha256}");
    let span = |more: &[(&str, &str)]| device.ask_with("GET", &path, more, b"");
    let answer = span(&[("range", "bytes=100-199")]);
    assert_eq!((answer.status, &answer.body[..]), (206, &bytes[100..200]));
    assert_eq!(
        answer.header("content-range").as_deref(),
        Some("bytes 100-199/300000")
    );
    assert_eq!(
        answer.header("x-content-type-options").as_deref(),
        Some("nosniff")
    );
    assert_eq!(span(&[("range", "bytes=299000-")]).body, bytes[299_000..]);
    assert_eq!(span(&[("range", "bytes=-5")]).body, bytes[299_995..]);
    let answer = span(&[("range", "bytes=300000-")]);
    assert_eq!((answer.status, answer.code()), (416, "range".to_owned()));
    assert_eq!(
        answer.header("content-range").as_deref(),
        Some("bytes */300000")
    );
    let answer = span(&[("range", "bytes=0-1"), ("if-range", "\"another\"")]);
    assert_eq!((answer.status, answer.body.len()), (200, 300_000));
    let tag = format!("\"{sha256}\"");
    assert_eq!(span(&[("if-none-match", &tag)]).status, 304);
}

#[test]
fn a_photo_whose_file_is_gone_is_missing_and_may_be_sent_again() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (bytes, sha256) = picture(1000, 7);
    put(&device, &sha256, &bytes);
    stores::lose(yard.folder(), &sha256);
    assert_eq!(device.get(&format!("/v1/blobs/{sha256}")).status, 404);
    let asks = json!({ "sha256": [sha256] });
    assert_eq!(
        device.post("/v1/blobs/missing", &asks).json()["missing"],
        asks["sha256"]
    );
    put(&device, &sha256, &bytes);
    assert!(device.get(&format!("/v1/blobs/{sha256}")).body == bytes);
}

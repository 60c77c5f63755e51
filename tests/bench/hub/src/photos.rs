//! Photos sent in parts by four at once, beside a copy of the same bytes that is synced, and beside
//! rsync, which carries files whole and proves them by their hashes as we do.

use crate::yard::{Device, Yard, together};
use crate::{Done, row, timed};
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::Transport;
use eavebook_sync::Method;
use std::fs::File;
use std::io::Write;
use std::path::Path;
use std::process::Command;
use std::time::Duration;

const STREAMS: usize = 4;
const ROUNDS: usize = 4;
/// Photos of a stream in a turn.
const PHOTOS: usize = 3;
const SIZE: usize = 4 << 20;
const PART: usize = 1 << 20;

pub fn run() -> Done {
    for transport in [Transport::Plain, Transport::Tls] {
        let yard = Yard::new(transport, None)?;
        let mut devices: Vec<Device> = (0..STREAMS)
            .map(|_| yard.device("Ridge"))
            .collect::<Result<_, _>>()?;
        let [mut ours, mut theirs, mut rsyncs] = [Duration::ZERO; 3];
        for round in 0..ROUNDS {
            let photos: Vec<Vec<Vec<u8>>> = (0..STREAMS)
                .map(|stream| (0..PHOTOS).map(|n| picture(round, stream, n)).collect())
                .collect();
            ours += timed(|| {
                together(&mut devices, |stream, device| {
                    for photo in &photos[stream] {
                        let path = format!("/v1/blobs/{}", sha256_hex(photo));
                        for (n, part) in photo.chunks(PART).enumerate() {
                            let path = format!("{path}/parts/{n}");
                            device.ask(Method::Put, &path, part.to_vec())?;
                        }
                        let size = format!("{{\"size\":{}}}", photo.len());
                        device.ask(Method::Post, &format!("{path}/complete"), size.into_bytes())?;
                    }
                    Ok(())
                })
            })?;
            theirs += timed(|| {
                for (n, photo) in photos.iter().flatten().enumerate() {
                    let mut file = File::create(yard.beside().join(format!("{round}-{n}")))?;
                    file.write_all(photo)?;
                    file.sync_all()?;
                }
                Ok(())
            })?;
            let (from, to) = (yard.beside().join("from"), yard.beside().join("to"));
            lay_out(&from, round, &photos)?;
            rsyncs += timed(|| rsync(&from, &to))?;
        }
        let mebibytes = (ROUNDS * STREAMS * PHOTOS * SIZE) as f64 / f64::from(1 << 20);
        let [ours, copied, carried] =
            [ours, theirs, rsyncs].map(|took| mebibytes / took.as_secs_f64());
        match transport {
            Transport::Plain => {
                let name = "hub, photos of 4 MiB by 4 at once, plain";
                row(name, [ours, copied], "MiB per s", 0.3);
                let name = "the same beside rsync --fsync, folder to folder";
                row(name, [ours, carried], "MiB per s", 0.6);
            }
            Transport::Tls => println!(
                "photos over TLS: {ours:.0} MiB per s, {:.2} of a copy that is synced, {:.2} of rsync",
                ours / copied,
                ours / carried
            ),
        }
        drop(devices);
        yard.hub.stop();
    }
    Ok(())
}

/// The photos of a turn as files, where rsync finds them.
fn lay_out(folder: &Path, round: usize, photos: &[Vec<Vec<u8>>]) -> Done {
    std::fs::create_dir_all(folder)?;
    for (n, photo) in photos.iter().flatten().enumerate() {
        std::fs::write(folder.join(format!("{round}-{n}")), photo)?;
    }
    Ok(())
}

/// Those that are not there yet, each on the disk when it ends.
fn rsync(from: &Path, to: &Path) -> Done {
    let ended = Command::new("rsync")
        .args(["--recursive", "--whole-file", "--fsync"])
        .arg(format!("{}/", from.display()))
        .arg(to)
        .status()
        .map_err(|why| {
            format!("rsync does not start ({why}): install the Debian package `rsync`")
        })?;
    if ended.success() {
        Ok(())
    } else {
        Err(format!("rsync ended with {ended}").into())
    }
}

/// Bytes that do not pack.
fn picture(round: usize, stream: usize, n: usize) -> Vec<u8> {
    let mut chance = (round * 1000 + stream * 100 + n) as u64 + 1;
    (0..SIZE / 8)
        .flat_map(|_| {
            chance ^= chance << 13;
            chance ^= chance >> 7;
            chance ^= chance << 17;
            chance.to_le_bytes()
        })
        .collect()
}

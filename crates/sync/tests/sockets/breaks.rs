//! A way to the hub that breaks: each connection is cut after a number of bytes, either way, that is
//! drawn from a seed.

use std::io::{Read, Write};
use std::net::{Shutdown, SocketAddr, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

pub struct Breaks {
    pub address: SocketAddr,
    broken: Arc<AtomicUsize>,
}

impl Breaks {
    pub fn before(hub: SocketAddr, seed: u64) -> Breaks {
        let listens = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listens.local_addr().unwrap();
        let broken = Arc::new(AtomicUsize::new(0));
        let count = broken.clone();
        std::thread::spawn(move || {
            let mut chance = seed;
            for client in listens.incoming() {
                let (Ok(client), Ok(hub)) = (client, TcpStream::connect(hub)) else {
                    continue;
                };
                // Some break within a head, some within a photo, some hold.
                let mut draw = |most: u64| {
                    chance ^= chance << 13;
                    chance ^= chance >> 7;
                    chance ^= chance << 17;
                    chance % most
                };
                let (up, down) = match draw(4) {
                    0 => (draw(600), u64::MAX),
                    1 => (draw(600_000), u64::MAX),
                    2 => (u64::MAX, draw(3000)),
                    _ => (u64::MAX, u64::MAX),
                };
                carry(&client, &hub, up, count.clone());
                carry(&hub, &client, down, count.clone());
            }
        });
        Breaks { address, broken }
    }

    pub fn broken(&self) -> usize {
        self.broken.load(Ordering::SeqCst)
    }
}

/// A way that is cut after so many bytes up, once for each count given, and then holds; and how many
/// bytes went up in all.
pub fn cut_after(hub: SocketAddr, cuts: Vec<u64>) -> (SocketAddr, Arc<AtomicUsize>) {
    let listens = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = listens.local_addr().unwrap();
    let carried = Arc::new(AtomicUsize::new(0));
    let count = carried.clone();
    std::thread::spawn(move || {
        let mut cuts = cuts.into_iter();
        for client in listens.incoming() {
            let (Ok(mut client), Ok(mut hub)) = (client, TcpStream::connect(hub)) else {
                continue;
            };
            carry(&hub, &client, u64::MAX, Arc::default());
            let (mut left, count) = (cuts.next().unwrap_or(u64::MAX), count.clone());
            std::thread::spawn(move || {
                let mut buffer = [0; 4096];
                while let Ok(read @ 1..) = client.read(&mut buffer) {
                    let some = read.min(usize::try_from(left).unwrap_or(usize::MAX));
                    count.fetch_add(some, Ordering::SeqCst);
                    left -= some as u64;
                    if hub.write_all(&buffer[..some]).is_err() || left == 0 {
                        break;
                    }
                }
                let _ = client.shutdown(Shutdown::Both);
                let _ = hub.shutdown(Shutdown::Both);
            });
        }
    });
    (address, carried)
}

fn carry(from: &TcpStream, to: &TcpStream, mut left: u64, broken: Arc<AtomicUsize>) {
    let (mut from, mut to) = (from.try_clone().unwrap(), to.try_clone().unwrap());
    std::thread::spawn(move || {
        let mut buffer = [0; 4096];
        while let Ok(read @ 1..) = from.read(&mut buffer) {
            let some = read.min(usize::try_from(left).unwrap_or(usize::MAX));
            if to.write_all(&buffer[..some]).is_err() {
                break;
            }
            left -= some as u64;
            if left == 0 {
                broken.fetch_add(1, Ordering::SeqCst);
                break;
            }
        }
        let _ = from.shutdown(Shutdown::Both);
        let _ = to.shutdown(Shutdown::Both);
    });
}

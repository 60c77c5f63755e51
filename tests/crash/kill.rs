//! One kill -9 at a random moment.

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};
use std::sync::mpsc;
use std::time::Duration;

/// Lets a program work, kills it, and tells the lines that it had said by then. The moment is
/// counted in lines said, and from there in a random while; a quarter of the rounds count the
/// while from the start of the process, so that opening is cut too.
pub fn said_until_killed(mut program: Command, noise: &mut Noise) -> Vec<String> {
    let mut child = program.stdout(Stdio::piped()).spawn().unwrap();
    let out = BufReader::new(child.stdout.take().unwrap());
    let (said, lines_said) = mpsc::channel();
    let hearing = std::thread::spawn(move || {
        out.lines()
            .map(|line| line.unwrap())
            .inspect(|_| said.send(()).unwrap_or(()))
            .collect()
    });
    let lines = if noise.below(4) > 0 {
        1 + noise.below(40)
    } else {
        0
    };
    for _ in 0..lines {
        lines_said.recv().expect("the program ended by itself");
    }
    std::thread::sleep(Duration::from_micros(noise.below(4_000)));
    child.kill().unwrap();
    child.wait().unwrap();
    hearing.join().unwrap()
}

/// Moments to kill at, the same in every run (SplitMix64: Steele, Lea, Flood 2014).
pub struct Noise(pub u64);

impl Noise {
    /// A number below an end.
    pub fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) % end
    }
}

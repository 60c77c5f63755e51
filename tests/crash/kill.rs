//! One kill -9 at a random moment.

pub use crate::noise::Noise;
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

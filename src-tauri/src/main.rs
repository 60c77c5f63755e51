//! The desktop program: the library's `run`, without a console on Windows.
#![cfg_attr(
    all(not(debug_assertions), target_os = "windows"),
    windows_subsystem = "windows"
)]

fn main() {
    eavebook_shell::run();
}

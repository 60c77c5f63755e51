//! Reads the shell's configuration, and makes each command one that a capability must name.

fn main() {
    let commands = tauri_build::AppManifest::new().commands(&[
        "command",
        "photo",
        "kept_photo",
        "save_packet_file",
        "carry_in",
        "save_copy",
        "read_square",
    ]);
    let attributes = tauri_build::Attributes::new().app_manifest(commands);
    if let Err(why) = tauri_build::try_build(attributes) {
        eprintln!("the shell's configuration cannot be used: {why:#}");
        std::process::exit(1);
    }
}

//! The window on a phone or desktop: the page of `ui` around the boundary of `eavebook_app`.
//!
//! Seven commands and no logic. The page may call these and nothing else of the machine: see
//! `capabilities`.
#![cfg_attr(
    mobile,
    allow(unsafe_code, reason = "the entry point is an exported symbol")
)]

use eavebook_app::App;
use eavebook_app::refusal::RequestRefusal;
use eavebook_app::reply::{Reply, Sentence};
use eavebook_app::request::Request;
use serde::de::DeserializeOwned;
use std::path::{Path, PathBuf};
use tauri::Manager;
use tauri::async_runtime::spawn_blocking;
use tauri::ipc::{InvokeBody, Request as Incoming, Response};

/// The open field book, or why it cannot be opened: the page says so at its first request.
struct Book(Result<App, Sentence>);

/// The header in which bytes say what they are of, written as in an address.
const ABOUT: &str = "eavebook-about";

/// Opens the window; returns when it is closed.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() {
    let ran = tauri::Builder::default()
        .setup(|app| {
            app.manage(open(&book_folder(app)?));
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            command,
            photo,
            kept_photo,
            save_packet_file,
            carry_in,
            save_copy,
            read_square
        ])
        .run(tauri::generate_context!());
    if let Err(why) = ran {
        eprintln!("eavebook cannot open its window ({why}): check that a display is there");
        std::process::exit(2);
    }
}

/// Where the field book lies: in `EAVEBOOK_BOOK`, else where the system keeps a program's files.
fn book_folder(app: &tauri::App) -> tauri::Result<PathBuf> {
    match std::env::var_os("EAVEBOOK_BOOK") {
        Some(folder) => Ok(PathBuf::from(folder)),
        None => Ok(app.path().app_data_dir()?.join("book")),
    }
}

fn open(folder: &Path) -> Book {
    let opened = App::open(folder).map_err(|why| said("book_not_open", why.to_string()));
    if let Ok(app) = &opened
        && let Err(why) = app.keep_in_step()
    {
        // The book opens all the same: what waits is counted, and said.
        eprintln!("eavebook keeps in step with no hub: {why}");
    }
    Book(opened)
}

/// Works with the book on a thread that may wait: for the disk, and for the network by a runtime of its
/// own, which the shell's own threads would not let it have.
async fn off_the_window<T: Send + 'static>(
    window: tauri::AppHandle,
    work: impl FnOnce(Result<&App, &Sentence>) -> T + Send + 'static,
) -> Result<T, String> {
    spawn_blocking(move || work(window.state::<Book>().0.as_ref()))
        .await
        .map_err(|why| format!("eavebook met a fault of its own ({why}). What was booked stands."))
}

/// What `work` replies, or why the book is not open.
async fn reply(
    window: tauri::AppHandle,
    work: impl FnOnce(&App) -> Reply + Send + 'static,
) -> Result<Reply, String> {
    off_the_window(window, |app| {
        app.map_or_else(|said| Reply::Refused(said.clone()), work)
    })
    .await
}

/// Carries out one request.
#[tauri::command]
async fn command(window: tauri::AppHandle, request: Request) -> Result<Reply, String> {
    reply(window, |app| app.handle(request)).await
}

/// Keeps a photo: its bytes are the body, what it is of stands in a header.
#[tauri::command]
async fn photo(window: tauri::AppHandle, incoming: Incoming<'_>) -> Result<Reply, String> {
    match (bytes(incoming.body()), about(&incoming)) {
        (Some(bytes), Some(about)) => {
            reply(window, move |app| app.keep_photo(&bytes, &about)).await
        }
        (_, _) => Ok(Reply::Refused(RequestRefusal::PhotoCutOff.said())),
    }
}

/// The bytes of a kept photo, to be shown.
#[tauri::command]
async fn kept_photo(window: tauri::AppHandle, sha256: String) -> Result<Response, String> {
    let kept = off_the_window(window, move |app| {
        app.ok().and_then(|app| app.photo(&sha256))
    });
    kept.await?
        .map(|photo| Response::new(photo.bytes))
        .ok_or_else(|| "There is no photo of this name.".to_owned())
}

/// Saves a packet, or one paper in it, where the system keeps what is saved, and says where.
#[tauri::command]
async fn save_packet_file(
    window: tauri::AppHandle,
    packet: String,
    path: Option<String>,
) -> Result<Sentence, String> {
    saved(window, move |app, folder| {
        app.save_packet_file(&packet, path.as_deref(), folder)
    })
    .await
}

/// Saves a copy of the whole book where the system keeps what is saved, and says where.
#[tauri::command]
async fn save_copy(window: tauri::AppHandle) -> Result<Sentence, String> {
    saved(window, App::save_copy).await
}

/// Saves something into the folder for what is saved.
async fn saved(
    window: tauri::AppHandle,
    save: impl FnOnce(&App, &Path) -> Sentence + Send + 'static,
) -> Result<Sentence, String> {
    let folder = folder_for_saved(&window)?;
    off_the_window(window, move |app| match app {
        Ok(app) => Ok(save(app, &folder)),
        Err(said) => Err(said.en.clone()),
    })
    .await?
}

fn folder_for_saved(window: &tauri::AppHandle) -> Result<PathBuf, String> {
    let path = window.path();
    path.download_dir()
        .or_else(|_| path.document_dir())
        .or_else(|_| path.home_dir())
        .map_err(|why| format!("This device names no folder for what is saved ({why})."))
}

/// Reads the link of a hub off a photo of its square.
#[tauri::command]
async fn read_square(window: tauri::AppHandle, incoming: Incoming<'_>) -> Result<Reply, String> {
    match bytes(incoming.body()) {
        Some(photo) => reply(window, move |app| app.read_square(&photo)).await,
        None => Ok(Reply::Refused(RequestRefusal::PhotoCutOff.said())),
    }
}

/// Takes a piece of a file that is carried in by hand, as [`photo`] takes a photo.
#[tauri::command]
async fn carry_in(window: tauri::AppHandle, incoming: Incoming<'_>) -> Result<Reply, String> {
    match (bytes(incoming.body()), about(&incoming)) {
        (Some(piece), Some(about)) => reply(window, move |app| app.carry_in(&piece, about)).await,
        (_, _) => Ok(Reply::Refused(RequestRefusal::FileCutOff.said())),
    }
}

/// A photo's bytes. Android hands a body over as a list of numbers, every other system as it is.
fn bytes(body: &InvokeBody) -> Option<Vec<u8>> {
    match body {
        InvokeBody::Raw(bytes) => Some(bytes.clone()),
        InvokeBody::Json(numbers) => serde_json::from_value(numbers.clone()).ok(),
    }
}

fn about<T: DeserializeOwned>(incoming: &Incoming<'_>) -> Option<T> {
    let text = incoming.headers().get(ABOUT)?.to_str().ok()?;
    serde_urlencoded::from_str(text).ok()
}

fn said(code: &str, en: String) -> Sentence {
    Sentence {
        code: code.to_owned(),
        en,
    }
}

//! The window on a phone or desktop: the page of `ui` around the boundary of `eavebook_app`.
//!
//! Seven commands and no logic. The page may call these and nothing else of the machine: see
//! `capabilities`.
#![cfg_attr(
    mobile,
    allow(unsafe_code, reason = "the entry point is an exported symbol")
)]

use eavebook_app::App;
use eavebook_app::refusal::Unfit;
use eavebook_app::reply::{Reply, Said};
use eavebook_app::request::Request;
use serde::de::DeserializeOwned;
use std::path::PathBuf;
use tauri::async_runtime::spawn_blocking;
use tauri::ipc::{InvokeBody, Request as Incoming, Response};
use tauri::{Manager, State};

/// The open field book, or why it cannot be opened: the page says so at its first request.
struct Book(Result<App, Said>);

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

fn open(folder: &std::path::Path) -> Book {
    let opened = App::open(folder).map_err(|why| said("book_not_open", why.to_string()));
    if let Ok(app) = &opened
        && let Err(why) = app.keep_in_step()
    {
        // The book opens all the same: what waits is counted, and said.
        eprintln!("eavebook keeps in step with no hub: {why}");
    }
    Book(opened)
}

/// Carries out one request. On a thread that may wait: a commit waits for the disk, and joining a hub
/// for the network, by a runtime of its own, which the shell's own threads would not let it have.
#[tauri::command]
async fn command(window: tauri::AppHandle, request: Request) -> Result<Reply, String> {
    let carried_out = move || match &window.state::<Book>().0 {
        Ok(app) => app.handle(request),
        Err(said) => Reply::Refused(said.clone()),
    };
    spawn_blocking(carried_out)
        .await
        .map_err(|why| format!("eavebook met a fault of its own ({why}). What was booked stands."))
}

/// Keeps a photo: its bytes are the body, what it is of stands in a header.
#[tauri::command(async)]
fn photo(book: State<'_, Book>, incoming: Incoming<'_>) -> Reply {
    let app = match &book.0 {
        Ok(app) => app,
        Err(said) => return Reply::Refused(said.clone()),
    };
    match (bytes(incoming.body()), about(&incoming)) {
        (Some(bytes), Some(about)) => app.keep_photo(&bytes, &about),
        (_, _) => Reply::Refused(Unfit::PhotoCutOff.said()),
    }
}

/// The bytes of a kept photo, to be shown.
#[tauri::command(async)]
fn kept_photo(book: State<'_, Book>, sha256: String) -> Result<Response, String> {
    let kept = book.0.as_ref().ok().and_then(|app| app.photo(&sha256));
    kept.map(|photo| Response::new(photo.bytes))
        .ok_or_else(|| "There is no photo of this name.".to_owned())
}

/// Saves a packet, or one paper in it, where the system keeps what is saved, and says where.
#[tauri::command(async)]
fn save_packet_file(
    window: tauri::AppHandle,
    book: State<'_, Book>,
    packet: String,
    path: Option<String>,
) -> Result<Said, String> {
    let folder = folder_for_saved(&window)?;
    let app = book.0.as_ref().map_err(|said| said.en.clone())?;
    Ok(app.save_packet_file(&packet, path.as_deref(), &folder))
}

/// Saves a copy of the whole book where the system keeps what is saved, and says where.
#[tauri::command(async)]
fn save_copy(window: tauri::AppHandle, book: State<'_, Book>) -> Result<Said, String> {
    let folder = folder_for_saved(&window)?;
    let app = book.0.as_ref().map_err(|said| said.en.clone())?;
    Ok(app.save_copy(&folder))
}

/// Reads the link of a hub off a photo of its square.
#[tauri::command(async)]
fn read_square(book: State<'_, Book>, incoming: Incoming<'_>) -> Reply {
    match (&book.0, bytes(incoming.body())) {
        (Err(said), _) => Reply::Refused(said.clone()),
        (Ok(app), Some(photo)) => app.read_square(&photo),
        (Ok(_), None) => Reply::Refused(Unfit::PhotoCutOff.said()),
    }
}

fn folder_for_saved(window: &tauri::AppHandle) -> Result<PathBuf, String> {
    let path = window.path();
    path.download_dir()
        .or_else(|_| path.document_dir())
        .map_err(|why| format!("This device names no folder for what is saved ({why})."))
}

/// Takes a piece of a file that is carried in by hand, as [`photo`] takes a photo.
#[tauri::command(async)]
fn carry_in(book: State<'_, Book>, incoming: Incoming<'_>) -> Reply {
    let app = match &book.0 {
        Ok(app) => app,
        Err(said) => return Reply::Refused(said.clone()),
    };
    match (bytes(incoming.body()), about(&incoming)) {
        (Some(piece), Some(about)) => app.carry_in(&piece, about),
        (_, _) => Reply::Refused(Unfit::FileCutOff.said()),
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

fn said(code: &str, en: String) -> Said {
    Said {
        code: code.to_owned(),
        en,
    }
}

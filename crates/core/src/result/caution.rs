//! A cause in the result: its code and its sentence.

use serde::Serialize;

#[derive(Clone, Debug, Serialize)]
pub(super) struct CautionResult {
    pub(super) code: &'static str,
    pub(super) words: String,
}

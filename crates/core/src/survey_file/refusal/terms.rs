//! Rates and code profile.

use crate::settings::SettingLack;

/// Rates or a code profile that cannot be one.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TermsFault {
    /// A name of settings that do not come with the program.
    #[error("no built-in is called \"{name}\": write \"demo\", or an object with all keys")]
    NoBuiltIn {
        /// The name.
        name: String,
    },
    /// A key of them.
    #[error(transparent)]
    Setting(#[from] SettingLack),
}

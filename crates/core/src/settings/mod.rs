//! What a firm and a permit office say, beside what a house says: [`Rates`] and [`Code`].
//!
//! Both are read from a value of the survey file or from TOML, key by key: a key that is unknown,
//! missing or out of its range is refused by its path ([`SettingFault`]). One key is changed with
//! [`Rates::with`] and [`Code::with`], which refuse in the same sentences.

mod change;
mod code;
mod fault;
mod limits;
mod rates;
mod reader;
mod terms;
mod text;
mod work;

pub use change::Blanks;
pub use code::{Code, IceBarrierCode, RecoverCode, UnderlaymentCode, VentilationCode};
pub use fault::{SettingFault, SettingLack};
pub use rates::{
    Anchor, ApronFlashing, BootKind, Boots, Cap, DeckRates, EdgeMetal, Field, IceBarrierRates,
    KickOut, Nails, Pool, Rates, RidgeVent, Starter, StepFlashing, Underlayment, Valley,
    ValleyKind,
};
pub use terms::{Chosen, Origin, Terms, choose_rates};
pub use work::{BillingBy, Labor, Pricing, ProfitMethod, TearOffRates, Trailer, Triangle};

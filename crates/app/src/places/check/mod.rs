//! The Leave-site check: what is open before driving off.

pub mod handle;
pub mod left;
pub mod reply;
pub mod request;
pub mod view;

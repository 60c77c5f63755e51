//! The boundary as a person at a house meets it: requests in, replies out, a real book on disk.

#![expect(
    clippy::unwrap_used,
    clippy::float_cmp,
    clippy::panic,
    clippy::wildcard_enum_match_arm,
    reason = "a test that meets what it does not expect is to fail there"
)]
#![expect(
    clippy::fn_params_excessive_bools,
    reason = "a test hands on what a person ticked as it was ticked"
)]

mod person;

mod capture;
mod carried;
mod changes;
mod job_file;
mod localhost;
mod on_roof;
mod photos;
mod plan_drawn;
mod plumb_photo;
mod pretend_house;
mod reading_again;
mod restart;
mod roof;
mod roof_seen;
mod solid;
mod square;
mod takeoff;
mod today;
mod twice;
mod typing;
mod visit;
mod walking;

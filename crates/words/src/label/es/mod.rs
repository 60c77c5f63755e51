//! Labels in Spanish.

pub(super) mod arrive;
pub(super) mod camera;
pub(super) mod caution;
pub(super) mod change;
pub(super) mod check;
pub(super) mod clips;
pub(super) mod desk;
pub(super) mod field_book;
pub(super) mod frame;
pub(super) mod import_export;
pub(super) mod job_file;
pub(super) mod other_copies;
pub(super) mod packet;
pub(super) mod paper;
pub(super) mod photo;
pub(super) mod pitch;
pub(super) mod place;
pub(super) mod plan;
pub(super) mod send;
pub(super) mod settings;
pub(super) mod solid;
pub(super) mod state;
pub(super) mod takeoff;
pub(super) mod thing;
pub(super) mod today;
pub(super) mod walk_round;

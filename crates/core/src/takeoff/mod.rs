//! From faces and edges to what is laid, ordered, torn off, vented and worked.
//!
//! [`take_off`] counts once what a roof holds (`measured`: courses and off-cuts on every face,
//! openings, boots), then says what that comes to in packs, pounds, hours and squares; the same
//! roof a little smaller and larger is said from the same counts. Every figure can say what made
//! it: [`Cause`].

mod because;
mod cautions;
mod courses;
mod existing_roof;
mod flashing;
mod goods;
mod ice_barrier;
mod item;
mod measured;
mod mils;
mod off_cuts;
mod openings;
mod order;
mod quantities;
mod quantity;
mod refusal;
mod shadow;
mod slope;
mod take_off;
mod tear_off;
mod weight;
mod work;

pub use crate::settings::BootKind;
pub use because::Cause;
pub use cautions::{TakeoffCaution, whole_months};
pub use item::{OrderItem, Pack};
pub use quantities::{
    Billing, Courses, IceBarrier, LaborHours, Laid, LoadLimit, NotShingled, OrderLine, Range,
    Ranged, Takeoff, TearOff, Unlisted, Ventilation,
};
pub use quantity::{Quantity, Unit};
pub use refusal::NoTakeoff;
pub use take_off::{TENTH, take_off};

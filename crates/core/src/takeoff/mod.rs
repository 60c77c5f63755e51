//! From faces and edges to what is laid, ordered, torn off, vented and worked.
//!
//! [`take_off`] counts once what a roof holds (`measured`: courses and off-cuts on every face,
//! openings, boots), then says what that comes to in packs, pounds, hours and squares; the same
//! roof a little smaller and larger is said from the same counts. Every figure can say what made
//! it: [`Cause`].

mod because;
mod cautions;
mod courses;
mod flashing;
mod goods;
mod ice_barrier;
mod item;
mod lying;
mod measured;
mod mils;
mod off_cuts;
mod openings;
mod order;
mod shadow;
mod slope;
mod take_off;
mod taken;
mod tear_off;
mod weight;
mod work;

pub use because::Cause;
pub use cautions::TakeoffCaution;
pub use item::{BootKind, OrderItem, Pack, Unit};
pub use take_off::{NoTakeoff, TENTH, take_off};
pub use taken::{
    Billing, Courses, IceBarrier, LabourHours, Laid, LoadLimit, NotShingled, OrderLine, Range,
    Ranged, Takeoff, TearOff, Unlisted, Ventilation,
};

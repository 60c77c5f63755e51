//! From faces and edges to what is laid, ordered, torn off, vented and worked.
//!
//! Every figure can say what made it: [`Cause`].

mod because;
mod cautions;
mod item;
mod taken;

pub use because::Cause;
pub use cautions::TakeoffCaution;
pub use item::{BootKind, OrderItem, Pack, Unit};
pub use taken::{
    Billing, Courses, IceBarrier, LabourHours, Laid, LoadLimit, NotShingled, OrderLine, Takeoff,
    TearOff, Ventilation,
};

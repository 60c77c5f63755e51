//! Marks on a photo taken from the ground to a pitch and heights.
//!
//! A pitch is never read off the angle in a picture: seen from off the side a rake looks up to
//! three in twelve flatter or more than it is. Instead one least squares works out where the camera
//! stood, how it was turned and the slope of the roof over a plan that was taped, so that every mark
//! comes to lie where it was set (a bundle of rays: Brown 1976, *The bundle adjustment*).
//!
//! What it states is bound below by what no mark knows: which edge of a board or gutter was marked,
//! and what the lens bends. So no standard deviation comes out under [`LEAST_SIGMA`].

mod bundle;
mod camera;
mod house;
mod mark;
mod refusal;
mod sighted;
mod start;

pub use camera::{Camera, PhoneTurn, up_in_picture};
pub use house::{GableEnd, House, Peak, PlanCorner};
pub use mark::{Mark, Spot};
pub use refusal::{SightCaution, SightError};
pub use sighted::{LEAST_SIGMA, PeakSighted, SightResult, sight};

//! Why a survey file is refused: where in the file, what is wrong, what to write.

mod body;
mod cause;
mod edge;
mod extra;
mod measure;
mod observation;
mod outline;
mod reading;
mod shape;
mod slope;
mod syntax;
mod terms;

pub use body::BodyFault;
pub use cause::{Fault, Refusal};
pub use edge::EdgeFault;
pub use extra::ExtraFault;
pub use measure::MeasureFault;
pub use observation::SeenFault;
pub use outline::OutlineFault;
pub use reading::ReadingFault;
pub use shape::ShapeFault;
pub use slope::SlopeFault;
pub use syntax::SyntaxFault;
pub use terms::TermsFault;

//! One job, whole: the reply from which most screens draw.

pub mod reply;
pub mod view;
pub mod you_were_here;

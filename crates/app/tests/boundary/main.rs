//! The boundary as a person at a house meets it: requests in, replies out, a real book on disk.

mod person;

mod localhost;
mod photos;
mod pretend_house;
mod reading_again;
mod restart;
mod roof;
mod today;
mod twice;
mod typing;
mod walking;

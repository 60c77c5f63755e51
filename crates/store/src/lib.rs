//! The field book in SQLite.

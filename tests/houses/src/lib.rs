//! The one small language in which tests describe a house.

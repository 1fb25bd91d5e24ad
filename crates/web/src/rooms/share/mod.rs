//! Sharing and keeping: links, codes, versions, write-ups, backups.

pub(crate) mod backup;
pub mod command;
mod compare;
pub mod edit;
pub(crate) mod public;
pub(crate) mod qr;
pub mod reading;
pub(crate) mod sentences;
mod versions;
pub mod view;
pub mod view_backup;
pub mod write_up;

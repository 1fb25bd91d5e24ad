//! What the page can ask of the post.

use crate::contract::commands::commands;

commands! {
    /// What the page can ask of the post. Text fields carry what was typed, as it was typed.
    pub enum PostCommand;

    /// Look at the post, or away from it: it is worked out only while somebody looks.
    "look-at-post" LookAtPost {
        /// Whether the page shows it.
        looking: bool as "boolean",
        /// The address of the page, which the link in it begins with.
        address: String as "string",
    },
    /// Leave a part out or take it in, or say how large a batch is.
    "set-post-field" SetPostField {
        /// Which.
        field: String as "string",
        /// As typed, or `yes` or `no`; empty for what is usual.
        text: String as "string",
    },
}

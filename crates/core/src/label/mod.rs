//! What a label has to say, and how it stands on it.
//!
//! The declaration of ingredients; what of it is not certain; how large its letters have to be; and the label laid out in
//! millimetres. Which name each ingredient goes by, and every sentence, is left to those who word things.

pub mod declaration;
mod ingredients;
#[cfg(test)]
mod laws;
mod layout;
mod lettering;
mod link;
mod setting;
mod sheet;
mod statements;
mod typeface;
mod wording;

pub use declaration::{
    Allergen, Declaration, Declared, Doubt, Group, Ingredient, LeftOut, Market, Name, NotInProduct, Role, declare,
};
pub use ingredients::{Asked, ForLabel, NewAllergens, TYPICAL_SPREAD, is_asked_for, read_for_label};
pub use layout::{CodeSquare, LabelText, Layout, OpenJar, Outline, Paragraph, Run, Shape, lay_out};
pub use lettering::{Least, Lettering, NetContents, lettering};
pub use link::{LEAST_MODULE, LONGEST_LINK, LinkError, QUIET_ZONE, USUAL_MODULE, read_link};
pub use sheet::{MOST_LABELS, Paper, Sheet, lay_sheets};
pub use statements::{Condition, Stated, Statement, statements};
pub use typeface::{FIGURE, SMALL_LETTER, width_of};
pub use wording::{Flagged, Loaded, flag};

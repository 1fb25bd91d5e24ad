//! What the page can ask of a pasted recipe.

use crate::contract::commands::commands;

commands! {
    /// What the page can ask of a pasted recipe.
    pub enum PasteCommand;

    /// Put the recipe that was read on the shelf as a formula and open it.
    "make-of-recipe" MakeOfRecipe {},
}

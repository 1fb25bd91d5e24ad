//! Pieces: parts of the seam that lie in files of their own and are fetched when they are asked for.
//!
//! A first visit fetches what the main job needs; everything else shares its memory and is called like any other function
//! once it is there. In a build without the feature `split`, and natively, every piece is there from the start.
//!
//! The names below are those that the splitter of the build looks for; what it does not find stays in the first file. A
//! function of a piece that is not there yet answers with what stands behind its `else`, so that no call can fail.

use std::cell::Cell;

/// A part that is fetched by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// The desk: a formula in all its lines, its weigh sheet, and looking for materials.
    Desk,
    /// Reading, writing and comparing shared formulas.
    Share,
    /// Every room beyond the main job.
    Whole,
    /// Making it with what one has: looking for amounts and for substitutes.
    Swap,
}

impl Piece {
    /// Every piece.
    pub const ALL: [Self; 4] = [Self::Desk, Self::Share, Self::Whole, Self::Swap];

    /// Those that are fetched after the desk, at which somebody may be at work already.
    pub const BEYOND_DESK: [Self; 3] = [Self::Share, Self::Whole, Self::Swap];

    /// The piece of a name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        match name {
            "desk" => Some(Self::Desk),
            "share" => Some(Self::Share),
            "whole" => Some(Self::Whole),
            "swap" => Some(Self::Swap),
            _ => None,
        }
    }

    const fn bit(self) -> u8 {
        match self {
            Self::Share => 1,
            Self::Whole => 2,
            Self::Swap => 4,
            Self::Desk => 8,
        }
    }
}

/// Every piece that a build carries inside is here.
const AT_THE_START: u8 = if cfg!(all(target_arch = "wasm32", feature = "split")) { 0 } else { u8::MAX };

thread_local! {
    static HERE: Cell<u8> = const { Cell::new(AT_THE_START) };
}

/// Whether a piece is there.
#[must_use]
pub fn is_here(piece: Piece) -> bool {
    HERE.get() & piece.bit() != 0
}

/// Says that a piece is there, or is not. Tests of what a first visit runs take pieces away.
pub fn set_here(piece: Piece, here: bool) {
    let others = HERE.get() & !piece.bit();
    HERE.set(if here { others | piece.bit() } else { others });
}

/// Fetches a piece and calls back with whether it came.
#[cfg_attr(
    not(all(target_arch = "wasm32", feature = "split")),
    expect(clippy::needless_pass_by_value, reason = "where there is something to wait for, it is kept until then")
)]
pub(crate) fn fetch(piece: Piece, done: js_sys::Function) {
    #[cfg(all(target_arch = "wasm32", feature = "split"))]
    {
        use std::ffi::c_void;
        #[link(wasm_import_module = "__wasm_split_placeholder__")]
        unsafe extern "C" {
            #[link_name = "__wasm_split_load_desk"]
            safe fn load_desk(callback: unsafe extern "C" fn(*const c_void, bool), data: *const c_void);
            #[link_name = "__wasm_split_load_share"]
            safe fn load_share(callback: unsafe extern "C" fn(*const c_void, bool), data: *const c_void);
            #[link_name = "__wasm_split_load_whole"]
            safe fn load_whole(callback: unsafe extern "C" fn(*const c_void, bool), data: *const c_void);
            #[link_name = "__wasm_split_load_swap"]
            safe fn load_swap(callback: unsafe extern "C" fn(*const c_void, bool), data: *const c_void);
        }
        unsafe extern "C" fn loaded(data: *const c_void, came: bool) {
            // The pointer is the one made below, handed back once.
            let (piece, done) = *unsafe { Box::from_raw(data.cast_mut().cast::<(Piece, js_sys::Function)>()) };
            set_here(piece, came);
            let _ = done.call1(&wasm_bindgen::JsValue::NULL, &came.into());
        }
        let data = Box::into_raw(Box::new((piece, done))).cast();
        match piece {
            Piece::Desk => load_desk(loaded, data),
            Piece::Share => load_share(loaded, data),
            Piece::Whole => load_whole(loaded, data),
            Piece::Swap => load_swap(loaded, data),
        }
    }
    #[cfg(not(all(target_arch = "wasm32", feature = "split")))]
    {
        set_here(piece, true);
        let _ = done.call1(&wasm_bindgen::JsValue::NULL, &true.into());
    }
}

/// Declares a function of a piece. The number is its own, the same on both sides of the cut; the linker refuses a second
/// one.
macro_rules! lazy {
    ($piece:ident $id:literal $vis:vis fn $name:ident($($argument:ident: $type:ty),* $(,)?) $(-> $returns:ty)? $body:block else $missing:block) => {
        #[allow(improper_ctypes, improper_ctypes_definitions, clippy::missing_errors_doc)]
        $vis fn $name($($argument: $type),*) $(-> $returns)? {
            if !$crate::lazy::is_here($crate::lazy::lazy!(@piece $piece)) {
                $( let _ = $argument; )*
                return $missing;
            }
            #[cfg(all(target_arch = "wasm32", feature = "split"))]
            {
                #[link(wasm_import_module = "__wasm_split_placeholder__")]
                unsafe extern "C" {
                    #[link_name = concat!("__wasm_split_00", stringify!($piece), "00_import_000000000000000000000000000000", $id)]
                    safe fn import($($argument: $type),*) $(-> $returns)?;
                }
                #[unsafe(export_name = concat!("__wasm_split_00", stringify!($piece), "00_export_000000000000000000000000000000", $id))]
                extern "C" fn export($($argument: $type),*) $(-> $returns)? $body
                import($($argument),*)
            }
            #[cfg(not(all(target_arch = "wasm32", feature = "split")))]
            $body
        }
    };
    (@piece desk) => { $crate::lazy::Piece::Desk };
    (@piece share) => { $crate::lazy::Piece::Share };
    (@piece whole) => { $crate::lazy::Piece::Whole };
    (@piece swap) => { $crate::lazy::Piece::Swap };
}
pub(crate) use lazy;

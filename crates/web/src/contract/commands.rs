//! How a room declares what the page can ask of it, and how that is read from the page.

use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

/// A command of a room as the page wrote it, or why it could not be read.
pub(crate) type ReadCommand<C> = Result<C, serde_wasm_bindgen::Error>;

/// Declares the commands of a room once: the variants, their type on the page's side and how they are read from it. Reading
/// goes field by field, since a derived reader of a tagged enum would weigh more than the rest of the session.
macro_rules! commands {
    ($(#[$enum_about:meta])* pub enum $enum:ident; $(
        $(#[$about:meta])*
        $name:literal $variant:ident { $( $(#[$field_about:meta])* $field:ident: $type:ty as $shown:literal, )* },
    )*) => {
        $(#[$enum_about])*
        #[derive(Debug, Clone, PartialEq, Eq, serde::Serialize, tsify::Tsify)]
        #[serde(tag = "do")]
        pub enum $enum {
            $(
                $(#[$about])*
                #[serde(rename = $name)]
                $variant { $( $(#[$field_about])* #[tsify(type = $shown)] $field: $type, )* },
            )*
        }

        impl $enum {
            /// Reads a command of this name from the page; `None` where the room knows none of the name.
            pub(crate) fn from_page(
                name: &str,
                page: &wasm_bindgen::JsValue,
            ) -> Option<$crate::contract::commands::ReadCommand<Self>> {
                // A room whose commands have no field reads none.
                let _ = page;
                let read = || -> $crate::contract::commands::ReadCommand<Option<Self>> {
                    Ok(Some(match name {
                        $( $name => Self::$variant {
                            $( $field: $crate::contract::commands::field_of(page, stringify!($field))?, )*
                        }, )*
                        _ => return Ok(None),
                    }))
                };
                read().transpose()
            }
        }
    };
}
pub(crate) use commands;

/// Reads one field of an object.
pub(crate) fn field_of<T: DeserializeOwned>(page: &JsValue, name: &str) -> ReadCommand<T> {
    let value = js_sys::Reflect::get(page, &JsValue::from_str(name))?;
    serde_wasm_bindgen::from_value(value)
}

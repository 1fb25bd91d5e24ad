//! What rooms remember of the page without the session knowing what it is.

use std::any::{Any, TypeId};

/// One value of each type that was asked for: what a room handed out last, or what it waits with. The session holds it and
/// knows none of the types.
#[derive(Default)]
pub(crate) struct Shown(Vec<(TypeId, Box<dyn Any>)>);

impl Shown {
    /// The value of a type.
    pub(crate) fn of<T: Default + 'static>(&mut self) -> &mut T {
        let id = TypeId::of::<T>();
        let at = self.0.iter().position(|(known, _)| *known == id).unwrap_or_else(|| {
            self.0.push((id, Box::<T>::default()));
            self.0.len() - 1
        });
        self.0[at].1.downcast_mut().unwrap_or_else(|| unreachable!("a value lies under its own type"))
    }

    /// The value of a type, if it was ever asked for.
    pub(crate) fn seen<T: 'static>(&self) -> Option<&T> {
        self.0.iter().find_map(|(_, value)| value.downcast_ref())
    }

    /// Remembers a view as handed out; returns it if it differs from the last.
    pub(crate) fn changed<V: PartialEq + Clone + 'static>(&mut self, view: V) -> Option<V> {
        let last: &mut Option<V> = self.of();
        if last.as_ref() == Some(&view) {
            return None;
        }
        *last = Some(view.clone());
        Some(view)
    }
}

//! Maps and sorting for lists of a few thousand at most, compiled once for all types as far as possible.
//!
//! The maps and sorts of the standard library are faster on long lists, but each type they are used with brings its own
//! copy of several kilobytes into what a phone downloads.

use core::cmp::Ordering;

/// A map in a sorted list. Looking up takes halving steps; putting in moves what comes after.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SortedMap<K, V> {
    entries: Vec<(K, V)>,
}

impl<K, V> Default for SortedMap<K, V> {
    fn default() -> Self {
        Self { entries: Vec::new() }
    }
}

impl<K: Ord, V> SortedMap<K, V> {
    /// An empty map.
    #[must_use]
    pub const fn new() -> Self {
        Self { entries: Vec::new() }
    }

    fn find<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: core::borrow::Borrow<Q>,
    {
        self.entries.binary_search_by(|(each, _)| each.borrow().cmp(key))
    }

    /// The value under a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: core::borrow::Borrow<Q>,
    {
        self.find(key).ok().map(|at| &self.entries[at].1)
    }

    /// The value under a key, to change it.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: core::borrow::Borrow<Q>,
    {
        self.find(key).ok().map(|at| &mut self.entries[at].1)
    }

    /// Whether there is a value under a key.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: core::borrow::Borrow<Q>,
    {
        self.find(key).is_ok()
    }

    /// Puts a value under a key; returns the one that was there.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.find(&key) {
            Ok(at) => Some(core::mem::replace(&mut self.entries[at].1, value)),
            Err(at) => {
                self.entries.insert(at, (key, value));
                None
            }
        }
    }

    /// The value under a key, put there if there is none.
    pub fn get_or_insert(&mut self, key: K, value: V) -> &mut V {
        let at = match self.find(&key) {
            Ok(at) => at,
            Err(at) => {
                self.entries.insert(at, (key, value));
                at
            }
        };
        &mut self.entries[at].1
    }

    /// Takes out the value under a key.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: core::borrow::Borrow<Q>,
    {
        self.find(key).ok().map(|at| self.entries.remove(at).1)
    }

    /// Takes everything out.
    pub fn clear(&mut self) {
        self.entries.clear();
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Every key and value, in the order of the keys.
    pub fn iter(&self) -> impl Iterator<Item = (&K, &V)> {
        self.entries.iter().map(|(key, value)| (key, value))
    }

    /// Every key, in order.
    pub fn keys(&self) -> impl Iterator<Item = &K> {
        self.entries.iter().map(|(key, _)| key)
    }

    /// Every value, in the order of the keys.
    pub fn values(&self) -> impl Iterator<Item = &V> {
        self.entries.iter().map(|(_, value)| value)
    }

    /// The entries as a list, in the order of the keys.
    #[must_use]
    pub fn into_entries(self) -> Vec<(K, V)> {
        self.entries
    }
}

/// Sorts a list; equal items keep their order.
pub fn sort<T: Clone>(items: &mut Vec<T>, compare: &dyn Fn(&T, &T) -> Ordering) {
    let order = sort_positions(items.len(), &|a, b| compare(&items[a], &items[b]));
    *items = order.into_iter().map(|at| items[at].clone()).collect();
}

/// The positions of a list in sorted order: the one place where sorting is compiled.
fn sort_positions(length: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut positions: Vec<usize> = (0..length).collect();
    positions.sort_by(|a, b| compare(*a, *b));
    positions
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeMap;

    proptest! {
        #[test]
        fn it_holds_what_the_standard_map_holds(acts in prop::collection::vec((any::<bool>(), 0u8..20, any::<u8>()), 0..60)) {
            let (mut ours, mut theirs) = (SortedMap::new(), BTreeMap::new());
            for (put, key, value) in acts {
                if put {
                    prop_assert_eq!(ours.insert(key, value), theirs.insert(key, value));
                } else {
                    prop_assert_eq!(ours.remove(&key), theirs.remove(&key));
                }
                *ours.get_or_insert(value % 20, 0) ^= 1;
                *theirs.entry(value % 20).or_insert(0) ^= 1;
                prop_assert_eq!(ours.get(&key), theirs.get(&key));
                prop_assert!(ours.iter().eq(theirs.iter()));
            }
            prop_assert_eq!(ours.len(), theirs.len());
        }

        #[test]
        fn it_sorts_as_the_standard_library_sorts(mut items: Vec<(u8, u16)>) {
            let mut theirs = items.clone();
            sort(&mut items, &|a, b| a.0.cmp(&b.0));
            theirs.sort_by_key(|item| item.0);
            prop_assert_eq!(items, theirs);
        }
    }
}

//! What every fuzz target shares: a limit on memory.
//!
//! Each target reads whatever bytes it is given. It fails when something panics or overflows, when one input takes
//! longer than five seconds, when more than 64 MB are held at once, or when what was understood is not understood again
//! once it is written.

use cap::Cap;
use std::alloc::System;

/// Most memory held at once, in bytes. Asking for more ends the target as a failure.
pub const MOST_MEMORY: usize = 64 * 1024 * 1024;

#[global_allocator]
static ALLOCATOR: Cap<System> = Cap::new(System, MOST_MEMORY);

/// No place and no time, and dice that count.
#[derive(Debug, Default)]
pub struct Nowhere {
    drawn: std::cell::Cell<u64>,
}

impl stillroom_web::keeping::Surroundings for Nowhere {
    fn now(&self) -> u64 {
        1_764_000_000_000
    }
    fn minutes_ahead(&self) -> i64 {
        0
    }
    fn today(&self) -> String {
        "2026-11-25".to_owned()
    }
    fn random(&self) -> u64 {
        self.drawn.set(self.drawn.get() + 1);
        self.drawn.get().wrapping_mul(0x9e37_79b9_7f4a_7c15)
    }
}

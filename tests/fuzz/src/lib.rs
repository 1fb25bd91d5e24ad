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

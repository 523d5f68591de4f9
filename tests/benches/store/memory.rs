//! How much memory work takes at its most, by counting every allocation.
#![allow(unsafe_code)]

use std::alloc::{GlobalAlloc, Layout, System};
use std::sync::atomic::{AtomicUsize, Ordering::Relaxed};

static NOW: AtomicUsize = AtomicUsize::new(0);
static MOST: AtomicUsize = AtomicUsize::new(0);

struct Counted;

#[global_allocator]
static COUNTED: Counted = Counted;

fn took(bytes: usize) {
    MOST.fetch_max(NOW.fetch_add(bytes, Relaxed) + bytes, Relaxed);
}

// SAFETY: every call goes to the system's allocator as it came.
unsafe impl GlobalAlloc for Counted {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        took(layout.size());
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, at: *mut u8, layout: Layout) {
        NOW.fetch_sub(layout.size(), Relaxed);
        unsafe { System.dealloc(at, layout) }
    }
    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        took(layout.size());
        unsafe { System.alloc_zeroed(layout) }
    }
    unsafe fn realloc(&self, at: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        // While it is moved, both are there.
        took(size);
        NOW.fetch_sub(layout.size(), Relaxed);
        unsafe { System.realloc(at, layout, size) }
    }
}

/// What work gives, and the most bytes that it held at once beyond those held before it.
pub fn peak<T>(work: impl FnOnce() -> T) -> (T, usize) {
    let before = NOW.load(Relaxed);
    MOST.store(before, Relaxed);
    let done = work();
    (done, MOST.load(Relaxed).saturating_sub(before))
}

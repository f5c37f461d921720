//! For tests: what a piece of work takes from the heap. A test binary that counts makes [`Counting`] its global allocator.

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

/// The system's allocator, counted. Counts for the thread that asks for it, and for no other: tests run side by side.
pub struct Counting;

#[derive(Debug, Clone, Copy, Default)]
struct Count {
    on: bool,
    taken: u64,
    freed: u64,
    /// Bytes taken and not given back.
    held: i64,
}

thread_local! {
    static COUNT: Cell<Count> = const { Cell::new(Count { on: false, taken: 0, freed: 0, held: 0 }) };
}

fn note(bytes: i64) {
    // Fails only while the thread ends; nothing is counted then.
    let _ = COUNT.try_with(|count| {
        let before = count.get();
        if before.on {
            let (taken, freed) = (before.taken + u64::from(bytes >= 0), before.freed + u64::from(bytes < 0));
            count.set(Count { on: true, taken, freed, held: before.held + bytes });
        }
    });
}

// SAFETY: everything is passed on to the system's allocator unchanged.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        note(layout.size() as i64);
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, memory: *mut u8, layout: Layout) {
        note(-(layout.size() as i64));
        unsafe { System.dealloc(memory, layout) }
    }
}

fn counted(work: impl FnOnce()) -> Count {
    COUNT.set(Count { on: true, ..Count::default() });
    work();
    COUNT.replace(Count::default())
}

/// Times that `work` took memory.
pub fn allocations(work: impl FnOnce()) -> u64 {
    counted(work).taken
}

/// Times that `work` took memory or gave it back: what a device's callback may do neither of.
pub fn heap_calls(work: impl FnOnce()) -> u64 {
    let count = counted(work);
    count.taken + count.freed
}

/// Bytes by which what `work` leaves on the heap has grown.
pub fn growth(work: impl FnOnce()) -> i64 {
    counted(work).held
}

#[cfg(test)]
#[global_allocator]
static ALLOCATOR: Counting = Counting;

#[test]
fn the_counter_counts() {
    assert_eq!(allocations(|| drop(std::hint::black_box(vec![1_u8; 100]))), 1);
    assert_eq!(heap_calls(|| drop(std::hint::black_box(vec![1_u8; 100]))), 2);
    let mut kept = Vec::new();
    assert_eq!(growth(|| kept = std::hint::black_box(vec![1_u8; 100])), 100);
    assert_eq!(growth(|| drop(std::hint::black_box(std::mem::take(&mut kept)))), -100);
}

//! The mixer works beside the sound: once lines are handed over, filling blocks takes no memory from the heap.

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;
use tidecount::session::LineId;
use tidecount::speak::{Mixer, Pcm};

thread_local! {
    static TAKEN: Cell<u64> = const { Cell::new(0) };
}

struct Counting;

// SAFETY: every call is handed on to the system's allocator unchanged.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        TAKEN.with(|taken| taken.set(taken.get() + 1));
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, memory: *mut u8, layout: Layout) {
        unsafe { System.dealloc(memory, layout) }
    }
    unsafe fn realloc(&self, memory: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        TAKEN.with(|taken| taken.set(taken.get() + 1));
        unsafe { System.realloc(memory, layout, size) }
    }
}

#[global_allocator]
static ALLOCATOR: Counting = Counting;

#[test]
fn filling_blocks_takes_no_memory() {
    let line = |frames: usize| Pcm { rate_hz: 48_000, samples: vec![0.1; frames].into() };
    let mut mixer = Mixer::new(48_000);
    let mut events = Vec::with_capacity(2000);
    let mut block = vec![0.0; 480];
    let mut id = 0;
    let before_all = TAKEN.with(Cell::get);
    let mut taken_in_blocks = 0;
    for round in 0..20u64 {
        for n in 0..30 {
            id += 2;
            mixer.queue(LineId(id), line(3000)).unwrap();
            // Many on the same frame as well: all of them play for a while.
            mixer.at(LineId(id + 1), line(9000), mixer.frame() + 4800 * (n / 10)).unwrap();
        }
        if round % 3 == 2 {
            mixer.hush();
        }
        mixer.set_gain_db(-(round as f64));
        for _ in 0..100 {
            let before = TAKEN.with(Cell::get);
            mixer.next_block(&mut block, &mut events);
            taken_in_blocks += TAKEN.with(Cell::get) - before;
            if events.len() > 1000 {
                events.clear();
            }
        }
    }
    assert!(TAKEN.with(Cell::get) > before_all, "the count itself must work");
    assert_eq!(taken_in_blocks, 0);
}

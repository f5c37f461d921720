//! The mixer works beside the sound: once lines are handed over, filling blocks takes no memory from the heap.

use crate::{Mixer, Pcm};
use foreign::counting::allocations;
use session::LineId;

#[test]
fn filling_blocks_takes_no_memory() {
    let line = |frames: usize| Pcm { rate_hz: 48_000, samples: vec![0.1; frames].into() };
    let mut mixer = Mixer::new(48_000);
    let mut events = Vec::with_capacity(2000);
    let mut block = vec![0.0; 480];
    let mut id = 0;
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
        for n in 0..100 {
            let taken = allocations(|| mixer.next_block(&mut block, &mut events));
            assert_eq!(taken, 0, "round {round}, block {n}");
            if events.len() > 1000 {
                events.clear();
            }
        }
    }
}

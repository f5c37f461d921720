//! Prints how much each echo canceller achieves in rehearsed rooms: `cargo bench --bench echo`.

#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/echo_scene.rs"]
mod echo_scene;

use audio::echo::{AdaptiveCanceller, AutoCanceller, NoCancel};
use echo_scene::{EchoPath, judge, scene, synthetic_room};
use figures::figure;

const SECONDS: usize = 60;
/// The scene whose figures go on record.
const PLAIN: &str = "100 ms, -10 dB";

fn main() {
    println!("{SECONDS} s of far speech; ERLE from second 20 on, near word: own gain and level over the rest, dB");
    println!("{:<44} {:>22} {:>22} {:>22}", "scene", "none", "adaptive", "auto");
    let room = synthetic_room(0.25);
    let plain = EchoPath { delay_s: 0.1, level_db: -10.0, clipping: 0.0, drift_ppm: 0.0 };
    let (mut reduction_db, mut near_db) = (f64::NAN, f64::NAN);
    for (name, path) in [
        (PLAIN, plain),
        ("60 ms, -10 dB", EchoPath { delay_s: 0.06, ..plain }),
        ("100 ms, -18 dB", EchoPath { level_db: -18.0, ..plain }),
        ("100 ms, -10 dB, loudspeaker clips softly", EchoPath { clipping: 4.0, ..plain }),
        ("100 ms, -10 dB, clocks 100 ppm apart", EchoPath { drift_ppm: 100.0, ..plain }),
    ] {
        let Some(scene) = scene(SECONDS, path, &room) else { return };
        let auto = judge(&scene, 20, AutoCanceller::new);
        if name == PLAIN {
            (reduction_db, near_db) = (auto.erle_db, auto.near_sdr_db);
        }
        let row = [judge(&scene, 20, || NoCancel), judge(&scene, 20, AdaptiveCanceller::new), auto]
            .map(|o| format!("{:>6.1} {:>+6.1} {:>+6.1}", o.erle_db, o.near_gain_db, o.near_sdr_db));
        println!("{name:<44} {:>22} {:>22} {:>22}", row[0], row[1], row[2]);
    }
    figure("echo.reduction", reduction_db);
    figure("echo.near", near_db);
}

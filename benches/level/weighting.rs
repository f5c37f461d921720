//! Distance from the limits of IEC 61672-1, table 3, and from the tonebursts of table 4.

use figures::figure;
use hear::time_weighting::SoundLevelMeter;
use hear::weighting::{Weighting, WeightingFilter};
use std::error::Error;
use std::f64::consts::PI;

const TABLE_3: &str = include_str!("../../tests/checks/iec61672/table3.tsv");
const TABLE_4: &str = include_str!("../../tests/checks/iec61672/table4.tsv");

pub fn run() -> Result<(), Box<dyn Error>> {
    let (mut worst_of_all, mut least_room_of_all) = (0f64, f64::MAX);
    for rate_hz in [8000.0, 11_025.0, 16_000.0, 22_050.0, 32_000.0, 44_100.0, 48_000.0, 96_000.0] {
        let (mut worst, mut least_room, mut points) = (0f64, f64::MAX, 0);
        for (column, weighting) in [Weighting::A, Weighting::C, Weighting::Z].into_iter().enumerate() {
            let filter = WeightingFilter::new(weighting, rate_hz);
            for line in TABLE_3.lines().filter(|l| !l.starts_with(['#', 'n'])) {
                let cells = line.split('\t').map(str::parse).collect::<Result<Vec<f64>, _>>()?;
                let [n, _, a, c, z, upper, lower] = cells[..] else { return Err("table 3 has a line of another length".into()) };
                let f_hz = 1000.0 * 10f64.powf(n / 10.0);
                if f_hz >= 0.5 * rate_hz {
                    continue;
                }
                let off = filter.gain_db(f_hz, rate_hz) - [a, c, z][column];
                worst = worst.max(off.abs());
                least_room = least_room.min(upper - off).min(off - lower);
                points += 1;
            }
        }
        println!("A, C, Z at {rate_hz} Hz: {points} points, worst {worst:.2} dB off, {least_room:.2} dB inside the nearest limit");
        (worst_of_all, least_room_of_all) = (worst_of_all.max(worst), least_room_of_all.min(least_room));
    }
    figure("level.weighting.worst", worst_of_all);
    figure("level.weighting.room", least_room_of_all);
    let (mut worst, mut least_room) = (0f64, f64::MAX);
    for line in TABLE_4.lines().filter(|l| !l.starts_with(['#', 'b'])) {
        let cells: Vec<Option<f64>> = line.split('\t').map(|c| c.parse().ok()).collect();
        let [Some(burst_s), fast, slow, Some(upper), Some(lower)] = cells[..] else { return Err("table 4 has a bad line".into()) };
        let rate_hz = 48_000.0;
        let mut meter = SoundLevelMeter::new(Weighting::A, rate_hz);
        for k in 0..(2.0 * rate_hz) as usize {
            let on = (k as f64) < burst_s * rate_hz;
            meter.push(if on { (0.5 * (2.0 * PI * 4000.0 * k as f64 / rate_hz).sin()) as f32 } else { 0.0 });
        }
        let steady_db = 10.0 * 0.125f64.log10() + Weighting::A.response_db(4000.0);
        let reading = meter.reading().ok_or("the meter heard nothing")?;
        for (got, wanted) in [(reading.fast_max_db, fast), (reading.slow_max_db, slow)] {
            let Some(wanted) = wanted else { continue };
            let off = got - steady_db - wanted;
            worst = worst.max(off.abs());
            least_room = least_room.min(upper - off).min(off - lower);
        }
    }
    figure("level.tonebursts.worst", worst);
    figure("level.tonebursts.room", least_room);
    Ok(())
}

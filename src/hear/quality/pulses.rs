//! The instants of a voice's periods by cross-correlation of neighbours, as Praat's "To PointProcess (cc)" finds them: from the
//! strongest peak in the middle outwards, each next one where the wave is most like the last period.

use super::Sound;

/// Least likeness of a period with its neighbour.
const LEAST_LIKENESS: f64 = 0.3;
/// Parts of a period that the next one may come early or late.
const SHORTEST: f64 = 0.8;
const LONGEST: f64 = 1.25;
/// A pulse in a stretch whose peak is under this share of the whole sound's is none.
const LEAST_PEAK: f64 = 0.01;

/// The instants, s, in order. `track`: centre and F0 of the frames of one voiced stretch, s and Hz.
pub(super) fn find(sound: &Sound, track: &[(f64, f64)]) -> Vec<f64> {
    let (Some(first), Some(last)) = (track.first(), track.last()) else { return Vec::new() };
    let from_s = first.0.max(sound.from_s);
    let to_s = last.0.min(sound.from_s + sound.samples.len() as f64 / sound.rate_hz);
    let middle_s = f64::midpoint(from_s, to_s);
    let Some(f0_hz) = f0_at(track, middle_s) else { return Vec::new() };
    let global_peak = sound.samples.iter().fold(0.0, |peak: f64, x| peak.max(x.abs()));
    let Some(start_s) = extremum_s(sound, middle_s - 0.5 / f0_hz, middle_s + 0.5 / f0_hz) else { return Vec::new() };
    let mut pulses = vec![start_s];
    for forward in [false, true] {
        let mut at_s = start_s;
        let mut added_s = start_s;
        while let Some(f0_hz) = f0_at(track, at_s) {
            let period_s = 1.0 / f0_hz;
            let range = if forward { (SHORTEST * period_s, LONGEST * period_s) } else { (-LONGEST * period_s, -SHORTEST * period_s) };
            let Some(next) = likest(sound, at_s, period_s, at_s + range.0, at_s + range.1) else { break };
            at_s = next.at_s.unwrap_or(at_s + if forward { period_s } else { -period_s });
            if at_s < from_s || at_s > to_s {
                break;
            }
            let far_enough = (at_s - added_s).abs() > SHORTEST * period_s;
            if next.likeness > LEAST_LIKENESS && next.peak > LEAST_PEAK * global_peak && far_enough {
                pulses.push(at_s);
                added_s = at_s;
            }
        }
    }
    pulses.sort_by(f64::total_cmp);
    pulses
}

/// F0 at an instant, between the frames in a straight line; nothing outside.
fn f0_at(track: &[(f64, f64)], t_s: f64) -> Option<f64> {
    let after = track.partition_point(|frame| frame.0 < t_s);
    match (after.checked_sub(1).and_then(|k| track.get(k)), track.get(after)) {
        (Some(a), Some(b)) if b.0 > a.0 => Some(a.1 + (b.1 - a.1) * (t_s - a.0) / (b.0 - a.0)),
        (None, Some(b)) if b.0 - t_s < 0.005 => Some(b.1),
        (Some(a), None) if t_s - a.0 < 0.005 => Some(a.1),
        _ => None,
    }
}

/// The sample farthest from zero between two instants, with a parabola through its neighbours.
fn extremum_s(sound: &Sound, from_s: f64, to_s: f64) -> Option<f64> {
    let (from, to) = (sound.place(from_s).ceil() as i64, sound.place(to_s).floor() as i64);
    let best = (from..=to).filter(|k| sound.at(*k).is_some()).max_by(|a, b| {
        let size = |k: i64| sound.at(k).map_or(0.0, f64::abs);
        size(*a).total_cmp(&size(*b))
    })?;
    let (left, top, right) = (sound.at(best - 1)?, sound.at(best)?, sound.at(best + 1)?);
    let curve = 2.0 * top - left - right;
    let shift = if curve == 0.0 { 0.0 } else { (0.5 * (right - left) / curve).clamp(-1.0, 1.0) };
    Some(sound.from_s + (best as f64 + shift) / sound.rate_hz)
}

struct Likest {
    /// None where no place was better than its neighbours.
    at_s: Option<f64>,
    likeness: f64,
    peak: f64,
}

/// Where between two instants the wave is most like the one of `length_s` about `at_s`.
fn likest(sound: &Sound, at_s: f64, length_s: f64, from_s: f64, to_s: f64) -> Option<Likest> {
    let half_s = length_s / 2.0;
    let left = sound.place(at_s - half_s).round() as i64;
    let right = sound.place(at_s + half_s).round() as i64;
    let first = sound.place(from_s - half_s).floor() as i64;
    let last = sound.place(to_s - half_s).ceil() as i64;
    let length = right - left + 1;
    if left < 0 || first < 0 || sound.at(right).is_none() || sound.at(last + length - 1).is_none() {
        return None;
    }
    let slice = |from: i64| usize::try_from(from).ok().and_then(|from| sound.samples.get(from..from + usize::try_from(length).ok()?));
    let here = slice(left)?;
    let power: f64 = here.iter().map(|x| x * x).sum();
    let mut best = Likest { at_s: None, likeness: -1.0, peak: 0.0 };
    // Likeness at the two places before, oldest first.
    let (mut r1, mut r2, mut peak2) = (0.0, 0.0, 0.0);
    for place in first..=last {
        let there = slice(place)?;
        let product: f64 = here.iter().zip(there).map(|(a, b)| a * b).sum();
        let other: f64 = there.iter().map(|x| x * x).sum();
        let r3 = if product == 0.0 { 0.0 } else { product / (power * other).sqrt() };
        if r2 > best.likeness && r2 >= r1 && r2 >= r3 && place > first {
            let curve = 2.0 * r2 - r1 - r3;
            let tilt = 0.5 * (r3 - r1);
            let (shift, gain) = if curve == 0.0 { (0.0, 0.0) } else { (tilt / curve, 0.5 * tilt * tilt / curve) };
            best = Likest { at_s: Some(at_s + ((place - 1 - left) as f64 + shift) / sound.rate_hz), likeness: r2 + gain, peak: peak2 };
        }
        (r1, r2) = (r2, r3);
        peak2 = there.iter().fold(0.0, |peak: f64, x| peak.max(x.abs()));
    }
    Some(best)
}

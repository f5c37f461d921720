//! A run of values addressed by an absolute position, of which only the newest part is kept.

/// At least so many values are forgotten at once.
const STEP: usize = 4096;

/// Values numbered from 0 as they come; old ones can be dropped without renumbering the rest.
#[derive(Debug, Clone, Default)]
pub(crate) struct History<T> {
    values: Vec<T>,
    first: u64,
}

impl<T: Copy + Default> History<T> {
    /// Nothing yet, and a little memory.
    pub fn new() -> Self {
        Self::keeping(0)
    }

    /// Nothing yet, and memory for all that is ever held at once if `kept` values are not forgotten.
    pub fn keeping(kept: usize) -> Self {
        Self { values: Vec::with_capacity(kept + kept.max(STEP) + STEP), first: 0 }
    }

    /// Number of values ever pushed, so also the position of the next one.
    pub fn end(&self) -> u64 {
        self.first + self.values.len() as u64
    }

    /// Adds one value.
    pub fn push(&mut self, value: T) {
        self.values.push(value);
    }

    /// The value at a position; the default before 0, after the end and where it was dropped.
    pub fn get(&self, position: i64) -> T {
        u64::try_from(position)
            .ok()
            .and_then(|p| p.checked_sub(self.first))
            .and_then(|p| self.values.get(usize::try_from(p).ok()?))
            .copied()
            .unwrap_or_default()
    }

    /// Copies the stretch that begins at `from` into `out`; defaults stand in for what is not there.
    pub fn copy_to(&self, from: i64, out: &mut [T]) {
        let offset = from - self.first as i64;
        if offset >= 0 && offset as usize + out.len() <= self.values.len() {
            let start = offset as usize;
            out.copy_from_slice(&self.values[start..start + out.len()]);
            return;
        }
        for (k, slot) in out.iter_mut().enumerate() {
            *slot = self.get(from + k as i64);
        }
    }

    /// Forgets everything before `position`. Done in large steps, so that it costs little.
    pub fn forget_before(&mut self, position: i64) {
        let Ok(position) = u64::try_from(position) else { return };
        let count = position.min(self.end()).saturating_sub(self.first) as usize;
        if count > STEP && count > self.values.len() / 2 {
            self.values.drain(..count);
            self.first += count as u64;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn positions_outlive_forgetting() {
        let mut history = History::new();
        (0..20_000).for_each(|k| history.push(k));
        history.forget_before(15_000);
        let mut out = [0; 4];
        history.copy_to(15_000, &mut out);
        assert_eq!(out, [15_000, 15_001, 15_002, 15_003]);
        history.copy_to(19_998, &mut out);
        assert_eq!(out, [19_998, 19_999, 0, 0]);
        assert_eq!(history.end(), 20_000);
        assert_eq!(history.get(-1), 0);
    }
}

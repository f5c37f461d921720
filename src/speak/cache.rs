//! Rendered lines, kept in memory and on disk.

use super::words::without_marks;
use super::{Pcm, SpeakError, Voice, resample};
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What the memory may hold, bytes. All counts and the lines of a few exercises fit; the rest comes from disk again.
const MEMORY_BYTES: usize = 24 << 20;
/// What the folder may hold before the oldest files go, and what it holds then, bytes.
const DISK_BYTES: (u64, u64) = (96 << 20, 48 << 20);
/// Spoken lines never take the last of a disk, bytes: that is for the record.
const SPARE_BYTES: u64 = 64 << 20;

/// Lines by voice and text, at the loudspeaker's rate.
///
/// On disk each line is a mono 16-bit WAV file at the voice's own rate; its name is a hash of voice and text. A file that
/// cannot be read is rendered anew. Where the folder cannot be written, lines are kept in memory alone. The folder holds no more than 96 MB,
/// and gives way where the disk gets full: the oldest lines go first.
pub struct LineCache {
    folder: Option<PathBuf>,
    /// What the folder holds, bytes.
    on_disk: u64,
    limits: (u64, u64),
    /// How much room the disk has; none where the system does not say.
    free: fn(&Path) -> Option<u64>,
    rate_hz: u32,
    memory: HashMap<String, Kept>,
    bytes: usize,
    uses: u64,
}

struct Kept {
    samples: Arc<[f32]>,
    last_use: u64,
}

impl LineCache {
    /// `folder`: where lines are kept between sessions, made if missing; none: in memory alone.
    #[must_use]
    pub fn new(folder: Option<PathBuf>, rate_hz: u32) -> Self {
        let folder = folder.filter(|folder| match disk::private::folder(folder) {
            Ok(()) => true,
            Err(why) => {
                tracing::warn!("spoken lines are not kept: folder {} cannot be made: {why}", folder.display());
                false
            }
        });
        let on_disk = folder.as_deref().map_or(0, |folder| prune(folder, DISK_BYTES));
        Self { folder, on_disk, limits: DISK_BYTES, free: disk::room::free_bytes, rate_hz, memory: HashMap::new(), bytes: 0, uses: 0 }
    }

    /// The rate of the lines it gives, Hz.
    #[must_use]
    pub fn rate_hz(&self) -> u32 {
        self.rate_hz
    }

    /// The line, from memory, from disk or from the voice.
    ///
    /// # Errors
    /// The voice cannot say it.
    pub fn line(&mut self, voice: &mut dyn Voice, text: &str) -> Result<Pcm, SpeakError> {
        let text = &without_marks(text);
        let key = format!("{}\n{text}", voice.id());
        self.uses += 1;
        if let Some(kept) = self.memory.get_mut(&key) {
            kept.last_use = self.uses;
            return Ok(Pcm { rate_hz: self.rate_hz, samples: kept.samples.clone() });
        }
        let file = self.folder.as_ref().map(|folder| folder.join(format!("{:032x}.wav", fnv1a_128(key.as_bytes()))));
        let rendered = match file.as_deref().and_then(read) {
            Some(line) => line,
            None => {
                let line = voice.render(text)?;
                if let Some(file) = &file
                    && self.has_room(line.samples.len() as u64 * 2)
                    && let Err(why) = write(file, &line)
                {
                    tracing::warn!("a spoken line is not kept: {}: {why}", file.display());
                }
                line
            }
        };
        let line = resample(&rendered, self.rate_hz)?;
        self.keep(key, &line.samples);
        Ok(line)
    }

    /// Renders lines ahead of their use. Gives how many it has now and the first fault, if any.
    pub fn prerender<'a>(&mut self, voice: &mut dyn Voice, texts: impl IntoIterator<Item = &'a str>) -> (usize, Option<SpeakError>) {
        let (mut ready, mut fault) = (0, None);
        for text in texts {
            match self.line(voice, text) {
                Ok(_) => ready += 1,
                Err(why) => fault = fault.or(Some(why)),
            }
        }
        (ready, fault)
    }

    /// Whether a line of so many bytes may be kept on the disk; older ones make way for it.
    fn has_room(&mut self, bytes: u64) -> bool {
        let Some(folder) = self.folder.as_deref() else { return false };
        self.on_disk += bytes;
        if self.on_disk > self.limits.0 {
            self.on_disk = prune(folder, self.limits);
        }
        let missing = |free: fn(&Path) -> Option<u64>| free(folder).map_or(0, |free| (SPARE_BYTES + bytes).saturating_sub(free));
        let short = missing(self.free);
        if short == 0 {
            return true;
        }
        self.on_disk = prune(folder, (0, self.on_disk.saturating_sub(short)));
        missing(self.free) == 0
    }

    fn keep(&mut self, key: String, samples: &Arc<[f32]>) {
        self.bytes += size_of_val::<[f32]>(samples);
        self.memory.insert(key, Kept { samples: samples.clone(), last_use: self.uses });
        while self.bytes > MEMORY_BYTES && self.memory.len() > 1 {
            let Some(oldest) = self.memory.iter().min_by_key(|(_, kept)| kept.last_use).map(|(key, _)| key.clone()) else {
                break;
            };
            if let Some(gone) = self.memory.remove(&oldest) {
                self.bytes -= size_of_val::<[f32]>(&gone.samples);
            }
        }
    }
}

/// None for whatever is not a whole line; it is rendered again then.
fn read(file: &Path) -> Option<Pcm> {
    let mut reader = hound::WavReader::open(file).ok()?;
    let form = reader.spec();
    if form.channels != 1 || form.bits_per_sample != 16 || form.sample_format != hound::SampleFormat::Int {
        return None;
    }
    let samples: Vec<f32> = reader.samples::<i16>().map(|x| x.map(|x| f32::from(x) / 32_768.0)).collect::<Result<_, _>>().ok()?;
    (!samples.is_empty()).then(|| Pcm { rate_hz: form.sample_rate, samples: samples.into() })
}

/// Beside its place first, then renamed, so that a killed process leaves no half file under the name.
fn write(file: &Path, line: &Pcm) -> Result<(), hound::Error> {
    let form = hound::WavSpec { channels: 1, sample_rate: line.rate_hz, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let beside = file.with_extension(format!("{}.part", std::process::id()));
    let made = disk::private::create(&beside).map_err(hound::Error::IoError);
    let written = made.and_then(|file| hound::WavWriter::new(std::io::BufWriter::new(file), form)).and_then(|mut writer| {
        for x in line.samples.iter() {
            writer.write_sample((x * 32_768.0).round().clamp(-32_768.0, 32_767.0) as i16)?;
        }
        writer.finalize()?;
        std::fs::rename(&beside, file).map_err(hound::Error::IoError)
    });
    if written.is_err() {
        // Nothing is lost if it cannot be removed either.
        let _ = std::fs::remove_file(&beside);
    }
    written
}

/// Removes the oldest lines until the folder holds no more than the second figure, once it holds more than the first. Gives what it holds
/// then, bytes.
fn prune(folder: &Path, (most, keep): (u64, u64)) -> u64 {
    let Ok(entries) = std::fs::read_dir(folder) else { return 0 };
    let mut files: Vec<_> = entries
        .flatten()
        .filter(|entry| entry.path().extension().is_some_and(|e| e == "wav" || e == "part"))
        .filter_map(|entry| entry.metadata().ok().and_then(|m| Some((m.modified().ok()?, m.len(), entry.path()))))
        .collect();
    let mut total: u64 = files.iter().map(|(_, bytes, _)| bytes).sum();
    if total <= most {
        return total;
    }
    files.sort();
    for (_, bytes, path) in files {
        if total <= keep {
            break;
        }
        if std::fs::remove_file(path).is_ok() {
            total -= bytes;
        }
    }
    total
}

/// FNV-1a, 128 bits, with the offset basis and prime of its authors (Fowler, Noll, Vo; from memory).
/// `std`'s hasher promises no fixed values; file names need them.
fn fnv1a_128(bytes: &[u8]) -> u128 {
    const OFFSET: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    bytes.iter().fold(OFFSET, |hash, &byte| (hash ^ u128::from(byte)).wrapping_mul(PRIME))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Counts how often it is asked.
    struct Counting(u32);

    impl Voice for Counting {
        fn id(&self) -> String {
            "counting 1".into()
        }
        fn render(&mut self, text: &str) -> Result<Pcm, SpeakError> {
            self.0 += 1;
            if text.is_empty() {
                return Err(SpeakError("nothing to say".into()));
            }
            let samples = (0..400 * text.len()).map(|i| (i as f32 * 0.1).sin() * 0.2);
            Ok(Pcm { rate_hz: 16_000, samples: samples.map(|x| (x * 32_768.0).round() / 32_768.0).collect() })
        }
    }

    fn the_file(folder: &Path) -> PathBuf {
        let files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
        assert_eq!(files.len(), 1, "{files:?}");
        files[0].clone()
    }

    #[test]
    fn a_line_is_rendered_once_and_is_the_same_from_memory_and_disk() {
        let folder = tempfile::tempdir().unwrap();
        let mut voice = Counting(0);
        let mut cache = LineCache::new(Some(folder.path().into()), 48_000);
        let first = cache.line(&mut voice, "seven").unwrap();
        let second = cache.line(&mut voice, "*seven*").unwrap();
        let third = LineCache::new(Some(folder.path().into()), 48_000).line(&mut voice, "seven").unwrap();
        assert_eq!(voice.0, 1);
        assert_eq!(first.rate_hz, 48_000);
        assert!(Arc::ptr_eq(&first.samples, &second.samples));
        assert_eq!(first.samples, third.samples);
    }

    #[test]
    fn a_broken_file_is_rendered_again_and_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let mut voice = Counting(0);
        let whole = LineCache::new(Some(folder.path().into()), 16_000).line(&mut voice, "seven").unwrap();
        let file = the_file(folder.path());
        let good = std::fs::read(&file).unwrap();
        for broken in [&b""[..], b"RIFF", &good[..good.len() / 2], &[0u8; 4000]] {
            std::fs::write(&file, broken).unwrap();
            let again = LineCache::new(Some(folder.path().into()), 16_000).line(&mut voice, "seven").unwrap();
            assert_eq!(again.samples, whole.samples);
            assert_eq!(std::fs::read(the_file(folder.path())).unwrap(), good);
        }
        assert_eq!(voice.0, 5);
    }

    #[test]
    fn a_folder_that_cannot_be_made_costs_only_the_keeping() {
        let file = tempfile::NamedTempFile::new().unwrap();
        let mut cache = LineCache::new(Some(file.path().join("lines")), 16_000);
        assert!(cache.line(&mut Counting(0), "seven").is_ok());
    }

    #[test]
    fn prerender_goes_on_after_a_fault_and_names_it() {
        let (ready, fault) = LineCache::new(None, 16_000).prerender(&mut Counting(0), ["one", "", "two"]);
        assert_eq!((ready, fault.unwrap().0.as_str()), (2, "nothing to say"));
    }

    #[test]
    fn memory_stays_within_its_bounds() {
        let (mut voice, mut cache) = (Counting(0), LineCache::new(None, 48_000));
        for i in 0..60 {
            cache.line(&mut voice, &format!("{i:02}{}", "x".repeat(500))).unwrap();
        }
        assert!(cache.bytes <= MEMORY_BYTES);
        assert_eq!(cache.bytes, cache.memory.values().map(|k| size_of_val::<[f32]>(&k.samples)).sum::<usize>());
        let asked = voice.0;
        cache.line(&mut voice, &format!("59{}", "x".repeat(500))).unwrap();
        assert_eq!(voice.0, asked, "the newest is still there");
    }

    #[test]
    fn the_folder_is_pruned_from_the_oldest() {
        let folder = tempfile::tempdir().unwrap();
        for i in 0..4u64 {
            let path = folder.path().join(format!("{i}.wav"));
            std::fs::write(&path, [0u8; 100]).unwrap();
            let then = std::time::SystemTime::UNIX_EPOCH + std::time::Duration::from_secs(1000 + i);
            std::fs::File::options().write(true).open(&path).unwrap().set_modified(then).unwrap();
        }
        assert_eq!(prune(folder.path(), (400, 250)), 400);
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 4);
        assert_eq!(prune(folder.path(), (399, 250)), 200);
        let left: Vec<bool> = (0..4).map(|i| folder.path().join(format!("{i}.wav")).exists()).collect();
        assert_eq!(left, [false, false, true, true]);
    }

    #[test]
    fn the_folder_stays_within_its_limit_while_lines_come() {
        let folder = tempfile::tempdir().unwrap();
        let (mut voice, mut cache) = (Counting(0), LineCache::new(Some(folder.path().into()), 16_000));
        cache.limits = (20_000, 10_000);
        let size = || -> u64 { std::fs::read_dir(folder.path()).unwrap().map(|e| e.unwrap().metadata().unwrap().len()).sum() };
        for i in 0..40 {
            cache.line(&mut voice, &format!("line {i:02}")).unwrap();
            // A line has 5,600 bytes.
            assert!(size() <= 26_000, "{} bytes after line {i}", size());
        }
        assert!(size() > 0);
    }

    #[test]
    fn a_disk_that_gets_full_loses_its_spoken_lines_and_gets_no_more() {
        let folder = tempfile::tempdir().unwrap();
        let (mut voice, mut cache) = (Counting(0), LineCache::new(Some(folder.path().into()), 16_000));
        cache.line(&mut voice, "one").unwrap();
        cache.free = |_| Some(1000);
        assert!(cache.line(&mut voice, "two").is_ok(), "it is said all the same");
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[cfg(unix)]
    #[test]
    fn lines_are_for_their_owner_alone() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        LineCache::new(Some(folder.path().join("lines")), 16_000).line(&mut Counting(0), "seven").unwrap();
        let mode = |path: &Path| std::fs::metadata(path).unwrap().permissions().mode() & 0o777;
        let folder = folder.path().join("lines");
        assert_eq!((mode(&folder), mode(&the_file(&folder))), (0o700, 0o600));
    }

    /// Test vectors published with the algorithm (empty text and "a"; from memory).
    #[test]
    fn the_hash_is_the_published_one() {
        assert_eq!(fnv1a_128(b""), 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d);
        assert_eq!(fnv1a_128(b"a"), 0xd228_cb69_6f1a_8caf_7891_2b70_4e4a_8964);
    }
}

//! A faster copy of the network's weights for the matrix product inside `libvosk`.
//!
//! For every 0.12 s of sound OpenBLAS, which `libvosk` brings along, brings all 3.7 million weights into the order in which its
//! product reads them, one number at a time: two thirds of the recogniser's time. The functions here do the same by eight numbers at
//! a time. They bear the names of the library's own, and the dynamic linker prefers what the program itself has. A copy only moves
//! numbers, so every result stays the same bit for bit. To be safe against a library that orders them differently, the first copy of
//! each size is compared with the library's own, and where they differ the library's own is used from then on.
//!
//! On other processors than x86-64 with AVX2 nothing here is called, and the library works as ever.

/// Makes the linker keep the functions in a program that calls this. Does nothing else.
pub fn provide() {
    #[cfg(all(target_arch = "x86_64", target_os = "linux"))]
    {
        std::hint::black_box(here::sgemm_incopy_ZEN as *const ());
        std::hint::black_box(here::sgemm_incopy_HASWELL as *const ());
    }
}

#[cfg(all(target_arch = "x86_64", target_os = "linux"))]
mod here {
    use std::arch::x86_64::{
        _MM_HINT_T0, _mm_prefetch, _mm256_loadu_ps, _mm256_permute2f128_ps, _mm256_shuffle_ps, _mm256_storeu_ps, _mm256_unpackhi_ps,
        _mm256_unpacklo_ps,
    };
    use std::cell::RefCell;
    use std::ffi::{CStr, c_char, c_int, c_long, c_void};
    use std::sync::OnceLock;

    /// The library's copy: `columns` columns of `rows` numbers, the columns `stride` numbers apart, to `to`.
    type Copy = unsafe extern "C" fn(rows: c_long, columns: c_long, from: *const f32, stride: c_long, to: *mut f32) -> c_int;

    unsafe extern "C" {
        fn dlsym(handle: *mut c_void, name: *const c_char) -> *mut c_void;
    }

    /// What this program hides of that name: the function of the next library that has it.
    fn hidden(name: &CStr) -> Option<Copy> {
        /// `RTLD_NEXT` of the C library.
        const NEXT: *mut c_void = std::ptr::without_provenance_mut(usize::MAX);
        // SAFETY: the name ends with a zero byte; a function of that name in OpenBLAS has this type.
        unsafe { std::mem::transmute::<*mut c_void, Option<Copy>>(dlsym(NEXT, name.as_ptr())) }
    }

    /// Copies by eight in this thread.
    #[derive(Default)]
    struct Trust {
        /// Sizes for which both copies gave the same.
        same: Vec<(c_long, c_long)>,
        /// They differed once: the library's own alone is used.
        differed: bool,
    }

    /// More sizes than a network has; from then on the library's own is used for new ones.
    const SIZES: usize = 256;

    thread_local! {
        static TRUST: RefCell<Trust> = RefCell::default();
    }

    impl Trust {
        /// # Safety
        /// As for the library's copy.
        unsafe fn copy(
            &mut self,
            library: Option<Copy>,
            (rows, columns): (c_long, c_long),
            from: *const f32,
            stride: c_long,
            to: *mut f32,
        ) {
            let (Ok(r), Ok(c), Ok(s)) = (usize::try_from(rows), usize::try_from(columns), usize::try_from(stride)) else { return };
            let can = std::arch::is_x86_feature_detected!("avx");
            let trusted = can && !self.differed && self.same.contains(&(rows, columns));
            match library {
                Some(library) if !trusted => {
                    // SAFETY: the caller's arguments are passed on.
                    unsafe { library(rows, columns, from, stride, to) };
                    if can && !self.differed && self.same.len() < SIZES {
                        let mut own = vec![0.0_f32; r * c];
                        // SAFETY: the processor has AVX; `own` holds all numbers, and the library has written as many to `to`.
                        let theirs = unsafe {
                            by_eight(r, c, from, s, own.as_mut_ptr());
                            std::slice::from_raw_parts(to, r * c)
                        };
                        if own.iter().map(|x| x.to_bits()).eq(theirs.iter().map(|x| x.to_bits())) {
                            self.same.push((rows, columns));
                        } else {
                            self.differed = true;
                        }
                    }
                }
                // Only a library that has the function calls it, so without one nobody does.
                None => {}
                // SAFETY: the processor has AVX; the rest is as the caller says.
                Some(_) => unsafe { by_eight(r, c, from, s, to) },
            }
        }
    }

    macro_rules! copies {
        ($($name:ident for $processor:literal)*) => { $(
            #[doc = concat!("OpenBLAS's copy for ", $processor, ".")]
            ///
            /// # Safety
            /// `from` holds `columns` columns of `rows` numbers, `stride` apart; `to` has room for all of them.
            #[unsafe(no_mangle)]
            #[allow(non_snake_case, reason = "the library's name")]
            pub(super) unsafe extern "C" fn $name(rows: c_long, columns: c_long, from: *const f32, stride: c_long, to: *mut f32) -> c_int {
                static LIBRARY: OnceLock<Option<Copy>> = OnceLock::new();
                let name = concat!(stringify!($name), "\0");
                let library = *LIBRARY.get_or_init(|| hidden(CStr::from_bytes_with_nul(name.as_bytes()).unwrap_or_default()));
                // SAFETY: as the caller says.
                TRUST.with_borrow_mut(|trust| unsafe { trust.copy(library, (rows, columns), from, stride, to) });
                0
            }
        )* };
    }

    copies! {
        sgemm_incopy_ZEN for "AMD's processors since 2017"
        sgemm_incopy_HASWELL for "Intel's processors since 2013 without AVX-512"
    }

    /// Eight columns side by side, number by number; what is left of them by four, two and one.
    ///
    /// # Safety
    /// As for the library's copy; the processor has AVX.
    #[target_feature(enable = "avx")]
    unsafe fn by_eight(rows: usize, columns: usize, from: *const f32, stride: usize, mut to: *mut f32) {
        let mut column = 0;
        for width in [8, 4, 2, 1] {
            while column + width <= columns {
                // SAFETY: `column + width` columns are there, and room for as many.
                unsafe {
                    let first = from.add(column * stride);
                    let whole = if width == 8 { eight_columns(rows, first, stride, to) } else { 0 };
                    for row in whole..rows {
                        for x in 0..width {
                            *to.add(row * width + x) = *first.add(x * stride + row);
                        }
                    }
                    to = to.add(rows * width);
                }
                column += width;
            }
        }
    }

    /// Copies eight columns by squares of eight; gives the rows done, a multiple of eight.
    ///
    /// # Safety
    /// As for [`by_eight`].
    #[target_feature(enable = "avx")]
    unsafe fn eight_columns(rows: usize, from: *const f32, stride: usize, to: *mut f32) -> usize {
        let whole = rows - rows % 8;
        for row in (0..whole).step_by(8) {
            // The next eight columns' turn comes soon, and each stretch is too short for the processor to foresee it: 5 % of decoding.
            // Lines of 16 numbers; a line that is not there is not fetched.
            if row % 16 == 0 {
                for x in 8..16 {
                    _mm_prefetch::<_MM_HINT_T0>(from.wrapping_add(x * stride + row).cast());
                }
            }
            // SAFETY: eight numbers from `row` on are in each of the eight columns, and room for 64.
            let read = |x: usize| unsafe { _mm256_loadu_ps(from.add(x * stride + row)) };
            let square = [read(0), read(1), read(2), read(3), read(4), read(5), read(6), read(7)];
            let pair = |a: usize| (_mm256_unpacklo_ps(square[a], square[a + 1]), _mm256_unpackhi_ps(square[a], square[a + 1]));
            let ((a, b), (c, d), (e, f), (g, h)) = (pair(0), pair(2), pair(4), pair(6));
            let low = [
                _mm256_shuffle_ps::<0x44>(a, c),
                _mm256_shuffle_ps::<0xEE>(a, c),
                _mm256_shuffle_ps::<0x44>(b, d),
                _mm256_shuffle_ps::<0xEE>(b, d),
            ];
            let high = [
                _mm256_shuffle_ps::<0x44>(e, g),
                _mm256_shuffle_ps::<0xEE>(e, g),
                _mm256_shuffle_ps::<0x44>(f, h),
                _mm256_shuffle_ps::<0xEE>(f, h),
            ];
            for (x, (low, high)) in low.into_iter().zip(high).enumerate() {
                // SAFETY: as above.
                unsafe {
                    _mm256_storeu_ps(to.add((row + x) * 8), _mm256_permute2f128_ps::<0x20>(low, high));
                    _mm256_storeu_ps(to.add((row + x + 4) * 8), _mm256_permute2f128_ps::<0x31>(low, high));
                }
            }
        }
        whole
    }

    #[cfg(test)]
    mod tests {
        use super::*;
        use std::sync::atomic::{AtomicUsize, Ordering};

        static ASKED: AtomicUsize = AtomicUsize::new(0);

        /// What OpenBLAS says of this copy: groups of eight, four, two and one column, the numbers of a row of each side by side.
        fn plain(rows: usize, columns: usize, from: &[f32], stride: usize) -> Vec<f32> {
            let mut to = Vec::new();
            let mut column = 0;
            for width in [8, 4, 2, 1] {
                while columns - column >= width {
                    to.extend((0..rows).flat_map(|row| (column..column + width).map(move |c| from[c * stride + row])));
                    column += width;
                }
            }
            to
        }

        unsafe extern "C" fn library(rows: c_long, columns: c_long, from: *const f32, stride: c_long, to: *mut f32) -> c_int {
            ASKED.fetch_add(1, Ordering::SeqCst);
            let (rows, columns, stride) = (rows as usize, columns as usize, stride as usize);
            let from = unsafe { std::slice::from_raw_parts(from, columns * stride) };
            plain(rows, columns, from, stride).iter().enumerate().for_each(|(i, x)| unsafe { *to.add(i) = *x });
            0
        }

        unsafe extern "C" fn other_order(rows: c_long, columns: c_long, from: *const f32, stride: c_long, to: *mut f32) -> c_int {
            for i in 0..(rows * columns) as usize {
                unsafe { *to.add(i) = *from.add(i % (columns * stride) as usize) };
            }
            0
        }

        fn numbers(count: usize) -> Vec<f32> {
            (0..count).map(|i| (i as f32 * 0.37).sin()).collect()
        }

        fn copied(trust: &mut Trust, by: Copy, rows: usize, columns: usize, stride: usize) -> Vec<f32> {
            let from = numbers(columns * stride);
            let mut to = vec![9.0; rows * columns];
            unsafe { trust.copy(Some(by), (rows as c_long, columns as c_long), from.as_ptr(), stride as c_long, to.as_mut_ptr()) };
            to
        }

        #[test]
        fn every_size_is_copied_as_the_library_does_and_the_library_is_asked_once() {
            let mut trust = Trust::default();
            for rows in [1, 7, 8, 9, 200, 320] {
                for columns in 1..=41 {
                    let stride = rows + columns % 3;
                    let before = ASKED.load(Ordering::SeqCst);
                    let first = copied(&mut trust, library, rows, columns, stride);
                    let second = copied(&mut trust, library, rows, columns, stride);
                    let expected = plain(rows, columns, &numbers(columns * stride), stride);
                    assert_eq!((&first, &second), (&expected, &expected), "{rows} x {columns}");
                    let known = trust.same.contains(&(rows as c_long, columns as c_long));
                    if known && std::arch::is_x86_feature_detected!("avx") {
                        assert_eq!(ASKED.load(Ordering::SeqCst) - before, 1, "{rows} x {columns}");
                    }
                }
            }
            assert!(!trust.differed);
            assert_eq!(trust.same.len(), if std::arch::is_x86_feature_detected!("avx") { 246 } else { 0 });
        }

        #[test]
        fn a_library_with_another_order_is_left_alone() {
            let mut trust = Trust::default();
            let once = copied(&mut trust, other_order, 16, 16, 16);
            let again = copied(&mut trust, other_order, 16, 16, 16);
            assert_eq!((&once, &again), (&numbers(256), &numbers(256)));
            assert!(trust.differed && trust.same.is_empty());
        }
    }
}

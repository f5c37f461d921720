//! A faster matrix product for the network inside `libvosk`.
//!
//! The network takes 0.12 s of sound at a time, which after its first layers is four rows of numbers, and multiplies them by all of its
//! 3.7 million weights. OpenBLAS, which `libvosk` brings along, first copies the weights into the order that its product likes, and
//! for a product this low the copy takes longer than the product. The function here reads the weights once, where they are. It bears the
//! name of the library's own (`cblas_sgemm`, of the Basic Linear Algebra Subprograms' C interface), and the dynamic linker prefers what
//! the program itself has. Any other product goes on to the library.
//!
//! Much of the sound is decoded more than once: by both paths of the command ear, and anew after each trial. The same rows times the same
//! weights give the same product, so the last few seconds' products are kept (`kept_products.rs`) and found again by a hash of the rows.
//!
//! Sums are added up in another order, so results differ in their last bits. To be safe against a library that means something else by
//! its arguments, the first product of each size is compared with the library's own, and where they differ by more than rounding the
//! library's own is used from then on. On processors without AVX2 and FMA it always is.

/// Makes the linker keep the function in a program that calls this. Does nothing else.
pub fn provide() {
    #[cfg(all(target_arch = "x86_64", target_os = "linux"))]
    std::hint::black_box(here::cblas_sgemm as *const ());
}

#[cfg(all(target_arch = "x86_64", target_os = "linux"))]
mod here {
    use super::super::kept_products::{KeptProducts, key};
    use std::arch::x86_64::{
        _mm_add_ps, _mm_add_ss, _mm_cvtss_f32, _mm_movehl_ps, _mm_shuffle_ps, _mm256_castps256_ps128, _mm256_extractf128_ps,
        _mm256_fmadd_ps, _mm256_loadu_ps, _mm256_setzero_ps,
    };
    use std::cell::RefCell;
    use std::ffi::{CStr, c_char, c_int, c_void};
    use std::sync::OnceLock;

    /// `CblasRowMajor`, `CblasNoTrans` and `CblasTrans` of the C interface.
    const ROW_MAJOR: c_int = 101;
    const AS_IT_IS: c_int = 111;
    const TRANSPOSED: c_int = 112;

    /// Products of more rows are left to the library: there its copy pays.
    const MOST_ROWS: usize = 64;

    /// The arguments of [`cblas_sgemm`], in its order.
    #[rustfmt::skip]
    type Product = unsafe extern "C" fn(
        c_int, c_int, c_int, c_int, c_int, c_int, f32, *const f32, c_int, *const f32, c_int, f32, *mut f32, c_int,
    );

    unsafe extern "C" {
        fn dlsym(handle: *mut c_void, name: *const c_char) -> *mut c_void;
    }

    /// What this program hides of that name: the function of the next library that has it.
    fn hidden(name: &CStr) -> Option<Product> {
        /// `RTLD_NEXT` of the C library.
        const NEXT: *mut c_void = std::ptr::without_provenance_mut(usize::MAX);
        // SAFETY: the name ends with a zero byte; a function of that name in a BLAS library has this type.
        unsafe { std::mem::transmute::<*mut c_void, Option<Product>>(dlsym(NEXT, name.as_ptr())) }
    }

    /// `c = alpha * a * bᵀ + beta * c` with the rows of each matrix `stride` numbers apart: `a` is rows x depth, `b` columns x depth, `c`
    /// rows x columns.
    #[derive(Debug, Clone, Copy)]
    struct Task {
        rows: usize,
        columns: usize,
        depth: usize,
        alpha: f32,
        a: *const f32,
        stride_a: usize,
        b: *const f32,
        stride_b: usize,
        beta: f32,
        c: *mut f32,
        stride_c: usize,
    }

    /// What this thread knows of its products.
    #[derive(Default)]
    struct Trust {
        /// Columns and depth of products for which both ways gave the same.
        same: Vec<(usize, usize)>,
        /// They differed once: the library's own alone is used.
        differed: bool,
        kept: KeptProducts,
    }

    /// More sizes than a network has; from then on the library's own is used for new ones.
    const SIZES: usize = 256;

    thread_local! {
        static TRUST: RefCell<Trust> = RefCell::default();
    }

    fn can() -> bool {
        std::arch::is_x86_feature_detected!("avx2") && std::arch::is_x86_feature_detected!("fma")
    }

    impl Trust {
        /// `library` does the same task by the library.
        ///
        /// # Safety
        /// The task's matrices are there.
        unsafe fn multiply(&mut self, task: Task, library: impl FnOnce()) {
            let size = (task.columns, task.depth);
            if self.differed || task.rows > MOST_ROWS || !can() {
                return library();
            }
            if self.same.contains(&size) {
                // SAFETY: as the caller says; the processor has AVX2 and FMA.
                return unsafe { self.kept_product(task) };
            }
            if self.same.len() == SIZES {
                return library();
            }
            // SAFETY: as the caller says.
            let numbers = |task: Task| -> Vec<f32> {
                (0..task.rows).flat_map(|r| (0..task.columns).map(move |c| unsafe { *task.c.add(r * task.stride_c + c) })).collect()
            };
            let mut own = numbers(task);
            // SAFETY: as above; `own` holds rows x columns numbers.
            unsafe { self.kept_product(Task { c: own.as_mut_ptr(), stride_c: task.columns, ..task }) };
            library();
            if same(&own, &numbers(task)) {
                self.same.push(size);
            } else {
                self.differed = true;
            }
        }
    }

    impl Trust {
        /// # Safety
        /// The task's matrices are there; the processor has AVX2 and FMA.
        unsafe fn kept_product(&mut self, task: Task) {
            let Task { rows, columns, depth, alpha, beta, .. } = task;
            // SAFETY: as the caller says.
            let row = |from: *const f32, stride: usize, n: usize| unsafe { std::slice::from_raw_parts(from.add(n * stride), depth) };
            // The weights never change while the program runs, so a few of them tell whose they are.
            let key =
                key((0..rows).map(|r| row(task.a, task.stride_a, r)), task.b.addr(), (0..columns).map(|c| row(task.b, task.stride_b, c)));
            let product = self.kept.find_or(key, rows * columns, |sums| {
                // SAFETY: as the caller says; `sums` has room for rows x columns numbers.
                unsafe { product(task, sums.as_mut_ptr()) };
            });
            for (r, sums) in product.chunks_exact(columns).enumerate() {
                // SAFETY: row `r` of the result is there, `columns` numbers long.
                let to = unsafe { std::slice::from_raw_parts_mut(task.c.add(r * task.stride_c), columns) };
                for (to, sum) in to.iter_mut().zip(sums) {
                    // Without the old number where it does not count: it may be anything, also no number.
                    *to = alpha * sum + if beta == 0.0 { 0.0 } else { beta * *to };
                }
            }
        }
    }

    /// They differ by no more than the order of adding up explains.
    fn same(own: &[f32], library: &[f32]) -> bool {
        /// Of the greatest number. Sums of 600 products of single precision differ by some 1e-6.
        const ROUNDING: f32 = 1e-4;
        let greatest = library.iter().fold(0.0_f32, |most, x| most.max(x.abs()));
        own.iter().zip(library).all(|(a, b)| (a - b).abs() <= ROUNDING * greatest)
    }

    /// The product of the C interface.
    ///
    /// # Safety
    /// As the C interface says: the matrices have the sizes that are told.
    #[unsafe(no_mangle)]
    pub(super) unsafe extern "C" fn cblas_sgemm(
        order: c_int,
        transpose_a: c_int,
        transpose_b: c_int,
        rows: c_int,
        columns: c_int,
        depth: c_int,
        alpha: f32,
        a: *const f32,
        stride_a: c_int,
        b: *const f32,
        stride_b: c_int,
        beta: f32,
        c: *mut f32,
        stride_c: c_int,
    ) {
        static LIBRARY: OnceLock<Option<Product>> = OnceLock::new();
        let library = || {
            // Only a library that has the function calls it, so without one nobody does.
            if let Some(library) = LIBRARY.get_or_init(|| hidden(c"cblas_sgemm")) {
                // SAFETY: the caller's arguments are passed on.
                unsafe {
                    library(order, transpose_a, transpose_b, rows, columns, depth, alpha, a, stride_a, b, stride_b, beta, c, stride_c)
                };
            }
        };
        let sizes = [rows, columns, depth, stride_a, stride_b, stride_c].map(|n| usize::try_from(n).unwrap_or(0));
        let [rows, columns, depth, stride_a, stride_b, stride_c] = sizes;
        if (order, transpose_a, transpose_b) != (ROW_MAJOR, AS_IT_IS, TRANSPOSED) || sizes.contains(&0) {
            return library();
        }
        let task = Task { rows, columns, depth, alpha, a, stride_a, b, stride_b, beta, c, stride_c };
        // SAFETY: as the caller says.
        TRUST.with_borrow_mut(|trust| unsafe { trust.multiply(task, library) });
    }

    /// Writes `a * bᵀ`, row by row, to `to`.
    ///
    /// # Safety
    /// The task's matrices are there, and room for rows x columns numbers; the processor has AVX2 and FMA.
    #[target_feature(enable = "avx2,fma")]
    unsafe fn product(task: Task, to: *mut f32) {
        /// So many columns (rows of `b`) at a time; with four rows of `a` their sums fill the processor's registers.
        const WIDE: usize = 3;
        let whole = task.columns - task.columns % WIDE;
        // SAFETY: as the caller says.
        unsafe {
            for column in (0..whole).step_by(WIDE) {
                all_rows::<WIDE>(&task, column, to);
            }
            for column in whole..task.columns {
                all_rows::<1>(&task, column, to);
            }
        }
    }

    /// `W` columns of the result from this one on.
    ///
    /// # Safety
    /// As for [`product`].
    #[target_feature(enable = "avx2,fma")]
    unsafe fn all_rows<const W: usize>(task: &Task, column: usize, to: *mut f32) {
        let mut row = 0;
        // SAFETY: as the caller says.
        unsafe {
            while row + 4 <= task.rows {
                tile::<4, W>(task, row, column, to);
                row += 4;
            }
            while row < task.rows {
                tile::<1, W>(task, row, column, to);
                row += 1;
            }
        }
    }

    /// `H` rows and `W` columns of the result.
    ///
    /// # Safety
    /// As for [`product`].
    #[target_feature(enable = "avx2,fma")]
    unsafe fn tile<const H: usize, const W: usize>(task: &Task, row: usize, column: usize, to: *mut f32) {
        let mut sums = [[_mm256_setzero_ps(); W]; H];
        let whole = task.depth - task.depth % 8;
        // SAFETY: the rows and columns are there, `depth` numbers long.
        unsafe {
            let a: [*const f32; H] = std::array::from_fn(|h| task.a.add((row + h) * task.stride_a));
            let b: [*const f32; W] = std::array::from_fn(|w| task.b.add((column + w) * task.stride_b));
            for k in (0..whole).step_by(8) {
                let weights: [_; W] = std::array::from_fn(|w| _mm256_loadu_ps(b[w].add(k)));
                for h in 0..H {
                    let x = _mm256_loadu_ps(a[h].add(k));
                    for w in 0..W {
                        sums[h][w] = _mm256_fmadd_ps(x, weights[w], sums[h][w]);
                    }
                }
            }
            for h in 0..H {
                for w in 0..W {
                    let eight = sums[h][w];
                    let four = _mm_add_ps(_mm256_castps256_ps128(eight), _mm256_extractf128_ps::<1>(eight));
                    let two = _mm_add_ps(four, _mm_movehl_ps(four, four));
                    let one = _mm_cvtss_f32(_mm_add_ss(two, _mm_shuffle_ps::<1>(two, two)));
                    let sum = (whole..task.depth).fold(one, |sum, k| sum + *a[h].add(k) * *b[w].add(k));
                    *to.add((row + h) * task.columns + column + w) = sum;
                }
            }
        }
    }

    #[cfg(test)]
    mod tests {
        use super::*;

        struct Case {
            rows: usize,
            columns: usize,
            depth: usize,
            gap: usize,
            alpha: f32,
            beta: f32,
        }

        fn numbers(count: usize, step: f32) -> Vec<f32> {
            (0..count).map(|i| (i as f32 * step).sin()).collect()
        }

        impl Case {
            fn matrices(&self) -> (Vec<f32>, Vec<f32>, Vec<f32>) {
                let stride = self.depth + self.gap;
                let old = if self.beta == 0.0 {
                    vec![f32::NAN; self.rows * (self.columns + self.gap)]
                } else {
                    numbers(self.rows * (self.columns + self.gap), 0.11)
                };
                (numbers(self.rows * stride, 0.37), numbers(self.columns * stride, 0.73), old)
            }

            fn task(&self, a: &[f32], b: &[f32], c: &mut [f32]) -> Task {
                let (stride, to) = (self.depth + self.gap, self.columns + self.gap);
                let &Self { rows, columns, depth, alpha, beta, .. } = self;
                Task {
                    rows,
                    columns,
                    depth,
                    alpha,
                    a: a.as_ptr(),
                    stride_a: stride,
                    b: b.as_ptr(),
                    stride_b: stride,
                    beta,
                    c: c.as_mut_ptr(),
                    stride_c: to,
                }
            }

            /// By the book, in double precision.
            fn expected(&self) -> Vec<f32> {
                let (a, b, mut c) = self.matrices();
                let (stride, to) = (self.depth + self.gap, self.columns + self.gap);
                for r in 0..self.rows {
                    for s in 0..self.columns {
                        let sum: f64 = (0..self.depth).map(|k| f64::from(a[r * stride + k]) * f64::from(b[s * stride + k])).sum();
                        let old = if self.beta == 0.0 { 0.0 } else { f64::from(self.beta) * f64::from(c[r * to + s]) };
                        c[r * to + s] = (f64::from(self.alpha) * sum + old) as f32;
                    }
                }
                c
            }
        }

        fn cases() -> impl Iterator<Item = Case> {
            [1, 2, 3, 4, 5, 8, 13].into_iter().flat_map(|rows| {
                [1, 2, 3, 7, 40, 160].into_iter().flat_map(move |columns| {
                    [1, 7, 8, 9, 200, 512].into_iter().flat_map(move |depth| {
                        [(0, 1.0, 0.0), (3, 0.5, 1.0)].into_iter().map(move |(gap, alpha, beta)| Case {
                            rows,
                            columns,
                            depth,
                            gap,
                            alpha,
                            beta,
                        })
                    })
                })
            })
        }

        /// The columns that no matrix has must stay as they were.
        fn alike(own: &[f32], expected: &[f32]) -> bool {
            own.len() == expected.len() && own.iter().zip(expected).all(|(a, b)| (a.is_nan() && b.is_nan()) || (a - b).abs() <= 2e-4)
        }

        #[test]
        fn every_size_gives_the_product_and_the_library_is_asked_once_for_each() {
            let mut trust = Trust::default();
            for case in cases() {
                let (a, b, _) = case.matrices();
                let mut asked = 0;
                for _ in 0..2 {
                    let mut c = case.matrices().2;
                    let task = case.task(&a, &b, &mut c);
                    let expected = case.expected();
                    // The library writes its result there, as in a program.
                    let stride = task.stride_c;
                    unsafe {
                        trust.multiply(task, || {
                            asked += 1;
                            for r in 0..case.rows {
                                for s in 0..case.columns {
                                    *task.c.add(r * stride + s) = expected[r * stride + s];
                                }
                            }
                        });
                    }
                    assert!(alike(&c, &expected), "{} x {} x {}", case.rows, case.columns, case.depth);
                }
                assert!(asked <= if can() { 1 } else { 2 });
            }
            assert!(!trust.differed);
            assert_eq!(trust.same.len(), if can() { 36 } else { 0 });
        }

        #[test]
        fn a_library_that_means_something_else_is_left_its_own_product() {
            let mut trust = Trust::default();
            let case = Case { rows: 4, columns: 40, depth: 64, gap: 0, alpha: 1.0, beta: 0.0 };
            let (a, b, mut c) = case.matrices();
            for _ in 0..2 {
                let task = case.task(&a, &b, &mut c);
                unsafe { trust.multiply(task, || (0..160).for_each(|i| *task.c.add(i) = i as f32)) };
                assert_eq!(c, (0..160).map(|i| i as f32).collect::<Vec<_>>());
            }
            assert_eq!(trust.differed, can());
        }

        #[test]
        fn many_rows_are_the_librarys() {
            let mut trust = Trust { same: vec![(40, 64)], ..Trust::default() };
            let case = Case { rows: MOST_ROWS + 1, columns: 40, depth: 64, gap: 0, alpha: 1.0, beta: 0.0 };
            let (a, b, mut c) = case.matrices();
            let mut asked = false;
            let task = case.task(&a, &b, &mut c);
            unsafe { trust.multiply(task, || asked = true) };
            assert!(asked);
        }
    }
}

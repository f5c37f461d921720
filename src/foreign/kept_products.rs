//! The last products of the network, so that sound which is decoded again costs little.

use foldhash::quality::FixedState;
use std::collections::HashMap;
use std::hash::{BuildHasher, Hasher};

/// So many numbers are kept: 8 s of sound of a network of 3.7 million weights, 16 MB.
const MOST: usize = 4 << 20;
/// So many of the weights tell one layer from another.
const SAMPLES: usize = 16;

/// Products by what they were made of; the oldest make room for new ones.
#[derive(Debug, Default)]
pub struct KeptProducts {
    products: HashMap<u64, Box<[f32]>>,
    /// Keys in the order in which they came.
    order: std::collections::VecDeque<u64>,
    numbers: usize,
}

/// What a product is made of: rows of numbers, and weights that stand at an address and never change while the program runs. Two that
/// differ have the same key with a chance of 1 in 2^64.
pub fn key<'a>(rows: impl Iterator<Item = &'a [f32]>, address: usize, weights: impl ExactSizeIterator<Item = &'a [f32]>) -> u64 {
    let mut hasher = FixedState::with_seed(0).build_hasher();
    let count = weights.len();
    hasher.write_usize(address);
    hasher.write_usize(count);
    for (n, weights) in weights.step_by(count.div_ceil(SAMPLES).max(1)).enumerate() {
        hasher.write_u32(weights.get(n % weights.len().max(1)).map_or(0, |weight| weight.to_bits()));
    }
    for row in rows {
        hasher.write_usize(row.len());
        hasher.write(bytes(row));
    }
    hasher.finish()
}

fn bytes(row: &[f32]) -> &[u8] {
    // SAFETY: any number is four bytes, and bytes need no alignment.
    unsafe { std::slice::from_raw_parts(row.as_ptr().cast(), size_of_val(row)) }
}

impl KeptProducts {
    /// The product of this key, of `length` numbers; `make` writes it where it is not kept.
    pub fn find_or(&mut self, key: u64, length: usize, make: impl FnOnce(&mut [f32])) -> &[f32] {
        if self.products.get(&key).is_none_or(|product| product.len() != length) {
            let mut product = self.room(length);
            make(&mut product);
            if let Some(old) = self.products.insert(key, product) {
                self.numbers -= old.len();
            } else {
                self.order.push_back(key);
            }
            self.numbers += length;
        }
        self.products.get(&key).map_or(&[], |product| product)
    }

    /// Room for so many numbers; what one of the oldest took is used again where it fits.
    fn room(&mut self, length: usize) -> Box<[f32]> {
        let mut room = None;
        while self.numbers + length > MOST {
            let Some(old) = self.order.pop_front().and_then(|key| self.products.remove(&key)) else { break };
            self.numbers -= old.len();
            if old.len() == length {
                room = Some(old);
            }
        }
        room.unwrap_or_else(|| vec![0.0; length].into_boxed_slice())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_product_is_made_once_and_the_oldest_make_room() {
        let mut kept = KeptProducts::default();
        let length = MOST / 4;
        let mut made = 0;
        for key in [1, 2, 1, 3, 4, 2, 1, 5, 2, 1] {
            let product = kept.find_or(key, length, |product| {
                made += 1;
                product.fill(key as f32);
            });
            assert_eq!((product.len(), product[0], product[length - 1]), (length, key as f32, key as f32));
            assert!(kept.numbers <= MOST && kept.order.len() == kept.products.len());
        }
        // 1, 2, 3, 4; 5 drives out 1, and 1 then drives out 2.
        assert_eq!(made, 6);
    }

    #[test]
    fn rows_weights_and_sizes_tell_products_apart() {
        let numbers: Vec<f32> = (0..64).map(|i| i as f32).collect();
        let of = |rows: &[f32], depth: usize, address: usize, weights: &[f32]| key(rows.chunks(depth), address, weights.chunks(depth));
        let one = of(&numbers, 8, 1, &numbers);
        assert_eq!(one, of(&numbers.clone(), 8, 1, &numbers.clone()));
        let mut other = numbers.clone();
        other[63] = -0.5;
        let mut first = numbers.clone();
        first[0] = -0.5;
        for differs in [of(&other, 8, 1, &numbers), of(&numbers, 8, 2, &numbers), of(&numbers, 16, 1, &numbers), of(&numbers, 8, 1, &first)]
        {
            assert_ne!(one, differs);
        }
    }
}

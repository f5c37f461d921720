//! All that cannot be written in safe Rust: C functions behind safe types, and the allocator that counts in tests. Nothing else may
//! stand here, and no other crate may say `unsafe`. Start at `speex.rs`.

pub mod counting;
#[cfg(target_arch = "x86_64")]
mod kept_products;
pub mod parent;
pub mod small_product;
pub mod speex;

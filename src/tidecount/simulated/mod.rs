//! Simulated clients: on which days they practise and how they feel, what they want to reach, and a practice led without sound. What
//! `demo --weeks` and `try` have in common.

pub mod course;
pub mod goals;
pub mod practice;

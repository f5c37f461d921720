//! The only room that knows all others: builds the parts and joins them.

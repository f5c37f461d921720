//! The journal, written as it happens, and the history (SQLite).

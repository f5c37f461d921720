//! What the eye gets. For now: large plain text on the terminal.

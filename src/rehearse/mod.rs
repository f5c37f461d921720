//! A simulated client in a simulated room, for the demo and for closed-loop tests.

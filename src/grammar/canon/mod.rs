//! The plain phrase of an act: written, and read back to exactly the same act.

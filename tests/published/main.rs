//! Checks against sources outside the program.

mod layout;

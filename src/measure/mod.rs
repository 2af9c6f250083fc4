//! Exact lengths: arithmetic, rounding to the tape, printing.

mod angle;
mod arctan;
mod length;
mod lumber;
mod print;
mod quick;
mod said;

pub use angle::{cosine, half_tangent, sin_cos, sine, tangent};
pub use arctan::arctan_degrees;
pub use length::{Length, Q, q_from_decimal};
pub use lumber::Lumber;
pub use print::{Tape, decimal, exact_fraction, exact_inches, exact_phrase, mixed_number};
pub use said::{Doubt, Guess, Meaning, Measure, Number, Said, Shade, Side};

//! What leaves the program: job notes, and a sheet to build from and to be inspected by.
//!
//! - [`Document`] gathers a job's answers by part; it holds words, drawings and the phrases that make the job.
//! - [`markdown`] writes it as notes; [`lines_to_take`] finds the job in notes pasted back.
//! - [`typeset`] lays it out on pages of plain shapes and text, with the drawings of `draw` to scale.
//! - `out` writes pages as SVG, HTML, PDF or PNG.
//!
//! Nothing here works a figure out: each comes from an answer or from the layout it was laid out by.

mod doc;
mod draw;
mod md;
mod out;
mod page;
mod set;
mod type_face;

pub use doc::{Block, Document, Part};
pub use md::{HEAD, lines_to_take, markdown};
pub use out::{Form, write};
pub use page::{Anchor, Figure, Ink, Page, Shape};
pub use set::{BODY, Paper, typeset};
pub use type_face::width as text_width;

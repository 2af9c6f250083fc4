//! Pages written as a file.

mod html;
mod pdf;
mod png;
mod svg;

use super::doc::Document;
use super::md::markdown;
use super::set::{Paper, typeset};
use crate::job::Job;

/// What a sheet is written as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Pages in one HTML file that needs no other.
    Html,
    /// Pages as PDF.
    Pdf,
    /// One drawing of all pages, one under another.
    Svg,
    /// A picture of them.
    Png,
    /// Notes.
    Md,
}

impl Form {
    /// Every form with the ending of its files.
    pub const ALL: [(&str, Form); 5] =
        [("html", Form::Html), ("pdf", Form::Pdf), ("svg", Form::Svg), ("png", Form::Png), ("md", Form::Md)];

    /// The form a file of that ending has.
    pub fn of_ending(ending: &str) -> Option<Form> {
        Form::ALL.iter().find(|(name, _)| name.eq_ignore_ascii_case(ending)).map(|(_, form)| *form)
    }
}

/// A job's sheet as the bytes of a file. `None` for a picture too large to be made.
pub fn write(job: &Job, form: Form, paper: Paper) -> Option<Vec<u8>> {
    let document = Document::of(job);
    if form == Form::Md {
        return Some(markdown(&document).into_bytes());
    }
    let pages = typeset(&document, paper);
    match form {
        Form::Html => Some(html::html(&pages).into_bytes()),
        Form::Pdf => Some(pdf::pdf(&pages)),
        Form::Svg => Some(svg::svg(&pages).into_bytes()),
        Form::Png => png::png(&pages),
        Form::Md => None,
    }
}

/// A place on paper is far inside what single precision tells apart.
#[allow(clippy::cast_possible_truncation)]
fn small(n: f64) -> f32 {
    n as f32
}

//! Posts where they were told.

use super::super::frame::Frame;
use super::super::placed::Took;
use super::super::{Kind, Lack};
use super::{line_post, put, stands};
use crate::figure::{Fig, Why};
use crate::job::{EndOf, Run, Spot};
use crate::measure::Length;

/// Adds each told post, kept exactly; one told where a post stands anyway adds none.
pub(super) fn add(frame: &mut Frame, run: &Run, length: Length, line: &Fig, took: &mut Vec<Took>) -> Result<(), Lack> {
    for spot in &run.choices.posts {
        let centre = place(frame, length, *spot);
        let told = Fig::told(spot.at, "where the post stands");
        if !stands(frame, centre) {
            let half = line.as_length().unwrap_or(Length::ZERO) / 2;
            let why = Why::Formula("the post's centre where it was told", vec![("told", told.clone())]);
            put(frame, line_post(centre - half, line, Kind::Told, why), Lack::PostPlace)?;
        }
        took.push(Took::Kept { at: told, from: spot.end });
    }
    Ok(())
}

/// A told place, from the outside start of the run.
pub(super) fn place(frame: &Frame, length: Length, spot: Spot) -> Length {
    match spot.end {
        EndOf::From => frame.lead + spot.at,
        EndOf::To => frame.lead + length - spot.at,
    }
}

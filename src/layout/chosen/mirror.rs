//! Posts mirrored about the one opening in a run, or about the middle of its rail.

use super::super::frame::Frame;
use super::super::placed::Took;
use super::super::{BayKind, Kind, Lack};
use super::{line_post, put, stands};
use crate::figure::{Fig, Why};
use crate::limits;
use crate::measure::Length;

/// The line posts are mirrored about, from the outside start of the run: the middle of its
/// one opening, else the middle of its rail.
pub(super) fn axis(frame: &Frame) -> Result<Length, Lack> {
    let last = frame.between.len().saturating_sub(1);
    let inner = (1..last).filter(|i| frame.between[*i] != BayKind::Rail);
    let middle = |from: Length, to: Length| (from + to) / 2;
    match inner.collect::<Vec<_>>()[..] {
        [one] => Ok(middle(frame.fixed[one].far(), frame.fixed[one + 1].near)),
        [] => rail(frame).map(|(from, to)| middle(from, to)).ok_or(Lack::Mirror),
        _ => Err(Lack::Mirror),
    }
}

/// From where to where the run carries rail, openings within counted in.
fn rail(frame: &Frame) -> Option<(Length, Length)> {
    let is_rail = |k: &BayKind| *k == BayKind::Rail;
    let (first, last) = (frame.between.iter().position(is_rail)?, frame.between.iter().rposition(is_rail)?);
    Some((frame.fixed[first].far(), frame.fixed[last + 1].near))
}

/// Adds the image of each told post; and on the longer side the image of the shorter
/// side's end post, so that what lies between it and the axis mirrors. Where the sides
/// differ by too little for that, the count of bays alone is made the same.
pub(super) fn add(frame: &mut Frame, axis: Length, line: &Fig, took: &mut Vec<Took>) -> Result<(), Lack> {
    let told: Vec<Length> =
        frame.fixed.iter().filter(|f| f.kind == Some(Kind::Told)).map(|f| f.near + f.width / 2).collect();
    let half = line.as_length().unwrap_or(Length::ZERO) / 2;
    for centre in told {
        let image = axis * 2 - centre;
        if !stands(frame, image) {
            put(frame, line_post(image - half, line, Kind::Line, why()), Lack::Mirror)?;
        }
    }
    let Some((from, to)) = rail(frame) else { return Err(Lack::Mirror) };
    let (left, right) = (axis - from, to - axis);
    let (short, long) = (left.min(right), left.max(right));
    if short == long {
        took.push(Took::Mirrored);
        return Ok(());
    }
    let rest = long - short - half * 2;
    if rest < crate::solve::habit(&limits::SHORT_BAY) {
        took.push(Took::SameCount);
        return Ok(());
    }
    let near = if left > right { axis - short - half * 2 } else { axis + short };
    put(frame, line_post(near, line, Kind::Line, why()), Lack::Mirror)?;
    took.push(Took::MirroredPart);
    Ok(())
}

fn why() -> Why {
    Why::Formula("as far from the middle of the opening, or of the run, as the post it mirrors", Vec::new())
}

/// Gives each span and the one it mirrors the greater of their two counts. `counts` are
/// those of the rail spans in order.
pub(super) fn even_up(frame: &Frame, axis: Length, counts: &mut [u16]) {
    let rails: Vec<usize> = (0..frame.between.len()).filter(|i| frame.between[*i] == BayKind::Rail).collect();
    let before = rails.iter().enumerate().rev().filter(|(_, i)| frame.fixed[**i + 1].near <= axis).map(|(k, _)| k);
    let after = rails.iter().enumerate().filter(|(_, i)| frame.fixed[**i].far() >= axis).map(|(k, _)| k);
    let pairs: Vec<(usize, usize)> = before.zip(after).collect();
    for (a, b) in pairs {
        let most = counts[a].max(counts[b]);
        (counts[a], counts[b]) = (most, most);
    }
}

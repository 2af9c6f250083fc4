//! The baluster line: how far inside the decking's edge the posts' centres stand.

use super::Lack;
use super::sizes::post_width;
use crate::figure::{Fig, Why};
use crate::job::{Mount, PostRole, Settings};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::solve::{self, Source, choice, default_of};

/// How far the baluster line lies inside the decking's edge, in inches; below nothing it
/// lies outside it. Told outright, or by the mount (common practice, no source):
///
/// - over the edge: on it;
/// - inside the rim: overhang + skirt + rim + half the post;
/// - outside the rim: overhang less half the post;
/// - on the decking: it must be told.
///
/// # Errors
/// The facts it wants and was not told.
pub fn line_inside(settings: &Settings) -> Result<Fig, Vec<Lack>> {
    if let Some(told) = Source::told(settings, RowId::Line) {
        return Ok(told);
    }
    match choice::mount(settings) {
        None => Ok(default_of(settings, &limits::MOUNT)),
        Some(Mount::OverEdge) => Ok(default_of(settings, &limits::LINE_OVER_EDGE)),
        Some(Mount::Inside) => inside(settings),
        Some(Mount::Outside) => outside(settings),
        Some(Mount::Surface) => Err(vec![Lack::Line]),
    }
}

/// The overhang and the skirt as told.
///
/// # Errors
/// Those that were not told.
pub(super) fn overhang_and_skirt(s: &Settings) -> Result<(Fig, Fig), Vec<Lack>> {
    match (Source::told(s, RowId::Overhang), Source::told(s, RowId::Skirt)) {
        (Some(overhang), Some(skirt)) => Ok((overhang, skirt)),
        (overhang, skirt) => {
            let untold = [(overhang, Lack::Overhang), (skirt, Lack::Skirt)];
            Err(untold.into_iter().filter(|(l, _)| l.is_none()).map(|(_, lack)| lack).collect())
        }
    }
}

fn inside(s: &Settings) -> Result<Fig, Vec<Lack>> {
    let half = half_post(s)?;
    let (overhang, skirt) = overhang_and_skirt(s)?;
    let parts =
        vec![("overhang", overhang), ("skirt", skirt), ("rim", solve::taken(s, RowId::Rim)), ("half the post", half)];
    let sum = parts.iter().filter_map(|(_, f)| f.as_length()).sum();
    Ok(Fig::length(sum, Why::Formula("overhang + skirt + rim + half the post", parts)))
}

/// A skirt behind posts outside the rim is cut or packed: which, nobody said, so the line
/// is asked.
fn outside(s: &Settings) -> Result<Fig, Vec<Lack>> {
    if Source::told(s, RowId::Skirt).and_then(|f| f.as_length()).is_some_and(Length::is_positive) {
        return Err(vec![Lack::Line]);
    }
    let half = half_post(s)?;
    let overhang = Source::told(s, RowId::Overhang).unwrap_or_else(|| default_of(s, &limits::FLUSH_RIM));
    let d = overhang.as_length().unwrap_or(Length::ZERO) - half.as_length().unwrap_or(Length::ZERO);
    let parts = vec![("overhang", overhang), ("half the post", half)];
    Ok(Fig::length(d, Why::Formula("overhang less half the post: the posts stand outside the rim", parts)))
}

/// Half of the one post size. Posts of two sizes against a rim have no one line: it is asked.
fn half_post(s: &Settings) -> Result<Fig, Vec<Lack>> {
    let roles = [PostRole::Corner, PostRole::Line, PostRole::End, PostRole::Gate, PostRole::Stair];
    let widths: Vec<Fig> = roles.iter().map(|r| post_width(s, &[*r])).collect();
    let one_size = widths.iter().all(|w| w.value() == widths[0].value());
    let width = widths[0].as_length().filter(|_| one_size).ok_or_else(|| vec![Lack::Line])?;
    Ok(Fig::length(width / 2, Why::Formula("half of the post", vec![("post", widths[0].clone())])))
}

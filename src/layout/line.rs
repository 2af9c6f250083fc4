//! The baluster line: how far inside the decking's edge the posts' centres stand.

use super::Lack;
use super::sizes::post_width;
use crate::figure::{Fig, Value, Why};
use crate::job::{Mount, PostRole, Settings};
use crate::limits::{self, Limit};
use crate::measure::{Length, Lumber};

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
    if let Some(told) = settings.line {
        return Ok(Fig::told(told, "the baluster line, inside the decking's edge"));
    }
    match settings.mount {
        None => Ok(taken(&limits::MOUNT)),
        Some(Mount::OverEdge) => Ok(taken(&limits::LINE_OVER_EDGE)),
        Some(Mount::Inside) => inside(settings),
        Some(Mount::Outside) => outside(settings),
        Some(Mount::Surface) => Err(vec![Lack::Line]),
    }
}

fn taken(limit: &'static Limit) -> Fig {
    Fig::length(limit.length(), Why::Default(limit))
}

fn inside(s: &Settings) -> Result<Fig, Vec<Lack>> {
    let half = half_post(s)?;
    let untold = [(s.overhang, Lack::Overhang), (s.skirt, Lack::Skirt)];
    let (Some(overhang), Some(skirt)) = (s.overhang, s.skirt) else {
        return Err(untold.into_iter().filter(|(l, _)| l.is_none()).map(|(_, lack)| lack).collect());
    };
    let parts = vec![
        ("overhang", Fig::told(overhang, "the overhang")),
        ("skirt", Fig::told(skirt, "the skirt")),
        ("rim", rim(s)),
        ("half the post", half),
    ];
    let sum = parts.iter().filter_map(|(_, f)| f.as_length()).sum();
    Ok(Fig::length(sum, Why::Formula("overhang + skirt + rim + half the post", parts)))
}

/// A skirt behind posts outside the rim is cut or packed: which, nobody said, so the line
/// is asked.
fn outside(s: &Settings) -> Result<Fig, Vec<Lack>> {
    if s.skirt.is_some_and(Length::is_positive) {
        return Err(vec![Lack::Line]);
    }
    let half = half_post(s)?;
    let overhang = s.overhang.map_or_else(|| taken(&limits::FLUSH_RIM), |l| Fig::told(l, "the overhang"));
    let d = overhang.as_length().unwrap_or(Length::ZERO) - half.as_length().unwrap_or(Length::ZERO);
    let parts = vec![("overhang", overhang), ("half the post", half)];
    Ok(Fig::length(d, Why::Formula("overhang less half the post: the posts stand outside the rim", parts)))
}

/// The rim's thickness: told, or the dressed thickness of 2-by lumber.
fn rim(s: &Settings) -> Fig {
    let nominal = u16::try_from(limits::RIM_SIZE.value).unwrap_or(2);
    // The size table holds 2-by lumber; the line's own test holds it to that.
    let dressed = || Lumber::by(nominal, nominal).dressed().map_or(Length::ZERO, |(thick, _)| thick);
    let by_size = || {
        let size = Fig::new(Value::Count(u64::from(nominal)), Why::Default(&limits::RIM_SIZE));
        Fig::length(dressed(), Why::Formula("dressed dry thickness by the PS 20 size table", vec![("nominal", size)]))
    };
    s.rim.map_or_else(by_size, |l| Fig::told(l, "the rim"))
}

/// Half of the one post size. Posts of two sizes against a rim have no one line: it is asked.
fn half_post(s: &Settings) -> Result<Fig, Vec<Lack>> {
    let roles = [PostRole::Corner, PostRole::Line, PostRole::End, PostRole::Gate, PostRole::Stair];
    let widths: Vec<Fig> = roles.iter().map(|r| post_width(s, &[*r])).collect();
    let one_size = widths.iter().all(|w| w.value() == widths[0].value());
    let width = widths[0].as_length().filter(|_| one_size).ok_or_else(|| vec![Lack::Line])?;
    Ok(Fig::length(width / 2, Why::Formula("half of the post", vec![("post", widths[0].clone())])))
}

//! A gate's leaf in its opening, from outside: frame, balusters, brace, with what it is cut to.

use super::super::page::{Anchor, Figure, Ink, Shape, block, line, text};
use super::super::set::BODY;
use super::{begun, dimension, per_inch, scale_for};
use crate::figure::Fig;
use crate::gate::brace::brace;
use crate::gate::{LeafTold, gap, leaf};
use crate::infill::{Opening, fewest};
use crate::job::{Jamb, Job, PostRole};
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{GateFig, tape_of};
use crate::solve::{Source, default_of, post_width, taken};
use crate::takeoff::baluster_fig;

const SIZE: f64 = 7.0;

/// The leaf worked out, drawn between its jambs; none where its height is not known.
pub fn gate(job: &Job, fig: &GateFig) -> Option<Figure> {
    let length = |f: &Fig| f.as_length();
    let (opening, wide_leaf) = (length(&fig.opening)?, length(&fig.leaf)?);
    let (hinge, latch) = (length(&fig.hinge_gap)?, length(&fig.latch_gap)?);
    let top = taken(job, RowId::HeightTop).as_length()?;
    let under = Source::told(job, RowId::GapUnder)?.as_length()?;
    let high = top.less(under).filter(|h| h.is_positive())?;
    let told = job.runs.iter().find_map(|r| r.gate)?;
    if told.hung.leaves == Some(2) {
        return None;
    }
    let tape = tape_of(job);
    let jamb_in = post_width(&job.settings, &[PostRole::Gate]).as_length()?.for_drawing();
    let frame_in = default_of(job, &limits::GATE_STILE).as_length()?.for_drawing();
    let scale =
        scale_for(opening.for_drawing() + 2.0 * jamb_in + 8.0, BODY - 160.0).max(scale_for(top.for_drawing(), 220.0));
    let k = per_inch(scale);
    let start = 70.0;
    let deck = 24.0 + top.for_drawing() * k;
    // The hinge is drawn left: which side it is on is told beneath.
    let jamb = jamb_in * k;
    let from = start + jamb;
    let to = from + opening.for_drawing() * k;
    let mut shapes = vec![
        block(start, 24.0, jamb, deck - 24.0, Ink::Pale, 0.6),
        block(to, 24.0, jamb, deck - 24.0, Ink::Pale, 0.6),
        block(start - 10.0, deck, to + jamb + 20.0 - start, 3.0, Ink::Grey, 0.4),
    ];
    let (x, y) = (from + hinge.for_drawing() * k, 24.0);
    let (wide, tall) = (wide_leaf.for_drawing() * k, high.for_drawing() * k);
    let frame = frame_in * k;
    shapes.push(block(x, y, wide, tall, Ink::None, 0.9));
    shapes.push(block(x + frame, y + frame, wide - 2.0 * frame, tall - 2.0 * frame, Ink::None, 0.6));
    shapes.extend(balusters(job, fig, (x + frame, y + frame, tall - 2.0 * frame), k).into_iter().flatten());
    // From the bottom at the hinges up to the top at the latch: pushed on, as wood is.
    shapes.push(line((x + frame, y + tall - frame), (x + wide - frame, y + frame), 1.4));
    let across = |y: f64, (a, b): (f64, f64), l: Length, above: bool| {
        let at = ((a + b) / 2.0, if above { y - 3.0 } else { y + 9.0 });
        [line((a, y), (b, y), 0.4), dimension(at, SIZE, false, l, tape)]
    };
    shapes.extend(across(12.0, (from, to), opening, true));
    shapes.extend(across(deck + 9.0, (x, x + wide), wide_leaf, false));
    let side = to + jamb + 12.0;
    shapes.push(line((side, y), (side, y + tall), 0.4));
    shapes.push(begun(dimension((side + 4.0, y + tall / 2.0), SIZE, false, high, tape)));
    let mut foot = deck + 30.0;
    let mut says = |words: String| {
        shapes.push(text((0.0, foot), SIZE, Anchor::Start, words));
        foot += 10.0;
    };
    says(format!("Opening above, leaf below, its height at the side; {} left under it.", tape.read(under)));
    if Source::told(job, RowId::HeightTop).is_none() {
        says(format!("Assumed, not told: the guard's height, drawn {}.", tape.read(top)));
    }
    says(format!("Gaps: {} at the hinges, drawn left, {} at the latch.", tape.read(hinge), tape.read(latch)));
    if let Some(jamb) = told.hung.hinge {
        says(format!("Hinged {}.", side_of(jamb)));
    }
    let diagonal = brace(&fig.leaf, &Fig::told(high, "the leaf's height")).and_then(|b| b.diagonal.as_length());
    if let Some(diagonal) = diagonal {
        says(format!(
            "Square when both diagonals are {}. The brace is wood: bottom at the hinges to top at the latch.",
            tape.read(diagonal)
        ));
    }
    Some(Figure { title: "The gate from outside".to_owned(), width: BODY, height: foot, scale: Some(scale), shapes })
}

fn side_of(jamb: Jamb) -> &'static str {
    match jamb {
        Jamb::Left => "on the left, seen from the house",
        Jamb::Right => "on the right, seen from the house",
        Jamb::House => "on the house side",
        Jamb::Away => "away from the house",
    }
}

/// The leaf's balusters between its stiles, where they can be spread.
fn balusters(job: &Job, fig: &GateFig, (x, y, tall): (f64, f64, f64), k: f64) -> Option<Vec<Shape>> {
    let told = LeafTold {
        openings: vec![fig.opening.as_length()?],
        hinge_gap: fig.hinge_gap.as_length(),
        latch_gap: fig.latch_gap.as_length(),
        stile: None,
        leaf: fig.leaf.as_length(),
        leaves: None,
    };
    let clear = leaf(&told).ok()?.clear?.as_length()?;
    let wide = baluster_fig(job).as_length()?;
    let limit = gap::level(job).limit();
    let spread = fewest(Opening::measured(clear, wide, limit, tape_of(job))).ok()?.taped;
    let drawn = wide.for_drawing() * k;
    let one = |i| block(x + spread.place(i).for_drawing() * k, y, drawn, tall, Ink::White, 0.3);
    Some((0..spread.count()).map(one).collect())
}

//! The sticks with what is cut out of each.

use super::super::page::{Anchor, Figure, Ink, block, text};
use super::super::set::BODY;
use super::super::type_face::width;
use super::{dimension, per_inch, scale_for};
use crate::job::Job;
use crate::layout::Layout;
use crate::measure::Length;
use crate::takeoff::cutplan::Effort;
use crate::takeoff::{buy, longest, parts};

const SIZE: f64 = 7.0;
const LABEL: f64 = 62.0;
const BAR: f64 = 12.0;

/// One drawing for each size of lumber.
pub fn sticks(job: &Job, layout: &Layout) -> Vec<Figure> {
    let Ok(parts) = parts(job, layout, |size| longest(job, size)) else { return Vec::new() };
    let bought = buy(job, &parts, &mut Effort::AT_THE_PROMPT.clone());
    let drawn = bought.iter().filter_map(|of| {
        let plan = of.plan.as_ref().ok()?;
        let most = plan.sticks.iter().map(|s| s.stock).max()?;
        let scale = scale_for(most.for_drawing(), BODY - LABEL);
        let k = per_inch(scale);
        let mut shapes = Vec::new();
        for (n, stick) in (0_u32..).zip(&plan.sticks) {
            let y = f64::from(n) * (BAR + 5.0);
            let feet = layout.tape.read(stick.stock);
            let whose = if stick.on_hand { "on hand" } else { "" };
            let label = format!("{} x {feet} {whose}", stick.times);
            shapes.push(text((0.0, y + BAR - 3.0), SIZE, Anchor::Start, label.trim_end()));
            shapes.push(block(LABEL, y, stick.stock.for_drawing() * k, BAR, Ink::Pale, 0.5));
            let mut at = LABEL;
            for (cut, times) in &stick.cuts {
                for _ in 0..*times {
                    let wide = cut.for_drawing() * k;
                    shapes.push(block(at, y, wide, BAR, Ink::White, 0.7));
                    if width(&layout.tape.read(*cut), SIZE, false) + 3.0 < wide {
                        shapes.push(dimension((at + wide / 2.0, y + BAR - 3.0), SIZE, false, *cut, layout.tape));
                    }
                    at += wide + crate::takeoff::kerf(job).for_drawing() * k;
                }
            }
        }
        let height = f64::from(u32::try_from(plan.sticks.len()).ok()?) * (BAR + 5.0);
        let title = format!("{}: what is cut from each, the grey left over", of.size);
        (most > Length::ZERO).then_some(Figure { title, width: BODY, height, scale: Some(scale), shapes })
    });
    drawn.collect()
}

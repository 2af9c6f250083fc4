//! How far a figure is from what the question gave of it: "16 bolts: 4 more than 12".

use super::asked::{Asked, Found};
use super::compared::apart;
use super::say;
use crate::figure::{Fig, Value};
use crate::reply::{Line, Role, Span};

/// The line and the difference; `None` where the question gave nothing of the row, or just that.
pub(super) fn anew(asked: &Asked, found: &Found) -> Option<(Line, Fig)> {
    let given = asked.given.get(found.want)?;
    let apart = apart(given, &found.solved.fig).filter(|fig| fig.value() != Value::Count(0))?;
    (given.value() != found.solved.fig.value()).then_some(())?;
    let than = if found.solved.fig.as_q() > given.as_q() { " more than the " } else { " less than the " };
    let spans = vec![Span::Say("That is "), say::fig(&apart), Span::Say(than), say::fig(given), Span::Say(" given.")];
    Some((Line::new(Role::Detail, spans), apart))
}

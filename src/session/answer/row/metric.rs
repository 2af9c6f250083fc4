//! Who gives millimetres is answered in them first.

use super::asked::Asked;
use crate::figure::{Fig, Value, Why};
use crate::measure::{Length, Tape};
use crate::reply::{Reply, Role, Span, Style};

/// Says the answer in millimetres where a premise was given in them; limits keep the unit they are published in.
pub(super) fn say(reply: &mut Reply, asked: &Asked) {
    if asked.ask.given.iter().any(|(_, value)| matches!(value, Value::Length(l) if is_metric(*l))) {
        in_metric(reply);
    }
}

/// Says every length of the answer in millimetres first.
pub(in crate::session::answer) fn in_metric(reply: &mut Reply) {
    reply.values.metric = true;
    let answers = reply.lines.iter_mut().filter(|line| line.role == Role::Answer);
    for span in answers.flat_map(|line| &mut line.spans) {
        match span {
            Span::Fig(fig, style) if fig.as_length().is_some() && !is_limit(fig) => *style = Style::MetricFirst,
            _ => {}
        }
    }
}

/// True for whole millimetres that no tape in inches has a mark for.
pub(in crate::session::answer) fn is_metric(l: Length) -> bool {
    l.is_exact() && l.mm().is_integer() && !Tape::SIXTEENTHS.is_true(l)
}

fn is_limit(fig: &Fig) -> bool {
    matches!(fig.why(), Why::Limit(_) | Why::Default(_))
}

//! How much more one board sags lying flat than on edge: by its size alone, whatever it spans and bears.

use super::asked::Asked;
use super::{Figs, say};
use crate::figure::{Fig, Unit, Why};
use crate::job::{Fact, Lie, Member, Order};
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::solve::order;

/// The answer where the sag is asked of a rail that lies both ways; else `None`.
pub(super) fn answer(asked: &Asked) -> Option<(Reply, Figs)> {
    let tries = |lie: Lie| asked.ask.supposed.iter().any(|f| matches!(f, Fact::Order(Order::Lay(_, l)) if *l == lie));
    let both = asked.ask.wants[..] == [RowId::RailSag] && tries(Lie::Flat) && tries(Lie::Edge);
    let member =
        |m: &Member| asked.ask.supposed.iter().any(|f| matches!(f, Fact::Order(Order::Rail(of, Some(_))) if of == m));
    let of = [Member::Bottom, Member::Cap].into_iter().find(member).unwrap_or(Member::Top);
    let size = order::rail(asked.job, of).filter(|_| both)?;
    let (thick, wide) = size.dressed()?;
    let [thick, wide] = [(thick, "how thick it is"), (wide, "how wide it is")].map(|(l, said)| Fig::told(l, said));
    let ratio = wide.as_q() / thick.as_q();
    let why = Why::Formula(
        "the wide side over the thin one, squared: a board is as stiff as its width x its depth cubed",
        vec![("wide side", wide), ("thin side", thick)],
    );
    let times = Fig::quantity(ratio * ratio, Unit::Times, why);
    let mut reply = Reply::of(Status::Answered);
    let spans = [
        Span::Say("It sags "),
        say::fig(&times),
        Span::Say(" times as much lying flat as on edge: on edge it is the stiffer, over the same bay and load."),
    ];
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.lines.extend(say::working(&times));
    reply.values.result = Some(times.clone());
    reply.values.more.push(("times_as_much", times.clone()));
    Some((reply, vec![("times as much", times)]))
}

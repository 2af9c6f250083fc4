//! JSON of what was told for the parts, the saw and the yard.

use super::json::length;
use crate::job::{BalustersAt, Lie, LongPart, Member, OrderBook, Percent, StartWith};
use crate::measure::{Length, Lumber, Tape};
use serde_json::{Value, json};

/// The order's JSON object; what was not told is null or an empty list.
pub(super) fn order(book: &OrderBook, tape: Tape) -> Value {
    let l = |l: Option<Length>| l.map_or(Value::Null, |l| length(l, tape));
    let size = |s: Lumber| s.to_string();
    let percent = |of| book.percent(of).map(|p| p.normalize().to_string());
    let stick = |(s, f): &(Option<Lumber>, Vec<u16>)| json!({ "size": s.map(size), "feet": f });
    let on_hand =
        |(s, at, n): &(Lumber, Length, u16)| json!({ "size": size(*s), "length": length(*at, tape), "count": n });
    json!({
        "top_rail": member(book, Member::Top), "bottom_rail": member(book, Member::Bottom), "cap": member(book, Member::Cap),
        "balusters": book.balusters.map(|at| match at {
            BalustersAt::Between => "between the rails",
            BalustersAt::Faces => "on the rails' faces",
        }),
        "start": book.start.map(|s| if s == StartWith::Gap { "gap" } else { "baluster" }),
        "baluster_length": l(book.cut(LongPart::Baluster)), "post_length": l(book.cut(LongPart::Post)),
        "bracket": l(book.bracket), "kerf": l(book.kerf), "spares": book.spares,
        "bays": book.bays.iter().map(|(n, clear)| json!({ "count": n, "clear": length(*clear, tape) })).collect::<Vec<_>>(),
        "stock": book.sold.iter().map(stick).collect::<Vec<_>>(),
        "on_hand": book.on_hand.iter().map(on_hand).collect::<Vec<_>>(),
        "waste": percent(Percent::Waste), "tax": percent(Percent::Tax), "markup": percent(Percent::Markup),
        "labour": book.labour.map(|m| m.to_string()),
        "prices": book.prices.iter().map(|(s, p)| {
            json!({ "size": size(s.size), "feet": s.feet, "each": p.to_string() })
        }).collect::<Vec<_>>(),
    })
}

fn member(book: &OrderBook, member: Member) -> Value {
    let lay = book.lay(member).map(|l| if l == Lie::Flat { "flat" } else { "on edge" });
    match book.rail(member) {
        None if lay.is_none() => Value::Null,
        Some(None) => "none".into(),
        told => json!({ "size": told.flatten().map(|s| s.to_string()), "lies": lay }),
    }
}

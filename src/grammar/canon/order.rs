//! Facts for the parts, the saw and the yard.
//!
//! ```text
//! order = ("top rail" | "bottom rail" | "cap") (": " (lumber | "none") | " lies: " ("flat" | "on edge"))
//!       | "balusters: " ("between the rails" | "on the rails' faces") | "start: with a " ("gap" | "baluster")
//!       | ("balusters" | "posts") " cut: " inches | "bracket: " inches " each end" | "kerf: " inches
//!       | "bays: " n " at " length " clear" | "bays: none"
//!       | "stock: " [lumber " in "] n *(", " n) " ft" | "on hand: " n " " lumber " at " length
//!       | ("waste" | "tax" | "markup") ": " decimal " %" | "spares: " n
//!       | "price: " lumber "x" n " at " decimal | "labour: " decimal
//! ```

use super::Read;
use super::length::{read_length, read_lumber};
use super::words::{Table, one_of, whole, words_of};
use crate::job::{BalustersAt, Lie, LongPart, Member, Order, Percent, StartWith, StickOf};
use crate::measure::{exact_inches, exact_phrase};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::{tag, take_while1};
use nom::combinator::{map, map_opt, opt, value};
use nom::multi::separated_list1;
use nom::sequence::{delimited, preceded, separated_pair, terminated};
use rust_decimal::Decimal;

const MEMBERS: &Table<Member> = &[(Member::Top, "top rail"), (Member::Bottom, "bottom rail"), (Member::Cap, "cap")];
const LAYS: &Table<Lie> = &[(Lie::Flat, "flat"), (Lie::Edge, "on edge")];
const AT: &Table<BalustersAt> =
    &[(BalustersAt::Between, "between the rails"), (BalustersAt::Faces, "on the rails' faces")];
const STARTS: &Table<StartWith> = &[(StartWith::Gap, "gap"), (StartWith::Baluster, "baluster")];
const CUTS: &Table<LongPart> = &[(LongPart::Baluster, "balusters"), (LongPart::Post, "posts")];
const PERCENTS: &Table<Percent> = &[(Percent::Waste, "waste"), (Percent::Tax, "tax"), (Percent::Markup, "markup")];

/// The plain phrase of one fact.
pub(super) fn write_order(order: &Order) -> String {
    match order {
        Order::Rail(m, Some(size)) => format!("{}: {size}", words_of(MEMBERS, *m)),
        Order::Rail(m, None) => format!("{}: none", words_of(MEMBERS, *m)),
        Order::Lay(m, lay) => format!("{} lies: {}", words_of(MEMBERS, *m), words_of(LAYS, *lay)),
        Order::Balusters(at) => format!("balusters: {}", words_of(AT, *at)),
        Order::StartWith(with) => format!("start: with a {}", words_of(STARTS, *with)),
        Order::Cut(part, l) => format!("{} cut: {}", words_of(CUTS, *part), exact_inches(*l)),
        Order::Bracket(l) => format!("bracket: {} each end", exact_inches(*l)),
        Order::Bays(n, l) => format!("bays: {n} at {} clear", exact_phrase(*l)),
        Order::NoBays => "bays: none".to_owned(),
        Order::Sold(None, feet) => format!("stock: {} ft", list(feet)),
        Order::Sold(Some(size), feet) => format!("stock: {size} in {} ft", list(feet)),
        Order::OnHand(size, l, n) => format!("on hand: {n} {size} at {}", exact_phrase(*l)),
        Order::Kerf(l) => format!("kerf: {}", exact_inches(*l)),
        Order::Percent(of, n) => format!("{}: {} %", words_of(PERCENTS, *of), n.normalize()),
        Order::Spares(n) => format!("spares: {n}"),
        Order::Price(stick, price) => format!("price: {}x{} at {}", stick.size, stick.feet, price.normalize()),
        Order::Labour(price) => format!("labour: {}", price.normalize()),
    }
}

fn list(feet: &[u16]) -> String {
    feet.iter().map(u16::to_string).collect::<Vec<_>>().join(", ")
}

/// Reads what [`write_order`] writes.
pub(super) fn read_order(i: &str) -> Read<'_, Order> {
    alt((read_member, read_part, read_bays, read_stock, read_money)).parse(i)
}

fn read_member(i: &str) -> Read<'_, Order> {
    let size = alt((map(read_lumber, Some), value(None, tag("none"))));
    alt((
        map(separated_pair(one_of(MEMBERS), tag(" lies: "), one_of(LAYS)), |(m, lay)| Order::Lay(m, lay)),
        map(separated_pair(one_of(MEMBERS), tag(": "), size), |(m, size)| Order::Rail(m, size)),
    ))
    .parse(i)
}

fn read_part(i: &str) -> Read<'_, Order> {
    alt((
        map(preceded(tag("balusters: "), one_of(AT)), Order::Balusters),
        map(preceded(tag("start: with a "), one_of(STARTS)), Order::StartWith),
        map(separated_pair(one_of(CUTS), tag(" cut: "), read_length), |(part, l)| Order::Cut(part, l)),
        map(delimited(tag("bracket: "), read_length, tag(" each end")), Order::Bracket),
        map(preceded(tag("kerf: "), read_length), Order::Kerf),
        map(preceded(tag("spares: "), whole), Order::Spares),
    ))
    .parse(i)
}

fn read_bays(i: &str) -> Read<'_, Order> {
    let bays = separated_pair(whole, tag(" at "), terminated(read_length, tag(" clear")));
    preceded(tag("bays: "), alt((value(Order::NoBays, tag("none")), map(bays, |(n, l)| Order::Bays(n, l))))).parse(i)
}

fn read_stock(i: &str) -> Read<'_, Order> {
    let size = opt(terminated(read_lumber, tag(" in ")));
    let sold = (preceded(tag("stock: "), size), terminated(separated_list1(tag(", "), whole), tag(" ft")));
    let on_hand =
        (preceded(tag("on hand: "), whole), preceded(tag(" "), read_lumber), preceded(tag(" at "), read_length));
    alt((map(sold, |(size, feet)| Order::Sold(size, feet)), map(on_hand, |(n, size, l)| Order::OnHand(size, l, n))))
        .parse(i)
}

fn read_money(i: &str) -> Read<'_, Order> {
    let stick = map(separated_pair(read_lumber, tag("x"), whole), |(size, feet)| StickOf { size, feet });
    let percent = separated_pair(one_of(PERCENTS), tag(": "), terminated(decimal, tag(" %")));
    alt((
        map(percent, |(of, n)| Order::Percent(of, n)),
        map(preceded(tag("price: "), separated_pair(stick, tag(" at "), decimal)), |(s, p)| Order::Price(s, p)),
        map(preceded(tag("labour: "), decimal), Order::Labour),
    ))
    .parse(i)
}

/// A decimal as written: digits and one point.
fn decimal(i: &str) -> Read<'_, Decimal> {
    map_opt(take_while1(|c: char| c.is_ascii_digit() || c == '.'), |text: &str| Decimal::from_str_exact(text).ok())
        .parse(i)
}

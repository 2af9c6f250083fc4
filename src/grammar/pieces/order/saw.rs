//! The saw and the bill: kerf, parts of a hundred, prices, labour.

use super::super::Say;
use super::super::atoms::{In, Out, det, length};
use super::super::phrase::{ends, said};
use super::{decimal, fact, money, slot, stick, tie};
use crate::job::{Order, Percent, SlotId};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::{opt, peek, value};
use nom::multi::many0_count;
use nom::sequence::{delimited, preceded, terminated};
use rust_decimal::Decimal;

/// "1/8 kerf", "kerf is 1/8", "the blade takes 1/8".
pub fn kerf(input: In<'_>) -> Out<'_, Say> {
    let word = || value((), (det, opt(said(&["saw", "blade"])), said(&["kerf", "kurf", "curf", "saw cut"])));
    let saw = value((), (det, said(&["saw", "blade"]), said(&["takes", "eats", "is", "cuts", "kerf", "'s", "wastes"])));
    let first = preceded((alt((word(), saw)), tie), length);
    let last = delimited(
        opt(said(&["with", "a", "figure", "use", "for", "allow"])),
        preceded(det, length),
        (opt(said(&["for"])), word()),
    );
    alt((first, last)).map(slot(SlotId::Kerf)).parse(input)
}

/// "ten percent for junk", "waste 10%", "tax is 6.25 percent".
pub fn percent(input: In<'_>) -> Out<'_, Say> {
    let sign = || said(&["%", "percent", "per cent", "pct", "percents"]);
    let what = || {
        alt((
            value(
                Percent::Waste,
                said(&[
                    "waste",
                    "junk",
                    "bad ones",
                    "culls",
                    "cull",
                    "scrap",
                    "extra",
                    "bad sticks",
                    "bad boards",
                    "bad wood",
                    "over",
                    "spoilage",
                    "knots",
                    "crooked ones",
                    "bad stuff",
                    "twisted ones",
                    "mistakes",
                    "bad lumber",
                    "warped ones",
                ]),
            ),
            value(Percent::Tax, said(&["tax", "sales tax", "taxes", "vat", "hst", "gst"])),
            value(Percent::Markup, said(&["markup", "mark up", "profit", "overhead"])),
        ))
    };
    let lead = || {
        many0_count(said(&["add", "figure", "put", "allow", "with", "plus", "and", "throw in", "on", "count", "order"]))
    };
    let first = (
        delimited(
            (lead(), opt(said(&["an", "a", "another", "extra"]))),
            decimal,
            (
                sign(),
                opt(said(&["more", "extra"])),
                many0_count(said(&["for", "of", "on", "in", "the", "as", "to", "cover", "top"])),
            ),
        ),
        what(),
    );
    let last = (preceded((lead(), det), what()), delimited(tie, decimal, sign())).map(|(what, n)| (n, what));
    // "add 10 percent": said of an order, it is for what goes to waste.
    let add = said(&["add", "add another", "add on", "order an extra", "throw in", "figure"]);
    let plain =
        delimited(add, decimal, (sign(), opt(said(&["to it", "to that", "to the order", "on", "more"])), peek(ends)));
    let plain = plain.map(|n| (n, Percent::Waste));
    alt((first, last, plain)).map(|(n, what)| fact(Order::Percent(what, n))).parse(input)
}

/// "2x4x8 is 7.98", "12 foot 2x4s are $11.50 each"; "2x4x8 is free".
pub fn price(input: In<'_>) -> Out<'_, Say> {
    let free = value(Decimal::ZERO, (tie, said(&["free", "nothing", "no charge", "on the house"])));
    let told = alt((free, preceded(tie, money)));
    let price =
        (preceded((opt(said(&["price", "price of", "a", "the", "prices"])), det), stick), terminated(told, peek(ends)));
    price.map(|(stick, price)| fact(Order::Price(stick, price))).parse(input)
}

/// "labor is 450", "$600 for labor".
pub fn labour(input: In<'_>) -> Out<'_, Say> {
    let word = || said(&["labor", "labour", "my time", "the work", "install", "installation", "my labor", "my labour"]);
    let first = preceded((det, word(), tie), money);
    let last = terminated(money, (opt(said(&["for", "in", "of"])), det, word()));
    terminated(alt((first, last)), peek(ends)).map(|price| fact(Order::Labour(price))).parse(input)
}

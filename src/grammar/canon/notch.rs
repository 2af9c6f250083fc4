//! Questions about the posts' feet.
//!
//! ```text
//! notch = ("notch" | "post length" | "post above the deck" | "cutting steps" | "foot drawn" | "bolts") [whose]
//!       | "same cuts" | "notch height" | "left of a " inches " notch" [" in posts " size]
//!       | "may notch " lumber | "old notched posts" [" " lumber]
//! whose = " of post " n | " of the line posts" | " at: " end
//! ```

use super::Read;
use super::length::{read_length, read_lumber};
use super::words::{Table, one_of, whole, words_of};
use crate::grammar::ask::{NotchAsk, Whose};
use crate::job::{End, PostSize};
use crate::measure::exact_inches;
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::{map, opt, value};
use nom::sequence::{delimited, preceded, terminated};

const ENDS: &Table<End> = &[
    (End::House, "house"),
    (End::Corner, "corner"),
    (End::InsideCorner, "inside corner"),
    (End::AngledCorner, "angled corner"),
    (End::StairHead, "stair head"),
    (End::BottomNewel, "bottom newel"),
    (End::GatePost, "gate post"),
    (End::EndPost, "end post"),
    (End::Wall, "wall"),
    (End::OpenEnd, "open end"),
];

/// The plain phrase of a question about the feet, without its mark.
pub(super) fn write_notch(ask: NotchAsk) -> String {
    match ask {
        NotchAsk::Cut(w) => format!("notch{}", write_whose(w)),
        NotchAsk::Length(w) => format!("post length{}", write_whose(w)),
        NotchAsk::Above(w) => format!("post above the deck{}", write_whose(w)),
        NotchAsk::Steps(w) => format!("cutting steps{}", write_whose(w)),
        NotchAsk::Draw(w) => format!("foot drawn{}", write_whose(w)),
        NotchAsk::Bolts(w) => format!("bolts{}", write_whose(w)),
        NotchAsk::Same => "same cuts".to_owned(),
        NotchAsk::Tall => "notch height".to_owned(),
        NotchAsk::Left { deep, post } => {
            let post = post.map_or(String::new(), |p| format!(" in posts {}", write_size(p)));
            format!("left of a {} notch{post}", exact_inches(deep))
        }
        NotchAsk::May(lumber) => format!("may notch {lumber}"),
        NotchAsk::Old(None) => "old notched posts".to_owned(),
        NotchAsk::Old(Some(lumber)) => format!("old notched posts {lumber}"),
    }
}

fn write_size(size: PostSize) -> String {
    match size {
        PostSize::Lumber(l) => l.to_string(),
        PostSize::Width(l) => format!("{} wide", exact_inches(l)),
    }
}

fn write_whose(whose: Whose) -> String {
    match whose {
        Whose::All => String::new(),
        Whose::Number(n) => format!(" of post {n}"),
        Whose::Line => " of the line posts".to_owned(),
        Whose::At(end) => format!(" at: {}", words_of(ENDS, end)),
    }
}

fn read_whose(i: &str) -> Read<'_, Whose> {
    let told = alt((
        map(preceded(tag(" of post "), whole), Whose::Number),
        value(Whose::Line, tag(" of the line posts")),
        map(preceded(tag(" at: "), one_of(ENDS)), Whose::At),
    ));
    map(opt(told), |w| w.unwrap_or(Whose::All)).parse(i)
}

fn read_size(i: &str) -> Read<'_, PostSize> {
    alt((map(read_lumber, PostSize::Lumber), map(terminated(read_length, tag(" wide")), PostSize::Width))).parse(i)
}

/// Reads what [`write_notch`] writes.
pub(super) fn read_notch(i: &str) -> Read<'_, NotchAsk> {
    let of = |words: &'static str| preceded(tag(words), read_whose);
    let left = (delimited(tag("left of a "), read_length, tag(" notch")), opt(preceded(tag(" in posts "), read_size)));
    alt((
        value(NotchAsk::Tall, tag("notch height")),
        map(of("notch"), NotchAsk::Cut),
        map(of("post length"), NotchAsk::Length),
        map(of("post above the deck"), NotchAsk::Above),
        map(of("cutting steps"), NotchAsk::Steps),
        map(of("foot drawn"), NotchAsk::Draw),
        map(of("bolts"), NotchAsk::Bolts),
        value(NotchAsk::Same, tag("same cuts")),
        map(left, |(deep, post)| NotchAsk::Left { deep, post }),
        map(preceded(tag("may notch "), read_lumber), NotchAsk::May),
        map(preceded(tag("old notched posts "), read_lumber), |l| NotchAsk::Old(Some(l))),
        value(NotchAsk::Old(None), tag("old notched posts")),
    ))
    .parse(i)
}

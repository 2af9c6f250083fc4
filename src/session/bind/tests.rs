//! Lines as questions of rows, each item given its row: what the binder makes of it, without the scores.

use super::readings::{Filled, Reading};
use super::value::row_of;
use super::{About, asked};
use crate::grammar::canon;
use crate::grammar::scores::{How, Line};
use crate::job::Job;
use crate::measure::Length;
use crate::quantity::RowId;

/// A line, its act, what it wants, the row of each item by the item's first token ("row:add" and its like for how), and what is made of it.
type Case<'a> = (&'a str, &'a str, &'a str, &'a [(usize, &'a str)], &'a str);

/// The phrase of the likeliest way, and " ?" behind it where it is not sure.
fn made((line, act, want, items, _): &Case<'_>) -> String {
    let job = Job::default();
    let about = About { job: &job, asked: None, run: None, answered: false, figure: None, line, before: None };
    let read = Line::read(line, &[]);
    let filled = items.iter().flat_map(|(at, label)| {
        let word = read.item(*at).and_then(|i| i.word());
        let (rows, how) = label.split_once(':').unwrap_or((label, "set"));
        rows.split('+').map(move |row| Filled { at: *at, word, row: row_of(row), how: How::of(how) })
    });
    let reading = Reading {
        act,
        wants: Some(*want).into_iter().filter(|w| !w.is_empty()).collect(),
        filled: filled.collect(),
        log: 0.0,
    };
    let ways = asked::asked(&about, &read, &reading);
    match ways.first() {
        Some(way) if way.unbound == 0 => canon::write(&way.act),
        Some(way) => format!("{} ?", canon::write(&way.act)),
        None => String::from("nothing"),
    }
}

/// 7 1/4 + 1 1/2: "why 8 3/4" behind that answer asks for its reasons; another figure is judged.
#[test]
fn why_a_figure_just_said_asks_for_its_reasons() {
    let plain = Job::default();
    let told = canon::read("rim: 7 1/4\" tall; decking: 1 1/2\" thick").expect("a plain phrase");
    let with_rim = plain.with_all(told.told()).expect("a rim");
    let figure = Length::new(35, 4);
    let made = |job: &Job, line: &str| {
        let read = Line::read(line, &[]);
        let about = About { job, asked: None, run: None, answered: true, figure, line, before: None };
        let at = read.values().next().unwrap_or_default();
        let filled = vec![Filled { at, word: None, row: Some(RowId::NotchTall), how: How::Set }];
        let reading = Reading { act: "why", wants: vec!["notch-tall"], filled, log: 0.0 };
        asked::asked(&about, &read, &reading).first().map(|way| canon::write(&way.act))
    };
    assert_eq!(made(&plain, "8 3/4, how so").as_deref(), Some("why?"));
    // Where the job gives it, with what it follows from.
    assert_eq!(made(&with_rim, "8 3/4, how so").as_deref(), Some("figure: notch, top to bottom?"));
    assert_eq!(
        made(&plain, "7 1/4, how so").as_deref(),
        Some("judge: notch, top to bottom; with notch, top to bottom 7 1/4\"?")
    );
}

fn items(line: &str) -> Vec<String> {
    let read = Line::read(line, &[]);
    read.items.iter().map(|i| format!("{}={:?}", i.at, read.tokens[i.at].stem)).collect()
}

#[test]
fn questions_are_bound_by_their_rows() {
    let cases: &[Case<'_>] = &[
        // What a bracket takes is taken at both ends as it is.
        (
            "brackets take up 1/8 at both ends, bay's 63 3/4 clear. rail cut?",
            "ask",
            "rail-length",
            &[(3, "bracket"), (10, "bay-clear")],
            "figure: rail length; with bracket 1/8\"; with bay 5'-3 3/4\"?",
        ),
        // Two ends more of guard are not passed over.
        (
            "24 and 30 ft of guard and on both ends, how much guard",
            "ask",
            "guard-total",
            &[(0, "run-length"), (2, "run-length")],
            "figure: guard in all; with run 24'-0\"; with run 30'-0\"? ?",
        ),
        // A foot is what the price is of.
        (
            "62 foot of rail at 38 bucks a foot",
            "ask",
            "cost",
            &[(0, "lineal"), (4, "price-per-foot")],
            "figure: cost; with length of stock in all 62'-0\"; with price of a foot 38?",
        ),
        // One less than the line itself said.
        (
            "bay 68 1/2, a dozen 2x2s. what if I leave one out and spread the rest",
            "suppose",
            "gap",
            &[(1, "bay-clear"), (3, "baluster-count"), (4, "baluster-size"), (10, "baluster-count:less")],
            "figure: gap; with bay 5'-8 1/2\"; with balusters 12; with baluster 1 1/2\"; with balusters 11?",
        ),
        // A little less than a leaf is no leaf by itself.
        (
            "leaf is 36, hinge gap 1/2, latch gap 3/4, plane a quarter off the leaf, what's the latch gap",
            "suppose",
            "latch-gap",
            &[(2, "leaf"), (6, "hinge-gap"), (10, "latch-gap"), (13, "leaf:less")],
            "figure: latch gap; with gate leaf 3'-0\"; with hinge gap 1/2\"; with latch gap 3/4\"; with gate leaf 2'-11 3/4\"?",
        ),
        // 8 and 10 footers are told apart by what they give, and leave; no blade is a blade of nothing.
        (
            "46 in posts, forget the blade, less waste in an 8 or a 10",
            "ask",
            "stock",
            &[(0, "post-length"), (5, "kerf:nothing"), (11, "stock"), (14, "stock")],
            "figure: pieces a stick; with posts' length 3'-10\"; with kerf 0\"; with stick 8'-0\"; with stick 10'-0\"?",
        ),
        // What is supposed of a thing wants what is never said without it.
        (
            "three bays in 171 clear. what if it were 4",
            "suppose",
            "",
            &[(0, "bay-count"), (3, "run-clear"), (10, "bay-count")],
            "figure: bay; with bays 3; with run, clear between its end posts 14'-3\"; with bays 4?",
        ),
        (
            "joists run 24 apart with a 4x4 on every third joist, what's that make the post centers",
            "ask",
            "bay-centre",
            &[(2, "joists")],
            "figure: bay, on center; with joist spacing 2'-0\"; with joists a bay 3? ?",
        ),
        (
            "octagon deck is 12 ft across the flats, so what's each side",
            "ask",
            "deck-side",
            &[(0, "shape"), (3, "across-flats")],
            "figure: deck side; with sides of the shape 8; with shape across its flats 12'-0\"?",
        ),
        // Rails on edge, both of them.
        (
            "36 high, 2x4s on edge, 3 under: how long's a picket",
            "ask",
            "baluster-length",
            &[(0, "height-top"), (3, "bottom-rail+top-rail"), (4, "bottom-rail-lies+top-rail-lies"), (7, "gap-under")],
            "figure: balusters' length; with height to the top 3'-0\"; with gap under 3\"; if bottom rail: 2x4; if top rail: 2x4; if bottom rail lies: on edge; if top rail lies: on edge?",
        ),
        // The first is where the others are counted from.
        (
            "every gap's 3-5/8 including the first, balusters inch and a half. centre of the third",
            "ask",
            "mark-centre",
            &[(3, "gap"), (9, "baluster-width")],
            "figure: center of a baluster; with gap 3 5/8\"; with baluster 1 1/2\"; with number of the baluster 3?",
        ),
        // No number of pounds is a length in doubt.
        (
            "60 2x2s at 1.9 pound each",
            "ask",
            "weight",
            &[(0, "baluster-count"), (1, "baluster-size"), (3, "weight-each")],
            "figure: pounds in all; with balusters 60; with baluster 1 1/2\"; with pounds apiece 1 9/10?",
        ),
        // A price that has no part in the cost leaves it in doubt.
        (
            "which is cheaper for 30 foot of guard, pickets at 1.80 four to the foot or cable at 11 a foot",
            "ask",
            "cost",
            &[(4, "guard-total"), (10, "price"), (11, "per-foot"), (18, "price-per-foot")],
            "figure: cost; with guard in all 30'-0\"; with price of one 1 4/5; with balusters to the foot 4; with price of a foot 11? ?",
        ),
        // So much of what it was.
        (
            "bay of 96 with 9 balusters. gap if the bay were 1/2 that",
            "suppose",
            "gap",
            &[(2, "bay-clear"), (4, "baluster-count"), (12, "bay-clear:times")],
            "figure: gap; with bay 8'-0\"; with balusters 9; with bay 4'-0\"?",
        ),
        // A corner cut off each end makes the front that much shorter.
        (
            "22 long, 10 out, two corners cut back 30 inches, what does that leave of the front",
            "ask",
            "run-length",
            &[(0, "deck-along"), (3, "deck-out"), (7, "cut-corner:named"), (10, "corner-leg"), (18, "run-name")],
            "figure: run; with deck along the house 22'-0\"; with deck out from the house 10'-0\"; with leg of the clipped corner 2'-6\"; with clipped corners 2?",
        ),
        // A notch that stands on the decking is what other decking changes.
        (
            "1 in decking makes the notch 8 1/4. what if the decking is 1 1/2",
            "suppose",
            "",
            &[(0, "decking"), (5, "notch-tall"), (12, "decking")],
            "figure: notch, top to bottom; with decking 1\"; with notch, top to bottom 8 1/4\"; with decking 1 1/2\"?",
        ),
        // How strong posts are in another wood is what they are asked over what it is allowed.
        (
            "what would cedar do to the strength",
            "suppose",
            "strength",
            &[(2, "species")],
            "figure: post's bending over what is allowed; if species: western cedar?",
        ),
        // A guard is needed by the drop: as it stands, and as the ground is filled.
        (
            "edge is 28 1/2 up, slope 0, guard or not",
            "judge",
            "guard-needed",
            &[(2, "grade"), (6, "fall")],
            "judge: drop within 36 in. of the edge; with height above ground 2'-4 1/2\"; with fall of the ground 0\"?",
        ),
        (
            "35 up now. fill the yard 6 inches, is a guard still wanted",
            "suppose",
            "guard-needed",
            &[(0, "grade"), (7, "fall:less")],
            "judge: drop within 36 in. of the edge; with height above ground 2'-5\"?",
        ),
        // One run or the other is no sum of both.
        (
            "how much guard on a 16 ft run or an 18 ft run",
            "ask",
            "guard-total",
            &[(5, "run-length"), (9, "run-length")],
            "figure: guard in all; with run 16'-0\"; with run 18'-0\"? ?",
        ),
    ];
    let wrong: Vec<String> = cases
        .iter()
        .map(|case| (case, made(case)))
        .filter(|(case, made)| made != case.4)
        .map(|(case, made)| format!("{}: {made}\n  not {}\n  {:?}", case.0, case.4, items(case.0)))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

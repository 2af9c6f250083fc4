//! Islands of measure, table by table. The spellings are common practice, no source;
//! the inches beside each are worked by hand from 12 in. to the foot and 25.4 mm to the
//! inch (NIST Handbook 44, appendix C).

use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::grammar::measures::{Island, count_at, measures_at, share_at};
use railhand::grammar::words::{parts_before, words};
use railhand::measure::{Length, Meaning, Measure, Number, Q, Said, Shade, Side, exact_fraction, exact_phrase};

fn mixed(q: Q) -> String {
    Length::from_q(q).map_or_else(|| q.to_string(), exact_fraction)
}

fn length(l: Length, said: Said) -> String {
    match said {
        Said::Feet => format!("{} ft", exact_fraction(l)),
        Said::FeetInches => format!("{} ft-in", exact_fraction(l)),
        Said::Inches => format!("{} in", exact_fraction(l)),
        Said::Metric => format!("{} mm", mixed(l.mm())),
    }
}

fn number(n: Number) -> String {
    let kind = if n.fraction { " fraction" } else { "" };
    let plural = if n.plural { " each" } else { "" };
    format!("{}{kind}{plural}", mixed(n.value))
}

fn side(s: Side) -> String {
    match s {
        Side::Bare(n) => number(n),
        Side::Length(l, said) => length(l, said),
    }
}

/// One line a measure: a length in inches and how its unit was said ("196 ft-in"; mm for
/// metric), a bare number, lumber, two sides, or what is asked.
fn show(m: &Measure) -> String {
    let mut text = match &m.meaning {
        Meaning::Bare(n) => number(*n),
        Meaning::Length(l, said) => length(*l, *said),
        Meaning::Lumber(l) => format!("lumber {l}"),
        Meaning::By(a, b) => format!("{} by {}", side(*a), side(*b)),
        Meaning::Doubt(d, choices) => {
            let choices: Vec<_> = choices.iter().map(|l| exact_fraction(*l)).collect();
            format!("{d:?}? {}", choices.join(" | "))
        }
    };
    match m.shade {
        Some(Shade::Strong) => text.push_str(" strong"),
        Some(Shade::Shy) => text.push_str(" shy"),
        None => {}
    }
    if m.about {
        text.push_str(" about");
    }
    if let Some(guess) = m.guess {
        text.push_str(&format!(" [{guess:?}]"));
    }
    text
}

/// Each way the whole text reads from its first word to its last.
fn readings(typed: &str) -> Vec<String> {
    let list = words(typed);
    measures_at(&list, 0).iter().filter(|i| i.end == list.len()).map(|i| show(&i.measure)).collect()
}

/// The likeliest island at each place, left to right, each starting where one before ended.
fn islands(line: &str) -> Vec<String> {
    let list = words(line);
    let mut shown = Vec::new();
    let mut at = 0;
    while at < list.len() {
        match measures_at(&list, at).first() {
            Some(Island { end, measure }) => {
                shown.push(show(measure));
                at = *end;
            }
            None => at += 1,
        }
    }
    shown
}

fn check_first(table: &[(&str, &str)]) {
    for (typed, expected) in table {
        let all = readings(typed);
        assert_eq!(all.first().map(String::as_str), Some(*expected), "{typed}: {all:?}");
    }
}

#[test]
fn feet_and_feet_with_inches() {
    check_first(&[
        ("15'", "180 ft"),
        ("11ft", "132 ft"),
        ("13 foot", "156 ft"),
        ("9 ft.", "108 ft"),
        ("3-foot", "36 ft"),
        ("twenty two foot", "264 ft"),
        ("１２ｆｔ", "144 ft"),
        ("16'4", "196 ft-in"),
        ("14'-3\"", "171 ft-in"),
        ("12'4 5/8", "148 5/8 ft-in"),
        ("17'  5  1/2 \"", "209 1/2 ft-in"),
        ("11'8 3/16", "140 3/16 ft-in"),
        ("15' 2 1/4\"", "182 1/4 ft-in"),
        ("6'-7 3/4\"", "79 3/4 ft-in"),
        ("9' 3/4\"", "108 3/4 ft-in"),
        ("6'-0\"", "72 ft-in"),
        ("0'-9 1/2\"", "9 1/2 ft-in"),
        ("7ft4in", "88 ft-in"),
        ("10’6”", "126 ft-in"),
        ("10′ 6″", "126 ft-in"),
        ("10'6''", "126 ft-in"),
        ("5'10\"\"", "70 ft-in"),
        ("10'6½\"", "126 1/2 ft-in"),
        ("10'6.5\"", "126 1/2 ft-in"),
        ("6 ft - 2 in", "74 ft-in"),
        ("5 feet, 4 inches", "64 ft-in"),
        ("8 ft. 6 in.", "102 ft-in"),
        ("17 foot 3", "207 ft-in"),
        ("ten foot six", "126 ft-in"),
        ("two foot six", "30 ft-in"),
        ("fourteen foot three", "171 ft-in"),
        ("six foot and two", "74 ft-in"),
        ("seven foot one and a half", "85 1/2 ft-in"),
        ("nine foot three quarters", "108 3/4 ft-in"),
        ("eleven foot eleven and fifteen sixteenths", "143 15/16 ft-in"),
        ("eight foot nothing", "96 ft"),
        ("eight foot even", "96 ft"),
        ("nine foot flat", "108 ft"),
        ("eight foot on the nose", "96 ft"),
        ("a 14 footer", "168 ft"),
        ("a 16 footer", "192 ft"),
        ("one sixteen-footer", "192 ft"),
        ("8.5'", "102 ft"),
        ("13.25 ft", "159 ft"),
    ]);
}

#[test]
fn halves_change_size_with_what_came_before() {
    check_first(&[
        ("a foot", "12 ft"),
        ("a foot and a half", "18 ft"),
        ("foot and a half", "18 ft"),
        ("half a foot", "6 ft"),
        ("3/4 of a foot", "9 ft"),
        ("three foot and a half", "42 ft [HalfFoot]"),
        ("three foot and a half inch", "36 1/2 ft-in"),
        ("seven foot and a quarter", "84 1/4 ft-in"),
        ("eleven and a half foot", "138 ft [MixedFeet]"),
        ("10 n a half feet", "126 ft [MixedFeet]"),
        ("11 1/2 ft", "138 ft [MixedFeet]"),
    ]);
    assert_eq!(readings("three foot and a half"), ["42 ft [HalfFoot]", "36 1/2 ft-in"]);
    assert_eq!(readings("seven foot and a quarter"), ["84 1/4 ft-in", "87 ft [HalfFoot]"]);
}

#[test]
fn inches_and_fractions() {
    check_first(&[
        ("88in.", "88 in"),
        ("186 inches", "186 in"),
        // A length has several inches; so many of one inch each have one: "two sixty inch bays".
        ("one eighty-seven inches", "187 in"),
        ("3/4\"", "3/4 in"),
        ("1-13/16\"", "1 13/16 in"),
        ("9-1/2", "9 1/2 in"),
        ("3&1/4\"", "3 1/4 in"),
        ("11 1⁄2\"", "11 1/2 in"),
        ("an inch", "1 in"),
        ("an inch and five eighths", "1 5/8 in"),
        ("inch and seven eighths", "1 7/8 in"),
        ("inch and a half", "1 1/2 in"),
        ("4 inches and 3/8", "4 3/8 in"),
        ("half inch", "1/2 in"),
        ("half an inch", "1/2 in"),
        ("three quarters of an inch", "3/4 in"),
        ("three quarter inch", "3/4 in"),
        ("a hundred and three and a half inches", "103 1/2 in"),
        ("12.5 in", "12 1/2 in"),
        ("7/16", "7/16 fraction"),
        ("7/8ths", "7/8 fraction"),
        ("½", "1/2 fraction"),
        ("6½", "6 1/2 fraction"),
        ("10⅜", "10 3/8 fraction"),
        ("118 3/8", "118 3/8 fraction"),
        ("2 & 7/8", "2 7/8 fraction"),
        ("120 and 1/2", "120 1/2 fraction"),
        ("4 and 3 eighths", "4 3/8 fraction"),
        ("67 and 6 sixteenths", "67 3/8 fraction"),
        ("3 16ths", "3/16 fraction"),
        ("three thirty-seconds", "3/32 fraction"),
        ("eighteen and three quarter", "18 3/4 fraction"),
        ("ninety-four and five eighths", "94 5/8 fraction"),
        ("eleven and a half", "11 1/2 fraction"),
        ("40 and a quarter", "40 1/4 fraction"),
        ("11 and 5/16", "11 5/16 fraction"),
        ("19/32", "19/32 fraction"),
        ("5/4", "1 1/4 fraction"),
        ("3/2", "1 1/2 fraction"),
        ("a hundred", "100"),
        ("a hundred and four", "104"),
        ("one-oh-four and a quarter", "104 1/4 fraction"),
        ("one eighteen and three eighths", "118 3/8 fraction"),
        ("12", "12"),
        ("thirteen", "13"),
        ("126.75", "126 3/4"),
        ("12.0", "12"),
        (".5", "1/2"),
        ("3.125", "3 1/8"),
        ("38s", "38 each"),
        ("38's", "38 each"),
        ("sixteens", "16 each"),
    ]);
}

#[test]
fn metric() {
    check_first(&[
        ("3200mm", "3200 mm"),
        ("91 cm", "910 mm"),
        ("1.83 m", "1830 mm"),
        ("1,070 mm", "1070 mm"),
        ("2 440 mm", "2440 mm"),
        ("two metres", "2000 mm"),
        ("one point eight metres", "1800 mm"),
        ("two thousand four hundred and forty millimetres", "2440 mm"),
        ("38 mm", "38 mm"),
    ]);
}

#[test]
fn shades_are_kept_and_never_added() {
    check_first(&[
        ("5 1/4 strong", "5 1/4 fraction strong"),
        ("a strong 5 1/4", "5 1/4 fraction strong"),
        ("63 7/8 shy", "63 7/8 fraction shy"),
        ("63 7/8\" shy", "63 7/8 in shy"),
        ("5 1/4 a hair shy", "5 1/4 fraction shy"),
        ("a hair over 12 ft", "144 ft strong"),
        ("heavy 3/16", "3/16 fraction strong"),
        ("a heavy sixteenth", "1/16 fraction strong"),
        ("thirty-six and a heavy sixteenth", "36 1/16 fraction strong"),
        ("scant 3/4 inch", "3/4 in shy"),
        ("1/8 big", "1/8 fraction strong"),
        ("1/8+", "1/8 fraction strong"),
        ("1/8 plus", "1/8 fraction strong"),
        ("about 12 ft", "144 ft about"),
        ("~12'", "144 ft about"),
        ("about a foot", "12 ft about"),
        ("roughly a heavy 3/16", "3/16 fraction strong about"),
        ("like eleven and a half foot", "138 ft about [MixedFeet]"),
        ("around 12 ft or so", "144 ft about"),
        ("12 ft give or take", "144 ft about"),
        ("12-ish", "12 about"),
    ]);
    // A sum is no shade.
    assert_eq!(islands("4 5/8 plus 11 13/16"), ["4 5/8 fraction", "11 13/16 fraction"]);
    assert_eq!(islands("8 minus 2"), ["8", "2"]);
    assert_eq!(islands("10ft+6in"), ["120 ft", "6 in"]);
}

#[test]
fn pairs_with_no_unit_are_guesses_or_doubts() {
    check_first(&[
        ("7-9", "93 ft-in [DashPair]"),
        ("14-6", "174 ft-in [DashPair]"),
        ("6-0", "72 ft-in [DashPair]"),
        ("10-10", "130 ft-in [DashPair]"),
        ("10-6-3/4", "126 3/4 ft-in [DashPair]"),
        ("10-6 3/4", "126 3/4 ft-in [DashPair]"),
        ("9-7 1/4", "115 1/4 ft-in [DashPair]"),
        ("10-6\"", "126 ft-in [DashPair]"),
        ("nine two", "110 ft-in [SpokenPair]"),
        ("seven-nine", "93 ft-in [SpokenPair]"),
        ("ten oh six", "126 ft-in [SpokenPair]"),
        ("ten six and a quarter", "126 1/4 ft-in [SpokenPair]"),
        ("twelve nine and a quarter", "153 1/4 ft-in [SpokenPair]"),
        ("10:06", "126 ft-in [ClockPair]"),
        ("10;6", "126 ft-in [ClockPair]"),
        ("4' 15\"", "63 ft-in [CarriedOver]"),
        ("5 17/16", "6 1/16 fraction [CarriedOver]"),
        ("62 and 5 8", "62 5/8 fraction [LostSlash]"),
        ("10 6", "SpacedPair? 126"),
        ("10 6 3/4", "SpacedPair? 126 3/4"),
        ("one ten", "SpacedPair? 110 | 22"),
        ("36-twelve", "Sixteenths? 36 3/4 | 444"),
        ("thirty-six twelve", "Sixteenths? 36 3/4 | 444"),
        ("10-14", "Sixteenths? 10 7/8 | 134"),
        ("6-8 ft", "Range? 72 | 96"),
        ("6-8\"", "Range? 80 | 6 | 8"),
        ("30-36", "Range? 30 | 36"),
    ]);
    assert_eq!(readings("6-8"), ["80 ft-in [DashPair]", "Range? 80 | 72 | 96"]);
    assert_eq!(readings("4-5"), ["53 ft-in [DashPair]", "Range? 53 | 48 | 60"]);
    assert_eq!(readings("14-6"), ["174 ft-in [DashPair]"]);
    assert_eq!(readings("62 and 5 8"), ["62 5/8 fraction [LostSlash]", "Lost? 62 5/8"]);
    // Two numbers stay two numbers, with the crew's call of sixteenths behind them.
    assert_eq!(readings("4 and 8"), ["Sixteenths? 4 1/2 | 56"]);
    assert_eq!(islands("4 and 8"), ["4", "8"]);
    assert_eq!(islands("10 6 ft"), ["10", "72 ft"]);
}

#[test]
fn too_far_apart_to_choose() {
    check_first(&[
        ("10.6", "Decimal? 126 | 127 1/5"),
        ("9.10", "Decimal? 118 | 109 1/5"),
        ("8.5", "Decimal? 102 | 101"),
        ("31/2", "Lost? 3 1/2 | 15 1/2"),
        ("11/4", "Lost? 1 1/4 | 2 3/4"),
        ("31/2\"", "Lost? 3 1/2 | 15 1/2"),
        ("10' 31/2\"", "Lost? 123 1/2 | 135 1/2"),
        ("4 38", "Lost? 4 3/8"),
        ("1510", "Packed? 190 | 59 57/127 | 1510"),
        ("1220", "Packed? 48 4/127 | 1220"),
        ("4 and 3 ticks", "CrewCall? 4 3/8 | 4 3/16"),
        ("3 ticks", "CrewCall? 3/8 | 3/16"),
        ("4 point 3", "CrewCall? 4 3/16 | 4 3/8 | 4 3/10"),
    ]);
    assert_eq!(readings("10.6"), ["Decimal? 126 | 127 1/5", "10 3/5"]);
    assert_eq!(readings("88.5"), ["88 1/2"]);
    assert_eq!(readings("10.25"), ["10 1/4"]);
}

#[test]
fn lumber_and_sides() {
    check_first(&[
        ("4x4", "lumber 4x4"),
        ("2x6", "lumber 2x6"),
        ("a 2x6", "lumber 2x6"),
        ("6x6", "lumber 6x6"),
        ("4×4", "lumber 4x4"),
        ("2X10", "lumber 2x10"),
        ("5/4x6", "lumber 5/4x6"),
        ("5/4 x 6", "lumber 5/4x6"),
        ("five quarter by six", "lumber 5/4x6"),
        ("4x4s", "lumber 4x4"),
        ("4x4's", "lumber 4x4"),
        ("2x2's", "lumber 2x2"),
        ("6 by 6", "lumber 6x6"),
        ("four by four", "lumber 4x4"),
        ("four-by-fours", "lumber 4x4"),
        ("16x12", "16 by 12"),
        ("10 by 14", "10 by 14"),
        ("12' x 16'", "144 ft by 192 ft"),
        ("12'x16'", "144 ft by 192 ft"),
        ("12'6 x 10'4", "150 ft-in by 124 ft-in"),
        ("6 by 12 ft", "6 by 144 ft"),
        ("12x8", "12 by 8"),
    ]);
    assert_eq!(readings("4x4"), ["lumber 4x4", "4 by 4"]);
    assert_eq!(readings("4x4s"), ["lumber 4x4"]);
    // PS 20 size table: no 5 in. nominal width beside a 2 in. thickness.
    assert_eq!(readings("2x5"), ["2 by 5"]);
}

#[test]
fn homophones_come_after_the_plain_reading() {
    let ways = |line: &str| {
        let list = words(line);
        measures_at(&list, 0).iter().map(|i| (show(&i.measure), i.end)).collect::<Vec<_>>()
    };
    let owned = |rows: &[(&str, usize)]| rows.iter().map(|(t, n)| ((*t).to_owned(), *n)).collect::<Vec<_>>();
    let nine_to = owned(&[("108 ft", 2), ("110 1/4 ft-in [Homophone]", 6)]);
    assert_eq!(ways("nine foot to and a quarter house"), nine_to);
    assert_eq!(ways("eleven too and a half"), owned(&[("11", 1), ("134 1/2 ft-in [Homophone]", 5)]));
    assert_eq!(ways("ten foot to corner"), owned(&[("120 ft", 2)]));
}

#[test]
fn measures_inside_phrases() {
    let table: &[(&str, &[&str])] = &[
        ("it's 88in. in the clear", &["88 in"]),
        ("I make it 11'8 3/16", &["140 3/16 ft-in"]),
        ("how wide is a 4x4 actually", &["lumber 4x4"]),
        ("house to corner, 14-6", &["174 ft-in [DashPair]"]),
        ("two runs, 8' and 8', stairs between them", &["2", "96 ft", "96 ft"]),
        ("10 ft guard with a 3 ft gate right in the middle", &["120 ft", "36 ft"]),
        ("rise is 7 3/4 and there's 5 risers", &["7 3/4 fraction", "5"]),
        ("a 41 1/2 opening with half inch each side", &["41 1/2 fraction", "1/2 in"]),
        ("use 6x6 on the corners and 4x4 in between", &["lumber 6x6", "lumber 4x4"]),
        ("opening 71 1/4, 3/4 round balusters", &["71 1/4 fraction", "3/4 fraction"]),
        ("10 spindles in 4 foot 8, inch and five eighths wide", &["10", "56 ft-in", "1 5/8 in"]),
        ("2x2s at 5 1/2 on center", &["lumber 2x2", "5 1/2 fraction"]),
        ("13 pickets 1 1/2 wide in 72 clear", &["13", "1 1/2 fraction", "72"]),
        ("3 in a row, 13 in total, 4 in 72", &["3", "13", "4", "72"]),
        ("16 oc", &["16"]),
        ("6' o.c. max", &["72 ft"]),
        ("36\"h and 4w and 36 hi", &["36 in", "4", "36"]),
        ("length is 1 in", &["1 in"]),
        ("how many inches in 17 foot 3", &["207 ft-in"]),
        ("add 4 5/8 and 11 13/16", &["4 5/8 fraction", "11 13/16 fraction"]),
        ("quarter of 21-2", &["254 ft-in [DashPair]"]),
        ("half of 7/8", &["7/8 fraction"]),
        ("how many 38s come out of a 16 footer", &["38 each", "192 ft"]),
        ("which is bigger 19/32 or 5/8", &["19/32 fraction", "5/8 fraction"]),
        ("five spaces of 3 13/16 and four pickets of 1 1/2", &["5", "3 13/16 fraction", "4", "1 1/2 fraction"]),
        ("a 12 foot 2x2", &["144 ft", "lumber 2x2"]),
        ("10' 6\" 3/4\" 2' corner", &["126 ft-in", "3/4 in", "24 ft"]),
        ("6' 2' 3'", &["72 ft", "24 ft", "36 ft"]),
        ("10' 🔨 corner to house", &["120 ft"]),
        ("ok so the decking is 5/4 now", &["1 1/4 fraction"]),
        ("theres a 6 by 6 and then 4 by 4s every six foot", &["lumber 6x6", "lumber 4x4", "72 ft"]),
        ("house>corner 9-8, stairs 4-0", &["116 ft-in [DashPair]", "48 ft-in [DashPair]"]),
        ("eight foot I mean nine foot I mean nine two corner", &["96 ft", "108 ft", "110 ft-in [SpokenPair]"]),
        ("two three foot gates", &["2", "36 ft"]),
        ("two forty eight inch gates", &["2", "48 in"]),
        ("10 4x4 posts", &["10", "lumber 4x4"]),
        ("12 foot four by fours", &["144 ft", "lumber 4x4"]),
        ("what mix for post concrete, 3 or 4 bags", &["3", "4"]),
    ];
    for (line, expected) in table {
        assert_eq!(islands(line), *expected, "{line}");
    }
}

/// Clusters that hold together but mean nothing, and words that measure nothing alone.
#[test]
fn what_must_not_read() {
    let clusters = [
        "-2",
        "10/0",
        "2x8/10/12",
        "4x4x8",
        "10:30",
        "40-20",
        "555-1234",
        "10-6-2024",
        "6k",
        "1m83",
        "3/4/5",
        "50%",
        "1.2.3",
    ];
    for typed in clusters {
        assert_eq!(islands(typed), [""; 0], "{typed}");
    }
    let alone = ["a", "and", "half", "quarter", "in", "inch", "foot", "an", "about", "strong", "oh", "heavy"];
    let phrases =
        ["half of", "a quarter of", "twenty-third", "a third", "plus 4", "minus 2", "1/0 in", "10/0 of a foot"];
    let huge = ["1000000000001 ft", "99999999999999999999999999999999999999999999999 ft", "99999999999999999999999/2"];
    for typed in alone.iter().chain(&phrases).chain(&huge).chain(&[""]) {
        assert_eq!(readings(typed), [""; 0], "{typed}");
    }
}

#[test]
fn the_largest_length_reads_and_one_past_it_does_not() {
    assert_eq!(readings("1000000000000 in"), ["1000000000000 in"]);
    assert_eq!(readings("1000000000001 in"), [""; 0]);
}

#[test]
fn counts_and_shares() {
    let count = |line: &str| count_at(&words(line), 0);
    let table = [
        ("13 pickets", Some((1, 13))),
        ("thirteen", Some((1, 13))),
        ("one", Some((1, 1))),
        ("a dozen pickets", Some((2, 12))),
        ("half a dozen", Some((3, 6))),
        ("two dozen", Some((2, 24))),
        ("a couple of posts", Some((3, 2))),
        ("a hundred and four", Some((4, 104))),
        ("5 ft", None),
        ("3/4", None),
        ("2.5", None),
        ("posts", None),
        ("-2", None),
    ];
    for (line, expected) in table {
        assert_eq!(count(line), expected, "{line}");
    }
    let share = |line: &str| share_at(&words(line), 0).map(|(end, q)| (end, q.to_string()));
    assert_eq!(share("half of 7/8"), Some((1, "1/2".to_owned())));
    assert_eq!(share("two thirds of"), Some((2, "2/3".to_owned())));
    assert_eq!(share("a third of"), Some((2, "1/3".to_owned())));
    assert_eq!(share("3/4 of"), Some((3, "3/4".to_owned())));
    assert_eq!(share("posts"), None);
}

#[test]
fn long_lines_give_few_ways_at_each_place() {
    for line in ["and a half ".repeat(400), "ten ".repeat(1000), "10 by ".repeat(500), "six foot and ".repeat(300)] {
        let list = words(&line);
        let most = (0..list.len()).map(|at| measures_at(&list, at).len()).max();
        assert!(most.is_some_and(|n| n <= 16), "{most:?}");
    }
}

fn reads_back(l: Length) -> Result<(), TestCaseError> {
    let phrase = exact_phrase(l);
    let list = words(&phrase);
    let island = measures_at(&list, 0).into_iter().next();
    let Some(Island { end, measure }) = island else {
        return Err(TestCaseError::fail(format!("{phrase} does not read")));
    };
    prop_assert_eq!(end, list.len(), "{}", phrase);
    prop_assert!(matches!(measure.meaning, Meaning::Length(got, _) if got == l), "{} gave {:?}", phrase, measure);
    prop_assert_eq!(measure.guess, None);
    Ok(())
}

proptest! {
    #[test]
    fn the_exact_phrase_reads_back_on_the_64th_grid(n in 0_i128..1_000_000) {
        reads_back(Length::new(n, 64).expect("inside the bound"))?;
    }

    #[test]
    fn the_exact_phrase_reads_back_in_whole_millimetres(n in 0_i128..200_000) {
        reads_back(Length::from_mm(Q::from_integer(n)).expect("inside the bound"))?;
    }

    #[test]
    fn the_exact_phrase_reads_back_for_any_fraction(n in 0_i128..1_000_000, d in 1_i128..1000) {
        reads_back(Length::new(n, d).expect("inside the bound"))?;
    }

    #[test]
    fn islands_never_split_a_cluster(
        line in "[0-9'\"./ x:;&+a-f-]{0,24}|([0-9]{1,3}|ten|six|and|a half|foot|in|by|to|-|,| ){0,12}"
    ) {
        let list = words(&line);
        for at in 0..list.len() {
            for island in measures_at(&list, at) {
                prop_assert!(parts_before(&list, at) && parts_before(&list, island.end));
                prop_assert!(island.end > at && island.end <= list.len());
            }
        }
    }

    #[test]
    fn nothing_typed_panics(line in any::<String>()) {
        let list = words(&line);
        for at in 0..list.len() {
            prop_assert!(measures_at(&list, at).len() <= 16);
        }
    }
}

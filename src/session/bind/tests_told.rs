//! Lines as tellings, each item given its row: what stands in the job, what is held for what is asked next, and what is only offered.

use super::readings::{Filled, Reading};
use super::value::row_of;
use super::{About, told};
use crate::grammar::scores::{How, Line};
use crate::grammar::{Act, canon};
use crate::job::Job;
use crate::session::{Session, step};

/// What was told before, a line, its items' rows by their first tokens ("4/row:add" and its like for how), and what is made of it.
type Case<'a> = (&'a str, &'a str, &'a str, &'a str);

/// The phrase of what is told, " ?" behind it where it is only offered.
fn made((before, line, rows, _): &Case<'_>) -> String {
    let facts = match canon::read(before) {
        Some(Act::Tell(facts)) => facts,
        _ => Vec::new(),
    };
    let job = Job::default().with_all(&facts).unwrap_or_default();
    let run = job.runs.last().map(|r| r.id);
    let about = About { job: &job, asked: None, run, answered: false, figure: None, line, before: None };
    let read = Line::read(line, &[]);
    let filled = rows.split(' ').filter_map(|label| label.split_once('/')).flat_map(|(at, label)| {
        let at = at.parse().unwrap_or_default();
        let word = read.item(at).and_then(|i| i.word());
        let (rows, how) = label.split_once(':').unwrap_or((label, "set"));
        let how = match how {
            "=by_house" => How::Words("by house"),
            "=gate_post" => How::Words("gate post"),
            how => How::of(how),
        };
        rows.split('+').map(move |row| Filled { at, word, row: row_of(row), how })
    });
    let reading = Reading { act: "tell", wants: Vec::new(), filled: filled.collect(), log: 0.0 };
    match super::pool::ways(&about, &read, &reading).into_iter().next() {
        Some(way) if !way.doubtful => canon::write(&way.act),
        Some(way) => format!("{} ?", canon::write(&way.act)),
        None => String::from("nothing"),
    }
}

fn items(read: &Line) -> Vec<String> {
    read.items.iter().map(|i| format!("{}={:?}", i.at, i.word().unwrap_or(&read.tokens[i.at].stem))).collect()
}

fn check(cases: &[Case<'_>]) {
    let wrong: Vec<String> = cases
        .iter()
        .map(|case| (case, made(case)))
        .filter(|(case, made)| made != case.3)
        .map(|(case, made)| format!("{}: {made}\n  not {}\n  {:?}", case.1, case.3, items(&Line::read(case.1, &[]))))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What the job keeps is told; what it cannot keep stands beside it for the next question.
#[test]
fn a_telling_is_told_as_far_as_the_job_keeps_it() {
    check(&[
        (
            "",
            "posts 5 on a 23'8 run from wall to wall",
            "1/post-count 4/run-length 7/run-from:=wall 9/run-to:=wall",
            "run 1: 23'-8\" out to out, from wall, to wall; given: posts 5",
        ),
        (
            "",
            "144 1/2 corner to stair head, bays equal at 46 clear",
            "0/run-length 1/run-from 3/run-to 9/bay-clear",
            "run 1: 12'-0 1/2\" out to out, from corner, to stair head; given: bay 3'-10\"",
        ),
        // Nobody said where they stand in the front.
        (
            "",
            "gate is 36 and the stairs are 36 on a 21 ft front",
            "2/gate-width 7/stair-width 10/run-length 11/run-name",
            "run 1: called front, 21'-0\" out to out; given: gate 3'-0\"; stair opening 3'-0\" ?",
        ),
        // A corner cut off the deck makes another deck of it.
        (
            "",
            "20 along, 12 out, corner clipped 3 ft",
            "0/deck-along 3/deck-out 8/corner-leg",
            "deck: 20'-0\" along the house; deck: 12'-0\" out; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right; given: leg of the clipped corner 3'-0\" ?",
        ),
        (
            "",
            "350 center to center, four bays at 55 1/2 and two more",
            "0/run-centre 5/bay-count 8/bay-centre 10/bay-count",
            "run 1: 29'-2\" centre to centre; given: bays 4; bay, on center 4'-7 1/2\"; bays 2 ?",
        ),
        // How many bays 3 posts make hangs on what its ends are.
        (
            "",
            "3 posts on the front, 12 ft",
            "0/post-count 4/run-name 6/run-length",
            "run 1: called front, 12'-0\" out to out; given: posts 3 ?",
        ),
        // A fall without what it is over is no slope yet.
        (
            "",
            "15'6 out and 28 along, ground falls 36 from left to right, 22 up",
            "0/deck-out 3/deck-along 8/fall 14/grade",
            "deck: 15'-6\" out; deck: 28'-0\" along the house; above ground: 22\"; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right; given: fall of the ground 3'-0\"",
        ),
        // Without a run or a deck each stands by itself.
        ("", "posts 5, bays 58 clear", "1/post-count 4/bay-clear", "told: posts 5; told: bay 4'-10\""),
    ]);
}

/// A figure without a row is passed over only where it says again what is told, was taken back, or counts what follows.
#[test]
fn a_figure_without_a_row_is_not_passed_over() {
    check(&[
        (
            "",
            "deck 25 by 15, it's the fifteen that's against the house",
            "1/deck-out 2/deck-along",
            "deck: 25'-0\" out; deck: 15'-0\" along the house; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right",
        ),
        (
            "",
            "rise 52 and treads 10, no, 10 1/2",
            "1/total-rise 8/tread",
            "stairs: total rise 4'-4\"; stairs: tread 10 1/2\"",
        ),
        ("", "rise 52 and treads 10 and 10 1/2", "1/total-rise 6/tread", "nothing"),
        // Of another matter, it is named and told without: a figure beside a noun of the trade is not.
        (
            "",
            "16 ft corner to house. painter comes at 7",
            "0/run-length 1/run-from 3/run-to",
            "run 1: 16'-0\" out to out, from corner, to house",
        ),
        (
            "",
            "16 ft corner to house. 7 posts",
            "0/run-length 1/run-from 3/run-to",
            "run 1: 16'-0\" out to out, from corner, to house ?",
        ),
        (
            "",
            "the front is 18'6 with 6x6s. scratch that, it's 18'2",
            "1/run-name 5/post-size 12/run-length",
            "posts: 6x6; run 1: called front, 18'-2\" out to out",
        ),
        (
            "",
            "between the two gates it is 6'6 on center",
            "3/run-from+run-to:=gate_post 6/run-centre",
            "run 1: 6'-6\" centre to centre, from gate post, to gate post",
        ),
        ("", "16 ft corner to house with 7", "0/run-length 1/run-from 3/run-to", "nothing"),
    ]);
}

/// A run's noun beside its length says what it is of; one run measured twice is nobody's figure.
#[test]
fn a_run_is_told_by_its_noun_and_by_one_measure() {
    check(&[
        ("", "a 14 foot run", "1/run-length", "run 1: 14'-0\" out to out"),
        ("", "14 foot", "0/run-length", "run 1: 14'-0\" out to out ?"),
        (
            "",
            "118 clear and 116 overall",
            "0/run-clear 3/run-overall",
            "given: run, clear between its end posts 9'-10\"; run, out to out 9'-8\"",
        ),
        (
            "run 1: 8'-7\" out to out, from house, to corner",
            "add 2 inches to it",
            "1/run-length:add",
            "run 1: 8'-9\" long",
        ),
    ]);
}

/// Gates and stairs at a distance, by the house, and moved; how a leaf is hung.
#[test]
fn openings_stand_where_they_are_said_to() {
    let front = "run 1: called front, 18'-0\" out to out, from corner, to corner";
    check(&[
        (
            "",
            "17'2 corner to house, 34 gate starting 5 ft from the corner",
            "0/run-length 1/run-from 3/run-to 5/gate-width 8/offset 11/offset-from",
            "run 1: 17'-2\" out to out, from corner, to house, gate 5'-0\" from the from-end 2'-10\" wide",
        ),
        (
            "",
            "17 ft side, 42 gate that starts 30 in from the left",
            "0/run-length 3/gate-width 7/offset 10/run-from",
            "run 1: 17'-0\" out to out, gate 2'-6\" from the from-end 3'-6\" wide",
        ),
        // Neither end was told: by the house one of them is.
        (
            "",
            "left side 15 foot, stairs 40 wide by the house",
            "0/run-name 2/run-length 5/stair-width 9/stair-at:=by_house",
            "run 1: called left, 15'-0\" out to out, from house, stairs 3'-4\" wide 0\" from the left",
        ),
        (
            "",
            "right side 14 ft, 4 ft stairs 6 ft off the house",
            "0/run-name 2/run-length 4/stair-width 6/offset 7/offset-from:=house",
            "run 1: called right, 14'-0\" out to out, to house, stairs 4'-0\" wide 6'-0\" from the right",
        ),
        // Which corner nobody said.
        (
            "",
            "18 ft front corner to corner, 4 ft stairs 2 ft off the corner",
            "0/run-length 1/run-name 2/run-from 4/run-to 6/stair-width 8/offset 11/offset-from",
            "run 1: called front, 18'-0\" out to out, from corner, to corner; given: stair opening 4'-0\"; distance along the run 2'-0\" ?",
        ),
        // 7 and 4 and 6 is more than 16: nothing of it is told.
        (
            "",
            "16 front, 4 ft stairs 7 ft from the left and 6 ft from the right",
            "0/run-length 1/run-name 3/stair-width 5/offset 8/offset-from 10/offset 13/offset-from",
            "given: run 16'-0\"; stair opening 4'-0\"; distance along the run 7'-0\"; distance along the run 6'-0\" ?",
        ),
        (front, "one 4x4 in the middle", "1/post-size 4/post-at", "nothing"),
        (
            "run 1: called front, 18'-0\" out to out, gate at the left 3'-0\" wide",
            "it hangs on the right and swings over the deck",
            "4/hinge 9/swing",
            "run 1: gate at the left 3'-0\" wide (swings over the deck, hinged on the right)",
        ),
        (
            "run 1: called front, 18'-0\" out to out, stairs 4'-0\" wide 5'-0\" from the left",
            "slide the stairs a foot further from that corner",
            "3/offset:add",
            "run 1: stairs 4'-0\" wide 6'-0\" from the left",
        ),
    ]);
}

/// A gate that is named stands where gates do: at the stair head, across the stairs; alone it waits at the head of stairs yet to come.
#[test]
fn a_gate_that_is_named_loses_no_run() {
    let front = "run 1: called front, 18'-0\" out to out, from corner, to corner, stairs 4'-0\" wide in the middle";
    let waits = "run 1: to stair head, gate at the to-end 3'-0\" wide";
    check(&[
        (
            "",
            "11'2 corner to stair head, gate",
            "0/run-length 1/run-from 3/run-to 6/gate-at:named",
            "run 1: 11'-2\" out to out, from corner, to stair head, gate at the to-end",
        ),
        // Neither end is a stair head: where it stands nobody said.
        ("", "11'2 corner to house, gate", "0/run-length 1/run-from 3/run-to 5/gate-at:named", "given: run 11'-2\" ?"),
        (front, "and a gate on it", "2/gate-at:named", "run 1: gate across the stairs"),
        ("", "3 ft gate at the stair head", "0/gate-width 1/gate-at:named 4/gate-at", waits),
        (
            waits,
            "11 ft corner to stair head",
            "0/run-length 1/run-from 3/run-to",
            "run 1: 11'-0\" out to out, from corner, to stair head",
        ),
        (
            "",
            "10 ft rail, 3 ft gate in the middle",
            "0/run-length 3/gate-width 6/gate-at",
            "run 1: 10'-0\" out to out, gate in the middle 3'-0\" wide",
        ),
        // One run keeps one gate.
        (
            "",
            "20 ft front, 3 ft gate at each end",
            "0/run-length 1/run-name 3/gate-width 6/gate-at:=from-end",
            "run 1: called front, 20'-0\" out to out; given: gate 3'-0\" ?",
        ),
        (
            "",
            "17 ft corner to house, 34 gate starts 5 ft from the corner",
            "0/run-length 1/run-from 3/run-to 5/gate-width 8/offset",
            "run 1: 17'-0\" out to out, from corner, to house, gate 5'-0\" from the from-end 2'-10\" wide",
        ),
    ]);
}

/// Runs are parted so that nothing is said of one twice; sides in the plural are the left and the right.
#[test]
fn several_runs_and_openings_are_told_in_their_order() {
    check(&[
        (
            "",
            "front 22, sides 12, stairs 4 mid front, gate",
            "0/run-name 1/run-length 3/run-name 4/run-length 7/stair-width 8/stair-at 11/gate-at:named",
            "run 1: called front, 22'-0\" out to out, gate across the stairs, stairs 4'-0\" wide in the middle; run 2: called left, 12'-0\" out to out; run 3: called right, 12'-0\" out to out",
        ),
        (
            "",
            "from the corner 7'8, a 38 gate, 2'9 to the house",
            "2/run-from 3/run-length 6/gate-width 9/run-length 12/run-to",
            "told: gate opening 3'-2\"; run 1: 7'-8\" out to out, from corner, to gate post; run 2: 2'-9\" out to out, from gate post, to house",
        ),
        (
            "",
            "front 26 ft: 3 ft, 4 ft stairs, guard, 4 ft stairs, 3 ft",
            "0/run-name 1/run-length 3/offset 5/stair-width 10/stair-width 13/offset",
            "run 1: called front, 26'-0\" out to out, stairs 4'-0\" wide 3'-0\" from the left, stairs 4'-0\" wide 3'-0\" from the right",
        ),
        // One side is one, and so is one of the sides.
        (
            "",
            "22 ft front, the side is 12 ft",
            "0/run-length 1/run-name 4/run-name 6/run-length",
            "run 1: called front, 22'-0\" out to out; run 2: called side, 12'-0\" out to out",
        ),
        (
            "",
            "4 ft along the back and 4 ft along one of the sides",
            "0/run-length 3/run-name 5/run-length 10/run-name",
            "run 1: called back, 4'-0\" out to out; run 2: called side, 4'-0\" out to out",
        ),
        (
            "",
            "corner to stair head 8'3, 4 ft of stairs, then 5'9 from the stairs to the corner",
            "0/run-from 2/run-to 4/run-length 6/stair-width 11/run-length 17/run-to",
            "stairs: 4'-0\" wide; run 1: 8'-3\" out to out, from corner, to stair head; run 2: 5'-9\" out to out, from stair head, to corner",
        ),
        // Whose corners these are nobody said.
        (
            "",
            "corner to corner: shop 13 ft, pool 17 ft",
            "0/run-from 2/run-to 4/run-name 5/run-length 7/run-name 8/run-length",
            "given: run 13'-0\"; run 17'-0\" ?",
        ),
    ]);
}

/// What is said of the one run there is changes that run: its far end, its length in the unit that is near; stairs move with all they have.
#[test]
fn a_correction_is_of_the_run_that_is_there() {
    let run = "run 1: called side, 14'-0\" out to out, from house, to corner";
    check(&[
        (run, "the far end is the stair head", "5/run-to", "run 1: to stair head"),
        (run, "then on to the stair head", "4/run-to", "run 2: to stair head"),
        (run, "call it thirteen and a half", "2/run-length", "run 1: 13'-6\" out to out"),
        (
            run,
            "then 10 ft across",
            "1/run-length",
            "run 1: off the house, measured on the edge; run 2: turning right, 10'-0\" on the edge",
        ),
        (
            "run 1: called front, 20'-0\" out to out, from corner, to corner, stairs 4'-0\" wide in the middle; run 2: called right, 12'-0\" out to out, from corner, to house",
            "move the stairs to the right, by the house",
            "5/stair-at 9/stair-at:=by_house",
            "run 1: no stairs; run 2: stairs 4'-0\" wide 0\" from the right",
        ),
    ]);
}

/// A walkway along no house has its guard on one side, as long as it is.
#[test]
fn a_walkway_with_one_side_guarded_is_a_run_as_long_as_it_is() {
    check(&[(
        "",
        "walkway 4 ft wide 18 ft long, rail on the yard side",
        "1/deck-out 3/deck-along 9/run-name",
        "deck: 4'-0\" wide; run 1: called yard, 18'-0\" out to out",
    )]);
}

#[test]
fn some_posts_and_some_sides_are_told_by_name() {
    let deck = "deck: 18'-0\" along the house; deck: 12'-0\" out; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right";
    check(&[
        (
            "",
            "6x6 on the corners and 4x4 in line",
            "0/post-size 2/post-at 5/post-size 7/post-at:=line",
            "corner posts: 6x6; line posts: 4x4",
        ),
        (
            "",
            "guard the front and the left, 18 along the house by 12 out",
            "0/guarded:named 2/run-name 5/run-name 7/deck-along 12/deck-out",
            "deck: 18'-0\" along the house; deck: 12'-0\" out; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right; drop run 3",
        ),
        (deck, "no rail for the right", "1/guarded:nothing 4/run-name", "drop run 3"),
        (deck, "no rail for the porch", "1/guarded:nothing 4/run-name:=porch", "nothing"),
        // Fewer sides than there are, one of them named twice over.
        (
            "",
            "guard the front and the left, 18 along the house by 12 out. right is a garage",
            "0/guarded:named 2/run-name 5/run-name 7/deck-along 12/deck-out 15/run-name",
            "deck: 18'-0\" along the house; deck: 12'-0\" out; run 1: called left, off the house; run 2: called front, turning right; run 3: called right, turning right; drop run 3",
        ),
        (
            "run 1: 12'-0\" out to out",
            "16 ft corner to house, no rail",
            "0/run-length 1/run-from 3/run-to 6/guarded:nothing",
            "given: run 16'-0\" ?",
        ),
    ]);
}

/// A walk from the house goes side by side, and comes home; a step in the edge is three runs that meet.
#[test]
fn a_walk_with_turns_is_runs_with_corners_between() {
    check(&[
        // 8 + 6 out is 14 back.
        (
            "",
            "out 8, across 10, out 6 more, across 12, back 14 to the house",
            "1/run-length 4/run-length 7/run-length 11/run-length 14/run-length 17/run-to",
            "run 1: off the house, 8'-0\" on the edge; run 2: turning right, 10'-0\" on the edge; run 3: turning left, 6'-0\" on the edge; run 4: turning right, 12'-0\" on the edge; run 5: turning right, 14'-0\" on the edge",
        ),
        // 8 + 6 is not 12: it does not come home.
        (
            "",
            "out 8, across 10, out 6 more, across 12, back 12 to the house",
            "1/run-length 4/run-length 7/run-length 11/run-length 14/run-length 17/run-to",
            "given: run 8'-0\"; run 10'-0\"; run 6'-0\"; run 12'-0\"; run 12'-0\" ?",
        ),
        (
            "",
            "10'4 from the left corner, steps in 3 foot, then 8'9 to the right corner",
            "0/run-length 4/run-from 7/turn 8/run-length 11/run-length 15/run-to",
            "run 1: 10'-4\" out to out, from corner, to corner; run 2: 3'-0\" out to out, from corner, to inside corner; run 3: 8'-9\" out to out, from inside corner, to corner",
        ),
    ]);
}

/// 3 x 67 1/4 and four posts of 3 1/2 is 215 3/4.
#[test]
fn bays_and_marks_say_how_long_a_run_is_and_where_its_posts_stand() {
    check(&[
        (
            "",
            "three bays, 67 1/4 in the clear, 4x4s, corner to corner",
            "0/bay-count 3/bay-clear 8/post-size 10/run-from 12/run-to",
            "posts: 4x4; run 1: 17'-11 3/4\" out to out, from corner, to corner, 3 bays",
        ),
        // Without the posts' size nobody knows how long it is.
        (
            "",
            "three bays, 67 1/4 in the clear, corner to corner",
            "0/bay-count 3/bay-clear 8/run-from 10/run-to",
            "run 1: from corner, to corner, 3 bays; given: bay 5'-7 1/4\"",
        ),
        (
            "",
            "posts at 0, 47 and 101",
            "2/post-mark 4/post-mark 6/post-mark",
            "given: mark of a post 0\"; mark of a post 3'-11\"; mark of a post 8'-5\"",
        ),
    ]);
}

/// "What" and "where" before who does something say what it is; before what is done they ask.
#[test]
fn a_line_that_says_what_something_is_opens_as_no_question() {
    check(&[
        (
            "",
            "what we measured from the corner to the wall is ninety one inches",
            "5/run-from 8/run-to 10/run-length",
            "run 1: 7'-7\" out to out, from corner, to house",
        ),
        (
            "",
            "what's from the corner to the wall, ninety one inches",
            "4/run-from 7/run-to 9/run-length",
            "run 1: 7'-7\" out to out, from corner, to house ?",
        ),
    ]);
}

/// A 2x12 is 1 1/2 by 11 1/4 dressed (PS 20).
#[test]
fn a_rim_told_by_its_size_is_as_thick_and_as_tall_as_that() {
    check(&[
        (
            "",
            "rim 2x12, decking 1",
            "1/rim-size 4/decking",
            "rim: 1 1/2\" thick; rim: 11 1/4\" tall; decking: 1\" thick",
        ),
        (
            "rim: 9 1/4\" tall; rim: 1 1/2\" thick",
            "no, the rim's a 2x12",
            "5/rim-size",
            "rim: 1 1/2\" thick; rim: 11 1/4\" tall",
        ),
    ]);
}

/// A note is taken out by what it says, whatever trade that is of.
#[test]
fn a_note_goes_by_its_words() {
    let job =
        ["note: stucco crew thursday", "note: ladder is at the Hoffmans"].iter().fold(Job::default(), |job, line| {
            let Some(Act::Tell(facts)) = canon::read(line) else { panic!("{line}") };
            job.with_all(&facts).expect("a note")
        });
    let made = |line: &str| {
        let about = About { job: &job, asked: None, run: None, answered: false, figure: None, line, before: None };
        let reading = Reading { act: "drop", wants: vec!["notes"], filled: Vec::new(), log: 0.0 };
        super::other::other(&about, &Line::read(line, &[]), &reading).map(|way| canon::write(&way.act))
    };
    assert_eq!(made("that note on the stucco can go").as_deref(), Some("drop note 1"));
    assert_eq!(made("forget what I said about the ladder").as_deref(), Some("drop note 2"));
    assert_eq!(made("scratch that note"), None);
}

/// Where the rail of a flight ends, and that a post stands already, change nothing that is told beside it: they are named.
#[test]
fn what_changes_nothing_that_is_told_keeps_nothing_from_being_told() {
    check(&[
        ("", "11 risers, rail runs out at a newel", "0/risers 8/run-to", "stairs: 11 risers"),
        (
            "",
            "corner to corner 14'2, posts at the corners are existing",
            "0/run-from 2/run-to 3/run-length 10/post-at",
            "run 1: 14'-2\" out to out, from corner, to corner",
        ),
        (
            "",
            "corner to corner is 14'2, corner posts are in already",
            "0/run-from 2/run-to 4/run-length 6/post-at",
            "run 1: 14'-2\" out to out, from corner, to corner",
        ),
        // A bay has two posts, and a post is called by its size.
        ("", "one bay, between the two posts it's 61 1/2", "0/bay-count 9/bay-clear", "given: bays 1; bay 5'-1 1/2\""),
        (
            "",
            "44 high and the 6x6s measure 5 5/8",
            "0/height-top 6/post-width",
            "height: 44\" to the top; posts: 5 5/8\" wide",
        ),
        // Of all a decimal may be one is usual for what it is of: 62.5 in., and no 62 ft 5.
        (
            "",
            "opening is 62.5, pickets 1.5",
            "2/bay-clear 5/baluster-width",
            "told: bay 5'-2 1/2\"; balusters: 1 1/2\" wide",
        ),
        // 10 ft 6, or 10.6 ft: that is asked about.
        ("", "front is 10.6", "0/run-name 2/run-length", "nothing"),
        // A clock's hour is no figure of the guard's.
        (
            "",
            "house to corner eleven four, I'm back tuesday at 8",
            "0/run-from 2/run-to 3/run-length",
            "run 1: 11'-4\" out to out, from house, to corner",
        ),
        // Who may do something does not ask whether.
        (
            "run 1: 14'-0\" long, from corner, to corner",
            "you can keep the ends, the length should be 13'6",
            "10/run-length",
            "run 1: 13'-6\" out to out",
        ),
    ]);
}

/// Out 15, across 9, back 6, 5 more across: the way home is 15 - 6 = 9, and follows.
#[test]
fn a_walk_goes_on_line_by_line() {
    let walk = "run 1: off the house, 15'-0\" on the edge; run 2: turning right, 9'-0\" on the edge";
    check(&[
        (
            "run 1: 15'-0\" long, from house",
            "then nine foot across",
            "1/run-length",
            "run 1: off the house, measured on the edge; run 2: turning right, 9'-0\" on the edge",
        ),
        (
            walk,
            "comes back six foot and then goes five over to the right",
            "2/run-length 6/run-length",
            "run 3: turning right, 6'-0\" on the edge; run 4: turning left, 5'-0\" on the edge",
        ),
        (
            "run 1: off the house, 15'-0\" on the edge; run 2: turning right, 9'-0\" on the edge; run 3: turning right, 6'-0\" on the edge; run 4: turning left, 5'-0\" on the edge",
            "then home to the house",
            "4/run-to",
            "run 5: turning right, measured on the edge",
        ),
        // Nobody says which way.
        (walk, "then nine foot", "1/run-length", "given: run 9'-0\""),
        // A length alone says anew how long the one run is.
        ("run 1: 15'-0\" long, from house, to corner", "no, it's 15'6", "4/run-length", "run 1: 15'-6\" out to out"),
    ]);
}

/// 14 ft less 24 twice is 120, 10 ft less 24 is 96; the cuts are 24 x root 2 = 33.94.
#[test]
fn a_deck_with_both_corners_cut_has_five_sides() {
    let line = "14 along the house, 10 out, both outer corners cut at 45, two foot off each way";
    let read = Line::read(line, &[]);
    let job = Job::default();
    let about = About { job: &job, asked: None, run: None, answered: false, figure: None, line, before: None };
    let rows = [(0, "deck-along"), (5, "deck-out"), (13, "turn"), (15, "corner-leg")];
    let filled = rows.map(|(at, row)| Filled { at, word: None, row: row_of(row), how: How::Set });
    let reading = Reading { act: "tell", wants: Vec::new(), filled: filled.to_vec(), log: 0.0 };
    let way = told::told(&about, &read, &reading).unwrap_or_else(|| panic!("{:?}", items(&read)));
    assert!(!way.doubtful, "{}", canon::write(&way.act));
    let told = job.with_all(way.act.told()).expect("a deck");
    let lengths: Vec<f64> = told
        .runs
        .iter()
        .filter_map(|r| r.length)
        .map(|t| t.length.q())
        .map(|q| *q.numer() as f64 / *q.denom() as f64)
        .collect();
    let want = [96.0, 33.941125, 120.0, 33.941125, 96.0];
    assert!(lengths.len() == 5 && lengths.iter().zip(want).all(|(l, w)| (l - w).abs() < 1e-5), "{lengths:?}");
    assert_eq!(crate::job::outline::filled(&told).open, None);
    let phrase = canon::write(&way.act);
    assert_eq!(canon::read(&phrase), Some(way.act), "{phrase}");
}

/// An opening, its balusters and the most between them are a question in short; with anything else they are told.
#[test]
fn an_opening_with_what_stands_in_it_asks_how_many() {
    check(&[
        (
            "",
            "opening 62 3/4, pickets 1 1/4, 3 1/2 max",
            "1/bay-clear 4/baluster-width 6/gap-max",
            "figure: balusters; with bay 5'-2 3/4\"; with baluster 1 1/4\"; with gap limit 3 1/2\"?",
        ),
        (
            "",
            "opening 62 3/4, pickets 1 1/4",
            "1/bay-clear 4/baluster-width",
            "told: bay 5'-2 3/4\"; balusters: 1 1/4\" wide",
        ),
    ]);
}

/// Two lots of goods stand side by side; a price said anew takes the old one's place.
#[test]
fn goods_told_one_after_the_other_are_both_kept() {
    let before = "told: sticks 9; told: price of one 11 1/4";
    check(&[
        (
            before,
            "and 20 sticks at 7.50",
            "1/stick-count 4/price",
            "given: sticks 9; price of one 11 1/4; sticks 20; price of one 7 1/2",
        ),
        ("told: washers 20", "12 bolts, washers x 2", "0/bolt-count 4/washers:times", "nothing"),
        (before, "no, 9 sticks at 7.50", "2/stick-count 5/price", "told: sticks 9; told: price of one 7 1/2"),
    ]);
}

/// The run is 9'-3 1/2": its half becomes 5/8; a length without a half has none.
#[test]
fn a_part_of_an_inch_is_corrected_by_itself() {
    check(&[
        ("run 1: 9'-3 1/2\" long", "that half wants to be five eighths", "", "run 1: 9'-3 5/8\" long"),
        ("run 1: 9'-3 1/2\" long", "5/8, not 1/2", "", "run 1: 9'-3 5/8\" long"),
        ("run 1: 9'-3 1/4\" long", "that half wants to be five eighths", "", "nothing"),
    ]);
}

/// What was held beside a telling goes with it: no count of posts stands for what is asked then.
#[test]
fn undo_takes_back_what_was_held_beside_what_was_told() {
    let mut session = Session::new();
    for (line, held) in [("run 1: 12'-0\" long; given: posts 5", true), ("undo", false)] {
        let (delta, _) = step(&session, line);
        session.apply(delta);
        let given = session.talk.asked.as_ref().map_or(0, |a| a.given.len());
        assert_eq!(given > 0, held, "{line}");
    }
}

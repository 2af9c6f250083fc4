//! The generic question: rows of the table wanted, with premises and facts tried on. Each figure is worked by hand beside its row.
//!
//! Dressed sizes are PS 20's: a 2x2 is 1 1/2, a 4x4 3 1/2, a 6x6 5 1/2 in. Limits and their sources are those of `src/limits`.

#[path = "common/rows.rs"]
mod rows;
#[path = "common/talk.rs"]
mod talk;

use railhand::grammar::ask::{Mood, RowAsk};
use railhand::grammar::canon;
use railhand::grammar::{Act, Query};
use railhand::quantity::{Kind, ROWS, RowId};
use railhand::reply::Status;
use railhand::session::{Session, step};
use rows::{Case, first, holds};
use serde_json::Value;
use talk::told_then;

#[test]
fn figures_come_first_with_what_they_are_never_said_without() {
    let rows: &[Case] = &[
        // (58 - 9 x 1 1/2) / 10 = 44 1/2 / 10 = 4.45
        (
            "figure: gap; with bay 4'-10\"; with balusters 9?",
            "The gap is 4 7/16\" (exactly 4 9/20\").",
            &[("gap", "4.45"), ("clear", "58"), ("balusters", "9"), ("baluster", "1.5"), ("result", "4.45")],
        ),
        // Ten: (58 - 15) / 11 = 3 10/11; nine leave 4.45.
        (
            "figure: balusters; with bay 4'-10\"?",
            "10 balusters, the gap 3 15/16\" (exactly 3 10/11\").",
            &[("balusters", "10")],
        ),
        // No gap over 3: (58 - 3) / 4 1/2 = 12.2, so 13: (58 - 19 1/2) / 14 = 2 3/4.
        ("figure: balusters; with bay 4'-10\"; with gap 3\"?", "13 balusters, the gap 2 3/4\".", &[("gap", "2.75")]),
        // 1 baluster in 7 in.: (7 - 1 1/2) / 2 = 2 3/4.
        ("figure: balusters; with bay 7\"?", "1 baluster, the gap 2 3/4\".", &[("gap", "2.75")]),
        (
            "figure: gap; figure: balusters; with bay 4'-10\"?",
            "The gap is 3 15/16\" (exactly 3 10/11\"); 10 balusters.",
            &[("balusters", "10"), ("clear", "58")],
        ),
        // 9 x 1 1/2 + 10 x 3 1/2 = 48 1/2; with a post 52.
        (
            "figure: bay; with balusters 9; with gap 3 1/2\"?",
            "The bay is 4'-0 1/2\" = 48 1/2\", 4'-4\" = 52\" on center.",
            &[("clear", "48.5"), ("centre", "52")],
        ),
        // 60 + 3 1/2
        (
            "figure: bay, on center; with bay 5'-0\"?",
            "5'-3 1/2\" = 63 1/2\" on center, the bay 5'-0\" = 60\".",
            &[("centre", "63.5")],
        ),
        // 192 - 3 1/2 = 188 1/2; over 72 is 2.6: 3 bays of 62 5/6, 59 1/3 clear, 4 posts.
        (
            "figure: bays; with run, out to out 16'-0\"?",
            "3 bays, the bay 4'-11 5/16\" = 59 5/16\" (exactly 59 1/3\"), 5'-2 13/16\" = 62 13/16\" (exactly 62 5/6\") on center, 4 posts.",
            &[("bay_count", "3"), ("posts_count", "4")],
        ),
        // 192 - 5 1/2 = 186 1/2; 3 bays of 62 1/6, less 5 1/2 56 2/3 clear.
        (
            "figure: posts; with run, out to out 16'-0\"; if posts: 6x6?",
            "4 posts, 3 bays, the bay 4'-8 11/16\" = 56 11/16\" (exactly 56 2/3\"), 5'-2 3/16\" = 62 3/16\" (exactly 62 1/6\") on center, with posts 6x6.",
            &[("posts_count", "4"), ("bay_count", "3")],
        ),
        // 52 1/2 / 7
        (
            "figure: riser; with risers 7; with total rise 4'-4 1/2\"?",
            "The riser is 7 1/2\".",
            &[("rise", "7.5"), ("total_rise", "52.5")],
        ),
        (
            "figure: risers; with riser 7 1/2\"; with total rise 4'-4 1/2\"?",
            "7 risers, the riser 7 1/2\".",
            &[("risers", "7"), ("rise", "7.5")],
        ),
        // 14 risers hang 13 treads; 13 x 10 = 130.
        (
            "figure: total run; with risers 14; with tread 10\"?",
            "The total run is 10'-10\" = 130\".",
            &[("treads", "13"), ("total_run", "130")],
        ),
        // arctan(7 1/2 / 10) = 36.87
        (
            "figure: angle of the stairs; with riser 7 1/2\"; with tread 10\"?",
            "The angle of the stairs is 36.9 degrees.",
            &[],
        ),
        // 3 x 30 + 2 x 1/8 = 90 1/4 of 96; one kerf more: 96 - 90 3/8 = 5 5/8.
        (
            "figure: pieces a stick; with stick 8'-0\"; with piece 2'-6\"?",
            "3 pieces a stick, 5 5/8\" left over.",
            &[("left", "5.625"), ("per_stick", "3")],
        ),
        // 10 pieces, 3 a stick: 4.
        (
            "figure: sticks; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "4 sticks, 5 5/8\" left over.",
            &[("sticks", "4"), ("left", "5.625")],
        ),
        // 40 and ten in a hundred
        (
            "figure: pieces with spares and waste; with pieces 40; with waste 10?",
            "44 pieces with spares and waste.",
            &[],
        ),
        // 36 - 1/2 - 1/2, as taken.
        ("figure: gate opening; with gate leaf 2'-11\"?", "The gate opening is 36\"", &[("opening", "36")]),
        ("figure: gate; with gate opening 3'-0\"?", "The gate is 36\", the gate leaf 35\".", &[("leaf", "35")]),
        // 3 1/2 - 1 1/2, and 5 1/2 - 1 1/2
        (
            "figure: left of the post at its notch; with notch 1 1/2\"?",
            "2\" left of the post at its notch.",
            &[("left", "2")],
        ),
        (
            "figure: left of the post at its notch; with notch 1 1/2\"; if posts: 6x6?",
            "4\" left of the post at its notch, with posts 6x6.",
            &[("left", "4")],
        ),
        // 3 1/2 + 1 1/2
        ("figure: balusters on center; with gap 3 1/2\"?", "5\" on center, the gap 3 1/2\".", &[("on_centre", "5")]),
        // 28 + 4 within 36 in.: 12 in 9 ft.
        (
            "figure: drop within 36 in. of the edge; with height above ground 2'-4\"; with fall of the ground 1'-0\"; with distance the ground falls over 9'-0\"?",
            "The drop within 36 in. of the edge is 32\".",
            &[("drop", "32")],
        ),
        // Two bays of 60: 11 at (60 - 16 1/2) / 12 = 3 5/8; one of 41: 7 at (41 - 10 1/2) / 8 = 3 13/16. 11 + 11 + 7.
        (
            "figure: balusters; with bay 5'-0\"; with bay 5'-0\"; with bay 3'-5\"?",
            "11 balusters, the gap 3 5/8\", with the bay 5'-0\" = 60\", 2 times; 7 balusters, the gap 3 13/16\", with the bay 41\"; 29 balusters in all.",
            &[("result", "29"), ("first", "11"), ("second", "7"), ("first_beside", "3.625")],
        ),
        // 9 in 58: 4.45; in 60: (60 - 13 1/2) / 10 = 4.65. Gaps do not add up.
        (
            "figure: gap; with bay 4'-10\"; with bay 5'-0\"; with balusters 9?",
            "The gap is 4 7/16\" (exactly 4 9/20\"), with the bay 4'-10\" = 58\"; the gap is 4 5/8\" (exactly 4 13/20\"), with the bay 5'-0\" = 60\".",
            &[("first", "4.45"), ("second", "4.65")],
        ),
        // Runs add up: 18 + 10 + 8 + 12 + 10 = 58 ft.
        (
            "figure: guard in all; with run 18'-0\"; with run 10'-0\"; with run 8'-0\"; with run 12'-0\"; with run 10'-0\"?",
            "The guard in all is 58'-0\" = 696\".",
            &[("result", "696")],
        ),
        // Of two gates one is meant: 144 - 36 = 108, 144 - 42 = 102; 6 apart.
        (
            "figure: guard in all; with run 12'-0\"; with gate 3'-0\"; with gate 3'-6\"?",
            "The guard in all is 9'-0\" = 108\", with the gate 36\"; the guard in all is 8'-6\" = 102\", with the gate 42\"; 6\" apart.",
            &[("first", "108"), ("second", "102"), ("apart", "6")],
        ),
        // Of two widths too: (68 - 4) / 5 1/2 = 11.6, 12; (68 - 4) / 4 3/4 = 13.5, 14. They are not 26 in one bay.
        (
            "figure: balusters; with bay 5'-8\"; with gap limit 4\"; with baluster 1 1/2\"; with baluster 3/4\"?",
            "12 balusters, the gap 3 7/8\" (exactly 3 11/13\"), with the baluster 1 1/2\"; 14 balusters, the gap 3 13/16\" (exactly 3 5/6\"), with the baluster 3/4\"; 2 apart.",
            &[("first", "12"), ("second", "14"), ("apart", "2")],
        ),
        // Two bolts in each of 8 posts are 16; 12 are there: 4 more.
        (
            "figure: bolts; with posts 8; with bolts a post 2; with bolts 12?",
            "16 bolts, 2 bolts a post.",
            &[("bolts", "16"), ("apart", "4")],
        ),
        // A quarter planed off the leaf is a quarter more at the latch: 3/4 + 1/4.
        (
            "figure: latch gap; with gate leaf 3'-0\"; with latch gap 3/4\"; with gate leaf 2'-11 3/4\"?",
            "The latch gap is 1\".",
            &[("latch_gap", "1"), ("apart", "0.25")],
        ),
        // 96 - 2 x 46 = 4; 120 - 92 = 28: two of each.
        (
            "figure: pieces a stick; with posts' length 3'-10\"; with kerf 0\"; with stick 8'-0\"; with stick 10'-0\"?",
            "2 pieces a stick, 4\" left over, with the stick 8'-0\" = 96\"; 2 pieces a stick, 28\" left over, with the stick 10'-0\" = 120\".",
            &[("first_beside", "4"), ("second_beside", "28")],
        ),
        // A run tried on: nothing of it is kept.
        (
            "figure: posts; if run 1: 16'-0\" out to out, from end post, to end post?",
            "4 posts, 3 bays",
            &[("posts_count", "4")],
        ),
        ("figure: gap?", "For the gap I still need the bay.", &[]),
        ("figure: gap; with balusters 9?", "For the gap I still need the bay.", &[]),
        ("figure: mount?", "I can't work out the mount from that.", &[]),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

#[test]
fn the_job_answers_what_no_premise_does() {
    let told = ["posts 6x6", "16 ft out to out from end post to end post"];
    let rows: &[Case] = &[
        // 192 - 5 1/2 = 186 1/2 in 3 bays of 62 1/6, 56 2/3 clear.
        ("figure: bay?", "The bay is 4'-8 11/16\" = 56 11/16\" (exactly 56 2/3\")", &[]),
        // 4x4 tried on: 59 1/3.
        ("figure: bay; if posts: 4x4?", "The bay is 4'-11 5/16\" = 59 5/16\" (exactly 59 1/3\")", &[]),
        // 62 1/6 is under 72.
        ("judge: bay?", "Yes: with the bay 4'-8 11/16\"", &[("limit", "72")]),
        // In two bays, not the three it takes by itself: 186 1/2 / 2 = 93 1/4, 87 3/4 clear.
        ("judge: bays; with bays 2?", "No: with 2 bays, 7'-9 1/4\" = 93 1/4\"", &[("centre", "93.25")]),
        ("figure: bay; with bays 2?", "The bay is 7'-3 3/4\" = 87 3/4\"", &[("clear", "87.75")]),
        // The job takes four: nothing of its bays is mixed in with three.
        ("judge: posts; with posts 3?", "No: it takes 4 posts, 1 more than 3.", &[]),
        ("judge: bays; with bays 2; with run, out to out 16'-0\"?", "No: with 2 bays, 7'-9 1/4\" = 93 1/4\"", &[]),
    ];
    rows.iter().for_each(|case| holds(&told, case));
}

/// On both sides of each limit and on it.
#[test]
fn a_word_on_a_row_follows_its_limit() {
    let rows: &[(&str, [&str; 3], [&str; 3])] = &[
        // The figure below, on, above; what each opens with.
        ("gap", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("gap under", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("gap under the gate", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("gap across the corner", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("gap under at the far end", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("post off the wall", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        // A limit told of 4 keeps gaps under 4: rules trip on more.
        ("gap limit", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "Yes", "No"]),
        ("gap that holds", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "Yes", "No"]),
        ("height to the top", ["2'-11 15/16\"", "3'-0\"", "3'-0 1/16\""], ["No", "Yes", "Yes"]),
        ("drop within 36 in. of the edge", ["2'-5 15/16\"", "2'-6\"", "2'-6 1/16\""], ["No", "No, by a hair", "Yes"]),
        ("height above ground", ["2'-5 15/16\"", "2'-6\"", "2'-6 1/16\""], ["No", "No, by a hair", "Yes"]),
        ("bay, on center", ["5'-11 15/16\"", "6'-0\"", "6'-0 1/16\""], ["Yes", "Yes", "No"]),
        // 68 1/2 and a 4x4 are 72.
        ("bay", ["5'-8 7/16\"", "5'-8 1/2\"", "5'-8 9/16\""], ["Yes", "Yes", "No"]),
        ("most on center", ["5'-11 15/16\"", "6'-0\"", "6'-0 1/16\""], ["Yes", "Yes", "No"]),
        ("post width", ["3 7/16\"", "3 1/2\"", "3 9/16\""], ["No", "Yes", "Yes"]),
        ("bolt", ["7/16\"", "1/2\"", "9/16\""], ["No", "Yes", "Yes"]),
        ("bolts apart", ["4 15/16\"", "5\"", "5 1/16\""], ["Yes", "Yes", "No"]),
        ("leg below the lower bolt", ["1 15/16\"", "2\"", "2 1/16\""], ["No", "Yes", "Yes"]),
        ("pull the hold-down takes", ["1799", "1800", "1801"], ["No", "Yes", "Yes"]),
        ("pull on the upper bolt", ["1799", "1800", "1801"], ["Yes", "Yes", "No"]),
        ("push at the top", ["199", "200", "201"], ["No", "Yes", "Yes"]),
        ("push the post carries", ["199", "200", "201"], ["No", "Yes", "Yes"]),
        ("push what is left carries", ["199", "200", "201"], ["No", "Yes", "Yes"]),
        ("stairs, clear between the posts", ["2'-11 15/16\"", "3'-0\"", "3'-0 1/16\""], ["No", "Yes", "Yes"]),
        ("stair opening", ["2'-11 15/16\"", "3'-0\"", "3'-0 1/16\""], ["No", "Yes", "Yes"]),
        ("riser", ["7 11/16\"", "7 3/4\"", "7 13/16\""], ["Yes", "Yes", "No"]),
        ("most riser", ["7 11/16\"", "7 3/4\"", "7 13/16\""], ["Yes", "Yes", "No"]),
        ("tread", ["9 15/16\"", "10\"", "10 1/16\""], ["No", "Yes", "Yes"]),
        // 151 in.
        ("total rise", ["12'-6 15/16\"", "12'-7\"", "12'-7 1/16\""], ["Yes", "Yes", "No"]),
        ("angle of the stairs", ["49", "50", "51"], ["Yes", "Yes", "No"]),
        ("stair rail", ["2'-9 15/16\"", "2'-10\"", "2'-10 1/16\""], ["No", "Yes", "Yes"]),
        // A range: its foot, then its top.
        ("handrail", ["2'-9 15/16\"", "2'-10\"", "3'-0\""], ["No", "Yes", "Yes"]),
        ("handrail", ["3'-1 15/16\"", "3'-2\"", "3'-2 1/16\""], ["Yes", "Yes", "No"]),
        ("nosing", ["11/16\"", "3/4\"", "1\""], ["No", "Yes", "Yes"]),
        ("nosing", ["1 3/16\"", "1 1/4\"", "1 5/16\""], ["Yes", "Yes", "No"]),
        ("opening between treads", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("landing", ["2'-11 15/16\"", "3'-0\"", "3'-0 1/16\""], ["No", "Yes", "Yes"]),
        // 4 3/8
        ("gap on the stairs", ["4 5/16\"", "4 3/8\"", "4 7/16\""], ["Yes", "No", "No"]),
        ("gap square to the slope", ["4 5/16\"", "4 3/8\"", "4 7/16\""], ["Yes", "No", "No"]),
        ("gap that holds on the stairs", ["4 5/16\"", "4 3/8\"", "4 7/16\""], ["Yes", "Yes", "No"]),
        ("ball under the stair rail", ["5 15/16\"", "6\"", "6 1/16\""], ["Yes", "No", "No"]),
        ("handrail off the wall", ["1 7/16\"", "1 1/2\"", "1 9/16\""], ["No", "Yes", "Yes"]),
        ("gap at the posts", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("gap at the gate", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("hinge gap", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("latch gap", ["3 15/16\"", "4\"", "4 1/16\""], ["Yes", "No", "No"]),
        ("bolts a post", ["1", "2", "3"], ["No", "Yes", "Yes"]),
        ("risers for a handrail", ["3", "4", "5"], ["No", "Yes", "Yes"]),
        // A range: what is round is 1 1/4 to 2 across.
        ("handrail's width", ["1 3/16\"", "1 1/4\"", "1 1/2\""], ["No", "Yes", "Yes"]),
        ("handrail's width", ["1 15/16\"", "2\"", "2 1/16\""], ["Yes", "Yes", "No"]),
        ("gate leaf", ["3'-11 15/16\"", "4'-0\"", "4'-0 1/16\""], ["Yes", "Yes", "No"]),
    ];
    for (row, figures, opens) in rows {
        for (figure, opens) in figures.iter().zip(opens) {
            let phrase = format!("judge: {row}; with {row} {figure}?");
            let last = told_then(&[&phrase]);
            assert!(first(&last).starts_with(&format!("{opens}: ")), "{phrase}\n{}", last.text());
            assert_eq!(last.reply.status, Status::Answered);
            assert!(last.json()["values"]["limit"] != Value::Null, "{phrase}");
        }
    }
    // Every row with a limit a figure passes or fails by stands above; a latch's holds at a pool, and a sag's limit is no figure by itself.
    let elsewhere = [RowId::LatchHeight];
    let limited = ROWS.iter().filter(|r| r.limits().any(|(_, s)| s != railhand::limits::Sense::None));
    for row in limited.filter(|r| !elsewhere.contains(&r.id)) {
        assert!(rows.iter().any(|(name, ..)| *name == row.name), "{}", row.name);
    }
}

#[test]
fn a_word_names_the_figure_the_limit_and_its_source() {
    let rows: &[Case] = &[
        (
            "judge: gap; with gap 4 1/8\"?",
            "No: 4 1/8\" is over the 4\" gap limit (IRC R312.1.3",
            &[("gap", "4.125"), ("limit", "4")],
        ),
        (
            "judge: height to the top; with height to the top 2'-10\"?",
            "No: 34\" is under the 36\" limit for the height to the top (IRC R312.1.2",
            &[("height_top", "34"), ("limit", "36")],
        ),
        // 9 in 58 leave 4.45; 10 leave 3 10/11.
        (
            "judge: balusters; with balusters 9; with bay 4'-10\"?",
            "No: with 9 balusters, 4 7/16\" (exactly 4 9/20\") is over the 4\" gap limit",
            &[("balusters", "9"), ("gap", "4.45")],
        ),
        ("judge: balusters; with balusters 10; with bay 4'-10\"?", "Yes: with 10 balusters, 3 15/16\"", &[]),
        // 188 1/2 in two is 94 1/4.
        (
            "judge: bays; with bays 2; with run, out to out 16'-0\"?",
            "No: with 2 bays, 7'-10 1/4\" = 94 1/4\" is over the 6'-0\" = 72\" limit on center (AWC",
            &[("centre", "94.25")],
        ),
        // 48 / 6 = 8
        (
            "judge: risers; with risers 6; with total rise 4'-0\"?",
            "No: with 6 risers, 8\" is over the 7 3/4\" riser limit",
            &[("rise", "8")],
        ),
        // 5 on center less 1 1/2
        (
            "judge: balusters on center; with balusters on center 5\"?",
            "Yes: with 5\" on center, 3 1/2\"",
            &[("gap", "3.5")],
        ),
        // 3 x root 2 = 4.24
        ("judge: hold-back; with hold-back 3\"?", "No: with the hold-back 3\", 4 1/4\"", &[]),
        // 28 + 4: more than 30 only with the fall.
        (
            "judge: height above ground; with height above ground 2'-4\"; with fall of the ground 1'-0\"; with distance the ground falls over 9'-0\"?",
            "Yes: with the height above ground 28\", 32\" is more than 30\", so a guard is required",
            &[("drop", "32"), ("guard_needed", "true")],
        ),
        (
            "judge: drop within 36 in. of the edge; with height above ground 2'-6\"?",
            "No, by a hair: 30\" is not more than 30\"",
            &[("guard_needed", "false")],
        ),
        // The told limit is the tighter one; a wider one takes nothing away.
        (
            "judge: gap; with gap 3 7/8\"; with gap limit 3 1/2\"?",
            "No: 3 7/8\" is over the 3 1/2\" gap limit (as told)",
            &[("limit", "3.5")],
        ),
        ("judge: gap; with gap 4 1/2\"; with gap limit 5\"?", "No: 4 1/2\" is over the 4\" gap limit (IRC", &[]),
        // 60 less 3 1/2 clear
        (
            "judge: bay, on center; with bay, on center 5'-0\"; if most clear: 4'-0\"?",
            "No: with 5'-0\" = 60\" on center, 4'-8 1/2\" = 56 1/2\" is over the 4'-0\" = 48\" bay limit (as told)",
            &[],
        ),
        (
            "judge: gap; with gap 2\"; if pool: closed off by the guard?",
            "No: 2\" is over the 1 3/4\" gap limit (ISPSC",
            &[("limit", "1.75")],
        ),
        (
            "judge: gap; with gap 1 3/4\"; if pool: closed off by the guard?",
            "Yes: 1 3/4\" is just the 1 3/4\" gap limit, and that passes",
            &[],
        ),
        (
            "judge: height to the top; with height to the top 3'-6\"; if pool: closed off by the guard?",
            "No: 42\" is under the 4'-0\" = 48\" limit",
            &[],
        ),
        (
            "judge: latch height; with latch height 4'-5\"; if pool: closed off by the guard?",
            "No: 4'-5\" = 53\" is under",
            &[],
        ),
        (
            "judge: latch height; with latch height 4'-6\"; if pool: closed off by the guard?",
            "Yes: 4'-6\" = 54\" is just",
            &[],
        ),
        (
            "judge: latch height; with latch height 3'-0\"?",
            "The latch height is 36\": no limit I hold bites here.",
            &[],
        ),
        (
            "judge: height to the top; with height to the top 3'-0\"; if department asks: height 42\"?",
            "No: 36\" is under the 42\" limit",
            &[("limit", "42")],
        ),
        // 30 up, so nothing between its treads is more than 30 above what is below.
        (
            "judge: opening between treads; with opening between treads 4\"; with total rise 2'-6\"?",
            "The opening between treads is 4\": no limit",
            &[],
        ),
        ("judge: nosing; with nosing 1/2\"; with tread 11\"?", "Yes: 1/2\" is under the 1 1/4\" nosing limit", &[]),
        ("judge: kerf; with kerf 1/8\"?", "The kerf is 1/8\": no rule I know limits it.", &[("kerf", "0.125")]),
        // The post's bending of `tests/provided.rs`: 1.643 as a corner post; of a 6x6 by (3 1/2 / 5 1/2)^3 and its own design value.
        ("judge: post size; if posts: 4x4?", "No: 1.64 is over 1.00 of what its wood is allowed", &[]),
        ("judge: post size; if posts: 6x6?", "Yes: 0.80 is under 1.00 of what its wood is allowed", &[]),
        ("judge: post size; if posts: 2x4?", "Check: a post 1 1/2\" thick is under a 4x4", &[]),
        (
            "judge: notch; with notch 1 1/2\"?",
            "No: a notch of 1 1/2\" in a post of 3 1/2\": notched 4x4 guard posts are barred",
            &[],
        ),
        (
            "judge: notch; with notch 1 1/2\"; if posts: 6x6?",
            "Check: a notch of 1 1/2\" in a post of 5 1/2\": not barred by name",
            &[],
        ),
        ("judge: mount; if mount: on the decking?", "Check: posts on the decking are held by", &[]),
        ("judge: mount; if mount: inside the rim?", "I hold no check on the mount.", &[]),
        // A fault of the posts tried on is no answer about balusters.
        ("judge: balusters; with balusters 9; if posts: 2x4?", "For the gap I still need the bay.", &[]),
        ("judge: gap?", "To judge the gap I need its figure, or the bay.", &[]),
        ("judge: bay?", "To judge the bay I need its figure.", &[]),
        ("judge: balusters; with balusters 9?", "For the gap I still need the bay.", &[]),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

#[test]
fn a_stop_that_stands_opens_the_word_on_its_matter() {
    let rows: &[Case] = &[
        ("judge: height to the top; with height to the top 3'-6\"?", "Stop: a guard 34\" high is under 36\"", &[]),
        // Tried on, it takes the stop away.
        ("judge: height to the top; if height: 42\" to the top?", "Yes: 42\" is over the 36\"", &[]),
        ("judge: riser; with riser 7\"?", "Yes: 7\" is under", &[]),
        // A figure of premises given whole is no word on the job.
        ("figure: leaf's height; with height to the top 3'-6\"; with gap under 2\"?", "The leaf's height is 40\"", &[]),
    ];
    rows.iter().for_each(|case| holds(&["34 high"], case));
}

#[test]
fn what_was_taken_and_what_had_no_part_is_said() {
    let text = |phrase: &str| told_then(&[phrase]).text();
    let said = text("figure: gap; with bay 4'-10\"; with balusters 9; with kerf 1/8\"?");
    assert!(said.contains("Not used for it: kerf 1/8\"."), "{said}");
    assert!(said.contains("Not told, so taken as usual: baluster 1 1/2\"."), "{said}");
    // Two premises of one row, and a want that does not follow from either.
    let said = text("figure: riser; with risers 7; with total rise 4'-4 1/2\"; with kerf 1/8\"; with kerf 1/16\"?");
    assert!(said.contains("Not used for it: kerf 1/16\", kerf 1/8\"."), "{said}");
    let said = text("judge: post size; if posts: 4x4?");
    assert!(said.contains("Wood not told is taken as hem-fir"), "{said}");
    let said = text("judge: opening between treads; with opening between treads 4\"; with total rise 2'-6\"?");
    assert!(!said.contains("Not used"), "{said}");
    // What cannot be is said, and nothing is answered.
    let odd = told_then(&["figure: gap; with bay 4'-10\"; if drop run 4?"]);
    assert!(odd.reply.values.result.is_none() && odd.reply.status != Status::Answered, "{}", odd.text());
}

/// No row is passed that nothing is held to; a row of words never has a figure.
#[test]
fn a_row_without_a_limit_is_never_a_yes() {
    for row in ROWS.iter().filter(|r| r.limits().next().is_none() && r.beside.is_empty()) {
        let phrase = canon::write(&Act::Query(Query::Row(RowAsk::judge(row.id, Vec::new()))));
        let last = told_then(&[&phrase]);
        let ratio = matches!(row.id, RowId::PostRatio | RowId::RailRatio | RowId::RailSag);
        assert!(ratio || !first(&last).starts_with("Yes"), "{phrase}\n{}", last.text());
        let ask = RowAsk { mood: Mood::Figure, ..RowAsk::figure(row.id, Vec::new()) };
        let last = told_then(&[&canon::write(&Act::Query(Query::Row(ask)))]);
        let words = matches!(row.kind, Kind::Lumber | Kind::Place | Kind::Choice | Kind::Text);
        assert!(!words || last.reply.status == Status::Asks, "{}\n{}", row.name, last.text());
    }
}

/// A figure told beside what it comes to, on both sides of enough and just at it.
#[test]
fn a_word_compares_what_is_told_with_what_it_comes_to() {
    let rows: &[Case] = &[
        // 2 x 93 1/2 + 3 1/2 = 190 1/2 of 192, and of 168.
        (
            "judge: stick; with stick 16'-0\"; with bays 2; with bay 7'-9 1/2\"; if posts: 4x4?",
            "Yes: it takes 15'-10 1/2\" = 190 1/2\", 1 1/2\" less than 16'-0\" = 192\", with posts 4x4.",
            &[("needed", "190.5"), ("apart", "1.5"), ("stock", "192")],
        ),
        (
            "judge: stick; with stick 14'-0\"; with bays 2; with bay 7'-9 1/2\"; if posts: 4x4?",
            "No: it takes 15'-10 1/2\" = 190 1/2\", 22 1/2\" more than 14'-0\" = 168\", with posts 4x4.",
            &[("needed", "190.5")],
        ),
        // 2 x 93 1/2 + 5 1/2 = 192 1/2.
        (
            "judge: stick; with stick 16'-0\"; with bays 2; with bay 7'-9 1/2\"; if posts: 6x6?",
            "No: it takes 16'-0 1/2\" = 192 1/2\", 1/2\" more than",
            &[],
        ),
        // 6 x 30 + 5 x 1/8 = 180 5/8; of 180 it does not go.
        (
            "judge: stick; with stick 15'-0\"; with pieces 6; with piece 2'-6\"?",
            "No: it takes 15'-0 5/8\" = 180 5/8\", 5/8\" more than 15'-0\" = 180\".",
            &[],
        ),
        // 8 x 23 7/8 + 7 x 1/8 = 191 7/8
        (
            "judge: stick; with stick 16'-0\"; with pieces 8; with piece 1'-11 7/8\"?",
            "Yes: it takes 15'-11 7/8\" = 191 7/8\", 1/8\" less than",
            &[],
        ),
        ("judge: stick; with stick 8'-0\"; with piece 8'-0\"?", "Yes: it takes just 8'-0\" = 96\".", &[]),
        // 3 of 30 a stick of 96; 10 pieces are 4 sticks.
        (
            "judge: sticks; with sticks 3; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "No: it takes 4 sticks, 1 more than 3.",
            &[("needed", "4"), ("apart", "1"), ("sticks", "3")],
        ),
        (
            "judge: sticks; with sticks 4; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "Yes: it takes just 4 sticks.",
            &[],
        ),
        (
            "judge: sticks; with sticks 6; with stick 8'-0\"; with piece 2'-6\"; with pieces 10?",
            "Yes: it takes 4 sticks, 2 less than 6.",
            &[],
        ),
        (
            "judge: pieces a stick; with pieces a stick 4; with stick 8'-0\"; with piece 2'-6\"?",
            "No: it comes to 3 pieces a stick, 1 less than 4.",
            &[],
        ),
        (
            "judge: pieces a stick; with pieces a stick 3; with stick 8'-0\"; with piece 2'-6\"?",
            "Yes: it comes to just 3 pieces a stick.",
            &[],
        ),
        // 3 1/2 + 1 1/2 + 33 1/2 + 1 1/2 + 1 = 41
        (
            "judge: height to the top; with height to the top 3'-6\"; with gap under 3 1/2\"; with bottom rail, top to bottom 1 1/2\"; with balusters' length 2'-9 1/2\"; with top rail, top to bottom 1 1/2\"; with cap on the posts 1\"?",
            "No: it comes to 41\", 1\" less than 42\".",
            &[("needed", "41")],
        ),
        // An inch more of them is just it.
        (
            "judge: height to the top; with height to the top 3'-6\"; with gap under 3 1/2\"; with bottom rail, top to bottom 1 1/2\"; with balusters' length 2'-10 1/2\"; with top rail, top to bottom 1 1/2\"; with cap on the posts 1\"?",
            "Yes: it comes to just 42\".",
            &[],
        ),
        // High enough for what was asked and under the 36 of a guard: 3 + 1 1/2 + 28 + 1 1/2 = 34.
        (
            "judge: height to the top; with height to the top 2'-9\"; with gap under 3\"; with bottom rail, top to bottom 1 1/2\"; with balusters' length 2'-4\"; with top rail, top to bottom 1 1/2\"?",
            "No: 33\" is under the 36\" limit for the height to the top",
            &[],
        ),
        // 3 x 60 + 4 x 3 1/2 = 194
        (
            "judge: run, out to out; with run, out to out 16'-0\"; with bays 3; with bay 5'-0\"?",
            "No: it takes 16'-2\" = 194\", 2\" more than 16'-0\" = 192\".",
            &[("needed", "194")],
        ),
        (
            "judge: run, out to out; with run, out to out 16'-3\"; with bays 3; with bay 5'-0\"?",
            "Yes: it takes 16'-2\" = 194\", 1\" less than 16'-3\" = 195\".",
            &[],
        ),
        // 1 + 9 1/4
        (
            "judge: leg; with leg 10\"; with decking 1\"; with rim height 9 1/4\"?",
            "No: it takes 10 1/4\", 1/4\" more than 10\".",
            &[],
        ),
        (
            "judge: leg; with leg 10 1/2\"; with decking 1\"; with rim height 9 1/4\"?",
            "Yes: it takes 10 1/4\", 1/4\" less than 10 1/2\".",
            &[],
        ),
        // 36 + 10 1/4 = 46 1/4
        (
            "judge: posts' length; with posts' length 4'-0\"; with height to the top 3'-0\"; with leg 10 1/4\"?",
            "Yes: it takes 46 1/4\", 1 3/4\" less than 4'-0\" = 48\".",
            &[],
        ),
        (
            "judge: posts' length; with posts' length 3'-10\"; with height to the top 3'-0\"; with leg 10 1/4\"?",
            "No: it takes 46 1/4\", 1/4\" more than 46\".",
            &[],
        ),
        // 42 - 2
        (
            "judge: leaf's height; with leaf's height 3'-5\"; with height to the top 3'-6\"; with gap under 2\"?",
            "No: it comes to 40\", 1\" less than 41\".",
            &[],
        ),
        (
            "judge: leaf's height; with leaf's height 3'-4\"; with height to the top 3'-6\"; with gap under 2\"?",
            "Yes: it comes to just 40\".",
            &[],
        ),
        // Nine leave 4.45 of 58, not the 3 1/2 told beside them.
        (
            "judge: gap; with gap 3 1/2\"; with bay 4'-10\"; with balusters 9?",
            "No: it comes to 4 7/16\" (exactly 4 9/20\"), 15/16\" (exactly 19/20\") more than 3 1/2\".",
            &[],
        ),
        // (60 - 11 x 1 1/2) / 12 = 3 5/8: as told, and under the limit.
        (
            "judge: gap; with gap 3 5/8\"; with bay 5'-0\"; with balusters 11?",
            "Yes: 3 5/8\" is under the 4\" gap limit",
            &[],
        ),
        // Enough for what?
        ("judge: stick; with stick 16'-0\"?", "For the stick I still need the run.", &[]),
        ("judge: packs; with packs 3?", "For the packs I still need the balusters and the pieces in a pack.", &[]),
        // 2x4s flat and 5/4 on top: the same 41.
        (
            "judge: height to the top; with height to the top 3'-6\"; with gap under 3 1/2\"; with balusters' length 2'-9 1/2\"; if top rail: 2x4; if bottom rail: 2x4; if top rail lies: flat; if bottom rail lies: flat; if cap: 5/4x6?",
            "No: it comes to 41\", 1\" less than 42\".",
            &[],
        ),
        // A cap or balusters alone say nothing of how high it comes, and 42 being enough for a guard is no word on it.
        (
            "judge: height to the top; with height to the top 3'-6\"; with cap on the posts 1\"?",
            "I can't work out the height to the top from that.",
            &[],
        ),
        (
            "judge: height to the top; with height to the top 3'-6\"; with balusters' length 2'-9 1/2\"?",
            "I can't work out the height to the top from that.",
            &[],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
    // 16 ft on 4x4s is 3 bays and 4 posts; what is told of the whole job is as good as what the line gives.
    let told = ["posts 4x4", "16 ft out to out from end post to end post"];
    let rows: &[Case] = &[
        ("judge: posts; with posts 4?", "Yes: it takes just 4 posts.", &[]),
        ("judge: posts; with posts 6?", "Yes: it takes 4 posts, 2 less than 6.", &[]),
    ];
    rows.iter().for_each(|case| holds(&told, case));
}

/// Two values of one row: the largest over the smallest, below, at and past what is allowed, and each by its own limit.
#[test]
fn a_word_on_two_values_of_a_row_is_how_far_they_are_apart() {
    let rows: &[Case] = &[
        (
            "judge: riser; with riser 7 1/2\"; with riser 7 1/8\"?",
            "Yes: 3/8\" between 7 1/2\" and 7 1/8\" is just the 3/8\" limit (IRC R311.7.5.1",
            &[("apart", "0.375"), ("limit", "0.375")],
        ),
        (
            "judge: riser; with riser 7 1/16\"; with riser 7 1/2\"?",
            "No: 7/16\" between 7 1/2\" and 7 1/16\" is over the 3/8\" limit (IRC",
            &[("apart", "0.4375")],
        ),
        (
            "judge: riser; with riser 7 1/2\"; with riser 7 1/4\"; with riser 7 3/8\"?",
            "Yes: 1/4\" between 7 1/2\" and 7 1/4\" is under",
            &[],
        ),
        (
            "judge: riser; with riser 7 13/16\"; with riser 7 1/2\"?",
            "No: 7 13/16\" is over the 7 3/4\" riser limit",
            &[],
        ),
        (
            "judge: riser; with riser 7 1/2\"; with riser 7 13/16\"?",
            "No: 7 13/16\" is over the 7 3/4\" riser limit",
            &[],
        ),
        ("judge: tread; with tread 10 1/2\"; with tread 10\"?", "No: 1/2\" between 10 1/2\" and 10\" is over", &[]),
        ("judge: tread; with tread 10 1/4\"; with tread 10\"?", "Yes: 1/4\" between 10 1/4\" and 10\" is under", &[]),
        (
            "judge: tread; with tread 10 1/4\"; with tread 9 15/16\"?",
            "No: 9 15/16\" is under the 10\" tread limit",
            &[],
        ),
        (
            "judge: leaf's diagonal; with leaf's diagonal 4'-4\"; with leaf's diagonal 4'-4 1/4\"?",
            "No: out of square, 4'-4 1/4\" = 52 1/4\" is 1/4\" longer than 4'-4\" = 52\".",
            &[("apart", "0.25")],
        ),
        (
            "judge: leaf's diagonal; with leaf's diagonal 4'-4\"; with leaf's diagonal 4'-4\"?",
            "Yes: square, both 4'-4\" = 52\".",
            &[("apart", "0")],
        ),
        // Each bay by itself, whichever was said last: 72 and a post are past 72, 60 and one are not.
        ("judge: bay; with bay 5'-0\"; with bay 6'-0\"?", "No: with the bay 6'-0\" = 72\", 6'-3 1/2\"", &[]),
        ("judge: bay; with bay 6'-0\"; with bay 5'-0\"?", "No: with the bay 6'-0\" = 72\", 6'-3 1/2\"", &[]),
        // All pass: the one with least room.
        ("judge: bay; with bay 5'-6\"; with bay 5'-0\"?", "Yes: with the bay 5'-6\" = 66\", 5'-9 1/2\"", &[]),
        ("judge: gap; with gap 4 1/2\"; with gap 3\"?", "No: 4 1/2\" is over", &[]),
        // Nine leave 4.65 of 60 and (48 - 13 1/2) / 10 = 3.45 of 48.
        (
            "judge: balusters; with balusters 9; with bay 5'-0\"; with bay 4'-0\"?",
            "No: with 9 balusters, 4 5/8\" (exactly 4 13/20\") is over",
            &[],
        ),
        // 144 and 192 have a diagonal of 240: 3, 4, 5.
        (
            "judge: deck's diagonal; with deck's diagonal 20'-0\"; with deck's diagonal 20'-1\"?",
            "No: out of square, 20'-1\" = 241\" is 1\" longer than 20'-0\" = 240\".",
            &[],
        ),
        (
            "judge: deck's diagonal; with deck's diagonal 20'-1\"; with deck along the house 16'-0\"; with deck out from the house 12'-0\"?",
            "No: it comes to 20'-0\" = 240\", 1\" less than 20'-1\" = 241\".",
            &[],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

/// A length or a count that nothing is held to and nothing stands beside is said, and never passed.
#[test]
fn a_figure_of_the_job_that_nothing_limits_is_said() {
    let told = ["posts 6x6", "16 ft out to out from end post to end post"];
    let rows: &[Case] = &[
        ("judge: guard in all?", "The guard in all is 16'-0\" = 192\": no rule I know limits it.", &[]),
        ("judge: rails?", "6 rails: no rule I know limits it.", &[]),
        ("judge: kerf; with kerf 1/8\"?", "The kerf is 1/8\": no rule I know limits it.", &[]),
    ];
    rows.iter().for_each(|case| holds(&told, case));
}

/// What the line gives and what the job is laid out as do not mix.
#[test]
fn a_line_of_another_run_is_answered_by_the_line() {
    let told = ["posts 6x6", "16 ft out to out from end post to end post"];
    let rows: &[Case] = &[
        // (240 - 5 1/2) / 2 = 117 1/4 on center, 111 3/4 clear; 20 balusters: (111 3/4 - 30) / 21 = 3 25/28.
        (
            "figure: gap; with bays 2; with run, out to out 20'-0\"?",
            "The gap is 3 7/8\" (exactly 3 25/28\").",
            &[("clear", "111.75")],
        ),
        // 234 1/2 in four of 58 5/8.
        ("figure: posts; with run, out to out 20'-0\"?", "5 posts, 4 bays", &[("posts_count", "5")]),
        // The bay is not the job's.
        ("figure: rail's sag; with bay 5'-0\"?", "I can't work out the rail's sag from that.", &[]),
        ("figure: balusters in all; with bay 5'-0\"?", "For the balusters in all I still need the bays.", &[]),
        ("figure: bays; with bay 5'-0\"?", "For the bays I still need the run", &[]),
        // 9 in the job's 56 2/3: (56 2/3 - 13 1/2) / 10 = 4 19/60.
        ("figure: gap; with balusters 9?", "The gap is 4 5/16\" (exactly 4 19/60\").", &[]),
    ];
    rows.iter().for_each(|case| holds(&told, case));
}

/// What was told before for the question to come is given in it, and goes before what an engine makes of the whole job.
#[test]
fn what_was_told_for_the_question_to_come_counts_as_given_in_it() {
    let rows: &[(&[&str], Case)] = &[
        // 58 over three a stick: 19.3, so 20.
        (
            &["told: balusters 62", "told: pieces a stick 3", "told: balusters 58"],
            ("figure: sticks?", "20 sticks", &[("sticks", "20")]),
        ),
        // 96 at 3.40; what the line gives goes before what was told.
        (
            &["told: balusters 96", "told: price of one 1 17/20"],
            ("figure: cost; with price of one 3 2/5?", "The cost is 326.40.", &[]),
        ),
        // (144 + 1/8) / (46 1/4 + 1/8) = 3.1: three a stick; nine posts: 3 sticks.
        (
            &["told: posts 9", "posts cut: 46 1/4\"", "told: stick 8'-0\""],
            ("figure: sticks; with stick 12'-0\"?", "3 sticks", &[("sticks", "3")]),
        ),
        // 42 on the level at 7 1/2 in 10 1/2: 30.
        (
            &["stairs: rise 7 1/2\"; stairs: tread 10 1/2\"", "told: level distance along the stairs 3'-6\""],
            ("figure: drop of the rail over it?", "The drop of the rail over it is 30\".", &[]),
        ),
        // 200 x (36 + 1 + 2 + 3 1/4) / 3 1/4 = 2,600; the bolts of the rim as it stands would be 3 1/2 apart at most.
        (
            &[
                "rim: 1 1/2\" thick",
                "told: bolts apart 3 1/4\"",
                "told: edge distance 2\"",
                "decking: 1\" thick",
                "height: 36\" to the top",
            ],
            ("figure: pull on the upper bolt?", "The pull on the upper bolt is 2,600 lb.", &[]),
        ),
        // 10 1/4 with the 1 in. decking that is taken; a quarter more with 1 1/4.
        (
            &["told: notch, top to bottom 10 1/4\""],
            ("figure: notch, top to bottom; with decking 1 1/4\"?", "The notch, top to bottom, is 10 1/2\".", &[]),
        ),
    ];
    rows.iter().for_each(|(told, case)| holds(told, case));
}

/// What was told of a row is no figure that it comes to beside another one of it.
#[test]
fn a_row_told_before_is_not_held_beside_itself() {
    // 39 is over the 38 that a handrail may be high, whatever it was.
    let last = told_then(&["told: handrail 2'-9\"", "judge: handrail; with handrail 3'-3\"?"]);
    assert!(first(&last).starts_with("No: 39\" is over the 38\" handrail limit"), "{}", last.text());
}

/// A 2x6 is 1 1/2 by 5 1/2: (5.5 / 1.5)^2 = 13.44 times the sag; the width times the depth cubed is the second moment of area x 12.
#[test]
fn a_board_on_edge_is_held_beside_itself_lying_flat() {
    let last = told_then(&["figure: rail's sag; if top rail: 2x6; if top rail lies: on edge; if top rail lies: flat?"]);
    assert!(first(&last).starts_with("It sags 13.44 times as much lying flat as on edge"), "{}", last.text());
    assert_eq!(last.reply.status, Status::Answered);
}

/// A 6x6 is 5 1/2: a notch of 5 1/2 leaves nothing of it, and one of 5 a half inch. Without a size told nobody knows.
#[test]
fn a_notch_that_leaves_nothing_is_not_taken() {
    let status = |line: &str| told_then(&[line]).reply.status;
    assert_eq!(status("posts: 6x6; notch: 5 1/2\" deep"), Status::Refused);
    assert_eq!(status("posts: 6x6; notch: 5\" deep"), Status::Told);
    assert_eq!(status("notch: 5 1/2\" deep"), Status::Told);
    let last = told_then(&["posts: 6x6; notch: 5 1/2\" deep"]);
    assert!(first(&last).starts_with("Nothing would be left"), "{}", last.text());
    assert_eq!(last.job(), last.was);
}

/// 1,800 lb hold for a guard of 36 in.: one of 40 pulls 40/36 of that, 2,000 lb.
#[test]
fn a_hold_down_for_36_inches_is_not_enough_for_a_higher_guard() {
    let ask = "judge: pull the hold-down takes; with pull the hold-down takes 1800?";
    let last = told_then(&["height: 40\" to the top", ask]);
    assert!(first(&last).starts_with("No: 1,800 lb is under the 2,000 lb"), "{}", last.text());
    assert!(first(&told_then(&[ask])).starts_with("Yes"));
    assert!(first(&told_then(&["height: 36\" to the top", ask])).starts_with("Yes"));
}

/// A 30 1/4 in. gate less 1/2 and 3/4 at its gaps is 29, wherever its run is laid out or not; two lots of posts are counted together.
#[test]
fn what_was_told_of_a_gate_is_enough_for_its_leaf_and_counts_add_up_in_the_values() {
    let last = told_then(&[
        "run 1: to stair head, gate at the to-end 2'-6 1/4\" wide",
        "told: hinge gap 1/2\"",
        "told: latch gap 3/4\"",
        "figure: gate leaf?",
    ]);
    assert_eq!(last.json()["values"]["result"]["in"], "29", "{}", last.text());
    let last = told_then(&[
        "figure: sticks; with posts 3; with posts' length 4'-0\"; with posts 5; with posts' length 3'-0\"; with stick 8'-0\"?",
    ]);
    assert_eq!(last.json()["values"]["posts_count"], 8, "{}", last.json()["values"]);
}

/// Ten bays of all the guard on three sides are not ten on each: nothing follows for one of them.
#[test]
fn bays_of_all_the_guard_are_not_those_of_one_side() {
    let last =
        told_then(&["figure: bay, on center; with guard in all 50'-0\"; with sides with guard 3; with bays 10?"]);
    assert_eq!(last.reply.status, Status::Asks, "{}", last.text());
    // All alike: 48 over 3 is 16.
    let last = told_then(&["figure: run; with guard in all 48'-0\"; with sides with guard 3?"]);
    assert_eq!(last.json()["values"]["result"]["in"], "192");
}

/// Goods by count and price add up: 14 x 12.80 = 179.20 and 26 x 6.45 = 167.70 are 346.90. Sticks of two lengths are alternatives.
#[test]
fn goods_by_count_and_price_add_up() {
    let last = told_then(&[
        "figure: cost; with sticks 14; with price of one 12 4/5; with sticks 26; with price of one 6 9/20?",
    ]);
    assert!(first(&last).contains("the cost is 346.90 in all"), "{}", last.text());
}

/// What a question says anew is answered beside what it was by the job: a 30 in. gate in the middle of 10 ft leaves 45 on each side, one of 38
/// leaves 41. Where nobody knows the figure itself, by how much it moves.
#[test]
fn what_is_supposed_is_said_beside_what_was_told() {
    let last = told_then(&[
        "run 1: 10'-0\" out to out, gate in the middle 2'-6\" wide",
        "figure: guard beside the stairs or the gate; with gate opening 3'-2\"?",
    ]);
    assert!(last.text().contains("That is 4\" less than the 45\" as told."), "{}", last.text());
    assert_eq!(last.json()["values"]["as_told"]["in"], "45");
    // Of the balusters' length nothing is told: it grows as the rail does.
    let last = told_then(&["height: 38\" to the top", "figure: balusters' length; with height to the top 3'-4 1/2\"?"]);
    assert_eq!(last.reply.status, Status::Answered);
    assert!(
        first(&last).starts_with("All else the same, the balusters' length comes to 2 1/2\" more than it was"),
        "{}",
        last.text()
    );
    // What had no part, and how a row stood before, are among the values.
    let last = told_then(&["figure: gap; with bay 4'-10\"; with balusters 9; with kerf 1/8\"?"]);
    assert_eq!(last.json()["values"]["kerf"]["in"], "0.125", "{}", last.json()["values"]);
    let last = told_then(&[
        "figure: balusters' length; with height to the top 3'-2\"; with balusters' length 2'-6\"; with height to the top 3'-4\"?",
    ]);
    let values = &last.json()["values"];
    assert_eq!([&values["with_first"]["in"], &values["with_second"]["in"]], ["38", "40"], "{values}");
}

/// A figure that fails a limit brings it, though no word was asked for.
#[test]
fn a_figure_that_fails_its_limit_warns() {
    // (68 1/2 - 11 x 1 1/2) / 12 = 4 1/3: a 4 in. ball passes. (68 1/2 - 18) / 13 = 3 23/26: none does.
    let gap = |n: u8| told_then(&[&format!("figure: gap; with bay 5'-8 1/2\"; with balusters {n}?")]).reply.findings;
    assert_eq!(gap(11).iter().map(|f| f.rule).collect::<Vec<_>>(), ["level-gap"]);
    assert_eq!(gap(12), []);
    // 42 less two 4x4s is 35, under the 36 a stair is wide at the least.
    let clear = told_then(&["figure: stairs, clear between the posts; with stair opening 3'-6\"; if posts: 4x4?"]);
    assert!(clear.reply.findings.iter().any(|f| f.rule == "stair-width"), "{}", clear.text());
}

/// Two values of two rows go together, one with the other.
#[test]
fn a_row_given_with_another_is_answered_pair_by_pair() {
    // 14.85 over 12 ft is 1.2375 a foot, 21.10 over 16 ft 1.31875.
    let asked = "figure: price of a foot; with stick 12'-0\"; with price of one 14 17/20; with stick 16'-0\"; with price of one 21 1/10?";
    let last = told_then(&[asked]);
    assert!(first(&last).starts_with("The price of a foot is 1.24, with the stick 12'-0\""), "{}", last.text());
    // Posts of two lengths share their sticks: 52, 1/8 and 40 1/2 are 92 5/8 of 96, so four sticks give four of each, and three the other
    // five of 40 1/2, two to a stick. A stick of 4 ft gives none of 52: neither count alone is the answer.
    let asked = |stick: &str| {
        told_then(&[&format!(
            "figure: sticks; with posts 9; with posts' length 3'-4 1/2\"; with posts 4; with posts' length 4'-4\"; with stick {stick}?"
        )])
    };
    assert!(first(&asked("8'-0\"")).starts_with("7 sticks"), "{}", asked("8'-0\"").text());
    assert_eq!(asked("4'-0\"").reply.status, Status::Asks);
}

/// A share is said in parts of a hundred too, and stock in feet.
#[test]
fn a_figure_stands_under_its_other_unit_too() {
    let value = |asked: &str, name: &str| told_then(&[asked]).json()["values"][name].clone();
    // 1 - (2 / 5 1/2)^2 = 105/121 = 86.777 %.
    let percent =
        value("figure: share of the post left, notched over a corner; with notch 2\"; if posts: 6x6?", "percent");
    assert!(percent.to_string().trim_matches('"').starts_with("86.77"), "{percent}");
    // 27 of 33 in. are 891 in.: 74 1/4 ft.
    let feet = value("figure: length of stock in all; with balusters 27; with balusters' length 2'-9\"?", "feet");
    assert_eq!(feet.to_string(), "74.25");
}

#[test]
fn the_guard_on_both_sides_of_an_opening_is_said_where_they_differ() {
    let run =
        ["run 1: called front, 16'-0\" out to out, from corner, to corner, stairs 4'-0\" wide 2'-0\" from the left"];
    // 16 ft less 4 ft of stairs and 2 ft on their left leaves 10 ft; with 5 ft of stairs 9 ft.
    let asked: [Case; 2] = [
        (
            "figure: guard beside the stairs or the gate?",
            "24\" on the left of it, 10'-0\" = 120\" on the right",
            &[("left", "24"), ("right", "120")],
        ),
        (
            "figure: guard beside the stairs or the gate; with stair opening 5'-0\"?",
            "24\" on the left of it, 9'-0\" = 108\" on the right",
            &[("left", "24"), ("right", "108")],
        ),
    ];
    asked.iter().for_each(|case| holds(&run, case));
}

/// An opening of a run given anew is laid into it; so are its posts, and both are kept so.
#[test]
fn what_is_given_of_the_one_run_is_laid_into_it() {
    // (192 - 60) / 2 = 66 on each side of stairs in the middle.
    let run = ["run 1: called front, 16'-0\" out to out, stairs 4'-0\" wide in the middle"];
    holds(
        &run,
        &(
            "figure: guard beside the stairs or the gate; with stair opening 5'-0\"?",
            "The guard beside the stairs or the gate is 5'-6\" = 66\"",
            &[("width", "60")],
        ),
    );
    // 216 center to center in four: 54; three posts between the ends make the same four bays.
    let run = "run 1: 18'-0\" centre to centre, 3 bays";
    let mut session = Session::new();
    for line in [run, "figure: bay; with bays 4?", "keep it"] {
        let (delta, _) = step(&session, line);
        session.apply(delta);
    }
    assert_eq!(session.job().runs[0].bays, Some(4));
    assert!(session.job().figures.is_empty());
    let between = told_then(&[run, "figure: bay, on center; with posts between the ends 3?"]);
    assert!(first(&between).starts_with("4'-6\" = 54\" on center"), "{}", between.text());
}

#[test]
fn a_guard_that_may_be_left_off_is_a_yes() {
    let held = "(IRC R312.1.1 (2018, 2021); R321.1.1 (2024)).";
    let rows = [
        (
            "without: drop within 36 in. of the edge; with height above ground 1'-10\"?",
            "Yes: 22\" is not more than 30\", so no guard is required",
        ),
        (
            "without: drop within 36 in. of the edge; with height above ground 3'-10\"?",
            "No: 46\" is more than 30\", so a guard is required",
        ),
        (
            "judge: drop within 36 in. of the edge; with height above ground 3'-10\"?",
            "Yes: 46\" is more than 30\", so a guard is required",
        ),
    ];
    for (line, want) in rows {
        assert_eq!(first(&told_then(&[line])), format!("{want} {held}"), "{line}");
    }
    // Of two spots each has its own word, the one named first before the other.
    let both =
        "without: drop within 36 in. of the edge; with height above ground 1'-6\"; with height above ground 3'-10\"?";
    let text = told_then(&[both]).text();
    let [low, high] = ["Yes: 18\"", "No: 46\""].map(|w| text.find(w));
    assert!(low == Some(0) && high > low, "{text}");
}

#[test]
fn what_a_line_changes_is_judged_as_it_becomes() {
    let rows: &[Case] = &[
        // 36 less an inch of tiles.
        (
            "judge: height to the top; with height to the top 3'-0\"; with laid over the decking 1\"?",
            "No: 35\" is under the 36\" limit for the height to the top (IRC R312.1.2 (2018, 2021); R321.1.2 (2024)).",
            &[("height_top", "35")],
        ),
        // 69 1/4 + 3 1/2 = 72 3/4: 3/4 past 72.
        (
            "fault: bay, on center; with bay 5'-9 1/4\"; if posts: 4x4?",
            "Yes, 6'-0 3/4\" = 72 3/4\" is over the 6'-0\" = 72\" limit on center (AWC DCA 6 (2012/2015), guard pages (from memory, not checked)). That is 3/4\" past it, with posts 4x4.",
            &[("past_limit", "0.75")],
        ),
    ];
    rows.iter().for_each(|case| holds(&[], case));
}

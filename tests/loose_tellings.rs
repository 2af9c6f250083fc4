//! Loose tellings and sums: a talk that goes on from what was offered, a deck told in one line, premises for what is asked next.
//!
//! The lines here are none of the corpus the scores were learned from; the figures are worked by hand.

use railhand::grammar::canon;
use railhand::job::Job;
use railhand::measure::Length;
use railhand::reply::{Reply, Status};
use railhand::session::{Session, meant, step};

fn say(session: &mut Session, line: &str) -> Reply {
    let (delta, reply) = step(session, line);
    session.apply(delta);
    reply
}

const OFFERED: &str = "bottom rail stands 3 1/4 off the boards and pickets are 28 long";

#[test]
fn a_likely_telling_is_taken_as_meant_where_the_talk_goes_on() {
    let mut session = Session::new();
    let reply = say(&mut session, OFFERED);
    assert_eq!(reply.status, Status::Asks);
    assert_eq!(session.job(), &Job::default());
    let taken = meant(&session, "figure: gap under?").expect("it goes on");
    assert_eq!(taken.phrase, "gap under: 3 1/4\"; balusters cut: 28\"");
    session.apply(taken.delta.clone());
    let reply = taken.named_in(say(&mut session, "figure: gap under?"));
    assert_eq!(reply.values.result.and_then(|f| f.as_length()), Length::new(13, 4));
    assert!(reply.lines.iter().any(|l| format!("{l:?}").contains("Took that as")), "it is named");
    // One undo takes it back.
    say(&mut session, "undo");
    assert!(session.told_phrases().is_empty());
}

#[test]
fn an_answer_a_taking_back_and_the_same_again_take_nothing_as_meant() {
    for line in ["1", "yes", "no", "no, 3 1/2", "undo", "gap under: 3 1/4\"", ""] {
        let mut session = Session::new();
        say(&mut session, OFFERED);
        assert!(meant(&session, line).is_none(), "{line}");
    }
    assert!(meant(&Session::new(), "figure: gap under?").is_none());
}

/// 12'-6" - 3 1/2" = 146 1/2"; 57 3/4" / 11 = 5 1/4".
#[test]
fn a_sum_is_made_of_loose_words() {
    let rows: [(&str, Option<Length>); 2] = [
        ("take three and a half off of twelve foot six what have i got left", Length::new(293, 2)),
        ("what do i get if i cut 57 3/4 into eleven equal pieces", Length::new(21, 4)),
    ];
    for (line, want) in rows {
        let mut session = Session::new();
        let mut reply = say(&mut session, line);
        if reply.status == Status::Asks {
            assert!(reply.choices[0].starts_with("sum: "), "{line}: {:?}", reply.choices);
            reply = say(&mut session, "1");
        }
        assert_eq!(reply.values.result.and_then(|f| f.as_length()), want, "{line}");
        assert_eq!(session.job(), &Job::default(), "{line}");
    }
}

/// "One" behind "every", "each" or "this" stands for a thing: no limit of a foot, no length of an inch.
#[test]
fn what_stands_for_a_thing_is_no_measure() {
    for line in [
        "three bays, every one 67 1/4 in the clear, 4x4s, corner to corner",
        "posts every one",
        "bays each one 5 foot",
        "center to center of this one",
    ] {
        let mut session = Session::new();
        let reply = say(&mut session, line);
        let said = format!("{} {:?}", session.told_phrases().join("; "), reply.choices);
        for wrong in ["on centre: 1'-0", "1\\\"", "centre: 1"] {
            assert!(!said.contains(wrong), "{line}: {said}");
        }
    }
    // 3 x 67 1/4 + 4 x 3 1/2 = 215 3/4
    let mut session = Session::new();
    say(&mut session, "three bays, every one 67 1/4 in the clear, 4x4s, corner to corner");
    let told = session.told_phrases().join("; ");
    assert!(told.contains("17'-11 3/4\" out to out"), "{told}");
}

/// What is told for the next question comes before the layout's own choice. 144 from post to wall takes its posts, 3 1/2 each: of 4
/// posts 3 bays, (144 - 4 x 3 1/2) / 3 = 43 1/3, on center 46 5/6. What the layout answers alone names it as not used.
#[test]
fn what_was_told_for_the_next_question_comes_before_the_layout() {
    let answer = |question: &str| {
        let mut session = Session::new();
        for line in ["given: posts 4", "run 1: 12'-0\" out to out, from corner, to house"] {
            say(&mut session, line);
        }
        say(&mut session, question)
    };
    for question in ["bay on center?", "figure: bay, on center?"] {
        let reply = answer(question);
        assert_eq!(reply.values.result.as_ref().and_then(|f| f.as_length()), Length::new(281, 6), "{question}");
        assert_eq!(reply.readback.as_deref(), Some("figure: bay, on center; with posts 4?"), "{question}");
    }
    let reply = answer("bays?");
    assert!(format!("{:?}", reply.lines[0]).contains("posts 4"), "{:?}", reply.lines);
}

/// A deck at a house has its guard on three sides, and stairs stand in the side they are said of.
#[test]
fn a_deck_told_loosely_has_its_sides_and_their_stairs() {
    let mut session = Session::new();
    say(&mut session, "the deck is 20 along the house and 12 out, 4 foot stairs in the middle of the front");
    let told = session.told_phrases().join("; ");
    for part in [
        "deck: 20'-0\" along the house",
        "deck: 12'-0\" out",
        "called left",
        "called front",
        "called right",
        "stairs 4'-0\" wide in the middle",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
}

#[test]
fn premises_are_a_phrase_and_change_nothing_told() {
    for phrase in ["given: posts 5; run, out to out 26'-0\"; if posts: 4x4", "given: bay 58\"", "given: if posts: 6x6"]
    {
        let phrase = phrase.replace("58\"", "4'-10\"");
        let act = canon::read(&phrase).unwrap_or_else(|| panic!("{phrase}"));
        assert_eq!(canon::write(&act), phrase);
        let mut session = Session::new();
        let reply = say(&mut session, &phrase);
        assert_eq!(reply.status, Status::Asks, "{phrase}");
        assert_eq!(session.job(), &Job::default(), "{phrase}");
    }
    assert_eq!(canon::read("given: "), None);
}

#[test]
fn a_figure_beside_no_word_of_its_row_tells_nothing() {
    for line in ["asdf ;;; 12x", "frobly 9", "zzz 3 1/2 zzz"] {
        let mut session = Session::new();
        assert_ne!(say(&mut session, line).status, Status::Told, "{line}");
        assert_eq!(session.job(), &Job::default(), "{line}");
    }
}

/// "Right end of the front" is a place: premises that cannot hold it are not taken as meant, however the talk goes on.
#[test]
fn a_place_that_no_premise_holds_is_not_passed_over() {
    for line in ["stairs 3 ft, right end of the front tight to the corner", "4 ft stairs way over on the right end"] {
        let mut session = Session::new();
        say(&mut session, "deck: 16'-0\" along the house; deck: 10'-0\" out");
        say(&mut session, line);
        let taken = meant(&session, "figure: gap under?");
        assert!(taken.is_none_or(|m| !m.phrase.starts_with("given: ")), "{line}");
    }
}

/// What is told and what is held for the next question are one phrase, both said back; the job keeps what is told.
#[test]
fn what_is_told_and_what_is_held_are_said_back_in_one_phrase() {
    let phrase = "run 1: 12'-0\" out to out, from corner, to corner; given: posts 5; if posts: 4x4";
    let act = canon::read(phrase).expect("a plain phrase");
    assert_eq!(canon::write(&act), phrase);
    let mut session = Session::new();
    let reply = say(&mut session, phrase);
    assert_eq!(reply.status, Status::Told);
    assert_eq!(reply.readback.as_deref(), Some(phrase));
    assert_eq!(session.told_phrases(), ["run 1: 12'-0\" out to out, from corner, to corner"]);
    assert!(reply.lines.iter().any(|l| format!("{l:?}").contains("Not kept in the job")), "it is named");
    say(&mut session, "undo");
    assert!(session.told_phrases().is_empty());
}

/// One swap said twice is one swap: 16 along and 12 out.
#[test]
fn two_sizes_told_the_wrong_way_round_change_places_once() {
    for line in ["I said that backwards, swap them", "you have them the wrong way about", "swap them"] {
        let mut session = Session::new();
        say(&mut session, "deck: 12'-0\" along the house; deck: 16'-0\" out");
        say(&mut session, line);
        let job = session.job();
        assert_eq!([job.deck_along, job.deck_out], [Length::new(192, 1), Length::new(144, 1)], "{line}");
    }
}

//! Whole conversations: "why" with words of its own, "says who", and what-ifs that build on each
//! other. The arithmetic is done by hand; the wording is our own.

#[path = "common/talk.rs"]
mod talk;

use railhand::reply::{Reply, Status};
use railhand::rules::find;
use railhand::session::{Session, step};

/// Steps the lines; the last reply, its text on one line, and the session after.
fn talk(lines: &[&str]) -> (Reply, String, Session) {
    let last = talk::talk(lines);
    let text = last.text();
    (last.reply, text, last.session)
}

/// 144 less a 3 1/2 post at each end is 137; less one line post, over 2, is 66 3/4.
const RUN: &str = "run 12 ft between corner and stair head";

#[test]
fn the_chain_has_the_numbers_put_in() {
    let (_, text, _) = talk(&[RUN, "why?"]);
    for part in [
        "clear between posts 66 3/4\": (span 137\" less line posts 3 1/2\") over bays 2",
        "on centre 70 1/4\": clear 66 3/4\", half the post before 3 1/2\" and half the post after 3 1/2\"",
        "run 144\": told",
        "AWC DCA 6",
    ] {
        assert!(text.contains(part), "no {part} in {text}");
    }
    assert_eq!(talk(&[RUN, "show your working"]).1, text);
}

/// Each "why" answers its own question.
#[test]
fn each_why_has_its_own_answer() {
    let rows: [(&[&str], &[&str]); 12] = [
        // 120 and a 3 1/2 post is 123 1/2, 51 1/2 over 72; taken on centre 48 over.
        (
            &["why not 10 ft"],
            &["10'-3 1/2\" on centre: 4'-3 1/2\" over the most on centre, 6'-0\"", "4'-0\" over", "AWC DCA 6"],
        ),
        (
            &["why not 6 ft"],
            &["6'-3 1/2\" on centre: 3 1/2\" over", "6'-0\" on centre would be 5'-8 1/2\" clear: over no limit"],
        ),
        (
            &["why not 1 bay"],
            &["1 bay would be 11'-5\" clear, 11'-8 1/2\" on centre: 5'-8 1/2\" over the most on centre"],
        ),
        (&["why not 2 bays"], &["It has 2 bays as it stands"]),
        // (137 - 7) / 3 = 43 1/3.
        (&["why not 3 bays"], &["3 bays would be 3'-7 5/16\"", "over no limit", "2 is the fewest"]),
        (
            &["no more than 5 ft clear", "why not 2 bays"],
            &["5'-6 3/4\" clear", "6 3/4\" over the most clear, 5'-0\"", "told, the most clear"],
        ),
        (
            &["why a post at 6 ft"],
            &[
                "line post at 6'-0\": keeps the bays within the limit",
                "With one post fewer, 1 bay would be 11'-5\" clear",
            ],
        ),
        (&["why a post at 5 ft 2"], &["No post stands at 5'-2\": the nearest is the line post at 6'-0\""]),
        (&["why a post at 0"], &["The corner post at 1 3/4\": a corner is a fixed post"]),
        (
            &["why a post there"],
            &[
                "line post at 6'-0\"",
                "its centre 72\": start 3 1/2\" + bays before it 1 x (clear 66 3/4\" + line post 3 1/2\")",
            ],
        ),
        (&["where'd you get 66 3/4 from"], &["clear between posts 66 3/4\": (span 137\""]),
        (
            &["how many balusters", "why 13 balusters"],
            &["Not so many: 24 balusters", "the clear opening 66 3/4\"", "gap limit 4\"", "IRC R312.1.3"],
        ),
    ];
    let mut seen = Vec::new();
    for (asked, parts) in rows {
        let lines: Vec<&str> = [RUN].into_iter().chain(asked.iter().copied()).collect();
        let (reply, text, _) = talk(&lines);
        assert_eq!(reply.status, Status::Answered, "{asked:?}");
        for part in parts {
            assert!(text.contains(part), "{asked:?}: no {part} in {text}");
        }
        // The one line post there is stands at 6 ft: both ask of it.
        let same = asked == ["why a post there"];
        assert!(same || !seen.contains(&text), "{asked:?} has an answer of its own");
        seen.push(text);
    }
}

/// A figure nobody gave is not explained by another.
#[test]
fn a_figure_not_given_is_said_to_be_none() {
    let (_, text, _) = talk(&[RUN, "where'd you get 58 from"]);
    assert!(
        text.starts_with("That is not among the figures I gave last. Those were ") && text.contains("66 3/4\""),
        "{text}"
    );
    let (_, text, _) = talk(&["where'd you get 58 from"]);
    assert!(text.contains("I have given no figure yet"), "{text}");
    // A limit of so much is named as one.
    let (_, text, _) = talk(&["why 4 inches"]);
    assert!(text.contains("IRC R312.1.3") && text.contains("It is a limit"), "{text}");
}

/// The sources of the last answer, alone: its limits, its tables, what was found in it.
#[test]
fn says_who_gives_the_sources_alone() {
    let (_, text, _) = talk(&["is a 4x4 enough at 42", "says who"]);
    for part in ["IRC Table R301.5", "NDS Supplement Table 4A", "NDS Table 4.3.8", "AWC DCA 6"] {
        assert!(text.contains(part), "no {part} in {text}");
    }
    let (_, rule, _) = talk(&[RUN, "rule handrail-grip?", "says who"]);
    assert!(rule.contains("R311.7.8.5") && !rule.contains("DCA 6"), "the last answer's, not the layout's: {rule}");
}

/// What nobody has seen printed is said to be from memory, in the sources and in the chain.
#[test]
fn memory_is_called_memory() {
    let limit = railhand::limits::LIMITS.iter().find(|l| l.trust == railhand::limits::Trust::Memory);
    let asked = format!("rule {}?", limit.expect("some limit is from memory").id);
    for lines in [["actual size of 1x4", "says who"], ["actual size of 1x4", "why?"]] {
        assert!(talk(&lines).1.contains("PS 20 size table (from memory"), "1x4 is a row from memory");
    }
    for line in ["says who", "why?"] {
        let (_, text, _) = talk(&[&asked, line]);
        assert!(text.contains("from memory"), "{asked} {line}: {text}");
    }
}

/// A what-if is put beside what stands, changes nothing, and the next builds on it.
#[test]
fn what_ifs_build_on_each_other() {
    let run = "run 14 ft between corner and stair head";
    let (_, text, session) = talk(&[run, "what if 6x6 posts", "and in 4 bays?"]);
    // (168 - 2 x 5 1/2 - 3 x 5 1/2) / 4 = 35 1/8: four bays between 6x6 posts.
    assert!(
        text.contains("4 bays of 2'-11 1/8\" clear") && text.contains("As it stands: 3 bays of 4'-3 5/16\""),
        "{text}"
    );
    assert_eq!(session.job().settings.posts, Vec::new());
    let (_, _, kept) = talk(&[run, "what if 6x6 posts", "and in 4 bays?", "keep it"]);
    assert_eq!(kept.job().settings.posts.len(), 1);
    assert_eq!(kept.job().runs[0].bays, Some(4));
}

/// Other posts lay the run out anew, beside what stands: (168 - 4 x 5 1/2) / 3 = 48 2/3.
#[test]
fn bigger_posts_lay_it_out_anew() {
    let run = "run 14 ft between corner and stair head";
    let (_, text, session) = talk(&[run, "would a 6x6 let me"]);
    assert!(text.contains("Laid out so: 3 bays of 4'-0 11/16\" clear"), "{text}");
    assert!(text.contains("As it stands: 3 bays of 4'-3 5/16\" clear"), "{text}");
    assert_eq!(session.job().settings.posts, Vec::new());
    // 96 clear and a 6x6 is 101 1/2 on centre.
    let (reply, text, _) = talk(&[run, "could I do 8 ft bays", "would a 6x6 let me"]);
    assert!(text.contains("8'-0\" clear is 8'-5 1/2\" on centre, over the published 6'-0\""), "{text}");
    assert!(text.contains("Laid out so: 2 bays of 6'-3 3/4\" clear"), "(168 - 16 1/2) / 2: {text}");
    assert!(reply.findings.iter().any(|f| f.rule == "post-spacing-over-published"));
}

/// What a strength answer finds is a row of the registry, of that level and source.
#[test]
fn every_strength_finding_is_a_rule() {
    let asked: [&[&str]; 4] = [
        &["is a 4x4 enough at 42"],
        &["how bouncy is it at 8"],
        &["is the hold down enough at 42"],
        &[RUN, "how strong is what's left of the post"],
    ];
    let mut found = Vec::new();
    for lines in asked {
        for finding in talk(lines).0.findings {
            let rule = find(finding.rule).unwrap_or_else(|| panic!("{} is no rule", finding.rule));
            assert_eq!((rule.level, rule.limit.source), (finding.level, finding.source), "{}", rule.id);
            found.push(rule.id);
        }
    }
    for id in ["rail-sag-over-published", "post-bending-over-allowed", "hold-down-over-published"] {
        assert!(found.contains(&id), "{id}: {found:?}");
    }
}

/// A rail told is judged in the layout; one merely taken is not.
#[test]
fn a_rail_told_is_held_to_the_figure() {
    let of = |lines: &[&str]| talk(lines).0.findings.iter().any(|f| f.rule == "rail-sag-over-published");
    assert!(!of(&[RUN]));
    assert!(of(&[RUN, "top rail is a 2x4 laid flat"]));
    assert!(!of(&[RUN, "top rail is a 2x4 on edge"]));
}

/// A size nobody saws and a wood without values are refused with the known ones.
#[test]
fn what_is_not_known_is_refused_with_what_is() {
    for (line, says) in [
        ("how bouncy is it with a 2x9", "2x4, 2x6"),
        ("how bouncy is it in balsa", "southern pine"),
        ("it's balsa", "southern pine"),
    ] {
        let (reply, text, session) = talk(&[RUN, line]);
        assert_eq!(reply.status, Status::Refused, "{line}: {text}");
        assert!(text.contains(says), "{line}: {text}");
        assert_eq!(session.job().settings.timber.species, None);
    }
}

/// "could I do 3 bays" counts them; "8 ft bays" says how long they are.
#[test]
fn so_many_bays_or_bays_so_long() {
    let read = |line| talk(&[RUN, line]).0.readback.expect("it is read");
    assert_eq!(read("could I do 3 bays"), "suppose: run 1: 3 bays");
    assert_eq!(read("could I do 8 ft bays"), "strength of a bay stretched: 8'-0\" clear?");
}

/// The ball is tried in the clear gap: what a run is measured between has nothing to do with it.
#[test]
fn the_ball_is_tried_in_the_clear() {
    for line in ["does the ball test apply on center or clear", "is the ball checked clear or on centre"] {
        let (reply, text, _) = talk(&[line]);
        assert_eq!(reply.readback.as_deref(), Some("rule whole-opening?"), "{line}");
        assert!(text.starts_with("Gaps are measured clear"), "{text}");
    }
}

/// Every rule can be asked in every place told, whether it is a length, a load or words alone.
#[test]
fn each_rule_is_answered_in_each_place() {
    for place in ["canada", "wisconsin", "england", "australia", "chicago", "california"] {
        let mut session = Session::new();
        let (delta, _) = step(&session, &format!("place: {place}"));
        session.apply(delta);
        for limit in railhand::limits::LIMITS {
            let (_, reply) = step(&session, &format!("rule {}?", limit.id));
            assert_eq!(reply.status, Status::Answered, "{place}: {}", limit.id);
            assert!(!reply.lines.is_empty(), "{place}: {}", limit.id);
        }
    }
}

//! The trainer on a small corpus: what it reads, what it learns, and that it learns the same each time.

#![allow(clippy::unwrap_used, reason = "a test that cannot read its sample has failed")]

use railhand::grammar::scores::{How, Line, Scores};
use railhand_train::corpus::{Block, parse};
use railhand_train::folds::{folds, without};
use railhand_train::learn::{Labelled, labelled, part_of, train};
use railhand_train::outcome::Outcome;
use railhand_train::softmax::Recipe;
use railhand_train::table::coverage;

fn sample() -> Vec<Block> {
    parse(include_str!("sample/sample.txt")).unwrap()
}

fn recipe() -> Recipe {
    Recipe { least: 1, ..Recipe::default() }
}

fn trained(blocks: &[Block]) -> Vec<u8> {
    let lines = labelled(blocks);
    train(&lines.iter().collect::<Vec<&Labelled>>(), recipe(), 0)
}

#[test]
fn a_block_is_its_meanings_and_the_talks_that_say_them() {
    let blocks = sample();
    assert_eq!(blocks.len(), 6);
    assert_eq!(blocks[0].meanings[0].act, "ask");
    assert_eq!(blocks[0].meanings[0].wants, ["gap"]);
    assert_eq!(blocks[0].meanings[0].facts[1], ("baluster-width".to_owned(), "1 1/2\"".to_owned()));
    assert_eq!(blocks[2].talks[1], ["front: 12'", "4x4 posts"]);
    assert_eq!(blocks[4].meanings[0].facts[1].0, "run-length", "the thing in front is left off");
}

#[test]
fn a_block_that_cannot_be_read_is_named_by_its_line() {
    for (text, begins) in [
        ("tell\n> a || b\n", "2: 2 lines for 1"),
        ("shout\n> a\n", "1: no act"),
        ("tell | gap\n> a\n", "1: gap has no value"),
        ("tell\n\n", "2: a block wants"),
        ("tell\n> a\ntell\n", "3: a meaning after"),
    ] {
        let why = parse(text).unwrap_err();
        assert!(why.starts_with(begins), "{text:?}: {why}");
    }
}

/// The rows of the figures among the items.
fn figures<'a, S: AsRef<str>>(l: &Labelled, rows: &'a [S]) -> Vec<&'a str> {
    let of_values = l.line.items.iter().zip(rows).filter(|(item, _)| item.is_value());
    of_values.map(|(_, row)| row.as_ref()).collect()
}

/// The items of a line that were given a row: their words, the row, and how they fill it.
fn filled(text: &str) -> Vec<(String, String, String)> {
    let l = labelled(&parse(text).unwrap()).swap_remove(0);
    assert_eq!((l.aligned.lost, l.aligned.unsaid), (0, 0), "{:?}", l.aligned.left);
    let all = l.line.items.iter().zip(&l.aligned.rows).zip(&l.aligned.hows);
    let some = all.filter(|((_, row), _)| *row != "none");
    some.map(|((item, row), how)| (item.word().unwrap_or("").to_owned(), row.clone(), how.clone())).collect()
}

fn three(all: &[[&str; 3]]) -> Vec<(String, String, String)> {
    all.iter().map(|[a, b, c]| (a.to_string(), b.to_string(), c.to_string())).collect()
}

#[test]
fn places_choices_and_names_find_the_words_that_say_them() {
    let walk = "tell | run-from house; run-to corner; run-length 120\"\n> 10 ft off the siding to the outside corner\n";
    let right = [["", "run-length", "set"], ["house", "run-from", "set"], ["corner", "run-to", "set"]];
    assert_eq!(filled(walk), three(&right), "the lexicon says what siding is");
    let twice = "tell | run-from corner; run-to corner\n> corner to corner\n";
    assert_eq!(filled(twice), three(&[["corner", "run-from", "set"], ["corner", "run-to", "set"]]));
    let both = "tell | run-from corner; run-to corner\n> between the corners\n";
    assert_eq!(filled(both), three(&[["corner", "run-from+run-to", "set"]]), "one word says two rows");
    let named = "tell | run-name creek; run-length 96\"\n> the creek side is 8 ft\n";
    assert_eq!(filled(named), three(&[["creek", "run-name", "set"], ["", "run-length", "set"]]));
    let short = "tell | run-name front; run-length 96\"\n> F: 8 ft\n";
    assert_eq!(filled(short), three(&[["f", "run-name", "=front"], ["", "run-length", "set"]]));
}

#[test]
fn what_is_changed_denied_or_only_named_is_told_apart() {
    let more = "tell | run-length +6\"\n> six inches longer\n";
    assert_eq!(filled(more), three(&[["", "run-length", "add"]]));
    let less = "tell | post-count -1\n> one post fewer\n";
    assert_eq!(filled(less), three(&[["", "post-count", "less"]]));
    let no = "tell | gate-at none\n> there is no gate\n";
    assert_eq!(filled(no), three(&[["gate", "gate-at", "nothing"]]));
    let named = "tell | notch-corner true\n> notch the corner\n";
    assert_eq!(filled(named), three(&[["notch", "notch-corner", "named"]]));
    for how in [How::Set, How::Add, How::Less, How::Times, How::Nothing, How::Named, How::Words("end")] {
        assert_eq!(How::of(&how.label()), how, "its label says it");
    }
}

#[test]
fn figures_find_the_values_that_say_them() {
    let lines = labelled(&sample());
    let rows: Vec<Vec<&str>> = lines.iter().map(|l| figures(l, &l.aligned.rows)).collect();
    assert_eq!(rows[0], ["baluster-count", "baluster-width", "bay-clear"]);
    assert_eq!(rows[1], ["baluster-count", "baluster-width", "bay-clear"]);
    assert_eq!(rows[4], ["run-length"], "12 foot is 144 inches");
    assert_eq!(rows[5], ["post-size"]);
    // "both" counts, and tells no row; eight feet tells the run's length twice.
    assert_eq!(rows[12], ["none", "run-length"]);
    assert!(lines.iter().all(|l| l.aligned.lost == 0));
}

#[test]
fn a_figure_nobody_said_is_lost() {
    let lines = labelled(&parse("tell | run-length 100\"\n> the front is 12 foot\n").unwrap());
    assert_eq!(lines[0].aligned.lost, 1);
    assert_eq!(figures(&lines[0], &lines[0].aligned.rows), ["none"]);
}

#[test]
fn the_same_corpus_gives_the_same_bytes_and_another_gives_others() {
    let mut blocks = sample();
    let bytes = trained(&blocks);
    assert_eq!(bytes, trained(&blocks));
    blocks[5].meanings[0].act = "talk".to_owned();
    assert_ne!(bytes, trained(&blocks));
}

#[test]
fn what_it_learned_carries_to_a_line_it_has_not_seen() {
    let scores = Scores::read(&trained(&sample())).unwrap();
    let line = Line::read("whats the gap for 13 pickets 1 1/4\" wide, 70 clear", &[]);
    let guess = scores.guess(&line).unwrap();
    assert_eq!((guess.act, guess.want), ("ask", "gap"));
    let rows = |line: &Line, rows: &[&str]| {
        let values = line.items.iter().zip(rows).filter(|(item, _)| item.is_value());
        values.map(|(_, row)| row.to_string()).collect::<Vec<_>>()
    };
    assert_eq!(rows(&line, &guess.rows), ["baluster-count", "baluster-width", "bay-clear"]);
    let line = Line::read("the side run is 9 foot", &[]);
    let told = scores.guess(&line).unwrap();
    assert_eq!((told.act, rows(&line, &told.rows)), ("tell", vec!["run-length".to_owned()]));
}

#[test]
fn the_odds_of_all_labels_add_up_to_one() {
    let scores = Scores::read(&trained(&sample())).unwrap();
    let line = Line::read("nine pickets", &[]);
    let total: f32 = scores.score_act(&line).iter().map(|(_, log)| log.exp()).sum();
    assert!((total - 1.0).abs() < 1e-5, "{total}");
}

#[test]
fn bytes_of_another_form_are_refused() {
    let bytes = trained(&sample());
    assert!(Scores::read(&bytes[1..]).is_none());
    assert!(Scores::read(&bytes[..bytes.len() - 1]).is_none());
    assert!(Scores::read(&[&bytes[..], &[0]].concat()).is_none());
}

#[test]
fn every_line_is_read_by_what_the_other_blocks_taught() {
    let lines = labelled(&sample());
    let all = folds(&lines, 3, recipe()).unwrap();
    assert_eq!(all.len(), lines.len());
    // "undo" stands in one block alone: whoever has not seen that block cannot know the act.
    let undone = lines.iter().filter(|l| l.meaning.act == "undo").count();
    assert!(all.iter().filter(|o| !o.act).count() >= undone);
}

#[test]
fn coverage_is_the_largest_share_that_is_sure_enough() {
    let one = |odds, whole| Outcome { whole, odds, ..Outcome::default() };
    let all = [one(0.9, true), one(0.8, true), one(0.7, false), one(0.6, true), one(0.5, false)];
    // Of the two surest none is wrong; of the first four one in four is; of all five two.
    assert_eq!(coverage(&all, 0.01), (0.4, 0.8));
    assert_eq!(coverage(&all, 0.25), (0.8, 0.6));
}

#[test]
fn a_part_left_out_is_not_learned() {
    let lines = labelled(&sample());
    // "undo" stands in one block alone.
    let undo = lines.iter().find(|l| l.meaning.act == "undo").unwrap();
    let part = part_of(&undo.block, 3);
    let knows = |bytes: &[u8]| {
        Scores::read(bytes).unwrap().score_act(&Line::read("undo", &[])).iter().any(|(act, _)| *act == "undo")
    };
    assert!(!knows(&without(&lines, part, 3, recipe(), 0)));
    assert!(knows(&without(&lines, (part + 1) % 3, 3, recipe(), 0)));
}

#[test]
fn blocks_are_parted_evenly_by_their_ids() {
    let mut parts = [0; 5];
    (0..1000).for_each(|i| parts[part_of(&format!("M{i:04}"), 5)] += 1);
    assert!(parts.iter().all(|n| (150..=250).contains(n)), "{parts:?}");
}

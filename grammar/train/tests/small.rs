//! The trainer on a small corpus: what it reads, what it learns, and that it learns the same each time.

#![allow(clippy::unwrap_used, reason = "a test that cannot read its sample has failed")]

use railhand_train::corpus::{Block, parse};
use railhand_train::folds::{Outcome, coverage, folds};
use railhand_train::learn::{Labelled, labelled, train};
use railhand::grammar::scores::{Line, Scores};
use railhand_train::softmax::Recipe;

fn sample() -> Vec<Block> {
    parse(include_str!("sample/sample.txt")).unwrap()
}

fn recipe() -> Recipe {
    Recipe { least: 1, ..Recipe::default() }
}

fn trained(blocks: &[Block]) -> Vec<u8> {
    let lines = labelled(blocks);
    train(&lines.iter().collect::<Vec<&Labelled>>(), recipe())
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

#[test]
fn figures_find_the_values_that_say_them() {
    let lines = labelled(&sample());
    let rows: Vec<Vec<&str>> = lines.iter().map(|l| l.aligned.rows.iter().map(String::as_str).collect()).collect();
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
    assert_eq!(lines[0].aligned.rows, ["none"]);
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
    assert_eq!(guess.rows, ["baluster-count", "baluster-width", "bay-clear"]);
    let told = scores.guess(&Line::read("the side run is 9 foot", &[])).map(|g| (g.act, g.rows));
    assert_eq!(told, Some(("tell", vec!["run-length"])));
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
    let one = |odds, whole| Outcome { act: whole, want: whole, rows: (0, 0), whole, lost: false, odds };
    let all = [one(0.9, true), one(0.8, true), one(0.7, false), one(0.6, true), one(0.5, false)];
    // Of the two surest none is wrong; of the first four one in four is; of all five two.
    assert_eq!(coverage(&all, 0.01), (0.4, 0.8));
    assert_eq!(coverage(&all, 0.25), (0.8, 0.6));
}

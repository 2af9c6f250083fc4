//! Outlines: walked side by side, what is untold worked out, what does not close said.
//!
//! Every figure is worked out by hand beside its case (plane geometry, no source).

use pretty_assertions::assert_eq;
use proptest::prelude::*;
use railhand::job::outline::{Open, filled};
use railhand::job::{Basis, End, Fact, Job, RunId, RunPatch, Told, Turn};
use railhand::measure::Length;

fn feet(n: i64) -> Length {
    Length::inches(n * 12)
}

fn side(id: u32, turn: Turn, length: Option<Length>) -> Fact {
    Fact::Run(RunId(id), RunPatch { turn: Some(turn), length: length.map(Told::plain), ..RunPatch::default() })
}

fn walk(sides: &[(Turn, Option<Length>)], more: &[Fact]) -> Job {
    let facts = sides.iter().zip(1..).map(|((turn, length), id)| side(id, *turn, *length));
    let facts: Vec<Fact> = facts.chain(more.iter().cloned()).collect();
    Job::default().with_all(&facts).expect("the sides are sane")
}

fn lengths(job: &Job) -> Vec<Option<Length>> {
    filled(job).job.runs.iter().map(|r| r.length.map(|t| t.length)).collect()
}

const RIGHT: Turn = Turn::Right(90);
const LEFT: Turn = Turn::Left(90);

#[test]
fn a_rectangle_follows_from_along_and_out() {
    let job = walk(
        &[(Turn::Start, None), (RIGHT, None), (RIGHT, None)],
        &[Fact::DeckAlong(feet(16)), Fact::DeckOut(feet(12))],
    );
    let filled = filled(&job);
    // Left side 12 out, front 16 across, right side 12 home.
    let got: Vec<_> = filled.job.runs.iter().map(|r| (r.length.map(|t| t.length), r.from, r.to, r.basis)).collect();
    let edge = Some(Basis::Edge);
    assert_eq!(
        got,
        [
            (Some(feet(12)), Some(End::House), Some(End::Corner), edge),
            (Some(feet(16)), Some(End::Corner), Some(End::Corner), edge),
            (Some(feet(12)), Some(End::Corner), Some(End::House), edge),
        ]
    );
    assert_eq!(filled.derived, [RunId(1), RunId(2), RunId(3)]);
    assert_eq!(filled.open, None);
}

#[test]
fn the_last_leg_of_an_l_is_worked_out() {
    // 20 out, 10 across, 8 back, 6 across, then home: 20 - 8 = 12.
    let job = walk(
        &[
            (Turn::Start, Some(feet(20))),
            (RIGHT, Some(feet(10))),
            (RIGHT, Some(feet(8))),
            (LEFT, Some(feet(6))),
            (RIGHT, None),
        ],
        &[],
    );
    assert_eq!(lengths(&job).last(), Some(&Some(feet(12))));
    let ends: Vec<_> = filled(&job).job.runs.iter().map(|r| r.to).collect();
    assert_eq!(
        ends,
        [Some(End::Corner), Some(End::Corner), Some(End::InsideCorner), Some(End::Corner), Some(End::House)]
    );
    assert_eq!(filled(&job).derived, [RunId(5)]);
}

#[test]
fn one_side_across_follows_from_the_house_side() {
    // 10 out, ? across, 4 back, 6 across, 6 home; 18 along the house: ? = 12.
    let sides =
        [(Turn::Start, Some(feet(10))), (RIGHT, None), (RIGHT, Some(feet(4))), (LEFT, Some(feet(6))), (RIGHT, None)];
    let job = walk(&sides, &[Fact::DeckAlong(feet(18))]);
    assert_eq!(lengths(&job), [10, 12, 4, 6, 6].map(|n| Some(feet(n))));
    // Without the house side two sides across could be anything: it is left untold.
    assert_eq!(lengths(&walk(&sides, &[]))[1], None);
}

#[test]
fn a_walk_that_misses_says_by_how_much() {
    let told = [(Turn::Start, Some(feet(12))), (RIGHT, Some(feet(16))), (RIGHT, Some(feet(11)))];
    // Home is 12 in, told 11: it ends 1 foot out from the house.
    assert_eq!(filled(&walk(&told, &[])).open, Some(Open { along: Length::ZERO, out: feet(1) }));
    // 16 across against 17 along the house: a foot short of it as well.
    let open = filled(&walk(&told, &[Fact::DeckAlong(feet(17))])).open;
    assert_eq!(open, Some(Open { along: feet(-1), out: feet(1) }));
}

#[test]
fn a_clipped_corner_is_carried_and_flagged() {
    // 10 out, a 45 degree clip of 4, 6 across, home: 10 + 4 cos 45 = 12.828427125 (memory: sqrt 2 = 1.414213562).
    let job = walk(
        &[
            (Turn::Start, Some(feet(10))),
            (Turn::Right(45), Some(feet(4))),
            (Turn::Right(45), Some(feet(6))),
            (RIGHT, None),
        ],
        &[],
    );
    let last = filled(&job).job.runs[3].length.expect("it is worked out").length;
    assert!(!last.is_exact());
    let expected = Length::new(153_941_125_497, 1_000_000_000).expect("in bounds");
    let off = if last > expected { last - expected } else { expected - last };
    assert!(off < Length::new(1, 10_000_000).expect("in bounds"), "{last:?}");
    let ends: Vec<_> = filled(&job).job.runs.iter().map(|r| (r.from, r.to)).collect();
    assert_eq!(ends[1], (Some(End::AngledCorner), Some(End::AngledCorner)));
    assert_eq!(filled(&job).open, None);
}

#[test]
fn a_told_side_stays_told_and_a_job_without_sides_is_left_alone() {
    let told = Job::default()
        .with(&Fact::Run(RunId(1), RunPatch { length: Some(Told::plain(feet(9))), ..RunPatch::default() }))
        .expect("sane");
    assert_eq!(filled(&told).job, told);
    let job = walk(&[(Turn::Start, Some(feet(9))), (RIGHT, Some(feet(16))), (RIGHT, None)], &[Fact::DeckOut(feet(12))]);
    // The side was told 9 and the deck 12 out: the side's own word stands, and home follows it.
    assert_eq!(lengths(&job), [9, 16, 9].map(|n| Some(feet(n))));
}

proptest! {
    /// Whatever side of a closing walk is left untold, it comes out as it was.
    #[test]
    fn an_untold_side_comes_back(
        out in 60_i64..400, across in 100_i64..400, back in 10_i64..50, on in 20_i64..90, gone in 0_usize..5,
    ) {
        let told = [out, across, back, on, out - back].map(Length::inches);
        let turns = [Turn::Start, RIGHT, RIGHT, LEFT, RIGHT];
        let along = Fact::DeckAlong(Length::inches(across + on));
        let sides: Vec<_> = (0..5).map(|k| (turns[k], (k != gone).then_some(told[k]))).collect();
        let filled = filled(&walk(&sides, &[along]));
        prop_assert_eq!(filled.derived, vec![RunId(gone as u32 + 1)]);
        let lengths: Vec<_> = filled.job.runs.iter().filter_map(|r| r.length.map(|t| t.length)).collect();
        prop_assert_eq!(lengths, told.to_vec());
        prop_assert_eq!(filled.open, None);
    }
}

#[test]
fn a_deck_by_itself_closes_on_its_first_corner() {
    // 5 out, 4 across: back 5 and home 4 follow, and no side ends at a house.
    let job = walk(&[(Turn::Free, Some(feet(5))), (RIGHT, Some(feet(4))), (RIGHT, None), (RIGHT, None)], &[]);
    let filled = filled(&job);
    let got: Vec<_> = filled.job.runs.iter().map(|r| (r.length.map(|t| t.length), r.from, r.to)).collect();
    let corner = Some(End::Corner);
    let side = |l| (Some(feet(l)), corner, corner);
    assert_eq!(got, [side(5), side(4), side(5), side(4)]);
    assert_eq!((filled.derived, filled.open), (vec![RunId(3), RunId(4)], None));
    // Four corners, a post at each, every one in two sides: four posts.
    assert_eq!(railhand::layout::lay_out(&job).distinct_posts(), 4);
}

#[test]
fn a_deck_by_itself_that_misses_its_first_corner_says_by_how_much() {
    // 5 out, 4 across, 5 back, but only 3 of the 4 home.
    let sides = [(Turn::Free, 5), (RIGHT, 4), (RIGHT, 5), (RIGHT, 3)].map(|(turn, l)| (turn, Some(feet(l))));
    let open = filled(&walk(&sides, &[])).open;
    assert_eq!(open, Some(Open { along: feet(1), out: Length::ZERO }));
}

//! Gates and pools. W15 and W17 are rows of a sheet of check values made from the IRC and from
//! ISPSC 305; P1 ... are rows of its pool table.

use railhand::figure::Fig;
use railhand::gate::brace::{brace, leaf_height};
use railhand::gate::pool::{Barrier, breaches, gap_limit, latch_on_pool_side, top_for_plain_gap};
use railhand::gate::{LeafTold, Unfit, leaf};
use railhand::infill::{HeldGap, Opening, fewest};
use railhand::job::Settings;
use railhand::limits;
use railhand::measure::{Length, Tape, decimal};

fn sixteenths(n: i64) -> Length {
    Length::sixteenths(n)
}

fn fig(n: i64) -> Fig {
    Fig::told(sixteenths(n), "in the check")
}

fn opening(all: &[i64]) -> LeafTold {
    LeafTold { openings: all.iter().map(|n| sixteenths(*n)).collect(), ..LeafTold::default() }
}

/// W17: 48 clear, 1/2 each side: leaf 47; two 3 1/2 stiles leave 40; 1 1/4 balusters under 4:
/// 7 at 3.9063; the diagonal of 47 x 36 is 59.2030.
#[test]
fn w17_a_leaf() {
    let l = leaf(&opening(&[768])).expect("a leaf");
    assert_eq!(decimal(l.width.as_q()).0, "47");
    assert_eq!(l.clear.as_ref().map(|f| decimal(f.as_q()).0).as_deref(), Some("40"));
    let (count, gap) =
        l.balusters(&fig(20), &HeldGap::under(Fig::limit(&limits::LEVEL_GAP)), Tape::SIXTEENTHS).expect("balusters");
    assert_eq!((count.as_q().to_integer(), decimal(gap.as_q()).0.as_str()), (7, "3.90625"));
    let b = brace(&l.width, &fig(576)).expect("a brace");
    assert!(decimal(b.diagonal.as_q()).0.starts_with("59.203"), "{:?}", b.diagonal.as_q());
    // tan = 36/47: 37.45 degrees (by calculator).
    assert!(decimal(b.angle.as_q()).0.starts_with("37.45"));
    assert!(!l.too_wide(&Settings::default()));
}

/// The leaf is made for the smallest of three measures (common practice, no source).
#[test]
fn the_smallest_opening_counts() {
    let l = leaf(&opening(&[664, 660, 666])).expect("a leaf");
    assert_eq!(decimal(l.width.as_q()).0, "40.25");
    assert_eq!(l.differs.as_ref().and_then(Fig::as_length), Some(sixteenths(6)));
}

/// Told gaps and a told leaf: 41 1/2 less 1/2 and 3/8 is 40 5/8; a leaf of 41 is 3/8 too wide.
#[test]
fn a_leaf_wider_than_its_room_says_by_how_much() {
    let gaps = LeafTold { hinge_gap: Some(sixteenths(8)), latch_gap: Some(sixteenths(6)), ..opening(&[664]) };
    assert_eq!(leaf(&gaps).map(|l| decimal(l.width.as_q()).0), Ok("40.625".to_owned()));
    let Err(Unfit::TooWide { by, .. }) = leaf(&LeafTold { leaf: Some(sixteenths(656)), ..gaps }) else {
        panic!("it fits")
    };
    assert_eq!(by.as_length(), Some(sixteenths(6)));
    assert_eq!(leaf(&LeafTold::default()), Err(Unfit::NoOpening));
    assert!(matches!(leaf(&opening(&[16])), Err(Unfit::NoRoom(_))));
}

/// Up to the guard's 36 with 3 under: 33 high.
#[test]
fn a_leafs_height() {
    assert_eq!(leaf_height(&fig(576), &fig(48)).and_then(|f| f.as_length()), Some(Length::inches(33)));
    assert_eq!(leaf_height(&fig(48), &fig(48)), None);
}

/// W15: 1 3/4 "not more than" in 69 clear with 1 1/4 balusters: 23 at 1.6771. Top 48 over a
/// bottom rail whose top is 5 1/2: 42 1/2 apart, under 45: tight; the plain gap wants 50 1/2.
/// A 36 in. guard is never the 48 in. barrier.
#[test]
fn w15_a_pool_barrier() {
    let tight = HeldGap::up_to(Fig::limit(&limits::POOL_TIGHT_GAP)).limit();
    let opening = Opening::measured(Length::inches(69), sixteenths(20), tight, Tape::SIXTEENTHS);
    let found = fewest(opening).expect("balusters").taped;
    assert_eq!((found.count(), decimal(found.gap().q()).0.as_str()), (23, "1.677083"));
    let here = &Settings::default();
    let at = |top, rail| Barrier {
        top: sixteenths(top),
        cap: Length::ZERO,
        under: None,
        bottom_rail_top: Some(sixteenths(rail)),
        latch: None,
    };
    assert_eq!(gap_limit(&at(768, 88), here).id, "pool-tight-gap");
    assert_eq!(gap_limit(&at(808, 88), here).id, "level-gap");
    assert_eq!(decimal(top_for_plain_gap(&fig(88), Length::ZERO, here).as_q()).0, "50.5");
    assert_eq!(breaches(&at(576, 88), here).iter().map(|l| l.id).collect::<Vec<_>>(), ["pool-top"]);
}

/// P1 48 to the top, P3 4 under over decking, P8 the latch at 54: limits included where the
/// text says "at least" and "not more than".
#[test]
fn p_rows_at_their_limits() {
    let at = |top, under, latch| Barrier {
        top: sixteenths(top),
        cap: Length::ZERO,
        under: Some(sixteenths(under)),
        bottom_rail_top: None,
        latch: Some(sixteenths(latch)),
    };
    let here = &Settings::default();
    assert!(breaches(&at(768, 64, 864), here).is_empty());
    assert_eq!(breaches(&at(767, 65, 864), here).len(), 2);
    assert_eq!(latch_on_pool_side(&at(768, 64, 864), here), Some(false));
    assert_eq!(latch_on_pool_side(&at(768, 64, 863), here), Some(true));
    // Where the rails are was not told, the tighter gap holds.
    assert_eq!(gap_limit(&at(768, 64, 864), here).id, "pool-tight-gap");
}

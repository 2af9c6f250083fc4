//! Laws of balusters and cut plans, over generated openings and orders.

use proptest::prelude::*;
use railhand::infill::{GapLimit, Opening, fewest};
use railhand::measure::{Length, Tape};
use railhand::takeoff::cutplan::{CutOrder, CutPlan, Effort, Proved, Stick, Supply, Wanted, plan};

fn sixteenths(n: i64) -> Length {
    Length::sixteenths(n)
}

fn openings() -> impl Strategy<Value = Opening> {
    // Any clear at all, thirds and sevenths among them: bays are split evenly.
    let clear = (64_i128..40_000, 1_i128..30)
        .prop_filter_map("over 4 in.", |(num, den)| Length::new(num, 16 * den).filter(|l| *l >= Length::inches(4)));
    let (baluster, limit) = (8_i64..64, 16_i64..80);
    let tape = prop::sample::select(vec![8, 16, 32]).prop_filter_map("a tape", Tape::to);
    (clear, baluster, limit, tape)
        .prop_map(|(clear, b, g, tape)| Opening::measured(clear, sixteenths(b), GapLimit::under(sixteenths(g)), tape))
}

fn orders() -> impl Strategy<Value = CutOrder> {
    let wanted = prop::collection::vec((80_i64..1_500, 1_u32..8), 1..7);
    let yard = prop::sample::subsequence(vec![96_i64, 120, 144, 192], 1..=4);
    let on_hand = prop::collection::vec((300_i64..1_500, 1_u32..4), 0..3);
    (wanted, yard, on_hand, 0_i64..4).prop_map(|(wanted, yard, on_hand, kerf)| CutOrder {
        wanted: wanted.into_iter().map(|(l, count)| Wanted { length: sixteenths(l), count }).collect(),
        sticks: yard
            .into_iter()
            .map(|l| Stick { length: Length::inches(l), supply: Supply::Yard(None) })
            .chain(on_hand.into_iter().map(|(l, n)| Stick { length: sixteenths(l), supply: Supply::OnHand(n) }))
            .collect(),
        kerf: sixteenths(kerf),
    })
}

fn cut_of(plan: &CutPlan, length: Length) -> u32 {
    let per = |cuts: &[(Length, u32)]| cuts.iter().filter(|(l, _)| *l == length).map(|(_, n)| *n).sum::<u32>();
    plan.sticks.iter().map(|s| s.times * per(&s.cuts)).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Whatever is rounded to, every gap that gets built is under the limit, and one baluster
    /// fewer would not do.
    #[test]
    fn every_rounded_gap_is_under_the_limit(o in openings()) {
        let Ok(found) = fewest(o) else { return Ok(()) };
        let built = found.taped;
        prop_assert!(built.gaps().iter().all(|gap| o.limit.allows(*gap)), "{:?}", built.gaps());
        prop_assert!(o.limit.allows(built.gap()));
        let filled: Length = built.gaps().into_iter().sum::<Length>() + o.baluster * i64::from(built.count());
        prop_assert_eq!(filled, o.clear);
        if let Some(fewer) = found.exact.count().checked_sub(1) {
            let fewer = railhand::infill::Spread::of(o, fewer);
            prop_assert!(fewer.is_err() || !o.limit.allows(fewer.expect("just seen").gap()));
        }
    }

    /// A plan cuts every piece exactly once, overfills no stick, uses no more than is on hand,
    /// and buys no less than the pieces that are not cut from what is on hand.
    #[test]
    fn a_plan_holds(order in orders()) {
        let Ok(plan) = plan(&order, &mut Effort(300_000)) else { return Ok(()) };
        for w in &order.wanted {
            let wanted: u32 = order.wanted.iter().filter(|o| o.length == w.length).map(|o| o.count).sum();
            prop_assert_eq!(cut_of(&plan, w.length), wanted);
        }
        for s in &plan.sticks {
            let pieces: i64 = s.cuts.iter().map(|(_, n)| i64::from(*n)).sum();
            let used: Length = s.cuts.iter().map(|(l, n)| *l * i64::from(*n)).sum::<Length>() + order.kerf * (pieces - 1).max(0);
            prop_assert!(s.left >= Length::ZERO);
            prop_assert_eq!(s.stock - used, s.left);
        }
        for stick in &order.sticks {
            let Supply::OnHand(most) = stick.supply else { continue };
            let alike: u32 = order.sticks.iter().filter(|o| o.length == stick.length).map(|o| match o.supply { Supply::OnHand(n) => n, Supply::Yard(_) => 0 }).sum();
            let taken: u32 = plan.sticks.iter().filter(|s| s.on_hand && s.stock == stick.length).map(|s| s.times).sum();
            prop_assert!(taken <= alike.max(most));
        }
        let pieces: Length = order.wanted.iter().map(|w| w.length * i64::from(w.count)).sum();
        let on_hand: Length = order.sticks.iter().map(|s| match s.supply { Supply::OnHand(n) => s.length * i64::from(n), Supply::Yard(_) => Length::ZERO }).sum();
        prop_assert!(plan.bought >= pieces - on_hand);
        if let Proved::NoLessThan(bound) = plan.proved {
            prop_assert!(bound < plan.bought);
        }
    }

    /// Small orders against every way there is to cut them.
    #[test]
    fn a_small_plan_is_the_least(lengths in prop::collection::vec(100_i64..1_500, 1..6), yard in prop::sample::subsequence(vec![96_i64, 120, 192], 1..=3), kerf in 0_i64..4) {
        let order = CutOrder {
            wanted: lengths.iter().map(|l| Wanted { length: sixteenths(*l), count: 1 }).collect(),
            sticks: yard.iter().map(|l| Stick { length: Length::inches(*l), supply: Supply::Yard(None) }).collect(),
            kerf: sixteenths(kerf),
        };
        let sticks: Vec<i64> = yard.iter().map(|l| l * 16).collect();
        let least = every_way(&lengths, &sticks, kerf, &mut Vec::new());
        match (plan(&order, &mut Effort(5_000_000)), least) {
            (Ok(plan), Some(least)) => {
                prop_assert_eq!(plan.bought, sixteenths(least));
                prop_assert_eq!(plan.proved, Proved::Least);
            }
            (Err(_), None) => {}
            (found, least) => prop_assert!(false, "{found:?} beside {least:?}"),
        }
    }
}

/// The least length that holds the pieces, by trying every one on every stick begun and on a
/// new one; in sixteenths.
fn every_way(pieces: &[i64], sticks: &[i64], kerf: i64, begun: &mut Vec<i64>) -> Option<i64> {
    let Some((piece, rest)) = pieces.split_first() else {
        let cut_from = |used: &i64| sticks.iter().copied().filter(|s| s >= used).min();
        return begun.iter().map(cut_from).sum();
    };
    let mut least: Option<i64> = None;
    for k in 0..=begun.len() {
        let new = k == begun.len();
        let add = if new { *piece } else { piece + kerf };
        if new {
            begun.push(0)
        }
        begun[k] += add;
        let found = every_way(rest, sticks, kerf, begun);
        least = [least, found].into_iter().flatten().min();
        begun[k] -= add;
        if new {
            begun.pop();
        }
    }
    least
}

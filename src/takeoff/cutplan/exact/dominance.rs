//! Ways to cut a stick that need not be tried, because another does as well.
//!
//! Where the pieces of one way can be laid into the pieces of another, each inside a longer one,
//! any plan with the first can be changed into one with the second at the same cost: the longer
//! pieces and what lay inside them change places (Martello and Toth's dominance for packing).

use super::instance::{Instance, Pattern};

/// With more ways than this, looking for dominated ones costs more than it saves.
const MOST_COMPARED: usize = 300;

/// The ways no other way of the same stick dominates. No way comes twice.
pub fn undominated(instance: &Instance, ways: Vec<(i64, Pattern)>) -> Vec<(i64, Pattern)> {
    if ways.len() > MOST_COMPARED {
        return ways;
    }
    let dominated = |(_, a): &(i64, Pattern)| {
        ways.iter().any(|(_, b)| a.bin == b.bin && a != b && lies_in(instance, &a.cuts, &b.cuts))
    };
    let keep: Vec<bool> = ways.iter().map(|way| !dominated(way)).collect();
    ways.into_iter().zip(keep).filter(|(_, keep)| *keep).map(|(way, _)| way).collect()
}

/// True where every piece of `a` can be laid into a piece of `b`, found first fit, longest
/// first: some that could be are missed, none that could not be is found.
fn lies_in(instance: &Instance, a: &[u32], b: &[u32]) -> bool {
    let each = |cuts: &[u32]| -> Vec<u32> {
        let of = |(item, n): (&super::Item, &u32)| std::iter::repeat_n(item.len, *n as usize);
        instance.items.iter().zip(cuts).flat_map(of).collect()
    };
    let mut room = each(b);
    each(a).into_iter().all(|piece| match room.iter_mut().find(|room| **room >= piece) {
        Some(room) => {
            *room -= piece;
            true
        }
        None => false,
    })
}

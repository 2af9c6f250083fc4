//! A relation worked by an engine that has its inputs in hand.

use super::search::index;
use crate::figure::{Fig, Why};
use crate::quantity::{Args, Input, RowId, Way, nothing};

/// The row `gives` by the relation that gives it out of just these rows, in the relation's words. What counts only where it was told may
/// be left out. `None` where no relation does, or the row has no value by it: a length below nothing, a number past 128 bits.
pub fn by(gives: RowId, from: &[(RowId, &Fig)]) -> Option<Fig> {
    let way = index().get(&gives)?.iter().find(|way| takes(way, from))?;
    let args: Option<Vec<Fig>> = way.from.iter().map(|input| arg(*input, from)).collect();
    let value = way.relation.solve(gives, &Args(args?))?;
    let named = from.iter().map(|(row, fig)| (row.row().name, (*fig).clone())).collect();
    Some(Fig::new(value, Why::Formula(way.relation.says, named)))
}

/// True where a way takes these rows and lacks none of them.
fn takes(way: &Way, from: &[(RowId, &Fig)]) -> bool {
    let has = |input: &Input| matches!(input, Input::Told(_) | Input::Also(_)) || found(input.row(), from).is_some();
    way.from.iter().all(has) && from.iter().all(|(row, _)| way.from.iter().any(|i| i.row() == *row))
}

fn arg(input: Input, from: &[(RowId, &Fig)]) -> Option<Fig> {
    let none = || Some(Fig::new(nothing(input.row())?, Why::Told("nothing told")));
    found(input.row(), from).cloned().or_else(none)
}

fn found<'a>(row: RowId, from: &[(RowId, &'a Fig)]) -> Option<&'a Fig> {
    from.iter().find(|(r, _)| *r == row).map(|(_, fig)| *fig)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use crate::quantity::RowId::{Decking, HingeGap, LeafHeight, NotchDepth, NotchLeft, NotchTall, PostWidth, RimTall};

    fn told(quarters: i64) -> Fig {
        Fig::told(Length::sixteenths(quarters * 4), "the test's")
    }

    #[test]
    fn a_relation_is_worked_from_just_its_rows() {
        let (decking, rim) = (told(4), told(37));
        // 1 + 9 1/4 = 10 1/4.
        let tall = by(NotchTall, &[(Decking, &decking), (RimTall, &rim)]).expect("a notch");
        assert_eq!(tall.as_length(), Length::new(41, 4));
        let Why::Formula(_, named) = tall.why() else { panic!("{tall:?}") };
        assert_eq!(named.iter().map(|(n, _)| *n).collect::<Vec<_>>(), ["decking", "rim height"]);
        assert_eq!(by(NotchTall, &[(Decking, &decking)]), None);
        assert_eq!(by(NotchTall, &[(Decking, &decking), (RimTall, &rim), (HingeGap, &decking)]), None);
        assert_eq!(by(LeafHeight, &[(Decking, &decking), (RimTall, &rim)]), None);
    }

    #[test]
    fn what_comes_out_below_nothing_is_no_figure() {
        let (post, notch) = (told(14), told(16));
        assert_eq!(by(NotchLeft, &[(PostWidth, &post), (NotchDepth, &notch)]), None);
    }
}

//! How far it is down from the deck, as a guard counts it: one relation for every answer and rule.

use super::{Fall, Job};
use crate::figure::{Fig, Why};
use crate::limits::GUARD_REACH;
use crate::measure::Length;

impl Job {
    /// The drop a guard counts, from the deck's height told above the ground; `None` where none was told.
    /// See [`Job::drop_below`].
    pub fn drop(&self) -> Option<Fig> {
        self.settings.grade.map(|above| self.drop_below(above))
    }

    /// The drop where the deck stands so high above the ground at its edge: that height and what the ground
    /// falls from there within reach (IRC R312.1.1: to the ground at any point within 36 in. of the edge).
    /// Of several falls told the steepest counts. Ground that rises takes nothing off: what lies right below the
    /// edge is within reach too.
    pub fn drop_below(&self, above: Length) -> Fig {
        let above = Fig::told(above, "the drop");
        let falls =
            self.falls().into_iter().map(within_reach).filter(|f| f.as_length().is_some_and(Length::is_positive));
        let Some(fall) = falls.max_by_key(Fig::as_length) else { return above };
        let sum = above.as_length().unwrap_or(Length::ZERO) + fall.as_length().unwrap_or(Length::ZERO);
        let from = vec![("height above ground", above), ("fall within reach", fall)];
        Fig::length(sum, Why::Formula("height above ground + fall within reach", from))
    }

    /// Every fall of the ground told, of all stairs and of each.
    fn falls(&self) -> Vec<Fall> {
        let each = self.runs.iter().flat_map(|r| r.stairs.iter()).filter_map(|s| s.flight.fall);
        self.flight.fall.into_iter().chain(each).collect()
    }
}

/// What ground that falls so much on so much falls within reach of the edge; below nothing where it rises.
fn within_reach(fall: Fall) -> Fig {
    let reach = Fig::limit(&GUARD_REACH);
    let part = fall.by.ratio(fall.over).and_then(|each| GUARD_REACH.length().times(each)).unwrap_or(Length::ZERO);
    let from = vec![
        ("fall told", Fig::told(fall.by, "the ground's fall")),
        ("over", Fig::told(fall.over, "what the ground falls over")),
        ("reach", reach),
    ];
    Fig::length(part, Why::Formula("fall told / over x reach", from))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Fact, FlightFact, RunId, RunPatch, Setting, StairAt, StairOpening};

    fn inches(n: i64) -> Length {
        Length::inches(n)
    }

    fn drop(above: i64, falls: &[(Length, i64)]) -> Option<Length> {
        let fall = |(by, over): &(Length, i64)| Fact::Flight(FlightFact::Fall(Fall { by: *by, over: inches(*over) }));
        let facts: Vec<Fact> =
            std::iter::once(Fact::Set(Setting::Grade(inches(above)))).chain(falls.iter().map(fall)).collect();
        Job::default().with_all(&facts).expect("ground that can be").drop()?.as_length()
    }

    #[test]
    fn only_what_falls_within_36_inches_of_the_edge_counts() {
        assert_eq!(drop(28, &[]), Some(inches(28)));
        // 4 in 36: 28 + 4.
        assert_eq!(drop(28, &[(inches(4), 36)]), Some(inches(32)));
        // 1 1/2 a foot: 3 x 1 1/2 = 4 1/2.
        assert_eq!(drop(28, &[(Length::sixteenths(24), 12)]), Some(Length::sixteenths(520)));
        // 12 in 120: 12 x 36/120 = 3 3/5.
        assert_eq!(drop(28, &[(inches(12), 120)]), Length::new(158, 5));
    }

    #[test]
    fn ground_that_rises_from_the_edge_takes_nothing_off() {
        assert_eq!(drop(31, &[(inches(-4), 36)]), Some(inches(31)));
    }

    #[test]
    fn the_steepest_of_several_falls_counts() {
        let told = Fact::Flight(FlightFact::Fall(Fall { by: inches(1), over: inches(12) }));
        let mut stairs = StairOpening::new(inches(48), StairAt::Middle);
        // 2 a foot: 6 within 36 in., more than the 3 told of all.
        stairs.flight.fall = Some(Fall { by: inches(2), over: inches(12) });
        let run = Fact::Run(RunId(1), RunPatch { stairs: Some(stairs.into()), ..RunPatch::default() });
        let job = Job::default().with_all(&[told, run]).expect("a job that can be");
        assert_eq!(job.drop_below(inches(28)).as_length(), Some(inches(34)));
    }
}

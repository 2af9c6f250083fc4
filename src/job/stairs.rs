//! Stairs as told: the openings they leave in a run of guard, and the flights that hang in them.

use super::End;
use crate::measure::Length;

/// Where a stair opening stands in a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StairAt {
    /// Centred in the run.
    Middle,
    /// Its near edge so far from the from-end, which is the left one.
    FromLeft(Length),
    /// Its near edge so far from the to-end, which is the right one.
    FromRight(Length),
}

impl StairAt {
    /// The same place seen from the other end.
    pub fn flipped(self) -> StairAt {
        match self {
            StairAt::Middle => StairAt::Middle,
            StairAt::FromLeft(l) => StairAt::FromRight(l),
            StairAt::FromRight(l) => StairAt::FromLeft(l),
        }
    }
}

/// Which side of a run's stair opening, seen from the house looking out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Flank {
    /// From the from-end to the stairs.
    Left,
    /// From the stairs to the to-end.
    Right,
}

/// What a stair's width was measured between.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StairMeasure {
    /// Clear between the posts: the opening in the guard.
    Posts,
    /// From decking to decking: the hole as the decking leaves it.
    Decking,
    /// From framing to framing: the hole before skirt and decking.
    Framing,
    /// The treads.
    Treads,
}

impl StairMeasure {
    /// Every measure, likeliest first.
    pub const ALL: [StairMeasure; 4] =
        [StairMeasure::Posts, StairMeasure::Decking, StairMeasure::Treads, StairMeasure::Framing];
}

/// On which sides a flight is open, seen coming down it; a guard or handrail is for them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OpenSides {
    /// Both.
    Both,
    /// One, not said which.
    One,
    /// The left one.
    Left,
    /// The right one.
    Right,
    /// Neither: a wall on each side.
    Neither,
}

/// Where the newels stand against the treads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Newels {
    /// Beside the stringers: all of the tread is clear between them.
    Beside,
    /// On the treads: two posts come off the clear.
    OnTreads,
}

/// What a flight lands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lands {
    /// A slab or pad.
    Slab,
    /// The ground.
    Ground,
    /// Pavers or stone.
    Pavers,
    /// Gravel.
    Gravel,
    /// Another deck or a landing.
    Landing,
}

/// How the stairs meet the decking.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Head {
    /// The top tread is one riser below the decking: a tread less than risers.
    OneDown,
    /// The top tread is flush with the decking: as many treads as risers.
    Flush,
}

/// What stands between two treads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RiserKind {
    /// A board.
    Closed,
    /// Nothing; how much is open was not told.
    Open,
    /// Nothing, or a part board: so much is open, plumb.
    Opening(Length),
}

/// How the ground goes away from the stairs' head: so much down on so much out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fall {
    /// Down; below nothing where the ground rises.
    pub by: Length,
    /// Out, more than nothing.
    pub over: Length,
}

/// One fact of a flight of stairs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FlightFact {
    /// How many risers.
    Risers(u16),
    /// The height of each riser.
    Rise(Length),
    /// The run of each tread, nosing to nosing.
    Tread(Length),
    /// Which sides are open.
    Open(OpenSides),
    /// Where its newels stand.
    Newels(Newels),
    /// What it lands on.
    Lands(Lands),
    /// All risers together: the decking above the ground at the stairs' foot.
    TotalRise(Length),
    /// All treads together, on the level.
    TotalRun(Length),
    /// How far a nosing overhangs the riser below it.
    Nosing(Length),
    /// The stair guard's top, plumb above the line of the nosings.
    Height(Length),
    /// How the stairs meet the decking.
    Head(Head),
    /// What stands between two treads.
    Between(RiserKind),
    /// How deep the landing at the foot is, the way one walks.
    Landing(Length),
    /// How the ground falls the way the stairs go.
    Fall(Fall),
}

/// A flight of stairs, as far as it was told.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flight {
    /// How many risers.
    pub risers: Option<u16>,
    /// The height of each riser.
    pub rise: Option<Length>,
    /// The run of each tread, nosing to nosing.
    pub tread: Option<Length>,
    /// Which sides are open.
    pub open: Option<OpenSides>,
    /// Where its newels stand.
    pub newels: Option<Newels>,
    /// What it lands on.
    pub lands: Option<Lands>,
    /// All risers together: the decking above the ground at the stairs' foot.
    pub total_rise: Option<Length>,
    /// All treads together, on the level.
    pub total_run: Option<Length>,
    /// How far a nosing overhangs the riser below it.
    pub nosing: Option<Length>,
    /// The stair guard's top, plumb above the line of the nosings.
    pub height: Option<Length>,
    /// How the stairs meet the decking.
    pub head: Option<Head>,
    /// What stands between two treads.
    pub between: Option<RiserKind>,
    /// How deep the landing at the foot is.
    pub landing: Option<Length>,
    /// How the ground falls the way the stairs go.
    pub fall: Option<Fall>,
}

impl Flight {
    /// Takes one fact in; the last told wins.
    pub fn set(&mut self, fact: FlightFact) {
        match fact {
            FlightFact::Risers(n) => self.risers = Some(n),
            FlightFact::Rise(l) => self.rise = Some(l),
            FlightFact::Tread(l) => self.tread = Some(l),
            FlightFact::Open(sides) => self.open = Some(sides),
            FlightFact::Newels(n) => self.newels = Some(n),
            FlightFact::Lands(on) => self.lands = Some(on),
            FlightFact::TotalRise(l) => self.total_rise = Some(l),
            FlightFact::TotalRun(l) => self.total_run = Some(l),
            FlightFact::Nosing(l) => self.nosing = Some(l),
            FlightFact::Height(l) => self.height = Some(l),
            FlightFact::Head(head) => self.head = Some(head),
            FlightFact::Between(kind) => self.between = Some(kind),
            FlightFact::Landing(l) => self.landing = Some(l),
            FlightFact::Fall(fall) => self.fall = Some(fall),
        }
    }

    /// What was told of it, in the order a person would tell it.
    pub fn facts(&self) -> Vec<FlightFact> {
        let all = [
            self.risers.map(FlightFact::Risers),
            self.rise.map(FlightFact::Rise),
            self.tread.map(FlightFact::Tread),
            self.open.map(FlightFact::Open),
            self.newels.map(FlightFact::Newels),
            self.lands.map(FlightFact::Lands),
            self.total_rise.map(FlightFact::TotalRise),
            self.total_run.map(FlightFact::TotalRun),
            self.nosing.map(FlightFact::Nosing),
            self.height.map(FlightFact::Height),
            self.head.map(FlightFact::Head),
            self.between.map(FlightFact::Between),
            self.landing.map(FlightFact::Landing),
            self.fall.map(FlightFact::Fall),
        ];
        all.into_iter().flatten().collect()
    }

    /// This flight, what it was not told taken from another.
    pub fn or(self, other: Flight) -> Flight {
        Flight {
            risers: self.risers.or(other.risers),
            rise: self.rise.or(other.rise),
            tread: self.tread.or(other.tread),
            open: self.open.or(other.open),
            newels: self.newels.or(other.newels),
            lands: self.lands.or(other.lands),
            total_rise: self.total_rise.or(other.total_rise),
            total_run: self.total_run.or(other.total_run),
            nosing: self.nosing.or(other.nosing),
            height: self.height.or(other.height),
            head: self.head.or(other.head),
            between: self.between.or(other.between),
            landing: self.landing.or(other.landing),
            fall: self.fall.or(other.fall),
        }
    }
}

/// A stair opening in a run: guard on one or both sides of it, none across it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StairOpening {
    /// The stairs' width as told, between what `measure` says.
    pub width: Length,
    /// What the width was measured between. `None` takes the opening in the guard, or of
    /// stairs let into the deck the hole from decking to decking.
    pub measure: Option<StairMeasure>,
    /// Where it stands: the near edge of what was measured.
    pub at: StairAt,
    /// How deep the stairs are let into the deck; `None` where they start at its edge.
    pub recess: Option<Length>,
    /// What was told of this flight alone; see [`Job::flight`](super::Job::flight).
    pub flight: Flight,
}

impl StairOpening {
    /// Stairs that start at the deck's edge, told by their width and place alone.
    pub fn new(width: Length, at: StairAt) -> StairOpening {
        StairOpening { width, measure: None, at, recess: None, flight: Flight::default() }
    }

    /// The guard left and right of it in a run of that length, as far as either is known.
    pub fn flanks(&self, run: Option<Length>) -> (Option<Length>, Option<Length>) {
        let rest = run.map(|l| l - self.width);
        match self.at {
            StairAt::Middle => (rest.map(|l| l / 2), rest.map(|l| l / 2)),
            StairAt::FromLeft(off) => (Some(off), rest.map(|l| l - off)),
            StairAt::FromRight(off) => (rest.map(|l| l - off), Some(off)),
        }
    }
}

/// Where stairs were said to be, before the side they stand in was told.
#[derive(Clone, Debug, PartialEq)]
pub struct StairPlace {
    /// The side, by the name its run will bear.
    pub side: String,
    /// What they are hard by.
    pub by: Option<End>,
}

/// The stair openings of one run, in the order told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stairs(Vec<StairOpening>);

impl Stairs {
    /// No stairs.
    pub const NONE: Stairs = Stairs(Vec::new());

    /// True where there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// In the order told.
    pub fn iter(&self) -> std::slice::Iter<'_, StairOpening> {
        self.0.iter()
    }

    /// The one there is; `None` where there are none or several.
    pub fn only(&self) -> Option<&StairOpening> {
        if let [one] = &self.0[..] { Some(one) } else { None }
    }

    /// One more.
    pub fn push(&mut self, stairs: StairOpening) {
        self.0.push(stairs);
    }

    /// Another in place of the one told `at` that place in the order.
    pub fn put(&mut self, at: usize, stairs: StairOpening) {
        if let Some(slot) = self.0.get_mut(at) {
            *slot = stairs;
        }
    }

    /// Without the one told `at` that place in the order.
    pub fn without(mut self, at: usize) -> Stairs {
        if at < self.0.len() {
            self.0.remove(at);
        }
        self
    }

    /// From the left to the right in a run of that length; in the order told where a place
    /// hangs on a length nobody told.
    pub fn along(&self, run: Option<Length>) -> Vec<StairOpening> {
        let mut all = self.0.clone();
        let starts: Option<Vec<Length>> = all.iter().map(|s| s.flanks(run).0).collect();
        if starts.is_some() {
            all.sort_by_key(|s| s.flanks(run).0);
        }
        all
    }
}

impl From<StairOpening> for Stairs {
    fn from(one: StairOpening) -> Stairs {
        Stairs(vec![one])
    }
}

impl From<Vec<StairOpening>> for Stairs {
    fn from(all: Vec<StairOpening>) -> Stairs {
        Stairs(all)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn openings_stand_from_left_to_right_once_the_run_is_known() {
        let of = |at| StairOpening::new(Length::inches(36), at);
        let (middle, right, left) =
            (of(StairAt::Middle), of(StairAt::FromRight(Length::inches(12))), of(StairAt::FromLeft(Length::inches(6))));
        let told = Stairs::from(vec![middle, right, left]);
        assert_eq!(told.along(Some(Length::inches(240))), [left, middle, right]);
        assert_eq!(told.along(None), [middle, right, left]);
    }

    #[test]
    fn a_flight_keeps_its_own_facts_over_another() {
        let mut own = Flight::default();
        own.set(FlightFact::Risers(4));
        let mut all = Flight::default();
        all.set(FlightFact::Risers(5));
        all.set(FlightFact::Rise(Length::inches(7)));
        assert_eq!(own.or(all).facts(), [FlightFact::Risers(4), FlightFact::Rise(Length::inches(7))]);
    }
}

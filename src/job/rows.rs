//! The table's rows in the job: where each is kept when told, and the fact that tells it. One line a row, for both ways.

use super::{
    Fact, Fall, FlightFact, Foot, Job, LawTold, Local, LongPart, NotchTold, Order, Percent, PostRole, PostSize,
    RiserKind, Setting, Settings,
};
use crate::figure::{Fig, Value, Why};
use crate::measure::{Length, Q, q_from_decimal};
use crate::quantity::RowId;

/// A told row's value.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Told {
    Length(Length),
    Count(u64),
    Number(Q),
    Money(rust_decimal::Decimal),
}

impl Told {
    fn fig(self, row: RowId) -> Fig {
        let value = match self {
            Told::Length(l) => Value::Length(l),
            Told::Count(n) => Value::Count(n),
            Told::Number(q) => Value::Number(q),
            Told::Money(m) => Value::Money(m),
        };
        Fig::new(value, Why::Told(row.said()))
    }
}

/// Lengths: the row, where it is kept, the fact that tells it.
macro_rules! lengths {
    ($of:ty: $($row:ident, $kept:expr, $tell:expr;)+) => {
        fn kept(of: &$of, row: RowId) -> Option<Length> {
            match row {
                $(RowId::$row => { let kept: fn(&$of) -> Option<Length> = $kept; kept(of) })+
                _ => None,
            }
        }

        /// The fact that tells a row so long; `None` for a row that is no length told of the whole job by itself.
        fn tell(row: RowId, l: Length) -> Option<Fact> {
            match row {
                $(RowId::$row => { let tell: fn(Length) -> Fact = $tell; Some(tell(l)) })+
                _ => None,
            }
        }
    };
}

mod of_settings {
    use super::*;

    fn set(s: Setting) -> Fact {
        Fact::Set(s)
    }

    fn foot(f: Foot) -> Fact {
        Fact::Set(Setting::Foot(f))
    }

    fn asks(of: Local, l: Length) -> Fact {
        Fact::Set(Setting::Law(LawTold::Local(of, l)))
    }

    fn local(s: &Settings, of: Local) -> Option<Length> {
        s.law.local.iter().find(|(o, _)| *o == of).map(|(_, l)| *l)
    }

    fn wide(role: PostRole, l: Length) -> Fact {
        set(Setting::Post(role, PostSize::Width(l)))
    }

    fn post(s: &Settings, role: PostRole) -> Option<Length> {
        s.post(role).and_then(PostSize::width)
    }

    lengths! { Settings:
        HeightTop, |s| s.height_top, |l| set(Setting::HeightTop(l));
        GapUnder, |s| s.gap_under, |l| set(Setting::GapUnder(l));
        BalusterWidth, |s| s.baluster, |l| set(Setting::Baluster(l));
        GapMax, |s| s.gap_max, |l| set(Setting::GapMax(l));
        ClearMax, |s| s.clear_max, |l| set(Setting::ClearMax(l));
        CentreMax, |s| s.centre_max, |l| set(Setting::CentreMax(l));
        Grade, |s| s.grade, |l| set(Setting::Grade(l));
        PostWidth, |s| post(s, PostRole::Line), |l| wide(PostRole::All, l);
        CornerPostWidth, |s| post(s, PostRole::Corner), |l| wide(PostRole::Corner, l);
        EndPostWidth, |s| post(s, PostRole::End), |l| wide(PostRole::End, l);
        GatePostWidth, |s| post(s, PostRole::Gate), |l| wide(PostRole::Gate, l);
        StairPostWidth, |s| post(s, PostRole::Stair), |l| wide(PostRole::Stair, l);
        Overhang, |s| s.overhang, |l| set(Setting::Overhang(l));
        Skirt, |s| s.skirt, |l| set(Setting::Skirt(l));
        Rim, |s| s.rim, |l| set(Setting::Rim(l));
        Line, |s| s.line, |l| set(Setting::Line(l));
        HoldBack, |s| s.hold_back, |l| set(Setting::HoldBack(l));
        Joists, |s| s.joists, |l| set(Setting::Joists(l));
        FirstJoist, |s| s.first_joist, |l| set(Setting::FirstJoist(l));
        NotchDepth, |s| match s.notch { Some(NotchTold::Deep(l)) => Some(l), _ => None }, |l| set(Setting::Notch(NotchTold::Deep(l)));
        Decking, |s| s.foot.decking, |l| foot(Foot::Decking(l));
        RimTall, |s| s.foot.rim_tall, |l| foot(Foot::RimTall(l));
        Cap, |s| s.foot.cap, |l| foot(Foot::Cap(l));
        Above, |s| s.foot.above, |l| foot(Foot::Above(l));
        Blade, |s| s.foot.blade, |l| foot(Foot::Blade(l));
        Bolt, |s| s.foot.bolt, |l| foot(Foot::Bolt(l));
        RailNotch, |s| s.foot.rail_notch, |l| foot(Foot::RailNotch(l));
        LocalHeight, |s| local(s, Local::Height), |l| asks(Local::Height, l);
        LocalGap, |s| local(s, Local::Gap), |l| asks(Local::Gap, l);
        LocalDrop, |s| local(s, Local::Drop), |l| asks(Local::Drop, l);
    }

    pub(super) fn told(s: &Settings, row: RowId) -> Option<Length> {
        kept(s, row)
    }

    pub(super) fn fact(row: RowId, l: Length) -> Option<Fact> {
        tell(row, l)
    }
}

mod of_job {
    use super::*;

    fn flight(f: FlightFact) -> Fact {
        Fact::Flight(f)
    }

    lengths! { Job:
        DeckSide, |j| j.deck_along, Fact::DeckAlong;
        DeckAlong, |j| j.deck_along, Fact::DeckAlong;
        DeckOut, |j| j.deck_out, Fact::DeckOut;
        StairWidth, |j| j.stair_width, Fact::StairWidth;
        Rise, |j| j.flight.rise, |l| flight(FlightFact::Rise(l));
        Tread, |j| j.flight.tread, |l| flight(FlightFact::Tread(l));
        TotalRise, |j| j.flight.total_rise, |l| flight(FlightFact::TotalRise(l));
        TotalRun, |j| j.flight.total_run, |l| flight(FlightFact::TotalRun(l));
        Nosing, |j| j.flight.nosing, |l| flight(FlightFact::Nosing(l));
        StairHeight, |j| j.flight.height, |l| flight(FlightFact::Height(l));
        Landing, |j| j.flight.landing, |l| flight(FlightFact::Landing(l));
        OpenRiser, |j| match j.flight.between { Some(RiserKind::Opening(l)) => Some(l), _ => None },
            |l| flight(FlightFact::Between(RiserKind::Opening(l)));
        BalusterLength, |j| j.order.cut(LongPart::Baluster), |l| Fact::Order(Order::Cut(LongPart::Baluster, l));
        PostLength, |j| j.order.cut(LongPart::Post), |l| Fact::Order(Order::Cut(LongPart::Post, l));
        Bracket, |j| j.order.bracket, |l| Fact::Order(Order::Bracket(l));
        Kerf, |j| j.order.kerf, |l| Fact::Order(Order::Kerf(l));
    }

    pub(super) fn told(j: &Job, row: RowId) -> Option<Length> {
        kept(j, row)
    }

    pub(super) fn fact(row: RowId, l: Length) -> Option<Fact> {
        tell(row, l)
    }
}

impl Settings {
    /// A row of the settings as told; `None` where nobody told it, or it is no length of theirs.
    pub fn told(&self, row: RowId) -> Option<Fig> {
        of_settings::told(self, row).map(|l| Told::Length(l).fig(row))
    }
}

impl Job {
    /// A row of the whole job as told, with its reason; `None` where nobody told it.
    pub fn told(&self, row: RowId) -> Option<Fig> {
        let length = || of_job::told(self, row).map(Told::Length);
        let other = match row {
            RowId::Risers => self.flight.risers.map(|n| Told::Count(u64::from(n))),
            RowId::Spares => self.order.spares.map(|n| Told::Count(u64::from(n))),
            RowId::Waste => self.percent(Percent::Waste),
            RowId::Tax => self.percent(Percent::Tax),
            RowId::Markup => self.percent(Percent::Markup),
            RowId::Labor => self.order.labour.map(Told::Money),
            RowId::Fall => self.fall().map(|f| Told::Length(f.by)),
            RowId::FallOver => self.fall().map(|f| Told::Length(f.over)),
            _ => None,
        };
        let figure = || self.figures.get(&row).map(|value| Fig::new(*value, Why::Told(row.said())));
        self.settings.told(row).or_else(|| other.or_else(length).map(|told| told.fig(row))).or_else(figure)
    }

    /// How the ground falls: the steepest of what was told of all stairs and of each.
    fn fall(&self) -> Option<Fall> {
        let each = self.runs.iter().flat_map(|r| r.stairs.iter()).filter_map(|s| s.flight.fall);
        self.flight.fall.into_iter().chain(each).max_by_key(|f| f.by.ratio(f.over))
    }

    fn percent(&self, of: Percent) -> Option<Told> {
        self.order.percent(of).and_then(q_from_decimal).map(Told::Number)
    }
}

impl Fact {
    /// The fact that tells a row of the whole job; `None` for a row that is not told by itself, or not with such a value.
    pub fn of(row: RowId, value: Value) -> Option<Fact> {
        Fact::kept(row, value).or_else(|| row.stands_alone(value).then_some(Fact::Row(row, value)))
    }

    /// The fact that tells a row a part of the job keeps.
    fn kept(row: RowId, value: Value) -> Option<Fact> {
        match (row, value) {
            (_, Value::Length(l)) => of_settings::fact(row, l).or_else(|| of_job::fact(row, l)),
            (RowId::Risers, Value::Count(n)) => u16::try_from(n).ok().map(|n| Fact::Flight(FlightFact::Risers(n))),
            (RowId::Spares, Value::Count(n)) => u16::try_from(n).ok().map(|n| Fact::Order(Order::Spares(n))),
            (RowId::Labor, Value::Money(m)) => Some(Fact::Order(Order::Labour(m))),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Kind, ROWS};

    /// A length in the middle of what a row takes.
    fn some(row: RowId) -> Length {
        let (lo, hi) = row.row().usual;
        Length::sixteenths(lo.max(8) + (hi.min(lo + 160) - lo.max(8)) / 2)
    }

    #[test]
    fn what_is_told_of_a_row_stands_in_it() {
        let mut seen = 0;
        for row in ROWS.iter().filter(|r| r.kind == Kind::Length) {
            let value = Value::Length(some(row.id));
            let Some(fact) = Fact::of(row.id, value) else { continue };
            let job = Job::default().with(&fact).unwrap_or_else(|e| panic!("{}: {e:?}", row.name));
            assert_eq!(job.told(row.id).map(|f| f.value()), Some(value), "{}", row.name);
            seen += 1;
        }
        assert!(seen > 40, "{seen}");
    }

    #[test]
    fn what_nobody_told_is_not_told() {
        for row in ROWS {
            assert_eq!(Job::default().told(row.id), None, "{}", row.name);
        }
    }
}

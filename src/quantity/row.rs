//! What a row of the table says of its quantity.

use super::RowId;
use crate::figure::{Unit, Value};
use crate::limits::{Limit, Sense};
use crate::measure::{Length, Number, Q};
use num_rational::Ratio;

/// The thing a quantity belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Owner {
    /// The guard as a whole.
    Guard,
    /// The ground below the deck.
    Ground,
    /// The deck and its framing.
    Deck,
    /// One run of guard.
    Run,
    /// A bay: what lies between two posts.
    Bay,
    /// Posts.
    Post,
    /// A post's foot: its notch, its leg, its bolts.
    Foot,
    /// The rails and the cap.
    Rail,
    /// The balusters.
    Baluster,
    /// The stairs: their opening and their flight.
    Stairs,
    /// A gate.
    Gate,
    /// The wood, and what it carries.
    Wood,
    /// Whose rules hold.
    Law,
    /// Sticks, pieces and money.
    Order,
}

/// What kind of value a quantity takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A length.
    Length,
    /// A whole number of things.
    Count,
    /// A plain number: a ratio, a share.
    Number,
    /// Degrees.
    Angle,
    /// Pounds of force.
    Force,
    /// Money.
    Money,
    /// Parts of a hundred.
    Percent,
    /// A nominal size of lumber.
    Lumber,
    /// A place along the guard: an end, a side, a spot.
    Place,
    /// One of a few words.
    Choice,
    /// Words of the builder's own.
    Text,
}

/// Which unit a bare number takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BareUnit {
    /// Always inches.
    Inches,
    /// Feet up to and with the first number, inches from the second; between them, ask.
    FeetTo(i128, i128),
}

/// What is taken where nobody told a quantity.
#[derive(Clone, Copy, Debug)]
pub enum Default {
    /// Nothing: it is asked for.
    None,
    /// A default or a limit with its reason; the limit as it holds for the job.
    Limit(&'static Limit),
    /// The dressed thickness of lumber whose nominal thickness the limit gives.
    Thick(&'static Limit),
    /// The dressed width of square lumber of the nominal size the limit gives.
    Wide(&'static Limit),
}

/// Which way a value told of a row is enough, beside the figure that follows from the rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Enough {
    /// Neither: it is that or it is not.
    Just,
    /// No less than what this row comes to: a stick for what is cut of it, posts for a run.
    Holds(RowId),
    /// What follows from the rest is no less than it: a height to be reached.
    Reached,
}

/// What is asked of several values of one row.
#[derive(Clone, Copy, Debug)]
pub enum Alike {
    /// Nothing.
    Any,
    /// The largest is no more than the limit over the smallest.
    Within(&'static Limit),
    /// They are the same: the diagonals of what is square (common practice, no source).
    Square,
}

/// One quantity that can be told or asked.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// Its id.
    pub id: RowId,
    /// What it belongs to.
    pub owner: Owner,
    /// What kind of value it takes.
    pub kind: Kind,
    /// What it is called in talk, without an article.
    pub name: &'static str,
    /// What is said behind its figure in a sentence, in its name's stead: "on center"; empty where its name stands before it.
    pub behind: &'static str,
    /// Other words it goes by, parted by commas.
    pub nouns: &'static str,
    /// How it is asked for, parted by commas: "how wide".
    pub asked: &'static str,
    /// The least and most taken, in whole inches or whole units: outside it is a slip of the tongue.
    pub sane: (i64, i64),
    /// The least and most that is usual (common practice, no source), in sixteenths of an inch or of a unit.
    pub usual: (i64, i64),
    /// The unit of a bare number (common practice, no source).
    pub bare: BareUnit,
    /// True where nothing at all is a fact like any other: "no skirt".
    pub may_be_nothing: bool,
    /// The limit it is held to.
    pub limit: Option<&'static Limit>,
    /// A second one: the other end of a range.
    pub also: Option<&'static Limit>,
    /// How it is held to its limit, where that is not as the limit itself says.
    pub sense: Option<Sense>,
    /// The rows never left out where this one is said: a count's gap, a riser count's riser. A word on this row is a word on those of them
    /// that have a limit, where it has none itself.
    pub beside: &'static [RowId],
    /// Which way a value told of it is enough.
    pub enough: Enough,
    /// What is asked of several values of it.
    pub alike: Alike,
    /// What is taken where nobody told it.
    pub default: Default,
    /// Its plain phrase, `{}` for the value; empty where it is not told by itself.
    pub plain: &'static str,
    /// Its name in the JSON contract; empty where it has none.
    pub json: &'static str,
}

impl Row {
    /// True where its value is no figure: a size, a place, a choice, words.
    pub fn is_words(&self) -> bool {
        matches!(self.kind, Kind::Lumber | Kind::Place | Kind::Choice | Kind::Text)
    }

    /// The limits it is held to, each with how.
    pub fn limits(&self) -> impl Iterator<Item = (&'static Limit, Sense)> {
        let first = self.limit.map(|l| (l, self.sense.unwrap_or(l.sense)));
        first.into_iter().chain(self.also.map(|l| (l, l.sense)))
    }

    /// A row of the table before its particulars. The table's own macro puts the id in.
    pub(super) const fn new(owner: Owner, kind: Kind, name: &'static str) -> Row {
        Row {
            id: RowId::FIRST,
            owner,
            kind,
            name,
            behind: "",
            nouns: "",
            asked: "",
            sane: (0, 2400),
            usual: (0, 2400 * 16),
            bare: BareUnit::Inches,
            may_be_nothing: false,
            limit: None,
            also: None,
            sense: None,
            beside: &[],
            enough: Enough::Just,
            alike: Alike::Any,
            default: Default::None,
            plain: "",
            json: "",
        }
    }

    /// A row that takes a length between two whole inches.
    pub(super) const fn length(owner: Owner, name: &'static str, lo: i64, hi: i64) -> Row {
        let row = Row::new(owner, Kind::Length, name).asks("how long");
        Row { sane: (lo, hi), usual: (lo * 16, hi * 16), ..row }
    }

    /// A row that takes a count between two numbers.
    pub(super) const fn count(owner: Owner, name: &'static str, lo: i64, hi: i64) -> Row {
        let row = Row::new(owner, Kind::Count, name).asks("how many");
        Row { sane: (lo, hi), usual: (lo * 16, hi * 16), ..row }
    }

    /// A row that takes one of a few words.
    pub(super) const fn choice(owner: Owner, name: &'static str) -> Row {
        Row::new(owner, Kind::Choice, name)
    }

    pub(super) const fn behind(self, behind: &'static str) -> Row {
        Row { behind, ..self }
    }

    pub(super) const fn nouns(self, nouns: &'static str) -> Row {
        Row { nouns, ..self }
    }

    pub(super) const fn asks(self, asked: &'static str) -> Row {
        Row { asked, ..self }
    }

    /// The usual range, in sixteenths.
    pub(super) const fn usual(self, lo: i64, hi: i64) -> Row {
        Row { usual: (lo, hi), ..self }
    }

    pub(super) const fn feet(self, feet: i128, inches: i128) -> Row {
        Row { bare: BareUnit::FeetTo(feet, inches), ..self }
    }

    pub(super) const fn or_nothing(self) -> Row {
        Row { may_be_nothing: true, ..self }
    }

    pub(super) const fn held_to(self, limit: &'static Limit) -> Row {
        Row { limit: Some(limit), ..self }
    }

    /// A second limit: the other end of a range.
    pub(super) const fn and_to(self, also: &'static Limit) -> Row {
        Row { also: Some(also), ..self }
    }

    /// Held to its limit another way than the limit says.
    pub(super) const fn as_a(self, sense: Sense) -> Row {
        Row { sense: Some(sense), ..self }
    }

    pub(super) const fn beside(self, beside: &'static [RowId]) -> Row {
        Row { beside, ..self }
    }

    pub(super) const fn enough(self, enough: Enough) -> Row {
        Row { enough, ..self }
    }

    pub(super) const fn alike(self, alike: Alike) -> Row {
        Row { alike, ..self }
    }

    pub(super) const fn else_taken(self, default: Default) -> Row {
        Row { default, ..self }
    }

    pub(super) const fn plain(self, plain: &'static str) -> Row {
        Row { plain, ..self }
    }

    pub(super) const fn json(self, json: &'static str) -> Row {
        Row { json, ..self }
    }
}

impl RowId {
    /// The lengths a bare number may be in this row, likeliest first; two mean "ask".
    pub fn bare(self, n: Number) -> Vec<Length> {
        let inches = |q: Q| Length::from_q(q);
        let feet = |q: Q| Length::from_q(q * Ratio::from_integer(12));
        let lengths = match self.row().bare {
            BareUnit::Inches => vec![inches(n.value)],
            BareUnit::FeetTo(..) if n.fraction => vec![inches(n.value)],
            BareUnit::FeetTo(f, _) if n.value <= Ratio::from_integer(f) => vec![feet(n.value)],
            BareUnit::FeetTo(_, i) if n.value >= Ratio::from_integer(i) => vec![inches(n.value)],
            BareUnit::FeetTo(..) => vec![inches(n.value), feet(n.value)],
        };
        lengths.into_iter().flatten().collect()
    }

    /// True for a value the row takes and that may be told by itself. What changes where guard, posts or openings stand is no figure by
    /// itself: it is told of the run it belongs to. Nor is what is told as another row or fact: the gap that holds follows from the gap
    /// limit, a fall is told with the distance it falls over, and the risers that ask for a handrail are the risers.
    pub fn stands_alone(self, value: Value) -> bool {
        use RowId::{BaysTold, BumpAlong, BumpOut, KeepOff, KeptSides, Nth, PostAt, PostNth, Recess};
        use RowId::{Fall, FallOver, GapLimit, HandrailRisers, StairGapLimit};
        let placed =
            matches!(self, BaysTold | BumpAlong | BumpOut | KeepOff | KeptSides | Nth | PostAt | PostNth | Recess);
        let told_as_another = matches!(self, Fall | FallOver | GapLimit | HandrailRisers | StairGapLimit);
        !placed && !told_as_another && self.row().owner != Owner::Run && self.holds(value)
    }

    /// True where the value is of the row's kind and in its range.
    pub fn holds(self, value: Value) -> bool {
        let row = self.row();
        match (row.kind, value) {
            (Kind::Length, Value::Length(l)) => self.takes(l),
            (Kind::Count, Value::Count(n)) => i64::try_from(n).is_ok_and(|n| n >= row.sane.0 && n <= row.sane.1),
            (Kind::Number | Kind::Percent, Value::Number(_)) | (Kind::Money, Value::Money(_)) => true,
            (Kind::Angle, Value::Quantity(_, Unit::Degrees)) | (Kind::Force, Value::Quantity(_, Unit::Pounds)) => true,
            _ => false,
        }
    }

    /// True when the length lies in the row's sane range.
    pub fn takes(self, l: Length) -> bool {
        let row = self.row();
        let (lo, hi) = row.sane;
        (l.is_positive() || row.may_be_nothing) && l >= Length::inches(lo) && l <= Length::inches(hi)
    }
}

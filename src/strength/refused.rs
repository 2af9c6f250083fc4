//! What is not judged, as data: the caller words it.

use crate::job::{Grade, Species};
use crate::measure::Lumber;

/// Why there is no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// No size of lumber the tables hold.
    NotLumber(Lumber),
    /// Thinner than the tables begin: 2 in. nominal.
    TooThin(Lumber),
    /// No row for that wood in that size.
    NoValues(Species, Grade, Lumber),
    /// A load duration barred for wood pressure-treated with waterborne preservative.
    NotTreated,
    /// A span outside the range judged, in whole inches: from, to.
    Span(i64, i64),
    /// A guard's height outside the range judged, in whole inches: from, to.
    Height(i64, i64),
    /// A sag past what the small-sag formula can say: past a tenth of the span.
    SagPast,
    /// A notch that leaves nothing.
    NothingLeft,
    /// A rim too shallow for two bolts at their edge distances.
    RimTooShallow,
    /// The numbers ran past what can be carried exactly.
    PastNumbers,
}

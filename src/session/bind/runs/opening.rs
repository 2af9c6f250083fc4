//! Openings in a run as they are said: stairs and gates, each with its own width, place and distance.

use super::place::{jamb, swing};
use crate::figure::Value;
use crate::job::Hung;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::session::bind::told::Says;

/// What an opening is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::session::bind) enum Kind {
    Stairs,
    Gate,
}

/// The opening a row is of; `None` for any other row.
pub(super) fn kind(row: RowId) -> Option<Kind> {
    use RowId::{GateAt, GateOpening, GateWidth, Hinge, Latch, StairAt, StairWidth, Swing};
    match row {
        GateAt | GateWidth | GateOpening | Hinge | Latch | Swing => Some(Kind::Gate),
        StairAt | StairWidth => Some(Kind::Stairs),
        _ => None,
    }
}

/// An opening: stairs or a gate.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Opening {
    pub kind: Kind,
    pub width: Option<Length>,
    /// Where it stands, as said: "front", "middle".
    pub at: Vec<String>,
    pub off: Option<Length>,
    pub off_from: Option<String>,
    /// So much further along than it stands.
    pub further: Option<Length>,
    /// How a gate's leaf is hung.
    pub hung: Hung,
    /// None of it any more.
    pub none: bool,
}

impl Opening {
    fn new(kind: Kind) -> Opening {
        let (at, hung) = (Vec::new(), Hung::default());
        Opening { kind, width: None, at, off: None, off_from: None, further: None, hung, none: false }
    }

    /// True where nothing says where it stands.
    pub fn is_unplaced(&self) -> bool {
        self.at.is_empty() && self.off.is_none() && self.off_from.is_none() && self.further.is_none()
    }
}

/// The openings of one run, and a distance said before the opening it is of.
#[derive(Clone, Debug, Default)]
pub(super) struct Openings {
    all: Vec<Opening>,
    off: Option<Length>,
    off_from: Option<String>,
}

impl Openings {
    /// The openings these rows tell, in the order said; `None` where a distance has no opening of its own.
    pub(super) fn of(said: &[(RowId, Says)]) -> Option<Vec<Opening>> {
        let mut openings = Openings::default();
        for (row, what) in said {
            let leads = kind(*row).is_some_and(|k| places_lead(said, k));
            openings.take(*row, what, leads)?;
        }
        openings.done()
    }

    fn take(&mut self, row: RowId, said: &Says, leads: bool) -> Option<()> {
        match (row, said) {
            (RowId::StairAt, Says::Nothing) => self.last(Kind::Stairs, |_| false).none = true,
            (RowId::GateAt, Says::Nothing) => self.last(Kind::Gate, |_| false).none = true,
            (RowId::StairWidth | RowId::GateWidth | RowId::GateOpening, Says::Value(Value::Length(l))) => {
                self.last(kind(row)?, |o| o.width.is_some()).width = Some(*l);
            }
            (RowId::StairAt | RowId::GateAt, Says::Word(place)) => {
                self.last(kind(row)?, |o| leads && o.width.is_some()).at.push(place.clone());
            }
            // A thing that is named is there: where it stands is for its run to say.
            (RowId::StairAt | RowId::GateAt, Says::Named) => _ = self.last(kind(row)?, |_| false),
            (RowId::Hinge, Says::Word(side)) => self.last(Kind::Gate, |_| false).hung.hinge = Some(jamb(side)?),
            (RowId::Latch, Says::Word(side)) => self.last(Kind::Gate, |_| false).hung.latch = Some(jamb(side)?),
            (RowId::Swing, Says::Word(way)) => self.last(Kind::Gate, |_| false).hung.swing = Some(swing(way)?),
            (RowId::Offset, Says::Value(Value::Length(l))) => return self.distance(*l),
            (RowId::Offset, Says::Change(Value::Length(l))) => self.spoken_of().further = Some(*l),
            (RowId::OffsetFrom, Says::Word(place)) => self.origin(place),
            _ => return None,
        }
        Some(())
    }

    /// The opening of a kind said last, a new one where that is full.
    fn last(&mut self, kind: Kind, full: impl Fn(&Opening) -> bool) -> &mut Opening {
        let at = self.all.iter().rposition(|o| o.kind == kind).filter(|at| !full(&self.all[*at]));
        let at = at.unwrap_or_else(|| {
            let (off, off_from) = (self.off.take(), self.off_from.take());
            self.all.push(Opening { off, off_from, ..Opening::new(kind) });
            self.all.len() - 1
        });
        &mut self.all[at]
    }

    /// The opening said last of any kind; stairs where none was.
    fn spoken_of(&mut self) -> &mut Opening {
        if self.all.is_empty() {
            self.all.push(Opening::new(Kind::Stairs));
        }
        let last = self.all.len() - 1;
        &mut self.all[last]
    }

    /// A distance is of the opening said last, or where that has one of the next.
    fn distance(&mut self, l: Length) -> Option<()> {
        match self.all.last_mut() {
            Some(open) if open.off.is_none() && open.further.is_none() => open.off = Some(l),
            // Two distances of one opening may not agree.
            _ if self.off.is_some() => return None,
            _ => self.off = Some(l),
        }
        Some(())
    }

    fn origin(&mut self, place: &str) {
        match self.all.last_mut() {
            Some(open) if self.off.is_none() => open.off_from = Some(place.to_owned()),
            _ => self.off_from = Some(place.to_owned()),
        }
    }

    fn done(mut self) -> Option<Vec<Opening>> {
        let (off, off_from) = (self.off.take(), self.off_from.take());
        if off.is_some() || off_from.is_some() {
            // A distance alone is of the stairs; behind an opening that has one it is nobody's.
            self.all.is_empty().then_some(())?;
            self.all.push(Opening { off, off_from, ..Opening::new(Kind::Stairs) });
        }
        Some(self.all)
    }
}

/// True where the places of these openings stand before their widths.
fn places_lead(said: &[(RowId, Says)], of: Kind) -> bool {
    let first = said.iter().find(|(row, _)| kind(*row) == Some(of)).map(|(row, _)| *row);
    matches!(first, Some(RowId::StairAt | RowId::GateAt))
}

//! One flight, told any way: what follows from what was told, what is untold, what disagrees.
//!
//! Total rise = risers x riser; total run = treads x tread. Hung one riser down there is a
//! tread less than risers.

pub use super::told::{Clash, Ground, Head, Lack, Told, Unready};
use super::{Rake, ceiling, counted, inches, times, whole, worked};
use crate::figure::{Fig, Value, Why};
use crate::limits::{self, Limit};
use crate::measure::{Length, Q};

/// More risers than any flight here has: the search stops.
const MOST_RISERS: u16 = 60;
/// A told riser or tread may be off by half a sixteenth, as a tape reads.
const SLACK: (i128, i128) = (1, 32);

/// A flight worked out as far as what was told goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Flight {
    /// How many risers.
    pub risers: Fig,
    /// One riser.
    pub rise: Fig,
    /// All of them.
    pub total_rise: Fig,
    /// How many treads.
    pub treads: Fig,
    /// The treads, where one or the run was told.
    pub going: Option<Going>,
    /// Defaults taken, to be said.
    pub taken: Vec<&'static Limit>,
}

/// The level side of a flight.
#[derive(Clone, Debug, PartialEq)]
pub struct Going {
    /// One tread.
    pub tread: Fig,
    /// All of them: from the decking's nosing to the lowest.
    pub run: Fig,
}

/// Works a flight out.
pub fn work_out(told: &Told) -> Result<Flight, Unready> {
    let mut taken = Vec::new();
    let head = told.head.unwrap_or_else(|| {
        taken.push(&limits::HUNG_ONE_DOWN);
        Head::OneDown
    });
    let (risers, rise, total_rise) = climb(told, head, &mut taken)?;
    let n = count(&risers);
    let treads = tread_count(&risers, head);
    let going = going(told, &treads)?;
    let flight = Flight { risers, rise, total_rise, treads, going, taken };
    match flight.rake() {
        Some(rake) if n > 0 && rake.is_ladder() => Err(Clash::Ladder(rake.angle()).into()),
        _ => Ok(flight),
    }
}

fn count(f: &Fig) -> u16 {
    match f.value() {
        Value::Count(n) => u16::try_from(n).unwrap_or(u16::MAX),
        _ => 0,
    }
}

fn told_count(n: u16) -> Fig {
    Fig::count(u64::from(n), Why::Told("the risers"))
}

fn tread_count(risers: &Fig, head: Head) -> Fig {
    let n = count(risers);
    let from = || vec![("risers", risers.clone())];
    match head {
        Head::OneDown => counted(n.saturating_sub(1), "risers less one: the decking is the last tread", from()),
        Head::Flush => counted(n, "as many as risers: the top tread is flush with the decking", from()),
    }
}

/// Risers, one riser and all of them.
fn climb(told: &Told, head: Head, taken: &mut Vec<&'static Limit>) -> Result<(Fig, Fig, Fig), Unready> {
    let rise = told.rise.map(|l| Fig::told(l, "the riser"));
    match (told.risers, rise) {
        (Some(0), _) => Err(Unready::Untold(Lack::Rise)),
        (Some(n), _) if n > MOST_RISERS => Err(Clash::TooMany.into()),
        (Some(n), Some(rise)) => by_count_and_rise(n, rise, total(told)),
        (Some(n), None) => {
            let total = total(told).map_or_else(|| at_the_foot(told, head, n), Ok)?;
            Ok(parted(told_count(n), total))
        }
        (None, Some(rise)) => by_total_and_rise(rise, total(told)),
        (None, None) => {
            taken.push(&limits::RISER_MOST);
            fewest(told, head)
        }
    }
}

/// The total rise told, or the decking above level ground.
fn total(told: &Told) -> Option<Fig> {
    let level = told.ground.as_ref().filter(|g| g.fall == whole(0)).map(|g| g.above);
    let from_ground = || level.map(|l| Fig::told(l, "the decking above level ground"));
    told.total_rise.map(|l| Fig::told(l, "the total rise")).or_else(from_ground)
}

fn parted(risers: Fig, total: Fig) -> (Fig, Fig, Fig) {
    let each = inches(&total) / i64::from(count(&risers).max(1));
    let rise = worked(each, "total rise over risers", vec![("total rise", total.clone()), ("risers", risers.clone())]);
    (risers, rise, total)
}

fn by_count_and_rise(n: u16, rise: Fig, total: Option<Fig>) -> Result<(Fig, Fig, Fig), Unready> {
    let risers = told_count(n);
    let makes =
        worked(times(inches(&rise), n), "risers x riser", vec![("risers", risers.clone()), ("riser", rise.clone())]);
    let Some(total) = total else { return Ok((risers, rise, makes)) };
    match apart(&makes, &total, n) {
        None => Ok(parted(risers, total)),
        Some(by) => Err(Clash::Rise { makes, told: total, by }.into()),
    }
}

/// By how much two figures differ, past what reading a tape `n` times may do.
fn apart(makes: &Fig, told: &Fig, n: u16) -> Option<Fig> {
    let (a, b) = (inches(makes), inches(told));
    let by = if a > b { a - b } else { b - a };
    let slack = times(Length::new(SLACK.0, SLACK.1).unwrap_or(Length::ZERO), n);
    let from = vec![("they make", makes.clone()), ("told", told.clone())];
    (by > slack).then(|| worked(by, "the difference", from))
}

fn by_total_and_rise(rise: Fig, total: Option<Fig>) -> Result<(Fig, Fig, Fig), Unready> {
    let total = total.ok_or(Unready::Untold(Lack::Rise))?;
    let goes = inches(&total).ratio(inches(&rise)).unwrap_or_else(|| whole(0));
    let nearest = ceiling(goes - Q::new(1, 2)).filter(|n| *n <= MOST_RISERS).ok_or(Clash::TooMany)?.max(1);
    let from = || vec![("total rise", total.clone()), ("riser", rise.clone())];
    let risers = |n| counted(n, "total rise over riser", from());
    let makes = worked(times(inches(&rise), nearest), "risers x riser", vec![("riser", rise.clone())]);
    if apart(&makes, &total, nearest).is_none() {
        return Ok(parted(risers(nearest), total));
    }
    let fewer = u16::try_from(goes.floor().to_integer()).unwrap_or(1).max(1);
    let each = |n| {
        let (risers, rise, _) = parted(risers(n), total.clone());
        (risers, rise)
    };
    Err(Clash::NotWhole { fewer: each(fewer), more: each(fewer + 1), total, rise }.into())
}

/// The fewest risers the published limit allows, on level or falling ground.
fn fewest(told: &Told, head: Head) -> Result<(Fig, Fig, Fig), Unready> {
    let most = Fig::limit(&limits::RISER_MOST);
    let why = "the fewest risers that are no more than the limit each";
    if let Some(total) = total(told) {
        let goes = inches(&total).ratio(inches(&most)).unwrap_or_else(|| whole(0));
        let n = ceiling(goes).filter(|n| (1..=MOST_RISERS).contains(n)).ok_or(Clash::TooMany)?;
        return Ok(parted(counted(n, why, vec![("total rise", total.clone()), ("most riser", most)]), total));
    }
    // On falling ground each riser more moves the foot out and down: the first count that holds.
    let slope = told.ground.as_ref().ok_or(Unready::Untold(Lack::Rise))?;
    for n in 1..=MOST_RISERS {
        let total = at_the_foot(told, head, n)?;
        if inches(&total).is_positive() && inches(&total) <= times(inches(&most), n) {
            let fall = Fig::new(Value::Number(slope.fall), Why::Told("the ground's fall for each inch out"));
            let from = vec![("rise at the foot", total.clone()), ("fall", fall), ("most riser", most)];
            return Ok(parted(counted(n, why, from), total));
        }
    }
    Err(Clash::NeverLands.into())
}

/// The rise at the foot of so many risers on falling ground.
fn at_the_foot(told: &Told, head: Head, n: u16) -> Result<Fig, Unready> {
    let ground = told.ground.as_ref().ok_or(Unready::Untold(Lack::Rise))?;
    let treads = if head == Head::OneDown { n.saturating_sub(1) } else { n };
    let run = match (told.tread, told.total_run) {
        (_, Some(run)) => run,
        (Some(tread), None) => times(tread, treads),
        (None, None) => return Err(Unready::Untold(Lack::Tread)),
    };
    let fall = run.times(ground.fall).unwrap_or(Length::ZERO);
    let from = vec![
        ("above the ground at the head", Fig::told(ground.above, "the decking above the ground")),
        ("out to the foot", Fig::told(run, "treads x tread")),
    ];
    Ok(worked(ground.above + fall, "above the ground at the head + what it falls out to the foot", from))
}

fn going(told: &Told, treads: &Fig) -> Result<Option<Going>, Unready> {
    let n = count(treads);
    let tread = told.tread.map(|l| Fig::told(l, "the tread"));
    let run = told.total_run.map(|l| Fig::told(l, "the total run"));
    let by_tread = |tread: &Fig| {
        let from = vec![("treads", treads.clone()), ("tread", tread.clone())];
        worked(times(inches(tread), n), "treads x tread", from)
    };
    Ok(match (tread, run) {
        (None, None) => None,
        (Some(tread), None) => Some(Going { run: by_tread(&tread), tread }),
        (None, Some(run)) => Some(Going {
            tread: worked(
                inches(&run) / i64::from(n.max(1)),
                "total run over treads",
                vec![("total run", run.clone()), ("treads", treads.clone())],
            ),
            run,
        }),
        (Some(tread), Some(run)) => {
            let makes = by_tread(&tread);
            if let Some(by) = apart(&makes, &run, n) {
                return Err(Clash::Run { makes, told: run, by }.into());
            }
            Some(Going { tread, run })
        }
    })
}

impl Flight {
    /// How many risers.
    pub fn riser_count(&self) -> u16 {
        count(&self.risers)
    }

    /// How many treads.
    pub fn tread_count(&self) -> u16 {
        count(&self.treads)
    }

    /// The slope, where the tread is known.
    pub fn rake(&self) -> Option<Rake> {
        Rake::new(self.rise.clone(), self.going.as_ref()?.tread.clone())
    }

    /// The nosing line's length, from the topmost nosing to the lowest: the decking's, or that of
    /// a top tread flush with it, which lies a tread further out.
    pub fn slope_length(&self) -> Option<Fig> {
        let going = self.going.as_ref()?;
        let flush = self.tread_count() == self.riser_count();
        let from = || vec![("total run", going.run.clone()), ("tread", going.tread.clone())];
        let below = || worked(inches(&going.run) - inches(&going.tread), "total run less the flush tread", from());
        let level = if flush { below() } else { going.run.clone() };
        Some(self.rake()?.along(&level))
    }
}

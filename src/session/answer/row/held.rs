//! The limits a row is held to, as they hold for a job: published, a place's, the pool's, told. A told one never takes the published away.

use crate::figure::{Fig, Unit, Value, Why};
use crate::gate::gap;
use crate::job::Job;
use crate::limits::{self, Limit, Sense};
use crate::measure::{Length, Lumber};
use crate::provide;
use crate::quantity::RowId;
use crate::reply::Style;
use crate::solve::{Given, Source, choice, in_force, known, limit_length, told_instead};

/// One limit a row's figure is held to.
pub(super) struct Held {
    /// The limit's figure.
    pub most: Fig,
    /// How the figure is held to it.
    pub sense: Sense,
    /// Where it is published, or whose it is.
    pub source: &'static str,
    /// The limit; `None` for one told, or of another kind.
    pub limit: Option<&'static Limit>,
    /// False abroad, where no value is held.
    pub known: bool,
    /// The style it is said in, where that is not the row's own.
    pub style: Option<Style>,
}

impl Held {
    /// True where a figure keeps to it, or asks for nothing by it.
    pub fn keeps(&self, fig: &Fig) -> bool {
        self.sense.keeps(fig.as_q(), self.most.as_q())
    }

    fn told(most: Fig, sense: Sense) -> Held {
        Held { most, sense, source: "as told", limit: None, known: true, style: None }
    }

    fn published(job: &Job, limit: &'static Limit, sense: Sense, most: Fig) -> Held {
        let law = &job.settings.law;
        let style = law.is_metric(limit).then_some(Style::Millimetres);
        Held { most, sense, source: law.source(limit), limit: Some(limit), known: law.holds(limit), style }
    }
}

/// Every limit a row is held to in the job.
pub(super) fn held(job: &Job, row: RowId) -> Vec<Held> {
    let own = row.row().limits().filter(|(limit, sense)| *sense != Sense::None && applies(job, limit));
    let mut all: Vec<Held> =
        own.filter_map(|(l, sense)| Some(Held::published(job, l, sense, in_its_unit(job, l)?))).collect();
    all.extend(told(job, row));
    all.extend(at_a_pool(job, row));
    all.extend(worked_out(job, row));
    all
}

/// A limit as a figure in its unit; `None` for one of words.
fn in_its_unit(job: &Job, limit: &'static Limit) -> Option<Fig> {
    let value = i128::from(limit.value).into();
    match limit.unit {
        "in" | "sixteenths" => Some(in_force(job, limit)),
        "lb" => Some(Fig::quantity(value, Unit::Pounds, Why::Limit(limit))),
        "none" if limit.id == limits::STEEPEST.id => Some(Fig::quantity(value, Unit::Degrees, Why::Limit(limit))),
        // A count of parts or of risers.
        "parts" | "none" if limit.sense == Sense::From || limit.id == limits::POST_BOLTS.id => {
            Some(Fig::count(u64::try_from(limit.value).ok()?, Why::Limit(limit)))
        }
        "nominal" => {
            let nominal = u16::try_from(limit.value).ok()?;
            let (least, _) = Lumber::by(nominal, nominal).dressed()?;
            Some(Fig::length(least, Why::Table("dressed dry side of a 4x4", "PS 20 size table")))
        }
        _ => None,
    }
}

/// True where a limit that holds only somewhere holds in the job; where that is not known, it does.
fn applies(job: &Job, limit: &Limit) -> bool {
    let length = |row| known(job, row).and_then(|f| f.as_length());
    match limit.id {
        id if id == limits::POOL_LATCH.id => choice::pool(job),
        // The top riser starts a riser below the decking.
        id if id == limits::OPEN_RISER.id => length(RowId::TotalRise).is_none_or(|total| {
            total - length(RowId::Rise).unwrap_or(Length::ZERO) > limit_length(job, &limits::GUARD_TRIGGER)
        }),
        id if id == limits::NOSING_LEAST.id => {
            length(RowId::Tread).is_none_or(|t| t < limit_length(job, &limits::NOSING_FREE))
        }
        _ => true,
    }
}

/// What was told for the job beside the published limit.
fn told(job: &Job, row: RowId) -> Vec<Held> {
    let (limit, of, sense) = match row {
        RowId::Gap | RowId::StairGap => (&limits::LEVEL_GAP, RowId::GapMax, Sense::Under),
        RowId::BayCentre => (&limits::POST_SPACING, RowId::CentreMax, Sense::Most),
        RowId::BayClear => (&limits::POST_SPACING, RowId::ClearMax, Sense::Most),
        _ => return Vec::new(),
    };
    told_instead(job, limit).into_iter().filter(|(r, _)| *r == of).map(|(_, fig)| Held::told(fig, sense)).collect()
}

/// What a guard that closes off a pool is held to besides.
fn at_a_pool(job: &Job, row: RowId) -> Option<Held> {
    let limit = match row {
        RowId::HeightTop | RowId::LeafHeight if choice::pool(job) => &limits::POOL_TOP,
        RowId::Gap if gap::by_pool(&gap::level(job)) => &limits::POOL_TIGHT_GAP,
        RowId::StairGap if gap::by_pool(&gap::stairs(job)) => &limits::POOL_TIGHT_GAP,
        _ => return None,
    };
    Some(Held::published(job, limit, limit.sense, in_force(job, limit)))
}

/// Limits that are figures of the job themselves: the sag allowed, what the wood is allowed.
fn worked_out(job: &Job, row: RowId) -> Option<Held> {
    match row {
        RowId::RailSag => {
            let most = provide::ask(RowId::SagLimit, &Given::default(), job).ok()?.fig;
            Some(Held { source: limits::RAIL_SAG.source, ..Held::told(most, Sense::Most) })
        }
        // What holds for guards up to 36 in. holds less above: the pull grows with the height.
        RowId::HoldDown => {
            let (high, up_to) = (Source::told(job, RowId::HeightTop)?, Length::inches(36));
            let ratio = high.as_length().filter(|h| *h > up_to)?.ratio(up_to)?;
            let least =
                Fig::quantity(i128::from(limits::HOLD_DOWN.value).into(), Unit::Pounds, Why::Limit(&limits::HOLD_DOWN));
            let says = "the tension for a guard 36 in. high, more in proportion for one that is higher";
            let from = vec![(RowId::HeightTop.row().name, high), ("tension at 36 in.", least.clone())];
            let most = Fig::new(Value::Quantity(least.as_q() * ratio, Unit::Pounds), Why::Formula(says, from));
            let source = "in proportion to the height, from the 1,800 lb that hold for guards up to 36 in.";
            Some(Held { source, ..Held::told(most, limits::HOLD_DOWN.sense) })
        }
        RowId::PostRatio | RowId::RailRatio => {
            let one = Fig::quantity(1.into(), Unit::Times, Why::Told("all that is allowed"));
            let source = "by arithmetic from published design values, no code's approval";
            Some(Held { source, ..Held::told(one, Sense::Most) })
        }
        _ => None,
    }
}

/// The premises a row's limits follow from: with any of them another limit holds.
pub(super) fn premises(job: &Job, laid: impl Fn(RowId) -> Job, row: RowId, given: &Given) -> Vec<RowId> {
    // A drop that asks for no guard bends what is said of the height.
    let high = row.row().limit.is_some_and(|l| l.id == limits::GUARD_HEIGHT.id);
    let of = |job: &Job| {
        let all: Vec<(Value, Sense)> = held(job, row).iter().map(|h| (h.most.value(), h.sense)).collect();
        (all, high && none_required(job).is_some())
    };
    let plain = of(job);
    given.rows().filter(|premise| of(&laid(*premise)) != plain).collect()
}

/// True where a drop is told or follows, and asks for no guard.
pub(super) fn none_required(job: &Job) -> Option<Fig> {
    let law = &job.settings.law;
    let drop = Source::told(job, RowId::Drop).or_else(|| known(job, RowId::Drop))?;
    let low = drop.as_length()? <= limit_length(job, &limits::GUARD_TRIGGER);
    (law.holds(&limits::GUARD_TRIGGER) && low).then_some(drop)
}

//! What is known of the flight or gate a question is about: what the question gives, else what
//! was told.

use super::trouble::Trouble;
use crate::figure::Fig;
use crate::grammar::ask::{Given, Size};
use crate::job::{Flight as ToldFlight, Gate, Head, Job, Newels, Run, Settings, StairMeasure, StairOpening};
use crate::layout::{Bay, BayKind, Placed, lay_out as lay_out_job, line_inside};
use crate::limits::Limit;
use crate::measure::{Length, Tape};
use crate::quantity::RowId;
use crate::reply::tape_of;
use crate::solve::{default_of, taken, told_length};
use crate::stairs::flight::{Flight, work_out};
use crate::stairs::guard::{Laid, RakeGuard, Site, lay_out};
use crate::stairs::triangle::{Overhang, overhang};
use crate::stairs::{Rake, Told};
use crate::takeoff::{baluster_fig, site_of};

/// The job with what the question gives.
pub struct Known<'a> {
    /// The job.
    pub job: &'a Job,
    /// The question's own.
    pub given: &'a Given,
    /// What was told of the flight.
    pub flight: ToldFlight,
    /// Its opening, where one was told.
    pub opening: Option<StairOpening>,
    /// The tape.
    pub tape: Tape,
}

impl<'a> Known<'a> {
    /// Gathers it; several unlike flights are asked about, unless the question gives the
    /// figures.
    pub fn of(job: &'a Job, given: &'a Given) -> Result<Known<'a>, Trouble> {
        let openings: Vec<StairOpening> = job.runs.iter().flat_map(|r| r.stairs.iter().copied()).collect();
        let flights: Vec<ToldFlight> = openings.iter().map(|s| job.flight(s)).collect();
        let alike = flights.windows(2).all(|pair| pair[0] == pair[1]);
        if !alike && given.sizes.is_empty() && given.risers.or(given.steps).or(given.treads).is_none() {
            return Err(Trouble::WhichStairs);
        }
        if !alike {
            return Ok(Known { job, given, flight: ToldFlight::default(), opening: None, tape: tape_of(job) });
        }
        let flight = flights.first().copied().unwrap_or(job.flight);
        Ok(Known { job, given, flight, opening: openings.first().copied(), tape: tape_of(job) })
    }

    /// What holds for the job.
    pub fn here(&self) -> &'a Settings {
        &self.job.settings
    }

    /// The flight's facts for the engine.
    pub fn told(&self) -> Told {
        let size = |size, told: Option<Length>| self.given.size(size).or(told);
        let (risers, rise, total_rise) = self.climb();
        let flight = ToldFlight {
            risers,
            rise,
            total_rise,
            tread: size(Size::Tread, self.flight.tread),
            total_run: size(Size::TotalRun, self.flight.total_run),
            ..self.flight
        };
        Told::of(&flight, told_length(self.job, RowId::Grade))
    }

    /// Risers, one riser, all of them. Two of them given make the third; to one given only as much
    /// is added of what was told as makes a flight, never so much that it could disagree.
    fn climb(&self) -> (Option<u16>, Option<Length>, Option<Length>) {
        let f = &self.flight;
        let given = self.given.risers.or(self.given.steps).or(self.given.treads.map(|n| n.saturating_add(1)));
        let (rise, total) = (self.given.size(Size::Rise), self.given.size(Size::TotalRise));
        match (given, rise, total) {
            (None, None, None) => (f.risers, f.rise, f.total_rise),
            (Some(n), None, None) => (Some(n), f.rise.filter(|_| f.total_rise.is_none()), f.total_rise),
            (None, Some(r), None) => (f.risers.filter(|_| f.total_rise.is_none()), Some(r), f.total_rise),
            own => own,
        }
    }

    /// The flight worked out.
    pub fn flight(&self) -> Result<Flight, Trouble> {
        work_out(&self.told()).map_err(Trouble::Unready)
    }

    /// True where the rise was taken from the decking's height above the ground.
    pub fn rise_from_ground(&self) -> bool {
        self.told().ground.is_some()
    }

    /// True where the rise was worked out on ground told to fall or rise.
    pub fn falls(&self) -> bool {
        self.told().ground.is_some_and(|g| g.fall != crate::measure::Q::from_integer(0))
    }

    /// The slope: from the flight, or from a riser and a tread alone.
    pub fn rake(&self) -> Result<Rake, Trouble> {
        let told = self.told();
        if let (Some(rise), Some(tread)) = (told.rise, told.tread) {
            let rake = Rake::new(Fig::told(rise, "the riser"), Fig::told(tread, "the tread"));
            let rake = rake.ok_or(Trouble::PastMe)?;
            if rake.is_ladder() {
                return Err(Trouble::Unready(crate::stairs::Clash::Ladder(rake.angle()).into()));
            }
            return Ok(rake);
        }
        let flight = self.flight()?;
        if flight.going.is_none() {
            return Err(Trouble::Unready(crate::stairs::Unready::Untold(crate::stairs::Lack::Tread)));
        }
        flight.rake().ok_or(Trouble::PastMe)
    }

    /// A size: given, told, or the default named.
    pub fn or_taken(&self, size: Size, told: Option<Length>, what: &'static str, default: &'static Limit) -> Fig {
        let found = self.given.size(size).or(told);
        found.map_or_else(|| default_of(self.job, default), |l| Fig::told(l, what))
    }

    /// How far a nosing overhangs the riser below: given or told, else the most it may where the rule wants
    /// one, since the triangle under the rail grows with it; else none.
    pub fn nosing(&self, tread: Length) -> (Fig, Overhang) {
        let nosing = self.given.size(Size::Nosing).or(self.flight.nosing);
        overhang(&ToldFlight { nosing, ..self.flight }, tread, self.here())
    }

    /// The level guard's height.
    pub fn level(&self) -> Fig {
        let given = self.given.size(Size::Level);
        given.map_or_else(|| taken(self.job, RowId::HeightTop), |l| Fig::told(l, "the level rail's height"))
    }

    /// How far the baluster line, and with it the top post, lies behind the decking's edge.
    pub fn line(&self) -> Result<Fig, Trouble> {
        line_inside(&self.job.settings).map_err(|_| Trouble::Line)
    }

    /// The stair guard laid out.
    pub fn guard(&self, laid: Laid) -> Result<(Site, RakeGuard), Trouble> {
        let site = self.site()?;
        let guard = lay_out(&site, laid, self.tape).ok_or(Trouble::NoRoom)?;
        Ok((site, guard))
    }

    /// What the stair guard is laid out from.
    pub fn site(&self) -> Result<Site, Trouble> {
        if self.flight.head == Some(Head::Flush) {
            return Err(Trouble::Flush);
        }
        let flight = self.flight()?;
        let height = self.given.size(Size::Height).or(self.flight.height);
        site_of(self.job, self.rake()?, flight.riser_count(), height).ok_or(Trouble::Line)
    }

    /// What is clear of the stairs: the width given, or the least that what was told of them,
    /// or the posts laid out beside them, leave.
    pub fn clear_width(&self) -> Option<Fig> {
        if let Some(given) = self.given.size(Size::Width) {
            return Some(Fig::told(given, "the stair's width"));
        }
        let told = self.opening.map(|o| o.width).or(self.job.stair_width)?;
        let told = Fig::told(told, "the stair's width");
        let mut widths = self.job.runs.iter().flat_map(|r| r.stairs.iter().map(|s| s.width));
        let one_width = self.opening.is_some_and(|o| widths.all(|w| w == o.width));
        match self.between_posts().filter(|_| one_width) {
            Some(between) if between.as_length() < told.as_length() => Some(between),
            Some(_) => Some(told),
            None => self.is_clear().then_some(told),
        }
    }

    /// True where the width told is clear by itself: a hole in the framing or the decking has posts and edges in it
    /// that only a layout places, and newels on the treads stand in the treads' width.
    fn is_clear(&self) -> bool {
        match self.opening.map_or(self.job.stair_measure, |o| o.measure) {
            None | Some(StairMeasure::Posts) => true,
            Some(StairMeasure::Treads) => self.flight.newels != Some(Newels::OnTreads),
            Some(StairMeasure::Decking | StairMeasure::Framing) => false,
        }
    }

    /// True where that width is less than was told of the stairs: posts stand in it.
    pub fn posts_narrow(&self, width: &Fig) -> bool {
        let told = self.opening.map(|o| o.width).filter(|_| self.given.size(Size::Width).is_none());
        told.is_some_and(|told| width.as_length().is_some_and(|w| w < told))
    }

    /// The least clear between the guard's posts at the stairs: at their head where they are
    /// let into the deck, else at the opening.
    fn between_posts(&self) -> Option<Fig> {
        let layout = lay_out_job(self.job);
        let stairs = |b: &&Bay| matches!(b.kind, BayKind::Stairs | BayKind::GatedStairs);
        let of = |p: &Placed| {
            p.head
                .clone()
                .into_iter()
                .chain(p.bays.iter().filter(stairs).map(|b| b.clear.clone()))
                .collect::<Vec<Fig>>()
        };
        let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
        placed.flat_map(of).min_by_key(Fig::as_length)
    }

    /// The one gate of the job, if there is just one.
    pub fn gate(&self) -> Option<(&'a Run, Gate)> {
        let mut gated = self.job.runs.iter().filter_map(|r| r.gate.map(|g| (r, g)));
        gated.next().filter(|_| gated.next().is_none())
    }

    /// A baluster's width.
    pub fn baluster(&self) -> Fig {
        let given = self.given.size(Size::Baluster);
        given.map_or_else(|| baluster_fig(self.job), |l| Fig::told(l, "a baluster's width"))
    }
}

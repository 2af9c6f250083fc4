//! The job, and what one fact does to it.

use super::{
    End, Fact, Flight, FlightFact, Foot, Gate, GateAt, LawTold, Local, Member, Order, OrderBook, RiserKind, Run, RunId,
    RunPatch, Setting, Settings, SlotId, Stage, StairAt, StairMeasure, StairOpening, StairPlace, Stairs, Turn, walk,
};
use crate::figure::Value;
use crate::measure::Length;
use std::collections::{BTreeMap, BTreeSet};

/// The sharpest turn between two sides, in degrees: past it they lie on each other.
const MOST_TURN: u16 = 170;

/// More risers than any flight off a deck has.
const MOST_RISERS: u16 = 60;

/// A note and its number, which is never reused.
#[derive(Clone, Debug, PartialEq)]
pub struct NumberedNote {
    /// Its number.
    pub id: u32,
    /// Its words.
    pub text: String,
}

/// Everything told so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Job {
    /// The runs, in the order told: the walking order.
    pub runs: Vec<Run>,
    /// The greatest run number ever given out.
    pub last_run: u32,
    /// The deck along the house.
    pub deck_along: Option<Length>,
    /// The deck out from the house.
    pub deck_out: Option<Length>,
    /// How wide a strip of deck is that lies along no house.
    pub deck_wide: Option<Length>,
    /// The stairs' width, where no run holds them.
    pub stair_width: Option<Length>,
    /// Told that there are no stairs.
    pub no_stairs: bool,
    /// What that width was measured between.
    pub stair_measure: Option<StairMeasure>,
    /// Where they are, before the side they stand in was told.
    pub stair_place: Option<StairPlace>,
    /// The stairs, as far as told of them all; see [`Job::flight`].
    pub flight: Flight,
    /// Settings told.
    pub settings: Settings,
    /// What was told for the parts, the saw and the yard.
    pub order: OrderBook,
    /// Figures told that no other part keeps.
    pub figures: BTreeMap<SlotId, Value>,
    /// Notes.
    pub notes: Vec<NumberedNote>,
    /// The greatest note number ever given out.
    pub last_note: u32,
    /// Stages of the work told as done.
    pub done: BTreeSet<Stage>,
}

/// Why a fact cannot be taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Impossible {
    /// A length outside its row's sane range.
    OutOfRange(SlotId, Length),
    /// A gate as wide as its run, or wider.
    GateTooWide {
        /// The gate.
        gate: Length,
        /// The run.
        run: Length,
    },
    /// A gate that does not fit in its run so far from the end.
    GateDoesntFit {
        /// The opening with its distance from the end.
        needs: Length,
        /// The run.
        run: Length,
    },
    /// Stairs that do not fit in their run.
    StairsDontFit {
        /// The opening with its distance from the end.
        needs: Length,
        /// The run.
        run: Length,
    },
    /// Two of a run's stairs that reach into each other, or stand without guard between.
    StairsOverlap,
    /// A leaf hinged and latched on one jamb.
    OneJamb,
    /// More or fewer risers than a flight has.
    RisersDontFit(u16),
    /// No run of that number.
    NoSuchRun(RunId),
    /// No note of that number.
    NoSuchNote(u32),
    /// More bays than the run has room for.
    BaysDontFit(u16),
    /// Lumber the size table does not hold.
    NotLumber,
    /// A post told past the end of its run.
    PostOffRun {
        /// Where.
        at: Length,
        /// The run.
        run: Length,
    },
    /// A post taken away where none was told.
    NoPostThere {
        /// The run.
        run: RunId,
        /// Where.
        at: Length,
    },
    /// A price of nothing.
    NoPrice,
    /// So many bays, told alone, or so many feet of a stick, that it is a slip of the tongue.
    NotSoMany(u16),
    /// More than the whole, or less than nothing, of a hundred.
    NotAPercent,
    /// A name another run bears.
    NameTaken(String),
    /// A turn of no degrees, or so sharp that the sides lie on each other.
    NoSuchTurn(u16),
    /// Two sides of the outline that cross.
    SidesCross(RunId, RunId),
    /// A recess as deep as the deck is there, or deeper.
    RecessTooDeep {
        /// The recess.
        recess: Length,
        /// The deck, in from the opening.
        deck: Length,
    },
}

impl Job {
    /// The run of that number.
    pub fn run(&self, id: RunId) -> Option<&Run> {
        self.runs.iter().find(|r| r.id == id)
    }

    /// The run of that name.
    pub fn named(&self, name: &str) -> Option<&Run> {
        self.runs.iter().find(|r| r.name.as_deref() == Some(name))
    }

    /// The flight in a stair opening: what was told of it alone, else of all stairs.
    pub fn flight(&self, stairs: &StairOpening) -> Flight {
        stairs.flight.or(self.flight)
    }

    /// The number the next new run will bear.
    pub fn next_run(&self) -> RunId {
        RunId(self.last_run + 1)
    }

    /// The job with one fact more, or why it cannot be.
    pub fn with(&self, fact: &Fact) -> Result<Job, Impossible> {
        let mut job = self.clone();
        job.take(fact)?;
        walk::check(&job)?;
        Ok(job)
    }

    /// The job with facts more, in order.
    pub fn with_all<'a>(&self, facts: impl IntoIterator<Item = &'a Fact>) -> Result<Job, Impossible> {
        let mut job = self.clone();
        for fact in facts {
            job.take(fact)?;
        }
        walk::check(&job)?;
        Ok(job)
    }

    /// Takes one fact in, or leaves the job as it is and says why.
    pub(crate) fn take(&mut self, fact: &Fact) -> Result<(), Impossible> {
        match fact {
            Fact::Run(id, patch) => self.take_run(*id, patch)?,
            Fact::DropRun(id) => {
                self.run(*id).ok_or(Impossible::NoSuchRun(*id))?;
                self.runs.retain(|r| r.id != *id);
            }
            Fact::Set(s) => {
                check_setting(*s)?;
                self.settings.set(*s);
                if let Setting::Foot(foot) = s {
                    self.cap_on_posts(*foot);
                }
            }
            Fact::DeckAlong(l) => self.deck_along = Some(in_range(SlotId::DeckSide, *l)?),
            Fact::DeckOut(l) => self.deck_out = Some(in_range(SlotId::DeckSide, *l)?),
            Fact::Deck(fact) => self.take_deck(*fact)?,
            Fact::StairWidth(l) => {
                self.stair_width = Some(in_range(SlotId::StairWidth, *l)?);
                self.no_stairs = false;
            }
            Fact::StairMeasure(m) => (self.stair_measure, self.no_stairs) = (Some(*m), false),
            Fact::Flight(fact) => {
                check_flight(*fact)?;
                self.flight.set(*fact);
                self.no_stairs = false;
            }
            Fact::StairPlace(place) => (self.stair_place, self.no_stairs) = (Some(place.clone()), false),
            Fact::NoStairs => self.drop_stairs(),
            Fact::Note(text) => {
                self.last_note += 1;
                self.notes.push(NumberedNote { id: self.last_note, text: text.clone() });
            }
            Fact::Row(row, value) => {
                if let Value::Length(l) = value {
                    in_range(*row, *l)?;
                }
                self.figures.insert(*row, *value);
            }
            Fact::DropRow(row) => _ = self.figures.remove(row),
            Fact::Done(stage, true) => _ = self.done.insert(*stage),
            Fact::Done(stage, false) => _ = self.done.remove(stage),
            Fact::Order(order) => {
                check_order(order)?;
                self.order.take(order);
                if let Order::Rail(Member::Cap, size) = order {
                    self.cap_by_size(*size);
                }
            }
            Fact::DropNote(n) => {
                let at = self.notes.iter().position(|note| note.id == *n).ok_or(Impossible::NoSuchNote(*n))?;
                self.notes.remove(at);
            }
        }
        Ok(())
    }

    /// Without stairs a gate across them has nothing to hang in.
    fn drop_stairs(&mut self) {
        (self.stair_width, self.stair_measure, self.stair_place) = (None, None, None);
        self.flight = Flight::default();
        self.no_stairs = true;
        for run in &mut self.runs {
            run.stairs = Stairs::NONE;
            run.gate = run.gate.filter(|g| g.at != GateAt::Stairs);
        }
    }

    fn take_run(&mut self, id: RunId, patch: &RunPatch) -> Result<(), Impossible> {
        if let Some(name) = &patch.name
            && self.named(name).is_some_and(|r| r.id != id)
        {
            return Err(Impossible::NameTaken(name.clone()));
        }
        let mut run = self.run(id).cloned().unwrap_or_else(|| Run::untold(id));
        patch_run(&mut run, patch);
        patch.choices.iter().try_for_each(|c| run.choices.take(id, *c))?;
        check_run(&run)?;
        self.no_stairs &= patch.stairs.as_ref().is_none_or(Stairs::is_empty);
        self.last_run = self.last_run.max(id.0);
        match self.runs.iter_mut().find(|r| r.id == id) {
            Some(slot) => *slot = run,
            None => self.runs.push(run),
        }
        Ok(())
    }
}

fn patch_run(run: &mut Run, patch: &RunPatch) {
    let p = patch.clone();
    run.name = p.name.or_else(|| run.name.take());
    run.length = p.length.or(run.length);
    run.basis = p.basis.or(run.basis);
    run.from = p.from.or(run.from);
    run.to = p.to.or(run.to);
    run.gate = p.gate.unwrap_or(run.gate);
    run.stairs = p.stairs.unwrap_or_else(|| std::mem::take(&mut run.stairs));
    run.bays = p.bays.unwrap_or(run.bays);
    run.turn = p.turn.or(run.turn);
}

pub(super) fn in_range(slot: SlotId, l: Length) -> Result<Length, Impossible> {
    if slot.takes(l) { Ok(l) } else { Err(Impossible::OutOfRange(slot, l)) }
}

fn check_order(order: &Order) -> Result<(), Impossible> {
    use super::LongPart;
    use rust_decimal::Decimal;
    let slot = match order {
        Order::Rail(_, Some(size)) => return size.dressed().map(|_| ()).ok_or(Impossible::NotLumber),
        Order::Cut(LongPart::Baluster, l) => (SlotId::BalusterLength, *l),
        Order::Cut(LongPart::Post, l) => (SlotId::PostLength, *l),
        Order::Bracket(l) => (SlotId::Bracket, *l),
        Order::Kerf(l) => (SlotId::Kerf, *l),
        Order::OnHand(size, ..) if size.dressed().is_none() => return Err(Impossible::NotLumber),
        Order::OnHand(_, l, _) => (SlotId::Stock, *l),
        Order::Bays(n, _) if !(1..=200).contains(n) => return Err(Impossible::NotSoMany(*n)),
        Order::Bays(_, l) => (SlotId::BayClear, *l),
        Order::Sold(_, feet) => {
            return feet.iter().find(|f| !(1..=40).contains(*f)).map_or(Ok(()), |f| Err(Impossible::NotSoMany(*f)));
        }
        Order::Price(stick, _) if !(1..=40).contains(&stick.feet) => return Err(Impossible::NotSoMany(stick.feet)),
        Order::Price(_, price) | Order::Labour(price) if *price <= Decimal::ZERO => return Err(Impossible::NoPrice),
        Order::Percent(_, n) if *n < Decimal::ZERO || *n > Decimal::ONE_HUNDRED => return Err(Impossible::NotAPercent),
        _ => return Ok(()),
    };
    in_range(slot.0, slot.1).map(|_| ())
}

fn check_setting(s: Setting) -> Result<(), Impossible> {
    use super::{NotchTold, PostSize};
    let (slot, l) = match s {
        Setting::Post(_, size @ PostSize::Lumber(_)) => {
            return size.width().map(|_| ()).ok_or(Impossible::NotLumber);
        }
        Setting::Post(_, PostSize::Width(w)) => (SlotId::PostWidth, w),
        Setting::HeightTop(l) => (SlotId::HeightTop, l),
        Setting::GapUnder(l) => (SlotId::GapUnder, l),
        Setting::Baluster(l) => (SlotId::BalusterWidth, l),
        Setting::GapMax(l) => (SlotId::GapMax, l),
        Setting::ClearMax(l) => (SlotId::ClearMax, l),
        Setting::CentreMax(l) => (SlotId::CentreMax, l),
        Setting::Grade(l) => (SlotId::Grade, l),
        Setting::Notch(NotchTold::Deep(l)) => (SlotId::NotchDepth, l),
        Setting::Overhang(l) => (SlotId::Overhang, l),
        Setting::Skirt(l) => (SlotId::Skirt, l),
        Setting::Rim(l) => (SlotId::Rim, l),
        Setting::Line(l) => (SlotId::Line, l),
        Setting::HoldBack(l) => (SlotId::HoldBack, l),
        Setting::Joists(l) => (SlotId::Joists, l),
        Setting::Foot(f) => return check_foot(f),
        Setting::FirstJoist(l) => (SlotId::FirstJoist, l),
        Setting::Notch(NotchTold::None)
        | Setting::Mount(_)
        | Setting::JoistsRun(_)
        | Setting::Blocking(_)
        | Setting::View(_)
        | Setting::Pool(_)
        | Setting::Fixing(_)
        | Setting::HouseEnd(_)
        | Setting::Tape(_) => return Ok(()),
        Setting::Timber(_) | Setting::Law(LawTold::Edition(_) | LawTold::Place(_)) => return Ok(()),
        Setting::Law(LawTold::Local(of, l)) => {
            let slot = match of {
                Local::Height => SlotId::HeightTop,
                Local::Gap => SlotId::GapMax,
                Local::Drop => SlotId::Grade,
            };
            (slot, l)
        }
    };
    in_range(slot, l).map(|_| ())
}

fn check_foot(f: Foot) -> Result<(), Impossible> {
    let (slot, l) = match f {
        Foot::Decking(l) => (SlotId::Decking, l),
        Foot::RimTall(l) => (SlotId::RimTall, l),
        Foot::Cap(l) => (SlotId::Cap, l),
        Foot::Above(l) => (SlotId::Above, l),
        Foot::Blade(l) => (SlotId::Blade, l),
        Foot::Bolt(l) => (SlotId::Bolt, l),
        Foot::RailNotch(l) => (SlotId::RailNotch, l),
        Foot::Nosing(_) | Foot::Turned(_) | Foot::Anyway(_) => return Ok(()),
    };
    in_range(slot, l).map(|_| ())
}

/// True when a gate there takes its width out of the run: it does anywhere but
/// across a stair head or beyond a gate post.
pub(crate) fn gate_in_run(run: &Run, gate: Gate) -> bool {
    let end = match gate.at {
        GateAt::From | GateAt::Left => run.from,
        GateAt::To | GateAt::Right => run.to,
        GateAt::Middle | GateAt::OffFrom(_) | GateAt::OffTo(_) => return true,
        GateAt::Stairs => return false,
    };
    !matches!(end, Some(End::StairHead | End::GatePost | End::BottomNewel))
}

fn check_flight(fact: FlightFact) -> Result<(), Impossible> {
    match fact {
        FlightFact::Risers(n) if !(1..=MOST_RISERS).contains(&n) => Err(Impossible::RisersDontFit(n)),
        FlightFact::Rise(l) => in_range(SlotId::Rise, l).map(|_| ()),
        FlightFact::Tread(l) => in_range(SlotId::Tread, l).map(|_| ()),
        FlightFact::TotalRise(l) => in_range(SlotId::TotalRise, l).map(|_| ()),
        FlightFact::TotalRun(l) => in_range(SlotId::TotalRun, l).map(|_| ()),
        FlightFact::Nosing(l) => in_range(SlotId::Nosing, l).map(|_| ()),
        FlightFact::Height(l) => in_range(SlotId::StairHeight, l).map(|_| ()),
        FlightFact::Landing(l) => in_range(SlotId::Landing, l).map(|_| ()),
        FlightFact::Between(RiserKind::Opening(l)) => in_range(SlotId::OpenRiser, l).map(|_| ()),
        FlightFact::Fall(fall) => {
            let by = if fall.by.is_positive() { fall.by } else { -fall.by };
            in_range(SlotId::Fall, by).and_then(|_| in_range(SlotId::FallOver, fall.over)).map(|_| ())
        }
        _ => Ok(()),
    }
}

fn check_stairs(s: &StairOpening) -> Result<(), Impossible> {
    if let StairAt::FromLeft(off) | StairAt::FromRight(off) = s.at
        && off < Length::ZERO
    {
        return Err(Impossible::OutOfRange(SlotId::Offset, off));
    }
    in_range(SlotId::StairWidth, s.width)?;
    s.recess.map(|deep| in_range(SlotId::Recess, deep)).transpose()?;
    s.flight.facts().into_iter().try_for_each(check_flight)
}

fn check_run(run: &Run) -> Result<(), Impossible> {
    let gate_width = run.gate.and_then(|g| g.width);
    if let Some(w) = gate_width {
        in_range(SlotId::GateWidth, w)?;
    }
    if let Some(off) = run.gate.and_then(|g| g.at.off()) {
        in_range(SlotId::Offset, off)?;
        // At no distance it stands at the end, and is told so.
        if !off.is_positive() {
            return Err(Impossible::OutOfRange(SlotId::Offset, off));
        }
    }
    let gaps = run.gate.map(|g| [g.hung.hinge_gap, g.hung.latch_gap]).into_iter().flatten().flatten();
    if run.gate.is_some_and(|g| g.hung.hinge.is_some() && g.hung.hinge == g.hung.latch) {
        return Err(Impossible::OneJamb);
    }
    gaps.map(|gap| in_range(SlotId::LeafGap, gap)).collect::<Result<Vec<_>, _>>()?;
    run.gate.and_then(|g| g.hung.leaf).map(|l| in_range(SlotId::Leaf, l)).transpose()?;
    if let Some(Turn::Left(d) | Turn::Right(d)) = run.turn
        && !(1..=MOST_TURN).contains(&d)
    {
        return Err(Impossible::NoSuchTurn(d));
    }
    if run.bays.is_some_and(|n| n == 0 || n > 200) {
        return Err(Impossible::BaysDontFit(run.bays.unwrap_or(0)));
    }
    run.stairs.iter().try_for_each(check_stairs)?;
    if let Some(told) = run.length {
        in_range(SlotId::RunLength, told.length)?;
    }
    check_openings(run)
}

/// The gate and the stairs must fit in the run, once its length is known.
pub(super) fn check_openings(run: &Run) -> Result<(), Impossible> {
    let Some(length) = run.length.map(|t| t.length) else { return Ok(()) };
    run.choices.check(length)?;
    if let (Some(gate), Some(w)) = (run.gate, run.gate.and_then(|g| g.width))
        && gate_in_run(run, gate)
        && w >= length
    {
        return Err(Impossible::GateTooWide { gate: w, run: length });
    }
    let reach = run.gate.and_then(|g| Some(g.at.off()? + g.width.unwrap_or(Length::ZERO)));
    if let Some(needs) = reach.filter(|needs| *needs >= length) {
        return Err(Impossible::GateDoesntFit { needs, run: length });
    }
    for s in run.stairs.iter() {
        let (left, right) = s.flanks(None);
        let needs = s.width + left.or(right).unwrap_or(Length::ZERO);
        if needs > length {
            return Err(Impossible::StairsDontFit { needs, run: length });
        }
    }
    let ends = |s: &StairOpening| s.flanks(Some(length)).0.map(|left| (left, left + s.width));
    let spans: Vec<_> = run.stairs.along(Some(length)).iter().filter_map(ends).collect();
    let apart = spans.windows(2).all(|pair| pair[0].1 < pair[1].0);
    if apart { Ok(()) } else { Err(Impossible::StairsOverlap) }
}

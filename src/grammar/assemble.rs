//! Pieces to clauses: what belongs to one run is gathered until something it already
//! has is said again after a break; then the next run begins.

use super::Query;
use super::draft::{Clash, Clause, Reading, RunDraft, SpotDraft};
use super::flight_draft::Asks;
use super::items::Item;
use super::pieces::Say;
use super::reading::Step;
use super::stair_draft::StairSaid;
use crate::job::End;
use crate::measure::Measure;
use std::mem::discriminant;
use std::ops::Range;

#[derive(Default)]
struct Gather {
    runs: Vec<RunDraft>,
    current: Option<RunDraft>,
    /// What stands by itself, with the word it starts at.
    others: Vec<(usize, Clause)>,
    broke: bool,
    repair: Option<Repair>,
    /// An end was told before any length: the next one is the run's other end.
    end_first: bool,
    last: Last,
    several: bool,
    corrects: bool,
    denies: bool,
    supposes: bool,
    clash: Option<Clash>,
    cost: u32,
    words: Range<usize>,
}

/// What a value costs that a "make it" of the same line takes back.
const TAKEN_BACK: u32 = 4;

/// A repair that has not yet taken anything back.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Repair {
    hard: bool,
    /// "make it" within the line.
    change: bool,
}

/// What was said last, for a repair to take back.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
enum Last {
    #[default]
    Nothing,
    Ends,
    Gate,
    Other,
    /// "make it": a value is coming.
    Change,
}

/// Gathers the pieces of one cover into a reading.
pub(super) fn assemble(items: &[Item], steps: &[Step]) -> Reading {
    let mut gather = Gather::default();
    for (k, step) in steps.iter().enumerate() {
        let Step::Piece(at, piece) = step else { continue };
        gather.words = items[*at].words.start..items[piece.end - 1].words.end;
        // "the stairs 5 have risers": nothing opens there.
        let opens = k.checked_sub(1).is_none_or(|b| match &steps[b] {
            Step::Piece(_, before) => before.say == Say::Break,
            Step::Left(left, _) => items[*left].is_sep() || k == 1,
        });
        if !opens && matches!(&piece.say, Say::Clause(Clause::Flight(d)) if d.asks == Asks::Opening) {
            gather.clash.get_or_insert(Clash::Apart);
        }
        gather.take(&piece.say, &steps[k + 1..]);
    }
    gather.finish()
}

impl Gather {
    fn finish(mut self) -> Reading {
        // "12' house to corner no": a denial that takes nothing back.
        if self.repair.is_some_and(|r| r.hard) {
            self.clash.get_or_insert(Clash::Apart);
        }
        self.runs.extend(self.current.take());
        let runs = self.runs.into_iter().map(|r| (r.words.start, Clause::Run(r)));
        let mut placed: Vec<(usize, Clause)> = runs.chain(self.others).collect();
        placed.sort_by_key(|(at, _)| *at);
        let clauses: Vec<Clause> = placed.into_iter().map(|(_, clause)| clause).collect();
        // A word for a run alone tells nothing of it.
        let empty =
            |r: &RunDraft| RunDraft { run_word: false, it: false, words: 0..0, ..r.clone() } == RunDraft::default();
        // "layout the of run 2": a run named by number, and nothing told of it.
        let only_number = |r: &RunDraft| empty(&RunDraft { number: None, ..r.clone() }) && !empty(r);
        let beside = clauses.len() > 1 && clauses.iter().any(|c| matches!(c, Clause::Run(r) if only_number(r)));
        if beside || clauses.iter().any(|c| matches!(c, Clause::Run(r) if empty(r))) {
            self.clash.get_or_insert(Clash::Apart);
        }
        // "why 4 inches" asks about a figure; it tells none.
        let why = clauses.iter().any(|c| matches!(c, Clause::Query(Query::Why | Query::Sources) | Clause::Why(_)));
        if why && clauses.len() > 1 {
            self.clash.get_or_insert(Clash::Apart);
        }
        if at_odds(&clauses) {
            self.clash.get_or_insert(Clash::Apart);
        }
        // "why suppose": a what-if of nothing.
        let of_a_room = |c: &Clause| {
            matches!(
                c,
                Clause::Strength(_) | Clause::StrengthMore(_) | Clause::Takeoff(_) | Clause::Flight(_) | Clause::Why(_)
            )
        };
        let asks = |c: &Clause| matches!(c, Clause::Query(_) | Clause::Ask(_) | Clause::Talk(_)) || of_a_room(c);
        if self.supposes && !clauses.is_empty() && clauses.iter().all(asks) {
            self.clash.get_or_insert(Clash::Apart);
        }
        // A spot alone answers or corrects; beside anything else it is a spot of something unsaid.
        let spot = clauses.iter().any(|c| matches!(c, Clause::Spot(_)));
        if spot && clauses.iter().filter(|c| !matches!(c, Clause::Fine | Clause::Talk(_))).count() > 1 {
            self.clash.get_or_insert(Clash::Apart);
        }
        Reading {
            clauses,
            corrects: self.corrects,
            denies: self.denies,
            trails: self.repair.is_some_and(|r| !r.hard),
            supposes: self.supposes,
            left: Vec::new(),
            near: Vec::new(),
            heard: Vec::new(),
            cost: self.cost,
            clash: self.clash,
        }
    }

    /// True where nothing has been told yet, but for a word for the run itself.
    fn opens(&self) -> bool {
        let only_word =
            |r: &RunDraft| RunDraft { run_word: false, it: false, words: 0..0, ..r.clone() } == RunDraft::default();
        self.runs.is_empty() && self.others.is_empty() && self.current.as_ref().is_none_or(only_word)
    }

    fn take(&mut self, say: &Say, ahead: &[Step]) {
        match say {
            Say::Break => {
                self.broke = true;
                return;
            }
            Say::Noise => return,
            Say::Change if self.last == Last::Change => {
                self.clash.get_or_insert(Clash::Apart);
                return;
            }
            Say::Change | Say::Repair { .. } => {
                if *say == Say::Change {
                    self.last = Last::Change;
                }
                let hard = matches!(say, Say::Repair { hard: true });
                let (opens, denied) = (self.opens(), self.corrects);
                // "make no it four": a denial where a value was coming.
                if hard && opens && (denied || self.supposes) || self.repair.is_some_and(|r| r.hard) {
                    self.clash.get_or_insert(Clash::Apart);
                }
                self.denies |= hard && opens;
                self.corrects |= opens;
                self.repair = if opens { None } else { Some(Repair { hard, change: *say == Say::Change }) };
                return;
            }
            Say::Suppose => {
                // "suppose 6x6 posts suppose": the second is of nothing.
                if self.supposes && ahead.is_empty() {
                    self.clash.get_or_insert(Clash::Apart);
                }
                self.supposes = true;
                return;
            }
            Say::Runs => self.several = true,
            Say::Clause(c) => self.take_other(c.clone()),
            Say::Wide(m) => self.take_wide(m),
            Say::NotLength(m) => {
                self.corrects = true;
                self.run().not = Some(m.clone());
            }
            Say::NotEnd(end) => {
                self.corrects = true;
                self.run().not_end = Some(*end);
            }
            Say::Instead(wrong, right) => {
                self.corrects = true;
                let draft = self.run();
                (draft.not_end, draft.from, draft.lone) = (Some(*wrong), Some(*right), true);
            }
            Say::Called(side) => {
                self.corrects = true;
                let draft = self.run();
                (draft.name, draft.it) = (Some(*side), true);
            }
            Say::At(spot) => self.take_at(*spot),
            Say::Length { measure, .. } if self.again(measure) => {}
            Say::Name(side) if self.repaired_spot(SpotDraft::Side(*side)) => {}
            _ => self.take_run(say, ahead),
        }
        self.last = match say {
            Say::Gate(_) => Last::Gate,
            Say::Both(..) | Say::From(_) | Say::To(_) | Say::Lone(_) => Last::Ends,
            Say::Clause(_) => Last::Other,
            _ => Last::Nothing,
        };
        self.broke = false;
    }

    /// "height 36, no 42": the setting just told, told again.
    fn again(&mut self, measure: &Measure) -> bool {
        let (Some(_), Last::Other, Some((_, Clause::Slot(_, told)))) = (self.repair, self.last, self.others.last_mut())
        else {
            return false;
        };
        *told = measure.clone();
        self.repair = None;
        true
    }

    /// A clause of the kind just told, after a repair, stands in its place.
    fn take_other(&mut self, clause: Clause) {
        if let Clause::Spot(spot) = clause
            && self.repaired_spot(spot)
        {
            return;
        }
        // "6x6 corner posts, no 4x4 line posts" takes nothing back: they are other posts.
        let other_posts = |last: &Clause| match (last, &clause) {
            (Clause::Post(one, _), Clause::Post(other, _)) => one != other,
            _ => false,
        };
        let same = |last: &Clause| discriminant(last) == discriminant(&clause) && !other_posts(last);
        // "posts are 4x4, nah 6x6": the size just told, told again.
        if let (Some(_), Some((_, Clause::Post(_, told))), Clause::Lumber { size, not: None }) =
            (self.repair, self.others.last_mut(), &clause)
        {
            *told = *size;
            self.repair = None;
            return;
        }
        let same = self.others.last().is_some_and(|(_, last)| same(last));
        if self.repair.is_some() && same {
            self.others.pop();
            self.repair = None;
        }
        self.others.push((self.words.start, clause));
    }

    /// "gate on the left, sorry right": the gate's place told again.
    fn repaired_spot(&mut self, spot: SpotDraft) -> bool {
        let gate = self.current.as_mut().and_then(|r| r.gate.as_mut()?.as_mut());
        match (self.repair, self.last, gate) {
            (Some(_), Last::Gate, Some(gate)) => gate.at = Some(spot),
            _ => return false,
        }
        self.repair = None;
        true
    }

    /// "gate on run 1 at the house": of the gate, which has no place yet.
    fn take_at(&mut self, spot: SpotDraft) {
        let gate = self.current.as_mut().and_then(|r| r.gate.as_mut()?.as_mut()).filter(|g| g.at.is_none());
        match gate {
            Some(gate) => gate.at = Some(spot),
            None => {
                self.clash.get_or_insert(Clash::Apart);
            }
        }
    }

    /// "gate at the corner. 36 wide.": of the gate or the stairs of this run.
    fn take_wide(&mut self, measure: &Measure) {
        let run = self.current.as_mut();
        let gate = run.and_then(|r| r.gate.as_mut()?.as_mut()).filter(|g| g.width.is_none());
        if let Some(gate) = gate {
            gate.width = Some(measure.clone());
            return;
        }
        let stairs = self.current.as_mut().and_then(|r| r.stairs.as_mut()?.as_mut()).filter(|s| s.width.is_none());
        if let Some(stairs) = stairs {
            stairs.width = Some(measure.clone());
        } else if self.has(|r| r.gate.is_some() || r.stairs.is_some()) {
            self.clash.get_or_insert(Clash::Twice(self.words.clone()));
        } else {
            self.others.push((self.words.start, Clause::Wide(measure.clone())));
        }
    }

    /// The run being gathered.
    fn run(&mut self) -> &mut RunDraft {
        let words = self.words.clone();
        let run = self.current.get_or_insert_with(|| RunDraft { words: words.clone(), ..RunDraft::default() });
        run.words.end = words.end;
        run
    }

    fn next_run(&mut self) {
        self.end_first = false;
        self.runs.extend(self.current.take());
    }

    /// Makes way for a value the run has already: by repair, by a new run after a
    /// break, or not at all.
    fn make_way(&mut self, has: bool) {
        // "12' house to corner, wait, gate at the corner": nothing taken back, a thing added.
        if !has
            && let Some(repair) = self.repair.take()
            && repair.hard
        {
            self.clash.get_or_insert(Clash::Apart);
        }
        if let Some(repair) = self.repair.take()
            && has
        {
            // "run 1, make it 15": that the 1 was a length is the less likely.
            self.cost += if repair.change { TAKEN_BACK } else { 0 };
            return;
        }
        if !has {
            return;
        }
        if self.broke || self.several {
            self.next_run();
        } else {
            self.clash.get_or_insert(Clash::Twice(self.words.clone()));
        }
    }

    fn has(&self, field: fn(&RunDraft) -> bool) -> bool {
        self.current.as_ref().is_some_and(field)
    }

    fn take_run(&mut self, say: &Say, ahead: &[Step]) {
        match say {
            Say::Length { measure, basis, run, it } => {
                self.make_way(self.has(|r| r.length.is_some()));
                let draft = self.run();
                draft.length = Some(measure.clone());
                draft.basis = basis.or(draft.basis);
                draft.run_word |= run;
                draft.it |= it;
            }
            Say::Both(from, to) => {
                self.make_way(self.has(|r| r.from.is_some() || r.to.is_some()));
                let draft = self.run();
                (draft.from, draft.to) = (Some(*from), Some(*to));
            }
            Say::From(end) => {
                self.make_way(self.has(|r| r.from.is_some()));
                self.run().from = Some(*end);
            }
            Say::To(end) => self.take_to(*end),
            Say::Lone(end) => self.take_lone(*end),
            Say::Basis(basis) => {
                let other = *basis;
                // "gate on the left, sorry overall right": taken back is the gate, not a basis.
                if self.repair.is_some() && self.last == Last::Gate {
                    self.clash.get_or_insert(Clash::Apart);
                }
                if self.current.as_ref().is_some_and(|r| r.basis.is_some_and(|b| b != other)) && self.repair.is_none() {
                    self.clash.get_or_insert(Clash::Twice(self.words.clone()));
                }
                self.repair = None;
                self.run().basis = Some(*basis);
            }
            Say::Grow(measure, way) => self.run().grow = Some((measure.clone(), *way)),
            Say::RunWord(number) => {
                self.begin_if_full(ahead);
                let draft = self.run();
                draft.run_word = true;
                draft.number = number.or(draft.number);
            }
            Say::Name(side) => {
                self.begin_if_full(ahead);
                // "gate on the left, overall, sorry right": the gate's side, or the run's name.
                let sided = self.current.as_ref().and_then(|r| r.gate.as_ref()?.as_ref()?.at);
                if self.repair.is_some() && matches!(sided, Some(SpotDraft::Side(_))) {
                    self.clash.get_or_insert(Clash::Apart);
                }
                self.make_way(self.has(|r| r.name.is_some()));
                self.run().name = Some(*side);
            }
            Say::Gate(gate) => {
                self.make_way_in_place(self.has(|r| r.gate.is_some()));
                self.run().gate = Some(gate.clone());
            }
            Say::Stairs(stairs) => {
                self.make_way_in_place(self.has(|r| r.stairs.is_some()));
                self.run().stairs = Some(stairs.clone());
            }
            Say::Bays(n) => {
                self.make_way_in_place(self.has(|r| r.bays.is_some()));
                self.run().bays = Some(*n);
            }
            _ => {}
        }
    }

    fn take_to(&mut self, end: End) {
        // "butts the brick, runs 9-4 to the corner": the first end was told as a "to".
        if self.end_first && self.repair.is_none() {
            self.end_first = false;
            let draft = self.run();
            (draft.from, draft.to) = (draft.to, Some(end));
            return;
        }
        self.end_first = self.current.as_ref().is_none_or(|r| r.length.is_none() && r.from.is_none() && r.to.is_none());
        let walked_on = self.broke && self.has(|r| r.to.is_some());
        let before = self.current.as_ref().and_then(|r| r.to);
        self.make_way(self.has(|r| r.to.is_some()));
        let draft = self.run();
        if walked_on && draft.from.is_none() {
            draft.from = before;
        }
        draft.to = Some(end);
    }

    fn take_lone(&mut self, end: End) {
        if let Some(repair) = self.repair
            && self.last == Last::Ends
        {
            // "landing 2' top of the steps, no house": from a place to itself takes nothing back.
            if repair.hard && self.has(|r| r.to.is_none() || r.to == r.from) {
                self.clash.get_or_insert(Clash::Apart);
            }
            self.repair = None;
            let draft = self.run();
            let last = if draft.to.is_some() { &mut draft.to } else { &mut draft.from };
            *last = Some(end);
            return;
        }
        if self.has(|r| r.from.is_some() && r.to.is_some()) {
            let before = self.current.as_ref().and_then(|r| r.to);
            self.make_way(true);
            self.run().from = before;
        }
        let walked_from = self.runs.last().filter(|r| r.lone).and_then(|r| r.to);
        let draft = self.run();
        draft.lone = true;
        match (draft.from, walked_from) {
            (None, Some(before)) => (draft.from, draft.to) = (Some(before), Some(end)),
            (None, None) => draft.from = Some(end),
            (Some(_), _) => draft.to = Some(end),
        }
    }

    /// A gate or a bay count said again stands in place of the first only by repair.
    fn make_way_in_place(&mut self, has: bool) {
        let soft = self.repair.is_some_and(|r| !r.hard);
        if has && self.repair.take().is_none() {
            self.clash.get_or_insert(Clash::Twice(self.words.clone()));
        }
        if soft {
            self.repair = None;
        }
    }

    /// A name or run word opens the next run when this one has its length and a new
    /// length is coming before the next break.
    fn begin_if_full(&mut self, ahead: &[Step]) {
        if self.broke && self.has(|r| r.length.is_some()) && length_ahead(ahead) {
            self.next_run();
        }
    }
}

/// True for clauses that each read, and of which one line cannot say both.
fn at_odds(clauses: &[Clause]) -> bool {
    // "4 wide, risers": a thing named asks by itself, not behind what is told.
    let named_only = |c: &Clause| matches!(c, Clause::Flight(d) if d.asks == Asks::Naming);
    // "14 along and the house": an end of no run, beside what is told of the deck.
    let end_alone = |c: &Clause| matches!(c, Clause::Run(r) if r.lone && RunDraft { from: None, lone: false, words: 0..0, ..r.clone() } == RunDraft::default());
    let of_deck = |c: &Clause| matches!(c, Clause::Deck(..) | Clause::DeckBy(..) | Clause::DeckMore(..));
    // "want one at 61 add 1/4": to the mark, or to the run?
    let grows = |c: &Clause| matches!(c, Clause::Run(r) if r.grow.is_some());
    let chosen = |c: &Clause| matches!(c, Clause::Choice(_));
    // "minus the stairs have 5 risers": none, and something of them.
    let no_stairs = |c: &Clause| matches!(c, Clause::NoStairs) || matches!(c, Clause::Run(r) if r.stairs == Some(None));
    let of_stairs = |c: &Clause| matches!(c, Clause::Stair(_));
    // "stairs are 6' 5 foot wide": of two widths neither is taken.
    let wide_stairs = |c: &Clause| match c {
        Clause::Stair(StairSaid::Wide { .. }) => true,
        Clause::Run(r) => matches!(&r.stairs, Some(Some(s)) if s.width.is_some()),
        _ => false,
    };
    let wide = |c: &Clause| matches!(c, Clause::Wide(_) | Clause::DeckMore(Some(_), None));
    let both =
        |a: &dyn Fn(&Clause) -> bool, b: &dyn Fn(&Clause) -> bool| clauses.iter().any(a) && clauses.iter().any(b);
    clauses.len() > 1 && clauses.iter().any(named_only)
        || both(&end_alone, &of_deck)
        || both(&grows, &chosen)
        || both(&no_stairs, &of_stairs)
        || both(&wide_stairs, &wide)
}

fn length_ahead(ahead: &[Step]) -> bool {
    ahead
        .iter()
        .filter_map(|s| match s {
            Step::Piece(_, p) => Some(&p.say),
            Step::Left(..) => None,
        })
        .take_while(|say| **say != Say::Break)
        .any(|say| matches!(say, Say::Length { .. }))
}

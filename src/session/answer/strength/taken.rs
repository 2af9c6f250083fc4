//! What a strength answer takes the job's parts as, and how it says so.

use super::{detail, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Duration, Job, Lie, Member, Species, Timber};
use crate::layout::lay_out;
use crate::limits;
use crate::measure::Lumber;
use crate::reply::{Line, Span};
use crate::strength::Wood;
use crate::strength::rail::{Piece, made_up};

/// The wood, the rail and the height a question is answered for.
pub struct Taken {
    /// What was told, the question's own words on top.
    pub told: Timber,
    /// What was told of the rail.
    make: Make,
    /// The wood.
    pub wood: Wood,
    /// The rail's pieces that are counted on.
    pub pieces: Vec<Piece>,
    /// A cap that is not counted on: thinner than the tables begin.
    pub thin_cap: Option<Lumber>,
    /// The guard's height.
    pub height: Fig,
}

/// How a rail is made up, as far as it was told.
#[derive(Clone, Copy)]
struct Make {
    rail: Option<Lumber>,
    lie: Option<Lie>,
    cap: Option<Lumber>,
}

impl Taken {
    /// What the job tells and the question says, and the cautious choice for the rest.
    pub fn of(job: &Job, ask: &StrengthAsk) -> Taken {
        let stands = job.settings.timber;
        let told = Timber { species: ask.species.or(stands.species), ..stands };
        let make = Make {
            rail: ask.rail.or(job.order.rail(Member::Top).flatten()),
            lie: ask.lie.or(job.order.lay(Member::Top)),
            cap: ask.cap.or(job.order.rail(Member::Cap).flatten()),
        };
        let cap = make.cap;
        let thin_cap = cap.filter(|c| c.thick_quarters < 8);
        Taken {
            told,
            make,
            wood: Wood::taken(&told),
            pieces: made_up(make.rail, make.lie, make.cap),
            thin_cap,
            height: height(job, ask),
        }
    }

    /// The same wood under a load of ten minutes: the other duration shown.
    pub fn short(&self) -> Wood {
        self.wood.under(Duration::TenMinutes)
    }

    /// The other wood shown beside one that was not told.
    pub fn beside(&self) -> Option<Wood> {
        self.told.species.is_none().then(|| self.wood.in_species(Species::SouthernPine))
    }

    /// The rail in words: "2x4 laid flat under a 2x6 cap".
    pub fn rail_words(&self) -> Span {
        Span::Phrase(words_of(&self.pieces))
    }

    /// The wood in words.
    pub fn wood_words(&self) -> Span {
        Span::Phrase(wood_words(&self.wood))
    }

    /// What was taken, told or not.
    pub fn line(&self) -> Line {
        let what = self.wood_words();
        match self.told.species {
            Some(_) => detail([say("Taken: "), what, say(".")]),
            None => detail([
                say("Taken, since the wood is not told: "),
                what,
                say(". That is the weakest of the common treated ones; say what the stamp says."),
            ]),
        }
    }

    /// What is said of a rail not told, or a cap not counted on.
    pub fn rail_lines(&self) -> Vec<Line> {
        let guess = "Nothing is told of the top rail: taken as one 2x4 laid flat, the cautious way. Say \"top rail is a \
                     2x4 on edge\" or \"2x6 cap\" if it is.";
        let lie = "How it lies is not told: taken flat, the cautious way.";
        let thin = "The cap is under 2 in. nominal, where the tables begin: not counted on.";
        let lines = [
            (self.make.rail.is_none() && self.make.lie.is_none()).then_some(guess),
            (self.make.rail.is_some() && self.make.lie.is_none()).then_some(lie),
            self.thin_cap.map(|_| thin),
        ];
        lines.into_iter().flatten().map(|l| detail([say(l)])).collect()
    }
}

fn height(job: &Job, ask: &StrengthAsk) -> Fig {
    match ask.height.or(job.settings.height_top) {
        Some(l) => Fig::told(l, "the guard's height"),
        None => Fig::length(limits::GUARD_HEIGHT.length(), Why::Default(&limits::GUARD_HEIGHT)),
    }
}

/// A rail's pieces in words.
pub fn words_of(pieces: &[Piece]) -> String {
    let lie = |p: &Piece| if p.lie == Lie::Flat { "laid flat" } else { "on edge" };
    match pieces {
        [rail, cap] => format!("{} {} under a {} cap", rail.size, lie(rail), cap.size),
        [rail, ..] => format!("{} {}", rail.size, lie(rail)),
        [] => String::new(),
    }
}

/// A wood in words.
pub fn wood_words(w: &Wood) -> String {
    let wet = if w.wet { "wet" } else { "dry" };
    let incised = if w.incised { ", incised" } else { "" };
    format!("{} {}, {wet}{incised}, load of {}", w.species.name(), w.grade.name(), w.duration.name())
}

/// The longest rail bay of the job as laid out, face to face.
pub fn longest_bay(job: &Job) -> Option<Fig> {
    let layout = lay_out(job);
    let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    let bays = placed.flat_map(|p| p.rail_bays().map(|b| b.clear.clone()).collect::<Vec<_>>());
    bays.max_by_key(Fig::as_length)
}

//! What a strength answer takes the job's parts as, and how it says so.

use super::{detail, say};
use crate::figure::Fig;
use crate::grammar::ask::StrengthAsk;
use crate::job::{Duration, Job, Species};
use crate::layout::lay_out;
use crate::provide::roles_judged;
use crate::reply::{Line, Span};
use crate::strength::{Inputs, Piece, Said, Stand, Wood};

/// The inputs a question is answered from, and the posts there are.
pub struct Taken {
    /// What was told, the question's own words on top.
    pub inputs: Inputs,
    /// The posts the job has, by size and push.
    pub stands: Vec<Stand>,
}

impl Taken {
    /// What the job tells and the question says, and the cautious choice for the rest.
    pub fn of(job: &Job, ask: &StrengthAsk) -> Taken {
        let &StrengthAsk { height, post, rail, lie, cap, rim, species, .. } = ask;
        let inputs = Inputs::with(job, &Said { height, post, rail, lie, cap, rim, species });
        let stands = inputs.stands(&roles_judged(job));
        Taken { inputs, stands }
    }

    /// The same wood under a load of ten minutes: the other duration shown.
    pub fn short(&self) -> Wood {
        self.inputs.wood.under(Duration::TenMinutes)
    }

    /// False where the load is taken as one of ten minutes in the first place.
    pub fn shows_short(&self) -> bool {
        self.inputs.wood.duration != Duration::TenMinutes
    }

    /// The other wood shown beside one that was not told.
    pub fn beside(&self) -> Option<Wood> {
        self.inputs.told.species.is_none().then(|| self.inputs.wood.in_species(Species::SouthernPine))
    }

    /// The rail in words: "2x4 laid flat under a 2x6 cap".
    pub fn rail_words(&self) -> Span {
        Span::Phrase(words_of(&self.inputs.pieces))
    }

    /// The wood in words.
    pub fn wood_words(&self) -> Span {
        Span::Phrase(wood_words(&self.inputs.wood))
    }

    /// What was taken, told or not.
    pub fn line(&self) -> Line {
        let what = self.wood_words();
        match self.inputs.told.species {
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
        let make = &self.inputs.make;
        let lines = [
            (make.rail.is_none() && make.lie.is_none()).then_some(guess),
            (make.rail.is_some() && make.lie.is_none()).then_some(lie),
            self.inputs.thin_cap().map(|_| thin),
        ];
        lines.into_iter().flatten().map(|l| detail([say(l)])).collect()
    }
}

/// A rail's pieces in words.
pub fn words_of(pieces: &[Piece]) -> String {
    use crate::job::Lie;
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
    lay_out(job).longest_bay().cloned()
}

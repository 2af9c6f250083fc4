//! Editions of the defaults: what is taken where nothing was told, and what of it a file made
//! under an older edition keeps. Pure.

use crate::grammar::{Act, canon};
use crate::job::{Fact, Setting};

/// One edition: its number, and what it takes, as plain phrases of settings.
pub type Edition = (u32, &'static [&'static str]);

include!(concat!(env!("OUT_DIR"), "/editions.rs"));

/// A table of editions, the oldest first.
#[derive(Clone, Copy, Debug)]
pub struct Editions(&'static [Edition]);

/// A default a file keeps though a newer edition takes another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptDefault {
    /// What the file was made under, as a plain phrase; a line of the file now.
    pub kept: String,
    /// What the newest edition takes, as a plain phrase.
    pub newest: String,
}

impl Default for Editions {
    /// The editions of this program.
    fn default() -> Editions {
        Editions(EDITIONS)
    }
}

impl Editions {
    /// A table of one's own, the oldest edition first.
    pub fn of(table: &'static [Edition]) -> Editions {
        Editions(table)
    }

    /// The newest edition's number.
    pub fn newest(self) -> u32 {
        self.0.last().map_or(0, |(number, _)| *number)
    }

    /// What an edition takes that the newest takes otherwise, each with the newest's. Nothing
    /// for an edition the table does not hold.
    pub(super) fn differing(self, edition: u32) -> Vec<(Setting, Setting)> {
        let of = |n: u32| self.0.iter().find(|(number, _)| *number == n).map(|(_, taken)| settings(taken));
        let (Some(old), Some(new)) = (of(edition), of(self.newest())) else { return Vec::new() };
        let same_kind = |a: &Setting, b: &Setting| kind(*a) == kind(*b);
        let pair = |o: Setting| new.iter().find(|n| same_kind(&o, n)).filter(|n| **n != o).map(|n| (o, *n));
        old.iter().copied().filter_map(pair).collect()
    }
}

/// The plain phrase of a setting.
pub(super) fn phrase(setting: Setting) -> String {
    canon::write_fact(&Fact::Set(setting))
}

/// What a setting is about, whatever its value: what stands before the colon of its phrase.
pub(super) fn kind(setting: Setting) -> String {
    phrase(setting).split(':').next().unwrap_or_default().to_owned()
}

fn settings(taken: &[&str]) -> Vec<Setting> {
    let facts = taken.iter().filter_map(|phrase| match canon::read(phrase) {
        Some(Act::Tell(facts)) => Some(facts),
        _ => None,
    });
    facts.flatten().filter_map(|fact| if let Fact::Set(s) = fact { Some(s) } else { None }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Basis, End, Job, Mount, RunId, RunPatch, Told, Turn};
    use crate::layout::lay_out;
    use crate::measure::Length;

    #[test]
    fn every_phrase_of_every_edition_is_a_setting() {
        for (number, taken) in EDITIONS {
            assert_eq!(settings(taken).len(), taken.len(), "edition {number}");
        }
        assert!(EDITIONS.windows(2).all(|pair| pair[0].0 < pair[1].0), "the newest stands last");
    }

    /// What the newest edition says is taken is what the engine takes: told outright, nothing of
    /// a layout moves. Within the program: no outside source says what it takes.
    #[test]
    fn the_newest_edition_is_what_the_engine_takes() {
        let side = |id, turn| {
            let patch =
                RunPatch { turn: Some(turn), length: Some(Told::plain(Length::inches(144))), ..RunPatch::default() };
            Fact::Run(RunId(id), patch)
        };
        let ends = (Some(End::House), Some(End::EndPost));
        let alone = RunPatch {
            length: Some(Told::plain(Length::inches(99))),
            basis: Some(Basis::Clear),
            from: ends.0,
            to: ends.1,
            ..RunPatch::default()
        };
        let deck =
            [side(1, Turn::Start), side(2, Turn::Right(90)), side(3, Turn::Right(90)), Fact::Run(RunId(4), alone)];
        let told: Vec<Fact> = settings(EDITIONS[EDITIONS.len() - 1].1).into_iter().map(Fact::Set).collect();
        let outside = [Fact::Set(Setting::Mount(Mount::Outside))];
        let inside = [Mount::Inside].map(Setting::Mount).into_iter();
        let inside = inside.chain([Setting::Overhang(Length::inches(1)), Setting::Skirt(Length::ZERO)]).map(Fact::Set);
        let inside: Vec<Fact> = inside.collect();
        for mount in [&[][..], &outside[..], &inside[..]] {
            let marks = |facts: &[&[Fact]]| -> Vec<Length> {
                let job = Job::default().with_all(facts.concat().iter()).expect("the deck can be built");
                let layout = lay_out(&job);
                let placed = layout.runs.iter().map(|r| r.result.as_ref().expect("it can be laid out"));
                placed.flat_map(|p| &p.posts).filter_map(|p| p.at.as_length()).map(|l| layout.tape.round(l)).collect()
            };
            let (plain, outright) = (marks(&[&deck, mount]), marks(&[&told, &deck, mount]));
            assert!(plain.len() > 10);
            assert_eq!(plain, outright);
        }
    }
}

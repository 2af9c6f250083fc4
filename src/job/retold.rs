//! The job as facts: told again from nothing they give the same job.

use super::{Basis, DeckFact, Fact, Foot, Job, NotchTold, RunPatch, Setting, Settings};

/// The facts that make this job, in the order a person would tell them.
pub fn retold(job: &Job) -> Vec<Fact> {
    let told = settings(&job.settings).into_iter();
    let told = told.filter(|s| !(matches!(s, Setting::Foot(Foot::Cap(_))) && job.cap_follows()));
    let mut facts: Vec<Fact> = told.map(Fact::Set).collect();
    facts.extend(job.deck_along.map(Fact::DeckAlong));
    facts.extend(job.deck_out.map(Fact::DeckOut));
    facts.extend(job.deck_wide.map(|l| Fact::Deck(DeckFact::Wide(l))));
    facts.extend(job.no_stairs.then_some(Fact::NoStairs));
    facts.extend(job.stair_width.map(Fact::StairWidth));
    facts.extend(job.stair_measure.map(Fact::StairMeasure));
    facts.extend(job.stair_place.clone().map(Fact::StairPlace));
    facts.extend(job.flight.facts().into_iter().map(Fact::Flight));
    facts.extend(job.runs.iter().map(|r| {
        let patch = RunPatch {
            name: r.name.clone(),
            length: r.length,
            basis: r.length.and(r.basis).or(r.basis.filter(|b| *b != Basis::Overall)),
            from: r.from,
            to: r.to,
            gate: r.gate.map(Some),
            stairs: Some(r.stairs.clone()).filter(|s| !s.is_empty()),
            bays: r.bays.map(Some),
            turn: r.turn,
            choices: r.choices.retold(),
        };
        Fact::Run(r.id, patch)
    }));
    facts.extend(job.order.retold().into_iter().map(Fact::Order));
    facts.extend(job.figures.iter().map(|(row, value)| Fact::Row(*row, *value)));
    facts.extend(job.done.iter().map(|stage| Fact::Done(*stage, true)));
    facts.extend(job.notes.iter().map(|n| Fact::Note(n.text.clone())));
    facts
}

fn settings(s: &Settings) -> Vec<Setting> {
    let posts = s.posts.iter().map(|(role, size)| Setting::Post(*role, *size));
    let one = [
        s.height_top.map(Setting::HeightTop),
        s.gap_under.map(Setting::GapUnder),
        s.baluster.map(Setting::Baluster),
        s.gap_max.map(Setting::GapMax),
        s.clear_max.map(Setting::ClearMax),
        s.centre_max.map(Setting::CentreMax),
        s.grade.map(Setting::Grade),
        s.mount.map(Setting::Mount),
        s.overhang.map(Setting::Overhang),
        s.skirt.map(Setting::Skirt),
        s.rim.map(Setting::Rim),
        s.line.map(Setting::Line),
        s.hold_back.map(Setting::HoldBack),
        s.joists.map(Setting::Joists),
        s.first_joist.map(Setting::FirstJoist),
        s.joists_run.map(Setting::JoistsRun),
        s.blocking.map(Setting::Blocking),
        s.view.map(Setting::View),
        s.pool.map(Setting::Pool),
        s.fixing.map(Setting::Fixing),
        s.house_end.map(Setting::HouseEnd),
        s.notch.map(|n: NotchTold| Setting::Notch(n)),
        s.tape.map(Setting::Tape),
    ];
    let law = s.law.told().into_iter().map(Setting::Law);
    let timber = s.timber.told().into_iter().map(Setting::Timber);
    let feet = s.foot.facts().into_iter().map(Setting::Foot);
    law.chain(posts).chain(one.into_iter().flatten()).chain(timber).chain(feet).collect()
}

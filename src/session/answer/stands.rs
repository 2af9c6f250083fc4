//! An answer never speaks against a stop that stands: those on what it is about come with it, and first.

use crate::grammar::Query;
use crate::grammar::ask::{FlightWhat, Mood, RowAsk, TakeoffAsk};
use crate::job::Job;
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::rules::{Matter, matter_of, stops_on};
use std::borrow::Cow;

/// What the answer to a question is about. Answers about layouts carry what the rules found themselves; a rule asked
/// about is no word on the job.
fn matters(query: &Query) -> Cow<'static, [Matter]> {
    use Matter::{Height, Notch, Spacing, Strength};
    Cow::Borrowed(match query {
        Query::Row(ask) => return Cow::Owned(of_rows(ask)),
        Query::Takeoff(ask) => of_parts(ask),
        Query::Flight(ask) => of_flight(ask.what),
        Query::Strength(_) => &[Spacing, Height, Notch, Strength],
        Query::Notch(_) => &[Notch, Strength],
        _ => &[],
    })
}

/// What the limits of the rows wanted are of, and of those beside them. A figure of premises given whole is no word on the job.
fn of_rows(ask: &RowAsk) -> Vec<Matter> {
    if ask.mood == Mood::Figure && !ask.given.is_empty() {
        return Vec::new();
    }
    let rows = ask.wants.iter().flat_map(|w| std::iter::once(w).chain(w.row().beside));
    rows.flat_map(|row| row.row().limits()).map(|(limit, _)| matter_of(limit)).collect()
}

fn of_parts(ask: &TakeoffAsk) -> &'static [Matter] {
    match ask {
        // Given whole in the question, or about a gap alone.
        TakeoffAsk::Infill(_) | TakeoffAsk::OnCentre { .. } | TakeoffAsk::ByObject => &[],
        TakeoffAsk::Gap(_) | TakeoffAsk::GapUnder(_) | TakeoffAsk::Dried { .. } | TakeoffAsk::Routed { .. } => {
            &[Matter::Gaps]
        }
        TakeoffAsk::Balusters(_) | TakeoffAsk::Measured(_) => &[Matter::Gaps, Matter::Spacing],
        _ => Matter::ALL,
    }
}

fn of_flight(what: FlightWhat) -> &'static [Matter] {
    use FlightWhat::{
        Balusters, Brace, Gap, GateHeight, GatePosts, Grip, HandrailEnds, HandrailSpace, LatchHeight, Leaf,
        LeafBalusters, Pool, Swing, Wide,
    };
    match what {
        LeafBalusters => &[Matter::Gate, Matter::Gaps],
        Balusters | Gap => &[Matter::Stairs, Matter::StairGuard, Matter::Gaps],
        Leaf | Brace | Swing | Wide | GatePosts | LatchHeight => &[Matter::Gate],
        GateHeight => &[Matter::Gate, Matter::Height],
        Pool => &[Matter::Gate, Matter::Height, Matter::Gaps],
        Grip | HandrailEnds | HandrailSpace => &[Matter::StairGuard],
        _ => &[Matter::Stairs, Matter::StairGuard],
    }
}

/// The answer with the stops that stand in the job on what it is about: the first of them opens it, all are among what was found.
pub(super) fn with_stops(mut reply: Reply, job: &Job, query: &Query) -> Reply {
    if reply.status != Status::Answered {
        return reply;
    }
    // What is tried on stands for the answer: a stop it takes away is none.
    let tried = match query {
        Query::Row(ask) if !ask.supposed.is_empty() => job.with_all(&ask.supposed).ok(),
        _ => None,
    };
    let stops = stops_on(tried.as_ref().unwrap_or(job), &matters(query));
    let fresh: Vec<_> = stops.into_iter().filter(|s| !reply.findings.contains(s)).collect();
    let led =
        matches!(reply.lines.first().and_then(|l| l.spans.first()), Some(Span::Say(s)) if s.starts_with("Stop: "));
    if let Some(first) = fresh.first().filter(|_| !led) {
        let spans = [Span::Say("Stop: ")].into_iter().chain(first.spans.clone());
        reply.lines.insert(0, Line::new(Role::Answer, spans));
    }
    reply.findings.extend(fresh);
    reply
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grammar::ask::{FlightAsk, Given, NotchAsk};
    use crate::measure::{Length, Lumber};
    use crate::reply::Level;
    use crate::rules::{RULES, matter};

    fn flight(what: FlightWhat) -> Query {
        Query::Flight(FlightAsk { what, given: Given::default() })
    }

    /// Rows judged with figures that pass.
    fn judged() -> impl Iterator<Item = RowAsk> {
        use crate::quantity::RowId::{BayCentre, Gap, HeightTop, Landing, StairHeight};
        let passing = [(HeightTop, 60), (Gap, 1), (BayCentre, 24), (Landing, 60), (StairHeight, 36)];
        let of = |(row, inches)| RowAsk::judge(row, vec![(row, crate::figure::Value::Length(Length::inches(inches)))]);
        passing.into_iter().map(of)
    }

    fn asked() -> Vec<Query> {
        let parts =
            [TakeoffAsk::Gap(Length::inches(3)), TakeoffAsk::Balusters(None), TakeoffAsk::Buy, TakeoffAsk::Cuts];
        let flights = [FlightWhat::Check, FlightWhat::StairRailHeight, FlightWhat::LatchHeight, FlightWhat::GateHeight];
        let mut all = vec![Query::Notch(NotchAsk::May(Lumber::SIX_BY_SIX))];
        all.extend(parts.map(Query::Takeoff));
        all.extend(flights.map(flight));
        all.extend(judged().map(Query::Row));
        all
    }

    #[test]
    fn every_stop_comes_first_with_the_answers_on_what_it_is_about() {
        for rule in RULES.iter().filter(|r| r.level == Level::Stop) {
            let job = Job::default().with_all(&(rule.trips)()).expect("an example is a possible job");
            let on_it: Vec<Query> = asked().into_iter().filter(|q| matters(q).contains(&matter(rule))).collect();
            let replies = on_it.iter().map(|q| super::super::query(&job, q, 72).0);
            let answered: Vec<Reply> = replies.filter(|r| r.status == Status::Answered).collect();
            assert!(!answered.is_empty(), "{}", rule.id);
            for reply in answered {
                assert!(reply.findings.iter().any(|f| f.rule == rule.id), "{} {:?}", rule.id, reply.readback);
                let first = crate::reply::shown(&reply, 200, crate::measure::Tape::default()).swap_remove(0).text;
                let good = ["Yes", "High enough", "Nothing I check", "Inside"];
                assert!(!good.iter().any(|g| first.starts_with(g)), "{}: {first}", rule.id);
            }
        }
    }
}

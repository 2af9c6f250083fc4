//! A job's answers, gathered by part.

use super::draw;
use super::page::Figure;
use crate::grammar::ask::{FlightAsk, FlightWhat, Given, NotchAsk, TakeoffAsk, Whose, WorkAsk};
use crate::grammar::{Act, Query, canon};
use crate::job::{Flight, Job, retold};
use crate::layout::lay_out;
use crate::reply::{Level, Reply, Role, Status, finding_text, line_text, tape_of};
use crate::rules;
use crate::session::ask;

/// One thing said or drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// An answer.
    Lead(String),
    /// What it rests on.
    Row(String),
    /// A caution: to be looked at before building.
    Check(String),
    /// Not to be built so.
    Stop(String),
    /// A drawing to scale.
    Figure(Figure),
    /// A row of a drawing in characters, for paper that takes no other.
    Mono(String),
}

/// A part of the document.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is about.
    pub heading: &'static str,
    /// What it says.
    pub blocks: Vec<Block>,
}

/// Everything a job's paper says.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// The parts, in the order a crew wants them.
    pub parts: Vec<Part>,
    /// The phrases that make the job, told one by one.
    pub phrases: Vec<String>,
}

impl Document {
    /// The document of a job.
    pub fn of(job: &Job) -> Document {
        let layout = lay_out(job);
        let mut open: Vec<Block> = Vec::new();
        let mut parts = vec![part("Told", listed(blocks(job, &Query::Job, &mut open)))];
        let mut laid = blocks(job, &Query::Layout(None), &mut open);
        laid.extend(draw::plan(job, &layout).map(Block::Figure));
        laid.extend(draw::runs(job, &layout).into_iter().map(Block::Figure));
        parts.push(part("Layout", laid));
        if !job.runs.is_empty() {
            let mut feet = blocks(job, &Query::Notch(NotchAsk::Cut(Whose::All)), &mut open);
            add(&mut feet, blocks(job, &Query::Notch(NotchAsk::Length(Whose::All)), &mut open));
            feet.extend(draw::feet(job).into_iter().map(Block::Figure));
            parts.push(part("Posts' feet", feet));
            parts.push(part("Balusters", blocks(job, &takeoff(TakeoffAsk::Balusters(None)), &mut open)));
        }
        let stairs = job.flight != Flight::default() || job.runs.iter().any(|r| !r.stairs.is_empty());
        if stairs {
            let asked = [
                FlightWhat::Check,
                FlightWhat::Posts,
                FlightWhat::PostHeights,
                FlightWhat::RailLength,
                FlightWhat::Balusters,
                FlightWhat::Handrail,
            ];
            let mut said: Vec<Block> = Vec::new();
            for what in asked {
                add(&mut said, blocks(job, &flight(what), &mut open));
            }
            said.extend(draw::stairs(job).into_iter().map(Block::Figure));
            parts.push(part("Stairs", said));
        }
        if job.runs.iter().any(|r| r.gate.is_some()) {
            let mut said = Vec::new();
            for what in [FlightWhat::Leaf, FlightWhat::LeafBalusters, FlightWhat::Brace, FlightWhat::Swing] {
                add(&mut said, blocks(job, &flight(what), &mut open));
            }
            let leaf = ask(job, &flight(FlightWhat::Leaf)).values.gate;
            said.extend(leaf.and_then(|leaf| draw::gate(job, &leaf)).map(Block::Figure));
            parts.push(part("Gate", said));
        }
        if !job.runs.is_empty() || crate::solve::order::bays_alone(job).next().is_some() {
            parts.push(part("Cut list", blocks(job, &takeoff(TakeoffAsk::Cuts), &mut open)));
            let mut bought = blocks(job, &takeoff(TakeoffAsk::Buy), &mut open);
            bought.extend(draw::sticks(job, &layout).into_iter().map(Block::Figure));
            parts.push(part("Buying list", bought));
        }
        parts.push(part("Checks, each with its source", checks(job)));
        let untold = blocks(job, &Query::Work(WorkAsk::Untold), &mut Vec::new());
        let asked = std::mem::take(&mut open);
        add(&mut open, asked);
        add(&mut open, untold);
        parts.push(part("Still open", open));
        parts
            .push(part("Order of work, and where to hold", blocks(job, &Query::Work(WorkAsk::Order), &mut Vec::new())));
        parts.push(part("What gets looked at", blocks(job, &Query::Work(WorkAsk::Inspector), &mut Vec::new())));
        if !job.notes.is_empty() {
            parts.push(part("Notes", job.notes.iter().map(|n| Block::Row(n.text.clone())).collect()));
        }
        parts.retain(|p| !p.blocks.is_empty());
        let phrases = retold(job).into_iter().map(|fact| canon::write(&Act::Tell(vec![fact]))).collect();
        Document { parts, phrases }
    }
}

fn part(heading: &'static str, blocks: Vec<Block>) -> Part {
    Part { heading, blocks }
}

/// Takes in an answer, but for what an earlier answer of the part has said: answers rest on the same things. Rows
/// of one answer all stay, alike or not.
fn add(to: &mut Vec<Block>, answer: Vec<Block>) {
    let before = to.len();
    for block in answer {
        if matches!(block, Block::Mono(_)) || !to[..before].contains(&block) {
            to.push(block);
        }
    }
}

/// An answer's sentences as rows of a list.
fn listed(blocks: Vec<Block>) -> Vec<Block> {
    let row = |b| if let Block::Lead(text) = b { Block::Row(text) } else { b };
    blocks.into_iter().map(row).collect()
}

fn takeoff(ask: TakeoffAsk) -> Query {
    Query::Takeoff(ask)
}

fn flight(what: FlightWhat) -> Query {
    Query::Flight(FlightAsk { what, given: Given::default() })
}

/// An answer as blocks; where there is none, what it asks goes to what is open.
fn blocks(job: &Job, query: &Query, open: &mut Vec<Block>) -> Vec<Block> {
    let reply = ask(job, query);
    let said = of_reply(&reply, job);
    if reply.status == Status::Answered {
        return said;
    }
    // One thing untold keeps several answers back; it is asked once.
    for block in said {
        if let Block::Lead(text) = block
            && !open.contains(&Block::Row(text.clone()))
        {
            open.push(Block::Row(text));
        }
    }
    Vec::new()
}

fn of_reply(reply: &Reply, job: &Job) -> Vec<Block> {
    let tape = tape_of(job);
    let block = |line: &crate::reply::Line| {
        let text = line_text(line, tape);
        Some(match line.role {
            Role::Answer | Role::Question => Block::Lead(text),
            Role::Detail => Block::Row(text.trim().to_owned()),
            // It stands at every page's foot.
            Role::Caution if text == "Your building department decides." => return None,
            Role::Caution => Block::Check(text),
            Role::Drawing => Block::Mono(text),
            Role::Unused | Role::Heard | Role::Choice | Role::Pointer => return None,
        })
    };
    reply.lines.iter().filter_map(block).collect()
}

/// What the rules found, the gravest first, each with its source.
fn checks(job: &Job) -> Vec<Block> {
    let mut found = rules::check(job, &lay_out(job));
    found.sort_by_key(|f| f.level);
    let mut blocks: Vec<Block> = vec![Block::Lead(
        "What these rules find in what was told. Your building department decides which code, edition and changes hold."
            .to_owned(),
    )];
    blocks.extend(found.iter().map(|f| {
        let text = finding_text(f, tape_of(job));
        match f.level {
            Level::Stop => Block::Stop(text),
            Level::Check => Block::Check(text),
            Level::Note => Block::Row(text),
        }
    }));
    blocks
}

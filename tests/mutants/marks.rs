//! How a sense shows in a read-back: the words of the plain phrase that stand for it.

use railhand::grammar::draft::Way;
use railhand::grammar::sense::{Cue, Op, Part, Sense, Spot, Verb};
use railhand::job::{Basis, End};

/// What a read-back calls a side.
const SIDES: [&str; 13] = [
    "front",
    "back",
    "left",
    "right",
    "north",
    "south",
    "east",
    "west",
    "yard side",
    "pool side",
    "street side",
    "side",
    "other side",
];

/// The words any one of which shows the sense; none where no read-back can.
pub fn marks(sense: Sense) -> Vec<&'static str> {
    match sense {
        // "stair head posts": the posts by the stairs.
        Sense::End(End::StairHead) => vec![End::StairHead.name(), "stair posts"],
        Sense::End(end) | Sense::Ends(end) => vec![end.name()],
        Sense::Part(part) => part_marks(part).to_vec(),
        Sense::Side(side) => vec![SIDES.iter().find(|s| **s == side.name()).copied().unwrap_or("called ")],
        Sense::Spot(spot) => spot_marks(spot).to_vec(),
        Sense::Basis(basis) => vec![basis_mark(basis)],
        Sense::Cue(cue) => cue_marks(cue).to_vec(),
        Sense::Verb(verb) => verb_marks(verb).to_vec(),
        Sense::Op(op) => op_marks(op).to_vec(),
        Sense::Ask(_) => vec!["?"],
        Sense::Mount(_) => vec!["mount:"],
        Sense::Fixing(_) => vec!["fixing:"],
        Sense::Not => vec!["no ", "not ", "none"],
        Sense::Parts(_) => vec!["tape: 1/"],
        Sense::Nth(_) => vec!["run "],
        Sense::Topic(id) => vec![id],
        Sense::Way(way) => way_marks(way).to_vec(),
        Sense::Strong(_) => {
            vec!["strength of ", "species:", "service:", "incised:", "load duration:", "cap:", "top rail"]
        }
        Sense::Wood(species) => vec![species.name()],
        Sense::Shape => vec!["off the house", "turning"],
        Sense::Free => vec!["off by itself"],
        Sense::Joists(_) => vec!["joists run:"],
        Sense::View(_) => vec!["as seen from"],
        Sense::Unit(_)
        | Sense::Qualifier
        | Sense::Foreign(_)
        | Sense::Reason
        | Sense::Link
        | Sense::Fill
        | Sense::Hum => vec![],
    }
}

fn basis_mark(basis: Basis) -> &'static str {
    match basis {
        Basis::Overall => "out to out",
        Basis::Clear => "clear",
        Basis::Edge => "on the edge",
        Basis::Centre => "centre",
    }
}

fn way_marks(way: Way) -> &'static [&'static str] {
    match way {
        Way::Start | Way::Out => &["off the house", "turning", " out"],
        Way::Right | Way::In | Way::Left | Way::Side { .. } | Way::Turn { .. } => &["turning"],
    }
}

fn part_marks(part: Part) -> &'static [&'static str] {
    match part {
        Part::Run | Part::Runs => &["run "],
        Part::Guard | Part::Rail => &["run ", "height:"],
        Part::TopRail | Part::Handrail => &["height:", "top rail:"],
        Part::BottomRail => &["gap under:"],
        // What spaces, mounts and fixes is said of posts alone.
        Part::Post | Part::Rest | Part::Sleeve => &["post", "most ", "mount:", "fixing:", "bays?", "hold-back:"],
        Part::CornerPost => &["corner posts"],
        Part::LinePost => &["line posts"],
        Part::EndPost => &["end post"],
        Part::GatePost => &["gate post"],
        Part::Baluster => &["balusters:", "gap limit:", "balusters "],
        Part::Bay => &["bay"],
        Part::Gate => &["gate"],
        Part::Stairs => &["stair"],
        Part::Deck => &["deck:", "on the decking", "above ground:"],
        Part::Opening => &["gap", "clear", "bay"],
        Part::Gap => &["gap"],
        Part::Notch => &["notch"],
        Part::Rim => &["rim"],
        Part::End => &["-end", "end post"],
        Part::Bracket => &["bracket"],
        Part::Layout => &["layout"],
        Part::Note => &["note"],
        Part::Corner => &["turning"],
        Part::StairPart => &["rise ", "in the framing", "stringers", "deep into the deck", "height of the stairs"],
        Part::Leaf => &["hinge", "latch", "swing", "leaf", "leaves", "self-closing"],
        Part::Joist => &["joist"],
        Part::Decking => &["overhang:", "on the decking", "baluster line:"],
        Part::Blocking => &["blocking:"],
        Part::Skirt => &["skirt:", "rim", "overhang:"],
        Part::Edge => &["inside the edge", "over the edge", "run "],
        Part::Strip => &["deck:"],
        Part::Line => &["baluster line:"],
        Part::Riser => &["riser", "rise ", "tread"],
        Part::Landing | Part::Framing => &[],
    }
}

fn spot_marks(spot: Spot) -> &'static [&'static str] {
    match spot {
        Spot::Middle => &["middle"],
        Spot::Top => &["to-end", "from-end", "stair head", "to the top"],
        Spot::Bottom => &["bottom newel"],
        Spot::End | Spot::BothEnds => &["-end"],
        Spot::Far => &["to-end"],
        Spot::Near => &["from-end"],
        Spot::Other => &["-end"],
    }
}

fn cue_marks(cue: Cue) -> &'static [&'static str] {
    match cue {
        Cue::Long => &["run "],
        Cue::Wide | Cue::Square => &["wide"],
        Cue::High => &["height:"],
        Cue::Deep => &["deep"],
        Cue::Out => &[" out"],
        Cue::Along => &["along the house"],
        Cue::Apart | Cue::Every => &["most on centre", "most clear", "gap limit", "bays?"],
        Cue::Most => &["most ", "gap limit"],
        Cue::Under => &["gap under:"],
        Cue::Above => &["above ground:"],
        Cue::Overhang => &["overhang:"],
        Cue::Least | Cue::Already => &[],
    }
}

fn verb_marks(verb: Verb) -> &'static [&'static str] {
    match verb {
        Verb::Drop => &["drop ", "no ", "none"],
        Verb::Suppose => &["suppose:"],
        Verb::Undo => &["undo"],
        Verb::Redo => &["redo"],
        Verb::Leave => &["leave it"],
        Verb::Swap => &["from "],
        Verb::Note => &["note"],
        Verb::Hello => &["hello"],
        Verb::Thanks => &["thanks"],
        Verb::Help => &["help"],
        _ => &[],
    }
}

fn op_marks(op: Op) -> &'static [&'static str] {
    match op {
        // "plus" and "minus" behind a measure are shades.
        Op::Plus | Op::Add | Op::Total => &[" + ", " strong"],
        Op::Less | Op::Take | Op::Off => &[" - ", " shy"],
        Op::Times | Op::Double | Op::Triple => &[" x "],
        Op::Split => &[" / ", "bays"],
        Op::Over | Op::Into | Op::Ways | Op::Third | Op::Quarter | Op::Halved | Op::Middle => &[" / "],
        Op::Half => &[" / 2", "1/2"],
        Op::Diagonal => &["diagonal:"],
        Op::Bigger | Op::Smaller => &["bigger:"],
        Op::Difference => &[" - "],
        Op::Convert => &["convert:"],
        Op::OutOf | Op::Pieces => &["pieces:"],
        Op::Stick => &["sticks:", "pieces:"],
    }
}

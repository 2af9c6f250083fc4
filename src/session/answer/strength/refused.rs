//! What is not judged, said with the range.

use super::{fig, say};
use crate::figure::{Fig, Why};
use crate::measure::Length;
use crate::reply::{Line, Role, Span};
use crate::strength::Refused;

const KNOWN: &str = " is not a size of lumber I have figures for. The sizes I know are 1, 5/4, 2, 3, 4, 6, 8, 10 and 12 \
                     by 2, 3, 4, 6, 8, 10 and 12: 2x4, 2x6, 4x4, 6x6.";

/// The lines of a refusal.
pub fn worded(refused: &Refused) -> Vec<Line> {
    let inches = |n: i64| fig(&Fig::length(Length::inches(n), Why::Told("the range judged")));
    let lumber = |l: &crate::measure::Lumber| Span::Phrase(l.to_string());
    let spans: Vec<Span> = match refused {
        Refused::NotLumber(l) => vec![lumber(l), say(KNOWN)],
        Refused::TooThin(l) => {
            vec![lumber(l), say(" is thinner than the tables begin: 2 in. nominal. I can't judge it.")]
        }
        Refused::NoValues(species, grade, l) => vec![
            say("I have no design values for "),
            say(species.name()),
            say(" "),
            say(grade.name()),
            say(" in a "),
            lumber(l),
            say(". I have No.2 of six woods to 10 in. wide, southern pine to 6 in., and posts to 12 in."),
        ],
        Refused::NotTreated => vec![say(
            "A blow's factor is barred for wood treated with waterborne preservative (NDS Table 2.3.2 notes), so I \
             won't use it.",
        )],
        Refused::Span(least, most) => {
            vec![say("I judge spans from "), inches(*least), say(" to "), inches(*most), say(": a rail is one stick.")]
        }
        Refused::Height(least, most) => {
            vec![say("I judge posts from "), inches(*least), say(" to "), inches(*most), say(" high.")]
        }
        Refused::SagPast => vec![say(
            "Far over, by arithmetic: it would sag more than a tenth of the span, and past that the sag formula says \
             nothing. Put a post in it.",
        )],
        Refused::NothingLeft => vec![say("That notch leaves nothing of the post.")],
        Refused::RimTooShallow => vec![say("That rim is too shallow for two bolts 2 in. from its edges.")],
        Refused::PastNumbers => vec![say("That is past any number I can carry exactly: say it to the 64th.")],
    };
    let tail = "Nothing was changed. What I can't judge is for an engineer or the building department.";
    vec![Line::new(Role::Answer, spans), Line::say(Role::Detail, tail)]
}

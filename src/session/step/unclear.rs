//! A line that nobody can tell the meaning of is asked back: a question costs a line, a wrong guess gets built.

use super::{asks, is_loose, took_no_part};
use crate::grammar::Act;
use crate::grammar::items::{Is, likeliest};
use crate::grammar::words::Word;
use crate::job::Impossible;
use crate::reply::{Line, Reply, Role, Typed};
use crate::session::bind::Unclear;
use crate::session::choose::Choice;
use crate::session::point::typed;
use crate::session::resolve::Problem;
use crate::session::state::Session;

/// The question back: where nothing is made of the line, and where a telling would be made of it that leaves words over, or that the scores
/// are all but certain against.
pub(super) fn asked_back(
    session: &Session,
    how: Unclear,
    line: &str,
    words: &[Word],
    choice: &Choice,
) -> Option<Reply> {
    let tells = |acts: &[Act]| acts.iter().any(|a| matches!(a, Act::Tell(_) | Act::TellWith(..)));
    let (made, loose) = match choice {
        Choice::Do { reading: Some(_), resolved } => (tells(&resolved.acts), is_loose(session, choice)),
        Choice::Topic(..) | Choice::NotWorked(..) | Choice::NoAnswer(_) | Choice::Unread(_) | Choice::Nothing => {
            (false, true)
        }
        Choice::Problem(Problem::Impossible(Impossible::OutOfRange(..)), _) => (false, true),
        _ => return None,
    };
    (loose || made && how == Unclear::Quite).then_some(())?;
    let figures = likeliest(words, &[]).into_iter().filter(|i| matches!(i.is, Is::Measure(_)));
    let figures: Vec<Typed> = figures.map(|i| typed(line, words, &i.words)).collect();
    let says = "That can be meant more than one way. Say what it is of, how much, and in what unit.";
    let named = took_no_part("Not placed: ", figures);
    Some(asks([Line::say(Role::Question, says)].into_iter().chain(named), &[]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grammar::words::words;
    use crate::reply::Status;
    use crate::session::choose::choose;
    use crate::session::step;
    use pretty_assertions::assert_eq;

    /// What comes of the line behind a run of 11 ft: asked back, or left to stand.
    fn back(line: &str, how: Unclear) -> Option<Reply> {
        let mut session = Session::new();
        let (delta, _) = step(&session, "run 11 ft corner to corner");
        session.apply(delta);
        let words = words(line);
        asked_back(&session, how, line, &words, &choose(&session, &words))
    }

    #[test]
    fn a_line_that_may_be_meant_more_than_one_way_is_asked_back_where_little_speaks_for_what_is_made_of_it() {
        let rows = [
            // Nothing is made of it.
            ("what if the glazing is five, is it any good there", Unclear::Likely, true),
            // All of it reads: only where it is all but certain that it is unclear.
            ("make it 2 ft longer", Unclear::Likely, false),
            ("make it 2 ft longer", Unclear::Quite, true),
            // What is asked is answered.
            ("how many posts", Unclear::Quite, false),
        ];
        for (line, how, asked) in rows {
            let reply = back(line, how);
            assert_eq!(reply.is_some(), asked, "{line} {how:?} {:?}", choose(&Session::new(), &words(line)));
            if let Some(reply) = reply {
                assert_eq!(reply.status, Status::Asks, "{line}");
                assert!(reply.lines.iter().any(|l| l.role == Role::Unused), "its figure is named: {line}");
            }
        }
    }
}

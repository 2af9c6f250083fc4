//! A line that told something and was not taken: the next answer that stands without it says so. Who is answered as if he had said nothing
//! builds on it.

use super::took_no_part;
use crate::reply::{Reply, Status, Typed};
use crate::session::bind::tells;
use crate::session::state::{Delta, Session};

/// The reply with what was not taken before it named, where it answers with a figure; and what of this line is kept for the next.
pub(super) fn named(session: &Session, line: &str, delta: &mut Delta, mut reply: Reply) -> Reply {
    let lost = delta.talk.lost.take();
    // What is given for the next question is taken, and asks what is wanted of it.
    let given = reply.readback.as_deref().is_some_and(|r| r.starts_with("given: "));
    match reply.status {
        Status::Asks if given => {}
        // What is still asked about, or was refused, is not taken; it stays so beside a line of other things.
        Status::Asks | Status::Refused => delta.talk.lost = tells(session, line).then(|| line.to_owned()).or(lost),
        // A sum stands on nothing that was told.
        Status::Answered if reply.readback.as_deref().is_some_and(|r| r.starts_with("sum: ")) => {}
        Status::Answered if reply.values.result.is_some() => {
            let typed: Vec<Typed> = lost.iter().map(|l| Typed::new(l)).collect();
            reply.lines.extend(took_no_part("Answered without what was not taken before: ", typed.clone()));
            reply.unused.extend(typed);
        }
        Status::Answered => delta.talk.lost = lost,
        _ => {}
    }
    reply
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::step;
    use pretty_assertions::assert_eq;

    /// Says the lines; what the last one's reply names as left over, and whether its text says so.
    fn left(lines: &[&str]) -> (Vec<String>, bool) {
        let mut session = Session::new();
        let mut last = Reply::of(Status::Answered);
        for line in lines {
            let (delta, reply) = step(&session, line);
            session.apply(delta);
            last = reply;
        }
        let text = crate::reply::plain(&last, 400, crate::measure::Tape::SIXTEENTHS);
        (last.unused.iter().map(|t| t.as_str().to_owned()).collect(), text.contains("Answered without"))
    }

    #[test]
    fn an_answer_names_what_was_told_before_and_not_taken() {
        let asked = "figure: bay; with balusters 9; with gap 3 1/2\"?";
        let lost = "add a step, the yard is lower";
        assert_eq!(left(&[lost, asked]), (vec![lost.to_owned()], true));
        // Told otherwise, or answered once, it is done with.
        assert_eq!(left(&[lost, "height: 36\" to the top", asked]), (Vec::new(), false));
        assert_eq!(left(&[lost, asked, asked]), (Vec::new(), false));
        assert_eq!(left(&[lost, "sum: 3\" + 4\""]), (Vec::new(), false));
        // A question that was refused is no telling.
        assert_eq!(left(&["what's the zorb of it", asked]), (Vec::new(), false));
    }
}
